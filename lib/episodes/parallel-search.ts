/** One pass over how far each thread is told, keeping a limited number of states. */
import { leastRemainingCost } from './packing-bound';
import { costOf, termsOf, type PackingRules, type PackingTerms, type StorySegment } from './packing-model';

export interface SearchProblem {
  readonly threads: readonly (readonly StorySegment[])[];
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  readonly dueAt: readonly number[];
  /** Ids of segments that must not be the last of an episode, and of those that must. */
  readonly noCutAfter: ReadonlySet<string>;
  readonly cutAfter: ReadonlySet<string>;
}

/** How far the story is told, and the cheapest way there. */
export interface Point {
  /** How many segments of each thread are told. */
  readonly told: readonly number[];
  /** Evergreens used, one bit each. */
  readonly used: number;
  readonly count: number;
  readonly cost: number;
  readonly before: Point | null;
  /** Of the episode that ends here. */
  readonly terms: PackingTerms;
}

export interface Pass {
  readonly best: Point | null;
  /** Nothing that was dropped can cost less than this; Infinity: nothing was dropped. */
  readonly droppedPromise: number;
  /** Episodes looked at. */
  readonly steps: number;
}

/** A choice of runs, one from each thread so far. */
interface Runs {
  readonly told: readonly number[];
  readonly length: number;
  readonly results: number;
  readonly hook: number;
  /** Of the best run to end on; {@link NO_END} while none may. */
  readonly hang: number;
  /** Runs that end on a segment which must be the last. */
  readonly pinned: number;
  readonly readyAt: number;
}

const ROUNDING = 1e-9;
/** No run may come last. */
const NO_END = -1;
/** A run that must come last goes before every other. */
const MUST_END = 2;
const NO_TERMS: PackingTerms = { length: 0, hang: 0, hook: 0, result: 0 };

/** How good a segment is as the last of an episode: what it leaves open, unless it must be the last or must not. */
export function endValue(segment: StorySegment, { noCutAfter, cutAfter }: Pick<SearchProblem, 'noCutAfter' | 'cutAfter'>): number {
  if (cutAfter.has(segment.id)) return MUST_END + segment.hang;
  return noCutAfter.has(segment.id) ? NO_END : segment.hang;
}

function* chooseRuns(problem: SearchProblem, point: Point, due: number, index: number, runs: Runs): Generator<Runs> {
  const thread = problem.threads[index];
  if (thread === undefined) {
    yield runs;
    return;
  }
  const from = point.told[index]!;
  let { length, results, hook, readyAt } = runs;
  yield* chooseRuns(problem, point, due, index + 1, { ...runs, told: [...runs.told, from] });
  for (let to = from + 1; to <= thread.length; to += 1) {
    const segment = thread[to - 1]!;
    length += segment.length;
    readyAt = Math.max(readyAt, segment.readyAt ?? -Infinity);
    if (length > problem.rules.runtime.max + ROUNDING || readyAt > due) return;
    results += segment.isResult ? 1 : 0;
    hook = Math.max(hook, segment.hook);
    const isPinned = problem.cutAfter.has(segment.id);
    const hang = Math.max(runs.hang, endValue(segment, problem));
    yield* chooseRuns(problem, point, due, index + 1, { told: [...runs.told, to], length, results, hook, hang, pinned: runs.pinned + (isPinned ? 1 : 0), readyAt });
    if (isPinned) return;
  }
}

/** The runs with an evergreen; the episode may end on it. */
function withEvergreen(runs: Runs, segment: StorySegment, problem: SearchProblem): Runs {
  return {
    told: runs.told,
    length: runs.length + segment.length,
    results: runs.results + (segment.isResult ? 1 : 0),
    hook: Math.max(runs.hook, segment.hook),
    hang: Math.max(runs.hang, endValue(segment, problem)),
    pinned: runs.pinned + (problem.cutAfter.has(segment.id) ? 1 : 0),
    readyAt: Math.max(runs.readyAt, segment.readyAt ?? -Infinity),
  };
}

function isAllowed({ length, results, pinned, readyAt }: Runs, { runtime, leastResults }: PackingRules, due: number): boolean {
  return length <= runtime.max + ROUNDING && length >= runtime.min - ROUNDING && results >= leastResults && pinned <= 1 && readyAt <= due;
}

/** Every episode that can follow. */
function* stepsFrom(problem: SearchProblem, point: Point): Generator<Point> {
  if (problem.dueAt.length > 0 && point.count >= problem.dueAt.length) return;
  const { rules, threads, evergreens } = problem;
  const due = problem.dueAt[point.count] ?? Infinity;
  const make = (runs: Runs, used: number): Point | null => {
    const isLast = threads.every((thread, index) => runs.told[index] === thread.length);
    if (!isLast && runs.hang === NO_END) return null;
    const terms = termsOf(runs.length, runs.results, runs.hook, isLast ? 0 : runs.hang % MUST_END, rules);
    return { told: runs.told, used, count: point.count + 1, cost: point.cost + costOf(terms), before: point, terms };
  };
  for (const runs of chooseRuns(problem, point, due, 0, { told: [], length: rules.titles, results: 0, hook: 0, hang: NO_END, pinned: 0, readyAt: -Infinity })) {
    if (runs.told.every((to, index) => to === point.told[index])) continue;
    const plain = isAllowed(runs, rules, due) ? make(runs, point.used) : null;
    if (plain !== null) yield plain;
    for (let index = 0; index < evergreens.length; index += 1) {
      if ((point.used & (1 << index)) !== 0) continue;
      const runsWith = withEvergreen(runs, evergreens[index]!, problem);
      const filled = isAllowed(runsWith, rules, due) ? make(runsWith, point.used | (1 << index)) : null;
      if (filled !== null) yield filled;
    }
  }
}

/** The least cost of the whole through a state; one bound for each state, however it is reached. */
function makePromise(problem: SearchProblem): (point: Point) => number {
  const known = new Map<string, number>();
  return ({ told, used, cost }) => {
    const key = `${told.join(',')}|${used}`;
    let rest = known.get(key);
    if (rest === undefined) {
      rest = leastRemainingCost({
        required: problem.threads.flatMap((thread, index) => thread.slice(told[index])),
        optional: problem.evergreens.filter((_, index) => (used & (1 << index)) === 0),
      }, problem.rules);
      known.set(key, rest);
    }
    return cost + rest;
  };
}

/**
 * Dynamic programming over the number of told segments, `width` states kept at each; the ones that promise least are dropped,
 * and those that cannot beat `ceiling` are not followed.
 */
export function searchOnce(problem: SearchProblem, width: number, ceiling: number): Pass {
  const total = problem.threads.reduce((sum, thread) => sum + thread.length, 0);
  const promise = makePromise(problem);
  const levels: Map<string, Point>[] = Array.from({ length: total + 1 }, () => new Map<string, Point>());
  levels[0]!.set('', { told: problem.threads.map(() => 0), used: 0, count: 0, cost: 0, before: null, terms: NO_TERMS });
  let [droppedPromise, steps] = [Infinity, 0];
  for (const level of levels.slice(0, total)) {
    const points = [...level.values()].map((point) => ({ point, promise: promise(point) })).filter((each) => each.promise < ceiling).toSorted((a, b) => a.promise - b.promise);
    droppedPromise = Math.min(droppedPromise, points[width]?.promise ?? Infinity);
    for (const { point } of points.slice(0, width)) {
      for (const step of stepsFrom(problem, point)) {
        steps += 1;
        const at = levels[step.told.reduce((sum, each) => sum + each, 0)]!;
        const key = `${step.told.join(',')}|${step.used}|${step.count}`;
        if ((at.get(key)?.cost ?? Infinity) > step.cost) at.set(key, step);
      }
    }
  }
  const best = [...levels[total]!.values()].reduce<Point | null>((least, each) => (least === null || each.cost < least.cost ? each : least), null);
  return { best, droppedPromise, steps };
}
