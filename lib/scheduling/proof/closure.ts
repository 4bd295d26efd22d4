import { isLag } from './instance';
import type { CoreInstance } from './instance';

/** No known path. */
const APART = -(1 << 28);

/** Above this size the closure is left to propagation: it costs n^3 steps. */
const LARGEST = 260;

export interface Closure {
  readonly n: number;
  /** `distance[i * n + j]`: s_j >= s_i + distance, APART when nothing is known. */
  readonly distance: Int32Array;
  /** An activity that would have to start after itself. */
  readonly cycleAt: number;
}

/**
 * Longest paths between all activities over the plain lags, tightened by pairs that cannot share a resource
 * and of which only one order is left. Null when the problem is too large for it.
 */
export function closeRelations(instance: CoreInstance): Closure | null {
  const n = instance.durations.length;
  if (n > LARGEST) return null;
  const distance = new Int32Array(n * n).fill(APART);
  for (let i = 0; i < n; i++) distance[i * n + i] = 0;
  for (const relation of instance.relations) {
    if (!isLag(relation)) continue;
    const at = relation.from * n + relation.to;
    distance[at] = Math.max(distance[at]!, relation.lag);
  }
  for (let k = 0; k < n; k++) relaxThrough(distance, n, k);
  const rivals = listRivals(instance);
  let cycleAt = findCycle(distance, n);
  for (let isChanged = true; isChanged && cycleAt < 0; cycleAt = findCycle(distance, n)) {
    isChanged = orderRivals(instance.durations, distance, n, rivals);
  }
  return { n, distance, cycleAt };
}

/** Pairs (i, j), i < j, that together need more of a resource than there is: they never overlap. */
export function listRivals(instance: CoreInstance): number[] {
  const { durations, demands, capacities } = instance;
  const n = durations.length;
  const pairs: number[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (durations[i]! > 0 && durations[j]! > 0 && capacities.some((c, k) => demands[i]![k]! + demands[j]![k]! > c)) pairs.push(i, j);
    }
  }
  return pairs;
}

function relaxThrough(distance: Int32Array, n: number, k: number): void {
  for (let i = 0; i < n; i++) {
    const first = distance[i * n + k]!;
    if (first === APART) continue;
    for (let j = 0; j < n; j++) {
      const second = distance[k * n + j]!;
      if (second === APART) continue;
      if (first + second > distance[i * n + j]!) distance[i * n + j] = Math.min(first + second, 1 << 28);
    }
  }
}

function findCycle(distance: Int32Array, n: number): number {
  for (let i = 0; i < n; i++) if (distance[i * n + i]! > 0) return i;
  return -1;
}

/** Rivals of which one cannot be first: the other is, and that is a lag too. */
function orderRivals(durations: readonly number[], distance: Int32Array, n: number, rivals: readonly number[]): boolean {
  let isChanged = false;
  for (let p = 0; p < rivals.length; p += 2) {
    const a = rivals[p]!;
    const b = rivals[p + 1]!;
    if (orderPair(durations, distance, n, a, b) || orderPair(durations, distance, n, b, a)) isChanged = true;
  }
  return isChanged;
}

/** When j cannot end by the start of i, i ends by the start of j. */
function orderPair(durations: readonly number[], distance: Int32Array, n: number, i: number, j: number): boolean {
  const ahead = distance[i * n + j]!;
  if (ahead <= -durations[j]! || ahead >= durations[i]!) return false;
  addArc(distance, n, i, j, durations[i]!);
  return true;
}

function addArc(distance: Int32Array, n: number, i: number, j: number, lag: number): void {
  for (let a = 0; a < n; a++) {
    const before = distance[a * n + i]!;
    if (before === APART) continue;
    for (let b = 0; b < n; b++) {
      const after = distance[j * n + b]!;
      if (after !== APART && before + lag + after > distance[a * n + b]!) distance[a * n + b] = Math.min(before + lag + after, 1 << 28);
    }
  }
}
