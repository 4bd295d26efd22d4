/** The least that segments not yet told can cost, from sums made once for every place a thread may stand at. */
import { RESULTS_THAT_COUNT, type PackingRules, type StorySegment } from './packing-model';

export interface BoundProblem {
  readonly threads: readonly (readonly StorySegment[])[];
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  readonly dueAt: readonly number[];
}

/**
 * The least cost of what is left at a place, whose values start at `at`: how many segments of each thread are told, the evergreens
 * used, one bit each, and, where there are dates, the number of episodes packed (0 where there are none: it makes no difference).
 */
export type LeastRest = (place: Int32Array, at: number) => number;

/** What is left of one source of segments from each of its places on; row by row, `width` values each. */
interface Left {
  readonly lengths: Float64Array;
  readonly results: Int32Array;
  /** The best hooks and hangs, the greatest first; -1 where there are no more. */
  readonly hooks: Float64Array;
  readonly hangs: Float64Array;
}

const ROUNDING = 1e-9;
const NO_MORE = -1;

/** Copies a row in falling order, with one value more and the least of all left out. */
function insertInto(rows: Float64Array, from: number, to: number, width: number, value: number): void {
  let [read, isIn] = [from, false];
  for (let write = to; write < to + width; write += 1) {
    if (!isIn && value > rows[read]!) {
      rows[write] = value;
      isIn = true;
    } else {
      rows[write] = rows[read]!;
      read += 1;
    }
  }
}

function listLeft(segments: readonly StorySegment[], width: number): Left {
  const n = segments.length;
  const lengths = new Float64Array(n + 1);
  const results = new Int32Array(n + 1);
  const hooks = new Float64Array((n + 1) * width).fill(NO_MORE);
  const hangs = new Float64Array((n + 1) * width).fill(NO_MORE);
  for (let at = n - 1; at >= 0; at -= 1) {
    const segment = segments[at]!;
    lengths[at] = lengths[at + 1]! + segment.length;
    results[at] = results[at + 1]! + (segment.isResult ? 1 : 0);
    insertInto(hooks, (at + 1) * width, at * width, width, segment.hook);
    insertInto(hangs, (at + 1) * width, at * width, width, segment.hang);
  }
  return { lengths, results, hooks, hangs };
}

/** Most episodes there can be, by length, dates and number of segments. */
export function countMostEpisodes({ threads, evergreens, rules: { runtime, titles }, dueAt }: BoundProblem): number {
  const told = threads.flat();
  const room = runtime.min - titles;
  const length = [...told, ...evergreens].reduce((sum, segment) => sum + segment.length, 0);
  return Math.min(told.length, room > 0 ? Math.floor(length / room + ROUNDING) : Infinity, dueAt.length > 0 ? dueAt.length : Infinity);
}

/** Sums of the longest 0, 1, 2, … of the segments. */
function sumLongest(segments: readonly StorySegment[]): readonly number[] {
  const sums = [0];
  for (const { length } of segments.toSorted((a, b) => b.length - a.length)) sums.push(sums.at(-1)! + length);
  return sums;
}

/** Takes the greatest value not yet taken from sorted rows; 0 when there are none. */
function takeGreatest(rows: readonly Float64Array[], places: Int32Array, ends: Int32Array): number {
  let [greatest, from] = [NO_MORE, -1];
  for (let index = 0; index < rows.length; index += 1) {
    const place = places[index]!;
    const value = place < ends[index]! ? rows[index]![place]! : NO_MORE;
    if (value > greatest) [greatest, from] = [value, index];
  }
  if (from < 0) return 0;
  places[from]! += 1;
  return greatest;
}

/**
 * The smallest cost over every number of episodes k: lengths as even as possible (the square is convex), the k best hooks,
 * the k - 1 best hangs, results spread at will. Infinity when no number of episodes fits the runtimes or has results enough;
 * 0 when nothing is left. What it needs of each thread is summed and sorted once, so that asking is cheap.
 */
export function makeLeastRest(problem: BoundProblem): LeastRest {
  const { threads, evergreens, dueAt, rules: { runtime, titles, weights, leastResults } } = problem;
  const most = countMostEpisodes(problem);
  const left = threads.map((thread) => listLeft(thread, most));
  const spare = new Map<number, { readonly left: Left; readonly extra: readonly number[] }>();
  const leaveSpare = (used: number) => {
    const known = spare.get(used);
    if (known !== undefined) return known;
    const unused = evergreens.filter((_, index) => (used & (1 << index)) === 0);
    const made = { left: listLeft(unused, most), extra: sumLongest(unused) };
    spare.set(used, made);
    return made;
  };
  const count = threads.length;
  const [hookAt, hangAt, ends] = [new Int32Array(count + 1), new Int32Array(count + 1), new Int32Array(count + 1)];
  const hookRows = [...left.map((each) => each.hooks), new Float64Array(0)];
  const hangRows = [...left.map((each) => each.hangs), new Float64Array(0)];
  return (values, at) => {
    const { left: unused, extra } = leaveSpare(values[at + count]!);
    let [length, results, segments] = [0, unused.results[0]!, 0];
    for (let index = 0; index < count; index += 1) {
      const place = values[at + index]!;
      length += left[index]!.lengths[place]!;
      results += left[index]!.results[place]!;
      segments += threads[index]!.length - place;
      hookAt[index] = hangAt[index] = place * most;
      ends[index] = (place + 1) * most;
    }
    if (segments === 0) return 0;
    [hookAt[count], hangAt[count], ends[count]] = [0, 0, most];
    [hookRows[count], hangRows[count]] = [unused.hooks, unused.hangs];
    const largest = Math.min(segments, most, dueAt.length > 0 ? dueAt.length - values[at + count + 1]! : Infinity);
    let [least, hooks, hangs] = [Infinity, 0, 0];
    for (let k = 1; k <= largest && results >= k * leastResults; k += 1) {
      const shortest = length / k + titles;
      const longest = (length + extra[Math.min(k, extra.length - 1)]!) / k + titles;
      if (longest < runtime.min - ROUNDING) break;
      hooks += takeGreatest(hookRows, hookAt, ends);
      if (k > 1) hangs += takeGreatest(hangRows, hangAt, ends);
      if (shortest > runtime.max + ROUNDING) continue;
      const off = (Math.min(Math.max(runtime.target, shortest), longest) - runtime.target) / runtime.target;
      const cost = k * weights.length * off * off - weights.hook * hooks - weights.hang * hangs - weights.result * Math.min(k * RESULTS_THAT_COUNT, results);
      least = Math.min(least, cost);
    }
    return least;
  };
}
