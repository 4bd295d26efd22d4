/** One pass over how far each thread is told, keeping a limited number of states. */
import { leastRemainingCost } from './packing-bound';
import { costOf, termsOf, type PackingRules, type PackingTerms, type StorySegment } from './packing-model';

export interface SearchProblem {
  readonly threads: readonly (readonly StorySegment[])[];
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  readonly dueAt: readonly number[];
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
  readonly hang: number;
  readonly readyAt: number;
}

const ROUNDING = 1e-9;
const NO_TERMS: PackingTerms = { length: 0, hang: 0, hook: 0, result: 0 };

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
    yield* chooseRuns(problem, point, due, index + 1, { told: [...runs.told, to], length, results, hook, hang: Math.max(runs.hang, segment.hang), readyAt });
  }
}

/** The runs with an evergreen; the episode may end on it. */
function withEvergreen(runs: Runs, segment: StorySegment): Runs {
  return {
    told: runs.told,
    length: runs.length + segment.length,
    results: runs.results + (segment.isResult ? 1 : 0),
    hook: Math.max(runs.hook, segment.hook),
    hang: Math.max(runs.hang, segment.hang),
    readyAt: Math.max(runs.readyAt, segment.readyAt ?? -Infinity),
  };
}

function isAllowed({ length, results, readyAt }: Runs, { runtime, leastResults }: PackingRules, due: number): boolean {
  return length <= runtime.max + ROUNDING && length >= runtime.min - ROUNDING && results >= leastResults && readyAt <= due;
}

/** Every episode that can follow. */
function* stepsFrom(problem: SearchProblem, point: Point): Generator<Point> {
  if (problem.dueAt.length > 0 && point.count >= problem.dueAt.length) return;
  const { rules, threads, evergreens } = problem;
  const due = problem.dueAt[point.count] ?? Infinity;
  const make = (runs: Runs, used: number): Point => {
    const isLast = threads.every((thread, index) => runs.told[index] === thread.length);
    const terms = termsOf(runs.length, runs.results, runs.hook, isLast ? 0 : runs.hang, rules);
    return { told: runs.told, used, count: point.count + 1, cost: point.cost + costOf(terms), before: point, terms };
  };
  for (const runs of chooseRuns(problem, point, due, 0, { told: [], length: rules.titles, results: 0, hook: 0, hang: 0, readyAt: -Infinity })) {
    if (runs.told.every((to, index) => to === point.told[index])) continue;
    if (isAllowed(runs, rules, due)) yield make(runs, point.used);
    for (let index = 0; index < evergreens.length; index += 1) {
      if ((point.used & (1 << index)) !== 0) continue;
      const filled = withEvergreen(runs, evergreens[index]!);
      if (isAllowed(filled, rules, due)) yield make(filled, point.used | (1 << index));
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
