import { ok, type Issue, type Result } from '@/lib/result';
import { findLowerBound } from './bound';
import { compile } from './compile';
import { explainContradiction, findPinConflict } from './contradiction';
import { Search } from './improve';
import type { Model } from './model';
import { arrange } from './order';
import type { Problem, Progress, Solution } from './problem';
import { propagate, type Bounds } from './propagate';
import { Random } from './random';
import { describe } from './describe';
import { boundByCalendarEnergy } from './energy';
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

/** Terms no schedule can beat: [unplaced, tardiness, moved, makespan]. */
function findLeastTerms(model: Model, bounds: Bounds, lowerBound: number): readonly number[] {
  let tardiness = 0;
  for (let i = 0; i < model.count; i += 1) tardiness += lateness(model, i, Math.min(model.horizon, endOf(model, i, bounds.earliest[i]!)));
  const moved = model.previous.reduce((sum, at, i) => sum + (at >= 0 && (at < bounds.earliest[i]! || at > bounds.latest[i]!) ? 1 : 0), 0);
  return [0, tardiness, moved, lowerBound];
}

/**
 * Makes the best schedule it can until the stopping rule says so; at least one schedule is always built.
 * Never hangs: each schedule takes a bounded number of steps.
 * `optimal` means that placed, tardiness, moves and makespan are proven; the sum of ends only breaks ties.
 * Errors: all issues of the problem, when it is not well formed. A contradiction between stated facts is no
 * error but the status `infeasible`; what does not fit before the horizon is left out with its reasons.
 * @example solve(problem, { stop: afterWork(2000), seed: 1 })
 */
export function solve(problem: Problem, options: SolveOptions): Result<Solution, readonly Issue[]> {
  const valid = validate(problem);
  if (!valid.ok) return valid;
  const model = compile(problem);
  const propagation = propagate(model);
  if (!propagation.ok) {
    return ok({ status: 'infeasible', contradiction: explainContradiction(problem, model, propagation), seed: options.seed });
  }
  const conflict = findPinConflict(model);
  if (conflict !== null) return ok({ status: 'infeasible', contradiction: conflict, seed: options.seed });
  const { bounds } = propagation;
  const { lowerBound, search } = runSearch(problem, model, bounds, options);
  const isProven = findLeastTerms(model, bounds, lowerBound).every((least, k) => search.incumbent.terms[k]! <= least);
  return ok({
    status: isProven ? 'optimal' : 'feasible',
    schedule: describe(model, bounds, search.incumbent),
    lowerBound,
    schedulesTried: search.schedulesTried,
    seed: options.seed,
  });
}

/** The better bound takes longer than a first schedule: it is looked for once there is one. */
function runSearch(problem: Problem, model: Model, bounds: Bounds, options: SolveOptions): { readonly search: Search; readonly lowerBound: number } {
  const { onProgress, seed, signal, stop } = options;
  let lowerBound = findLowerBound(model, bounds);
  const order = arrange(model);
  const mirrored = order.hasBlocks ? null : reverse(problem);
  const mirror = mirrored === null ? null : propagateMirror(mirrored);
  let least = findLeastTerms(model, bounds, lowerBound);
  let told = -1;
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
      const best = toScore(incumbent.terms);
      const share = stop.share({ schedulesTried, best, lowerBound });
      const isProven = least.every((term, k) => incumbent.terms[k]! <= term);
      if (onProgress !== undefined && (share - told >= 0.02 || isProven)) {
        told = share;
        onProgress({ schedulesTried, best, lowerBound, share });
      }
      return share >= 1 || isProven || signal?.aborted === true;
    },
  });
  search.run();
  return { search, lowerBound };
}

function propagateMirror(model: Model): { model: Model; order: ReturnType<typeof arrange>; bounds: Bounds } | null {
  const propagation = propagate(model);
  return propagation.ok ? { model, order: arrange(model), bounds: propagation.bounds } : null;
}
