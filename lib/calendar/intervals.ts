/**
 * Half-open intervals [start, end) on a line of numbers, instants as a rule. Lists passed in are sorted and
 * disjoint unless said otherwise; two intervals that touch are disjoint and stay two.
 */
import type { Instant } from '@/lib/units';

export interface Interval<T extends number = number> {
  readonly start: T;
  /** Not in it. */
  readonly end: T;
}

export type InstantInterval = Interval<Instant>;

export const laterOf = <T extends number>(a: T, b: T): T => (a >= b ? a : b);
export const earlierOf = <T extends number>(a: T, b: T): T => (a <= b ? a : b);

/**
 * None empty, each starting at or after the end of the one before.
 * @example isSortedDisjoint([{ start: 0, end: 2 }, { start: 2, end: 3 }]) // true
 */
export function isSortedDisjoint(intervals: readonly Interval[]): boolean {
  let last = Number.NEGATIVE_INFINITY;
  for (const { start, end } of intervals) {
    if (!(start >= last && end > start)) return false;
    last = end;
  }
  return true;
}

/** @throws RangeError: a caller that passes anything else has a bug. */
export function requireSortedDisjoint(intervals: readonly Interval[]): void {
  if (!isSortedDisjoint(intervals)) throw new RangeError('Intervals must be sorted and disjoint, none of them empty');
}

function merge<T extends number>(intervals: readonly Interval<T>[], joinsTouching: boolean): Interval<T>[] {
  const sorted = intervals.filter(({ start, end }) => {
    if (!(start <= end)) throw new RangeError(`Interval ends before it starts: ${start} to ${end}`);
    return start < end;
  });
  sorted.sort((a, b) => a.start - b.start || a.end - b.end);
  const merged: Interval<T>[] = [];
  for (const next of sorted) {
    const last = merged.at(-1);
    if (last !== undefined && (next.start < last.end || (joinsTouching && next.start === last.end))) {
      merged[merged.length - 1] = { start: last.start, end: laterOf(last.end, next.end) };
    } else {
      merged.push({ start: next.start, end: next.end });
    }
  }
  return merged;
}

/**
 * Any list made sorted and disjoint. Overlapping ones become one, touching ones stay two, empty ones go.
 * @throws RangeError when one ends before it starts.
 * @example mergeOverlapping([{ start: 2, end: 4 }, { start: 0, end: 2 }]) // [{ start: 0, end: 2 }, { start: 2, end: 4 }]
 */
export function mergeOverlapping<T extends number>(intervals: readonly Interval<T>[]): Interval<T>[] {
  return merge(intervals, false);
}

/**
 * As {@link mergeOverlapping}, and touching ones become one as well.
 * @throws RangeError when one ends before it starts.
 * @example mergeOverlappingAndTouching([{ start: 2, end: 4 }, { start: 0, end: 2 }]) // [{ start: 0, end: 4 }]
 */
export function mergeOverlappingAndTouching<T extends number>(intervals: readonly Interval<T>[]): Interval<T>[] {
  return merge(intervals, true);
}

/** In either, touching ones joined. @example unionIntervals([{ start: 0, end: 2 }], [{ start: 1, end: 3 }]) // [{ start: 0, end: 3 }] */
export function unionIntervals<T extends number>(a: readonly Interval<T>[], b: readonly Interval<T>[]): Interval<T>[] {
  requireSortedDisjoint(a);
  requireSortedDisjoint(b);
  return mergeOverlappingAndTouching([...a, ...b]);
}

/** In both; a border between touching ones stays. @example intersectIntervals([{ start: 0, end: 5 }], [{ start: 3, end: 9 }]) // [{ start: 3, end: 5 }] */
export function intersectIntervals<T extends number>(a: readonly Interval<T>[], b: readonly Interval<T>[]): Interval<T>[] {
  requireSortedDisjoint(a);
  requireSortedDisjoint(b);
  const shared: Interval<T>[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const [left, right] = [a[i], b[j]];
    if (left === undefined || right === undefined) return shared;
    const start = laterOf(left.start, right.start);
    const end = earlierOf(left.end, right.end);
    if (start < end) shared.push({ start, end });
    if (left.end <= right.end) i += 1;
    else j += 1;
  }
}

/** In the first and not in the second. @example subtractIntervals([{ start: 0, end: 5 }], [{ start: 1, end: 2 }]) // [{ start: 0, end: 1 }, { start: 2, end: 5 }] */
export function subtractIntervals<T extends number>(from: readonly Interval<T>[], taken: readonly Interval<T>[]): Interval<T>[] {
  requireSortedDisjoint(from);
  requireSortedDisjoint(taken);
  const left: Interval<T>[] = [];
  let first = 0;
  for (const { start, end } of from) {
    let at = start;
    while ((taken[first]?.end ?? end) <= start && first < taken.length) first += 1;
    for (let k = first; k < taken.length; k += 1) {
      const gone = taken[k];
      if (gone === undefined || gone.start >= end) break;
      if (gone.start > at) left.push({ start: at, end: gone.start });
      at = laterOf(at, gone.end);
    }
    if (at < end) left.push({ start: at, end });
  }
  return left;
}

/**
 * Place of the first interval that ends after a point, the list's length when none does. Binary search.
 * @example findFirstEndingAfter([{ start: 0, end: 2 }, { start: 4, end: 6 }], 2) // 1
 */
export function findFirstEndingAfter(intervals: readonly Interval[], at: number): number {
  let [low, high] = [0, intervals.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const interval = intervals[middle];
    if (interval !== undefined && interval.end <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether a point lies in one of them; an end does not. @example containsPoint([{ start: 0, end: 2 }], 2) // false */
export function containsPoint(intervals: readonly Interval[], at: number): boolean {
  const candidate = intervals[findFirstEndingAfter(intervals, at)];
  return candidate !== undefined && candidate.start <= at;
}

/**
 * Whether an interval lies wholly inside a single one of them.
 * @example containsInterval([{ start: 0, end: 2 }, { start: 2, end: 4 }], { start: 1, end: 3 }) // false
 */
export function containsInterval(intervals: readonly Interval[], inner: Interval): boolean {
  const candidate = intervals[findFirstEndingAfter(intervals, inner.start)];
  return candidate !== undefined && candidate.start <= inner.start && inner.end <= candidate.end;
}

/** Sum of the lengths. @example totalLength([{ start: 0, end: 2 }, { start: 5, end: 6 }]) // 3 */
export function totalLength(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, { start, end }) => sum + (end - start), 0);
}
