/** What many runs say: quantiles, shares, and how exactly they say it. */

/** Smallest value with at least `share` of the values at or below it. @param sorted in ascending order, not empty */
export function quantileOf(sorted: ArrayLike<number>, share: number): number {
  const at = Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length - 1e-9) - 1));
  return sorted[at]!;
}

export function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < values.length; k += 1) sum += values[k]!;
  return values.length === 0 ? 0 : sum / values.length;
}

/** Standard error of a share seen in so many runs, 0 to 1. A share of 0 or 1 is as unsure as one run in them (rule of succession). */
export function shareError(share: number, runs: number): number {
  const softened = (share * runs + 1) / (runs + 2);
  return Math.sqrt((softened * (1 - softened)) / runs);
}

/** Batches that the error of a quantile is estimated from. */
const BATCHES = 20;

/**
 * Standard error of a quantile: the spread of the quantile over batches of runs, divided by the root of their number (batch means).
 * Infinity with fewer than two runs a batch.
 */
export function quantileError(values: ArrayLike<number>, share: number): number {
  const size = Math.floor(values.length / BATCHES);
  if (size < 2) return Infinity;
  const each = Array.from({ length: BATCHES }, (_, batch) => quantileOf(Int32Array.from({ length: size }, (_unused, k) => values[k * BATCHES + batch]!).toSorted(), share));
  const mean = meanOf(each);
  const variance = each.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (BATCHES - 1);
  return Math.sqrt(variance / BATCHES);
}
