/** The least that segments not yet told can cost, whatever way they are packed. */
import { RESULTS_THAT_COUNT, type PackingRules, type StorySegment } from './packing-model';

export interface Remaining {
  /** Must be told. */
  readonly required: readonly StorySegment[];
  /** May be told, at most one an episode. */
  readonly optional: readonly StorySegment[];
}

const ROUNDING = 1e-9;

/** Sums of the largest 0, 1, 2, … values. */
function largestSums(values: readonly number[]): readonly number[] {
  const sums = [0];
  for (const value of values.toSorted((a, b) => b - a)) sums.push(sums.at(-1)! + value);
  return sums;
}

const at = (sums: readonly number[], index: number): number => sums[Math.min(index, sums.length - 1)]!;

/**
 * The smallest cost over every number of episodes k: lengths as even as possible (the square is convex), the k best hooks,
 * the k - 1 best hangs, results spread at will. Infinity when no number of episodes fits the runtimes or has results enough;
 * 0 when nothing is left.
 */
export function leastRemainingCost({ required, optional }: Remaining, { runtime, titles, weights, leastResults }: PackingRules): number {
  if (required.length === 0) return 0;
  const all = [...required, ...optional];
  const length = required.reduce((sum, segment) => sum + segment.length, 0);
  const extra = largestSums(optional.map((segment) => segment.length));
  const hooks = largestSums(all.map((segment) => segment.hook));
  const hangs = largestSums(all.map((segment) => segment.hang));
  const results = all.filter((segment) => segment.isResult).length;
  let least = Infinity;
  for (let k = 1; k <= required.length; k += 1) {
    const [shortest, longest] = [length / k + titles, (length + at(extra, k)) / k + titles];
    if (shortest > runtime.max + ROUNDING || results < k * leastResults) continue;
    if (longest < runtime.min - ROUNDING) break;
    const even = Math.min(Math.max(runtime.target, shortest), longest);
    const cost = k * weights.length * ((even - runtime.target) / runtime.target) ** 2
      - weights.hook * at(hooks, k) - weights.hang * at(hangs, k - 1) - weights.result * Math.min(k * RESULTS_THAT_COUNT, results);
    least = Math.min(least, cost);
  }
  return least;
}
