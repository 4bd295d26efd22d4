/** Several threads of story told side by side, and evergreen segments that fit anywhere. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { checkPacking, checkRules, termsOf, type PackedEpisode, type Packing, type PackingRules, type StorySegment } from './packing-model';
import { countMostEpisodes } from './parallel-packing-bound';
import { endValue, MUST_END, type SearchProblem } from './parallel-packing-ends';
import { makeSearch, type Stop, type Trail } from './parallel-packing-search';

export interface ParallelProblem {
  /** Each told in its own order; an episode takes a run of each. */
  readonly threads: readonly (readonly StorySegment[])[];
  /** May go into any episode, at most one in each, or stay in hand. */
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  /** When the recording of the 1st, 2nd, … episode must be complete. Empty: no dates. */
  readonly dueAt: readonly Instant[];
  /** Ids of segments that must not be the last of an episode. */
  readonly noCutAfter: readonly string[];
  /** Ids of segments that must be the last of an episode. */
  readonly cutAfter: readonly string[];
}

export interface ParallelPacking extends Packing {
  /** No packing costs less than this. */
  readonly bound: number;
  /** Cost above the bound; 0: proved best. */
  readonly gap: number;
}

/** Episodes looked at before the search is content with a gap. */
const USUAL_STEPS = 60_000;
const MOST_PASSES = 4;
/** Another pass is made while this share of the steps is left. */
const WORTH_A_PASS = 0.25;
/** Of them after one state, where the steps are few. */
const LEAST_FROM_ONE = 500;
/** One bit each. */
const MOST_EVERGREENS = 30;

function checkParallel(problem: ParallelProblem): readonly Issue[] {
  const told = problem.threads.flat();
  const many = problem.evergreens.length <= MOST_EVERGREENS ? []
    : [issue('too-many-evergreens', `${problem.evergreens.length} evergreen segments are offered; ${MOST_EVERGREENS} can be looked at together.`, 'Leave some out for now.')];
  if (told.length === 0) return [issue('no-segments', 'There are no segments to put into episodes.', 'Add a segment.'), ...checkRules(problem.rules), ...many];
  const segments = [...told, ...problem.evergreens];
  return [...checkPacking({ segments, rules: problem.rules, noCutAfter: problem.noCutAfter, cutAfter: problem.cutAfter, dueAt: problem.dueAt, episodeCount: null }), ...many];
}

/** What the episode between two stops holds, the run that leaves most open last. */
function openEpisode(problem: SearchProblem, stop: Stop, before: Stop): PackedEpisode {
  const { threads, evergreens, rules } = problem;
  const runs = threads.map((thread, index) => thread.slice(before.told[index], stop.told[index])).filter((run) => run.length > 0);
  const extra = evergreens.filter((_, index) => ((stop.used ^ before.used) & (1 << index)) !== 0).map((segment) => [segment]);
  const segments = [...runs, ...extra].toSorted((a, b) => endValue(a.at(-1)!, problem) - endValue(b.at(-1)!, problem)).flat();
  const length = segments.reduce((sum, segment) => sum + segment.length, rules.titles);
  const results = segments.filter((segment) => segment.isResult).length;
  const isLast = threads.every((thread, index) => stop.told[index] === thread.length);
  const hang = isLast ? 0 : endValue(segments.at(-1)!, problem) % MUST_END;
  return { segmentIds: segments.map(({ id }) => id), length, results, terms: termsOf(length, results, Math.max(...segments.map(({ hook }) => hook)), hang, rules) };
}

/**
 * A cheapest packing of threads side by side, with evergreens where they help. Dynamic programming over episodes and how far each
 * thread is told, first with one state after each, then with as many as `mostSteps` episodes looked at allow, until nothing was dropped (exact)
 * or they are used up; then the smallest promise among the dropped states bounds what was missed, and `gap` says how far from the
 * best the answer can be. Counted in steps, not in time: the same input has the same answer. While no packing is found, up to
 * fifteen times as many steps are taken before the search gives up.
 * Fails with the faults of the input or with `no-packing`.
 */
export function packParallel(problem: ParallelProblem, mostSteps: number = USUAL_STEPS): Result<ParallelPacking> {
  const faults = checkParallel(problem);
  if (faults.length > 0) return fail(faults);
  const asked: SearchProblem = { ...problem, noCutAfter: new Set(problem.noCutAfter), cutAfter: new Set(problem.cutAfter) };
  const search = makeSearch(asked);
  const mostEpisodes = Math.max(countMostEpisodes(asked), 1);
  const stepsFromOne = Math.max(Math.floor(mostSteps / mostEpisodes), LEAST_FROM_ONE);
  const worthAPass = Number.isFinite(mostSteps) ? mostSteps * WORTH_A_PASS : 0;
  let best: Trail | null = null;
  let [bound, left, isExact] = [search.leastCost, mostSteps, false];
  for (let count = 0; count < MOST_PASSES && !isExact && (best === null || left > worthAPass); count += 1) {
    const ceiling = best?.cost ?? Infinity;
    const episodes = best === null ? mostEpisodes : best.stops.length;
    // The first pass follows one state after each episode, to the end of the story whatever it takes: without it there may be no answer.
    // While none is found, each further one may look at twice as much.
    const more = best === null ? 2 ** count : 1;
    const steps = best === null ? mostSteps * more : left;
    const pass = search.pass({ width: count === 0 ? 1 : Infinity, ceiling, steps: count === 0 ? Infinity : steps, stepsFromOne: stepsFromOne * more, episodes });
    best = pass.best ?? best;
    // What is not followed cannot beat the best; what was dropped cannot beat its promise.
    bound = Math.min(best?.cost ?? Infinity, Math.max(bound, pass.droppedPromise));
    isExact = pass.droppedPromise === Infinity || bound >= (best?.cost ?? Infinity);
    left -= pass.steps;
  }
  if (best !== null) return ok({ cost: best.cost, episodes: best.stops.slice(1).map((stop, index) => openEpisode(asked, stop, best.stops[index]!)), bound, gap: best.cost - bound });
  const seen = isExact ? 'there is no way' : 'no way was found';
  return fail([issue('no-packing', `To tell ${problem.threads.length} threads side by side ${seen} within the runtimes, results and dates.`, 'Allow shorter or longer episodes, or ask for no result in each.')]);
}
