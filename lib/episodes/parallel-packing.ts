/** Several threads of story told side by side, and evergreen segments that fit anywhere. */
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { leastRemainingCost, type Remaining } from './packing-bound';
import { checkRules, checkPacking, costOf, termsOf, type Packing, type PackedEpisode, type PackingRules, type StorySegment } from './packing-model';

export interface ParallelProblem {
  /** Each told in its own order; an episode takes a run of each. */
  readonly threads: readonly (readonly StorySegment[])[];
  /** May go into any episode, at most one in each, or stay in hand. */
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  /** When the recording of the 1st, 2nd, … episode must be complete. Empty: no dates. */
  readonly dueAt: readonly Instant[];
}

export interface ParallelPacking extends Packing {
  /** No packing costs less than this. */
  readonly bound: number;
  /** Cost above the bound; 0: proved best. */
  readonly gap: number;
}

interface Point {
  /** How many segments of each thread are told. */
  readonly told: readonly number[];
  /** Evergreens used, one bit each. */
  readonly used: number;
  readonly count: number;
  readonly cost: number;
  /** Cost, and the least that the rest can add. */
  readonly promise: number;
  readonly episode: PackedEpisode | null;
  readonly before: Point | null;
}

/** States kept for each number of told segments; above it the worst-looking are dropped, and the bound says what that may cost. */
const USUAL_WIDTH = 60;
const ROUNDING = 1e-9;
/** One bit each. */
const MOST_EVERGREENS = 30;

interface Draft {
  readonly told: number[];
  readonly segments: StorySegment[];
  readonly length: number;
  readonly readyAt: number;
}

/** Every choice of runs, one from each thread, that fits the longest runtime and is recorded in time. */
function listRuns(problem: ParallelProblem, point: Point): readonly Draft[] {
  const { rules } = problem;
  const due = problem.dueAt[point.count] ?? Infinity;
  let drafts: Draft[] = [{ told: [], segments: [], length: rules.titles, readyAt: -Infinity }];
  problem.threads.forEach((thread, index) => {
    const next: Draft[] = [];
    for (const draft of drafts) {
      let [length, readyAt, to] = [draft.length, draft.readyAt, point.told[index]!];
      const from = to;
      for (;;) {
        next.push({ told: [...draft.told, to], segments: [...draft.segments, ...thread.slice(from, to)], length, readyAt });
        const segment = thread[to];
        if (segment === undefined) break;
        length += segment.length;
        readyAt = Math.max(readyAt, segment.readyAt ?? -Infinity);
        to += 1;
        if (length > rules.runtime.max + ROUNDING || readyAt > due) break;
      }
    }
    drafts = next;
  });
  return drafts;
}

/** The best last segment among the ends of the runs: each run may come last. */
function endings(problem: ParallelProblem, point: Point, draft: Draft, extra: StorySegment | null): readonly StorySegment[] {
  const ends = problem.threads.flatMap((thread, index) => (draft.told[index]! > point.told[index]! ? [thread[draft.told[index]! - 1]!] : []));
  return extra === null ? ends : [...ends, extra];
}

/** The segments with the run that ends best put last. */
function orderEpisode(segments: readonly StorySegment[], last: StorySegment | undefined, problem: ParallelProblem): readonly string[] {
  const run = problem.threads.find((thread) => last !== undefined && thread.includes(last)) ?? [];
  const isLate = (segment: StorySegment) => run.includes(segment) || segment === last;
  return [...segments.filter((segment) => !isLate(segment)), ...segments.filter(isLate)].map((segment) => segment.id);
}

function makeEpisode(problem: ParallelProblem, point: Point, draft: Draft, extra: StorySegment | null): PackedEpisode | null {
  const { rules } = problem;
  const segments = extra === null ? draft.segments : [...draft.segments, extra];
  const length = draft.length + (extra?.length ?? 0);
  const results = segments.filter((segment) => segment.isResult).length;
  if (length > rules.runtime.max + ROUNDING || length < rules.runtime.min - ROUNDING || results < rules.leastResults) return null;
  if ((extra?.readyAt ?? -Infinity) > (problem.dueAt[point.count] ?? Infinity)) return null;
  const isLast = problem.threads.every((thread, index) => draft.told[index] === thread.length);
  const last = endings(problem, point, draft, extra).reduce<StorySegment | undefined>((best, each) => (best === undefined || each.hang > best.hang ? each : best), undefined);
  const hook = segments.reduce((most, segment) => Math.max(most, segment.hook), 0);
  const terms = termsOf(length, results, hook, isLast ? 0 : (last?.hang ?? 0), rules);
  return { segmentIds: orderEpisode(segments, last, problem), length, results, terms };
}

function remainingOf(problem: ParallelProblem, told: readonly number[], used: number): Remaining {
  return {
    required: problem.threads.flatMap((thread, index) => thread.slice(told[index])),
    optional: problem.evergreens.filter((_, index) => (used & (1 << index)) === 0),
  };
}

function* stepsFrom(problem: ParallelProblem, point: Point): Generator<Point> {
  if (problem.dueAt.length > 0 && point.count >= problem.dueAt.length) return;
  const choices: readonly (readonly [StorySegment | null, number])[] = [
    [null, 0], ...problem.evergreens.map((segment, index) => [segment, 1 << index] as const).filter(([, bit]) => (point.used & bit) === 0),
  ];
  for (const draft of listRuns(problem, point)) {
    if (draft.segments.length === 0) continue;
    for (const [extra, bit] of choices) {
      const episode = makeEpisode(problem, point, draft, extra);
      if (episode === null) continue;
      const cost = point.cost + costOf(episode.terms);
      const used = point.used | bit;
      const promise = cost + leastRemainingCost(remainingOf(problem, draft.told, used), problem.rules);
      if (promise < Infinity) yield { told: draft.told, used, count: point.count + 1, cost, promise, episode, before: point };
    }
  }
}

function unwind(point: Point): readonly PackedEpisode[] {
  const episodes: PackedEpisode[] = [];
  for (let each: Point | null = point; each !== null; each = each.before) if (each.episode !== null) episodes.unshift(each.episode);
  return episodes;
}

const keyOf = (point: Point): string => `${point.told.join(',')}|${point.used}|${point.count}`;

function checkParallel(problem: ParallelProblem) {
  const all = problem.threads.flat();
  const segments = [...all, ...problem.evergreens];
  const faults = all.length === 0 ? [issue('no-segments', 'There are no segments to put into episodes.', 'Add a segment.'), ...checkRules(problem.rules)]
    : checkPacking({ segments, rules: problem.rules, noCutAfter: [], cutAfter: [], dueAt: problem.dueAt, episodeCount: null });
  if (problem.evergreens.length <= MOST_EVERGREENS) return faults;
  return [...faults, issue('too-many-evergreens', `${problem.evergreens.length} evergreen segments are offered; ${MOST_EVERGREENS} can be looked at together.`, 'Leave some out for now.')];
}

/**
 * A cheapest packing of threads side by side, with evergreens where they help. Dynamic programming over how far each thread
 * is told: exact while no more than `width` states stand at each number of told segments. Beyond it the states that promise
 * least are dropped, and the bound is the smallest promise among them, so `gap` says how far from the best it can be.
 * Fails with the faults of the input or with `no-packing`.
 */
export function packParallel(problem: ParallelProblem, width: number = USUAL_WIDTH): Result<ParallelPacking> {
  const faults = checkParallel(problem);
  if (faults.length > 0) return fail(faults);
  const total = problem.threads.reduce((sum, thread) => sum + thread.length, 0);
  const start: Point = { told: problem.threads.map(() => 0), used: 0, count: 0, cost: 0, promise: -Infinity, episode: null, before: null };
  const levels: Map<string, Point>[] = Array.from({ length: total + 1 }, () => new Map<string, Point>());
  levels[0]!.set(keyOf(start), start);
  let droppedPromise = Infinity;
  for (const level of levels.slice(0, total)) {
    const points = [...level.values()].toSorted((a, b) => a.promise - b.promise);
    if (points.length > width) droppedPromise = Math.min(droppedPromise, points[width]!.promise);
    for (const point of points.slice(0, width)) {
      for (const step of stepsFrom(problem, point)) {
        const at = levels[step.told.reduce((sum, each) => sum + each, 0)]!;
        const key = keyOf(step);
        if ((at.get(key)?.cost ?? Infinity) > step.cost) at.set(key, step);
      }
    }
  }
  const best = [...levels[total]!.values()].reduce<Point | null>((least, each) => (least === null || each.cost < least.cost ? each : least), null);
  if (best === null) {
    const seen = droppedPromise === Infinity ? 'there is no way' : 'no way was found';
    return fail([issue('no-packing', `To tell ${problem.threads.length} threads side by side ${seen} within the runtimes, results and dates.`, 'Allow shorter or longer episodes, or ask for no result in each.')]);
  }
  const bound = Math.min(best.cost, droppedPromise);
  return ok({ cost: best.cost, episodes: unwind(best), bound, gap: best.cost - bound });
}
