/** Several threads of story told side by side, and evergreen segments that fit anywhere. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { checkPacking, checkRules, type PackedEpisode, type Packing, type PackingRules, type StorySegment } from './packing-model';
import { endValue, searchOnce, type Point, type SearchProblem } from './parallel-search';

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
const MOST_WIDTH = 1_000_000;
const WIDER = 4;
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

/** What the episode that ends at a point holds, the run that leaves most open last. */
function openEpisode(problem: SearchProblem, point: Point, before: Point): PackedEpisode {
  const { threads, evergreens, rules } = problem;
  const runs = threads.map((thread, index) => thread.slice(before.told[index], point.told[index])).filter((run) => run.length > 0);
  const extra = evergreens.filter((_, index) => ((point.used ^ before.used) & (1 << index)) !== 0).map((segment) => [segment]);
  const segments = [...runs, ...extra].toSorted((a, b) => endValue(a.at(-1)!, problem) - endValue(b.at(-1)!, problem)).flat();
  return {
    segmentIds: segments.map(({ id }) => id),
    length: segments.reduce((sum, segment) => sum + segment.length, rules.titles),
    results: segments.filter((segment) => segment.isResult).length,
    terms: point.terms,
  };
}

function unwind(problem: SearchProblem, point: Point): readonly PackedEpisode[] {
  const episodes: PackedEpisode[] = [];
  for (let each = point; each.before !== null; each = each.before) episodes.unshift(openEpisode(problem, each, each.before));
  return episodes;
}

/**
 * A cheapest packing of threads side by side, with evergreens where they help. Dynamic programming over how far each thread is
 * told, first with few states, then with more, until nothing was dropped (exact) or `mostSteps` episodes were looked at; then the
 * smallest promise among the dropped states bounds what was missed, and `gap` says how far from the best the answer can be.
 * Counted in steps, not in time: the same input has the same answer.
 * Fails with the faults of the input or with `no-packing`.
 */
export function packParallel(problem: ParallelProblem, mostSteps: number = USUAL_STEPS): Result<ParallelPacking> {
  const faults = checkParallel(problem);
  if (faults.length > 0) return fail(faults);
  const search: SearchProblem = { ...problem, noCutAfter: new Set(problem.noCutAfter), cutAfter: new Set(problem.cutAfter) };
  let best: Point | null = null;
  let [bound, steps, isExact] = [-Infinity, 0, false];
  for (let width = 1; width <= MOST_WIDTH && !isExact; width *= WIDER) {
    const pass = searchOnce(search, width, best?.cost ?? Infinity);
    if (pass.best !== null && pass.best.cost < (best?.cost ?? Infinity)) best = pass.best;
    // What is not followed cannot beat the best; what was dropped cannot beat its promise.
    bound = Math.max(bound, Math.min(best?.cost ?? Infinity, pass.droppedPromise));
    isExact = pass.droppedPromise === Infinity || bound >= (best?.cost ?? Infinity);
    steps += pass.steps;
    // The next pass looks at up to so many times as much.
    if (steps + pass.steps * WIDER > mostSteps) break;
  }
  if (best !== null) return ok({ cost: best.cost, episodes: unwind(search, best), bound, gap: best.cost - bound });
  const seen = isExact ? 'there is no way' : 'no way was found';
  return fail([issue('no-packing', `To tell ${problem.threads.length} threads side by side ${seen} within the runtimes, results and dates.`, 'Allow shorter or longer episodes, or ask for no result in each.')]);
}
