import { isLag } from './instance';
import type { CoreInstance, Piece } from './instance';

/**
 * Activities in an order along which every relation leads forwards and never allows an earlier start than the one it
 * leads from; null when there is none (a maximum lag, an overlap).
 */
export function orderForward(instance: CoreInstance): Int32Array | null {
  const n = instance.durations.length;
  const waiting = new Int32Array(n);
  const followers: number[][] = instance.durations.map(() => []);
  for (const relation of instance.relations) {
    if (isLag(relation) ? relation.lag < 0 : relation.pieces.some((piece, k) => isBehind(piece, relation.pieces[k + 1], instance.horizon))) return null;
    waiting[relation.to] = waiting[relation.to]! + 1;
    followers[relation.from]!.push(relation.to);
  }
  const order = new Int32Array(n);
  let count = 0;
  for (let i = 0; i < n; i++) if (waiting[i] === 0) order[count++] = i;
  for (let k = 0; k < count; k++) {
    for (const j of followers[order[k]!]!) {
      waiting[j] = waiting[j]! - 1;
      if (waiting[j] === 0) order[count++] = j;
    }
  }
  return count === n ? order : null;
}

function isBehind(piece: Piece, next: Piece | undefined, horizon: number): boolean {
  if (piece.slope === 1) return piece.value < piece.from;
  return piece.value < Math.min(horizon, next ? next.from - 1 : horizon);
}
