import { ok, type Issue, type Result } from '@/lib/result';
import { findLowerBound } from './bound';
import { compile } from './compile';
import { weighFacts } from './contradiction';
import { describe, type Outcome } from './describe';
import { boundByCalendarEnergy } from './energy';
import { lowerToCore, searchExactly } from './exact';
import { Search } from './improve';
import type { Model } from './model';
import { TERMS } from './objective';
import { arrange } from './order';
import type { Problem, Progress, Solution } from './problem';
import { propagate, type Bounds } from './propagate';
import { Random } from './random';
import { reverse } from './reverse';
import { lateness, toScore } from './score';
import type { StopRule } from './stop/rule';
import { endOf } from './timing';
import { validate } from './validate';

export interface SolveOptions {
  readonly stop: StopRule;
  /** A whole number; the same seed and the same work give the same answer on any machine. */
  readonly seed: number;
  /** Looked at after each schedule; the best so far is returned. An AbortSignal fits. */
  readonly signal?: { readonly aborted: boolean };
  readonly onProgress?: (progress: Progress) => void;
}

/** Terms that no schedule with everything in it can beat, in the order of the objective; all but the sum of ends. */
function findLeastTerms(model: Model, bounds: Bounds, lowerBound: number): Float64Array {
  const { rank } = model.objective;
  const least = new Float64Array(TERMS - 1);
  least[rank.makespan] = lowerBound;
  let tardiness = 0;
  for (let i = 0; i < model.count; i += 1) tardiness += lateness(model, i, Math.min(model.horizon, endOf(model, i, bounds.earliest[i]!)));
  least[rank.tardiness] = tardiness;
  least[rank.moved] = model.previous.reduce((sum, at, i) => sum + (at >= 0 && (at < bounds.earliest[i]! || at > bounds.latest[i]!) ? 1 : 0), 0);
  return least;
}

/**
 * Makes the best schedule it can until the stopping rule says so; at least one schedule is always built.
 * Never hangs: each schedule takes a bounded number of steps.
 * `optimal` means that every term but the last is proven; the sum of ends only breaks ties.
 * Errors: all issues of the problem, when it is not well formed. A contradiction between stated facts is no
 * error but the status `infeasible`; what does not fit before the horizon is left out with its reasons.
 * @example solve(problem, { stop: afterWork(2000), seed: 1 })
 */
export function solve(problem: Problem, options: SolveOptions): Result<Solution, readonly Issue[]> {
  const valid = validate(problem);
  if (!valid.ok) return valid;
  const model = compile(problem);
  const facts = weighFacts(model);
  if (facts.contradiction !== null) return ok({ status: 'infeasible', contradiction: facts.contradiction, seed: options.seed });
  const { bounds } = facts;
  const core = lowerToCore(model);
  const first = runSearch(problem, model, bounds, options, core !== null);
  if (core === null || first.isOver) return ok(toSolution(model, bounds, first, options.seed));
  // What the core says exactly is its to solve; it begins from the first schedule.
  const { lowerBound, schedulesTried } = first;
  const exact = searchExactly({ ...options, model, core, lowerBound, schedulesTried, known: first.best });
  if (exact.contradiction !== null) return ok({ status: 'infeasible', contradiction: exact.contradiction, seed: options.seed });
  if (exact.kind === 'schedule') return ok(toSolution(model, bounds, exact, options.seed));
  const rest = { ...options, stop: afterOther(options.stop, exact.schedulesTried) };
  const last = runSearch(problem, model, bounds, rest, false);
  return ok(toSolution(model, bounds, { ...last, schedulesTried: exact.schedulesTried + last.schedulesTried }, options.seed));
}

/** What a search came to. */
interface Found {
  readonly best: Outcome;
  readonly lowerBound: number;
  readonly schedulesTried: number;
}

function toSolution(model: Model, bounds: Bounds, { best, lowerBound, schedulesTried }: Found, seed: number): Solution {
  const isProven = findLeastTerms(model, bounds, lowerBound).every((least, k) => best.terms[k]! <= least);
  return { status: isProven ? 'optimal' : 'feasible', schedule: describe(model, bounds, best), lowerBound, schedulesTried, seed };
}

/** The rule for a search that goes on where another has tried so many schedules. */
function afterOther(stop: StopRule, tried: number): StopRule {
  return { share: (state) => stop.share({ ...state, schedulesTried: state.schedulesTried + tried }) };
}

/** Share of the allowed work that goes into a first schedule with everything in it, where the core takes over. */
const FIRST_SHARE = 0.03;

/**
 * The better bound takes longer than a first schedule: it is looked for once there is one.
 * `isOpening`: only up to a schedule with everything in it, or until a small share of the work allowed is used.
 */
function runSearch(problem: Problem, model: Model, bounds: Bounds, options: SolveOptions, isOpening: boolean): Found & { readonly isOver: boolean } {
  const { onProgress, seed, signal, stop } = options;
  let lowerBound = findLowerBound(model, bounds);
  const order = arrange(model);
  const mirrored = order.hasBlocks ? null : reverse(problem);
  const mirror = mirrored === null ? null : propagateMirror(mirrored);
  let least = findLeastTerms(model, bounds, lowerBound);
  let told = -1;
  let isOver = false;
  const search: Search = new Search({
    model,
    order,
    bounds,
    mirror,
    random: new Random(seed),
    isOver: () => {
      const { incumbent, schedulesTried } = search;
      if (schedulesTried === 2) {
        lowerBound = boundByCalendarEnergy(model, bounds, lowerBound);
        least = findLeastTerms(model, bounds, lowerBound);
      }
      const best = toScore(model, incumbent.terms);
      const share = stop.share({ schedulesTried, best, lowerBound });
      const isProven = least.every((term, k) => incumbent.terms[k]! <= term);
      if (onProgress !== undefined && (share - told >= 0.02 || isProven)) {
        told = share;
        onProgress({ schedulesTried, best, lowerBound, share });
      }
      isOver = share >= 1 || isProven || signal?.aborted === true;
      return isOver || (isOpening && (best.unplaced === 0 || share >= FIRST_SHARE));
    },
  });
  search.run();
  return { best: search.incumbent, lowerBound, schedulesTried: search.schedulesTried, isOver };
}

function propagateMirror(model: Model): { model: Model; order: ReturnType<typeof arrange>; bounds: Bounds } | null {
  const propagation = propagate(model);
  return propagation.ok ? { model, order: arrange(model), bounds: propagation.bounds } : null;
}
