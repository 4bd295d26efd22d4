/** Every episode that can follow a place in the story. */
import { MUST_END, NO_END, endValue, type SearchProblem } from './parallel-packing-ends';
import { RESULTS_THAT_COUNT, type StorySegment } from './packing-model';

/** Takes an episode: the values of the place after it, as the bound reads them, and what it costs. */
export type TakeStep = (to: Int32Array, cost: number) => void;

/** Looks at up to `most` episodes after a place when `count` are packed; answers how many it looked at, `most + 1` when there are more. */
export type ListSteps = (from: Int32Array, count: number, most: number, take: TakeStep) => number;

/** The segments of a thread, value by value. */
interface Columns {
  readonly size: number;
  readonly lengths: Float64Array;
  readonly hooks: Float64Array;
  readonly ends: Float64Array;
  readonly readyAt: Float64Array;
  readonly isResult: Uint8Array;
  readonly isPinned: Uint8Array;
}

const ROUNDING = 1e-9;
/** Choices of runs tried for each episode looked at; the others are too short or may not end there. */
const MOST_TRIED = 4;

const takeNothing: TakeStep = () => undefined;

function layOut(segments: readonly StorySegment[], problem: SearchProblem): Columns {
  return {
    size: segments.length,
    lengths: Float64Array.from(segments, (segment) => segment.length),
    hooks: Float64Array.from(segments, (segment) => segment.hook),
    ends: Float64Array.from(segments, (segment) => endValue(segment, problem)),
    readyAt: Float64Array.from(segments, (segment) => segment.readyAt ?? -Infinity),
    isResult: Uint8Array.from(segments, (segment) => (segment.isResult ? 1 : 0)),
    isPinned: Uint8Array.from(segments, (segment) => (problem.cutAfter.has(segment.id) ? 1 : 0)),
  };
}

/**
 * Runs are chosen thread by thread, the ones told furthest first, so that with `most` reached those that lag behind have been moved.
 * One long function over shared columns: it is the inner loop of the search, and makes no object for an episode.
 */
export function makeListSteps(problem: SearchProblem): ListSteps {
  const { rules: { runtime, titles, weights, leastResults }, dueAt } = problem;
  const threads = problem.threads.map((thread) => layOut(thread, problem));
  const spare = layOut(problem.evergreens, problem);
  const count = threads.length;
  const [shortest, longest] = [runtime.min - ROUNDING, runtime.max + ROUNDING];
  const to = new Int32Array(count + 2);
  let from: Int32Array = to;
  let [due, most, seen, used, tried] = [Infinity, 0, 0, 0, 0];
  let take: TakeStep = takeNothing;
  let order: readonly number[] = [];

  const isStoryTold = (): boolean => {
    for (let index = 0; index < count; index += 1) if (to[index] !== threads[index]!.size) return false;
    return true;
  };

  const isEnough = (): boolean => seen > most || tried > most * MOST_TRIED;

  const shareTold = (place: Int32Array, index: number): number => place[index]! / Math.max(threads[index]!.size, 1);

  const offer = (length: number, results: number, hook: number, hang: number, isLast: boolean): void => {
    seen += 1;
    if (seen > most) return;
    const off = (length - runtime.target) / runtime.target;
    const open = isLast ? 0 : hang % MUST_END;
    take(to, weights.length * off * off - weights.hang * open - weights.hook * hook - weights.result * Math.min(results, RESULTS_THAT_COUNT));
  };

  const close = (length: number, results: number, hook: number, hang: number, pinned: number): void => {
    const isLast = isStoryTold();
    to[count] = used;
    if (length >= shortest && results >= leastResults && (isLast || hang !== NO_END)) offer(length, results, hook, hang, isLast);
    for (let index = 0; index < spare.size; index += 1) {
      const filled = length + spare.lengths[index]!;
      const shown = results + spare.isResult[index]!;
      const end = Math.max(hang, spare.ends[index]!);
      if ((used & (1 << index)) !== 0 || filled > longest || filled < shortest || shown < leastResults) continue;
      if (pinned + spare.isPinned[index]! > 1 || spare.readyAt[index]! > due || (!isLast && end === NO_END)) continue;
      to[count] = used | (1 << index);
      offer(filled, shown, Math.max(hook, spare.hooks[index]!), end, isLast);
    }
  };

  const choose = (depth: number, length: number, results: number, hook: number, hang: number, pinned: number): void => {
    if (isEnough()) return;
    if (depth === count) {
      tried += 1;
      if (length > titles) close(length, results, hook, hang, pinned);
      return;
    }
    const index = order[depth]!;
    const start = from[index]!;
    const { size, lengths, hooks, ends, readyAt, isResult, isPinned } = threads[index]!;
    to[index] = start;
    choose(depth + 1, length, results, hook, hang, pinned);
    let [grown, shown, best] = [length, results, hook];
    for (let at = start; at < size && !isEnough(); at += 1) {
      grown += lengths[at]!;
      if (grown > longest || readyAt[at]! > due) break;
      shown += isResult[at]!;
      best = Math.max(best, hooks[at]!);
      if (pinned + isPinned[at]! > 1) break;
      to[index] = at + 1;
      choose(depth + 1, grown, shown, best, Math.max(hang, ends[at]!), pinned + isPinned[at]!);
      if (isPinned[at] === 1) break;
    }
    to[index] = start;
  };

  return (place, packed, limit, receive) => {
    if (dueAt.length > 0 && packed >= dueAt.length) return 0;
    [from, take] = [place, receive];
    [due, most, seen, used, tried] = [dueAt[packed] ?? Infinity, limit, 0, place[count]!, 0];
    to[count + 1] = dueAt.length > 0 ? packed + 1 : 0;
    order = threads.map((_, index) => index).toSorted((a, b) => shareTold(place, b) - shareTold(place, a));
    choose(0, titles, 0, 0, NO_END, 0);
    return isEnough() ? limit + 1 : seen;
  };
}
