/** Past forecasts against what happened: do eight in ten fall inside the 80 % interval? */
import { fail, issue, ok, type Result } from '@/lib/result';

/** A forecast that has come true. Any one unit of time. */
export interface Judged {
  /** Quantiles with their shares, in ascending order of both. */
  readonly quantiles: readonly { readonly share: number; readonly value: number }[];
  readonly actual: number;
}

export interface Calibration {
  readonly count: number;
  /** Share of actual values between the 10 % and the 90 % quantile; a well-set forecast has 0.8. */
  readonly coverage: number;
  /** Share of actual values at or below the 80 % quantile. */
  readonly belowEighty: number;
  /** Mean pinball loss over all quantiles, in the unit of the values: a proper score, smaller is better. */
  readonly pinball: number;
  /** Sentence on how much so many forecasts can say. */
  readonly verdict: string;
}

/**
 * Pinball (quantile) loss: share x (actual - value) when the actual lies above, (1 - share) x (value - actual) below.
 * A proper score: on average least for the true quantile. Koenker & Bassett 1978, from memory.
 */
export function pinballLoss(share: number, value: number, actual: number): number {
  return actual >= value ? share * (actual - value) : (1 - share) * (value - actual);
}

/** Quantile at a share, between the given ones in proportion, at the ends the outermost. */
function quantileAt(quantiles: Judged['quantiles'], share: number): number {
  const after = quantiles.findIndex((one) => one.share >= share);
  if (after === 0) return quantiles[0]!.value;
  if (after < 0) return quantiles.at(-1)!.value;
  const [low, high] = [quantiles[after - 1]!, quantiles[after]!];
  return low.value + ((share - low.share) / (high.share - low.share)) * (high.value - low.value);
}

/** Forecasts needed before coverage says anything; with fewer, chance rules. Our choice. */
const ENOUGH = 10;

/** Fails with `share-out-of-range` when a share is not between 0 and 1, or `no-forecast-to-judge` when the list is empty. */
export function calibrate(judged: readonly Judged[]): Result<Calibration> {
  if (judged.length === 0) return fail([issue('no-forecast-to-judge', 'No forecast has come true yet.', 'Save a forecast now; it is judged as episodes are recorded.')]);
  const wrong = judged.flatMap(({ quantiles }) => quantiles).find(({ share }) => !(share >= 0 && share <= 1));
  if (wrong !== undefined) return fail([issue('share-out-of-range', `A probability is between 0 and 1, and ${wrong.share} is not.`, 'Give shares from 0 to 1.')]);
  const count = judged.length;
  const inside = judged.filter(({ actual, quantiles }) => actual >= quantileAt(quantiles, 0.1) && actual <= quantileAt(quantiles, 0.9)).length;
  const below = judged.filter(({ actual, quantiles }) => actual <= quantileAt(quantiles, 0.8)).length;
  const losses = judged.flatMap(({ actual, quantiles }) => quantiles.map(({ share, value }) => pinballLoss(share, value, actual)));
  return ok({
    count, coverage: inside / count, belowEighty: below / count, pinball: losses.reduce((sum, loss) => sum + loss, 0) / Math.max(1, losses.length),
    verdict: tellCoverage(inside, count),
  });
}

function tellCoverage(inside: number, count: number): string {
  const told = `${inside} of ${count} fell inside the 80 % interval`;
  if (count < ENOUGH) return `${told}; fewer than ${ENOUGH} say little yet.`;
  const error = Math.sqrt((0.8 * 0.2) / count);
  const share = inside / count;
  if (share < 0.8 - 2 * error) return `${told}: the forecasts were too sure.`;
  if (share > 0.8 + 2 * error) return `${told}: the forecasts were more careful than they had to be.`;
  return `${told}, as they should.`;
}
