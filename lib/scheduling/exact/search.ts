import type { Outcome } from '../describe';
import type { Contradiction, Progress } from '../problem';
import type { Model } from '../model';
import { TERMS } from '../objective';
import { PLACED } from '../placer';
import { solveCore, type CoreProgress, type CoreSolution } from '../proof';
import { compareTerms, rate, toScore } from '../score';
import type { StopRule } from '../stop/rule';
import { explainExactly } from './conflict';
import type { Core } from './lower';
import { shiftEarlier } from './shift';

/** A bound propagated by the exact search costs about as much as placing so many activities. */
const ENTRY_COST = 12;

export interface ExactInput {
  readonly model: Model;
  readonly core: Core;
  /** A bound known before. */
  readonly lowerBound: number;
  /** The best schedule so far, perhaps with something left out, and how many were tried for it. */
  readonly known: Outcome;
  readonly schedulesTried: number;
  readonly stop: StopRule;
  readonly seed: number;
  readonly signal?: { readonly aborted: boolean };
  readonly onProgress?: (progress: Progress) => void;
}

export interface ExactOutcome {
  /** `no-room`: everything fits together, but not within the dates; what is best is then for the other search to say. */
  readonly kind: 'schedule' | 'contradiction' | 'no-room';
  readonly best: Outcome;
  readonly lowerBound: number;
  readonly schedulesTried: number;
  readonly contradiction: Contradiction | null;
}

/** Work of the core as a number of schedules. */
function countSchedules(progress: CoreProgress, count: number): number {
  return progress.schedules + Math.floor((ENTRY_COST * progress.entries) / Math.max(1, count));
}

/** Solves with the conflict-learning core what it can say exactly, under the same stopping rule as any other search. */
export function searchExactly(input: ExactInput): ExactOutcome {
  const { core, model, known } = input;
  const isWhole = known.terms[0] === 0;
  let tried = input.schedulesTried;
  let lowerBound = input.lowerBound;
  let told = -1;
  const measure = (progress: CoreProgress): number => {
    tried = input.schedulesTried + countSchedules(progress, model.count);
    lowerBound = Math.min(model.horizon, Math.max(input.lowerBound, progress.lowerBound));
    const best = { ...toScore(model, known.terms), ...(progress.makespan < 0 ? {} : { unplaced: 0, makespan: progress.makespan }) };
    const share = input.stop.share({ schedulesTried: tried, best, lowerBound });
    if (input.onProgress !== undefined && share - told >= 0.02) {
      told = share;
      input.onProgress({ schedulesTried: tried, best, lowerBound, share });
    }
    return share;
  };
  const stop = (progress: CoreProgress): boolean => measure(progress) >= 1 || input.signal?.aborted === true;
  const solution = solveCore(core.instance, { seed: input.seed, stop, share: measure, ...(isWhole ? { known: known.start } : {}) });
  measure(solution);
  const best = chooseBest(input, solution);
  const outcome = { best, lowerBound, schedulesTried: tried, contradiction: null };
  if (solution.status !== 'infeasible') return { ...outcome, kind: 'schedule' };
  const contradiction = core.isTimeless ? explainExactly(model, core, input.seed, input.signal) : null;
  return { ...outcome, kind: contradiction === null ? 'no-room' : 'contradiction', contradiction };
}

/** The core's schedule, pushed to the left, or the one known before where that is better. */
function chooseBest({ core, known, model }: ExactInput, solution: CoreSolution): Outcome {
  if (solution.makespan < 0) return known;
  const start = shiftEarlier(core.instance, solution.starts);
  const dated = {
    status: new Uint8Array(model.count).fill(PLACED),
    start,
    end: start.map((at, i) => at + model.duration[i]!),
    crew: new Int32Array(0),
    cause: new Uint8Array(model.count),
    causeAt: new Int32Array(model.count),
    terms: new Float64Array(TERMS),
  };
  rate(model, dated, dated.terms);
  return compareTerms(dated.terms, known.terms) < 0 ? dated : known;
}
