/** Relations as flat arcs, for passes that go over them again and again. */
import { isLag, type CoreInstance, type Piece } from './instance';

/** Into, or out of, each activity: rows `head[i]` to `head[i + 1]`. */
export interface Arcs {
  readonly head: Int32Array;
  readonly other: Int32Array;
  readonly lag: Int32Array;
  /** -1 for a lag. */
  readonly curve: Int32Array;
}

type Relation = CoreInstance['relations'][number];

/** Each curve of the relations once. */
export function listCurves({ relations }: CoreInstance): readonly (readonly Piece[])[] {
  return [...new Set(relations.flatMap((relation) => (isLag(relation) ? [] : [relation.pieces])))];
}

export function listArcs({ durations, relations }: CoreInstance, curves: readonly (readonly Piece[])[], isInto: boolean): Arcs {
  const byOwner: Relation[][] = durations.map(() => []);
  for (const relation of relations) byOwner[isInto ? relation.to : relation.from]!.push(relation);
  const flat = byOwner.flat();
  const head = new Int32Array(durations.length + 1);
  byOwner.forEach((list, i) => (head[i + 1] = head[i]! + list.length));
  return {
    head,
    other: Int32Array.from(flat, (relation) => (isInto ? relation.from : relation.to)),
    lag: Int32Array.from(flat, (relation) => (isLag(relation) ? relation.lag : 0)),
    curve: Int32Array.from(flat, (relation) => (isLag(relation) ? -1 : curves.indexOf(relation.pieces))),
  };
}

/** What must at least pass from the start of each activity to the end of all: along lags; of a curve only that it never leads back (see `orderForward`). */
export function measureRest(order: Int32Array, out: Arcs, duration: Int32Array): Int32Array {
  const rest = duration.slice();
  for (let k = order.length - 1; k >= 0; k--) {
    const i = order[k]!;
    for (let a = out.head[i]!, end = out.head[i + 1]!; a < end; a++) {
      const lag = out.curve[a]! < 0 ? out.lag[a]! : 0;
      rest[i] = Math.max(rest[i]!, lag + rest[out.other[a]!]!);
    }
  }
  return rest;
}
