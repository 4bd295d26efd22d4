/** Tables of quantiles that a simulation draws from. */
import { normalQuantile } from '@/lib/outwork';

/** Points of a table of quantiles, the two ends included: as a simulation reads them. */
const POINTS = 65;

/** Whole quantiles of a distribution, evenly spread; its outermost points stand for the tails. */
export function tabulate(quantile: (share: number) => number): Int32Array {
  return Int32Array.from({ length: POINTS }, (_, k) => Math.round(quantile(Math.min(1 - 1e-3, Math.max(1e-3, k / (POINTS - 1))))));
}

interface ThreeValues {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Inverse of the beta distribution of a three-point estimate with shapes 1 + 4 (m - a)/(b - a) and 1 + 4 (b - m)/(b - a), whose mean
 * is (a + 4m + b)/6. By summing its density on a fine grid.
 */
export function threePointQuantiles({ low, likely, high }: ThreeValues): (share: number) => number {
  if (high <= low) return () => likely;
  const steps = 400;
  const first = (4 * (likely - low)) / (high - low);
  const second = (4 * (high - likely)) / (high - low);
  const sums = [0];
  for (let k = 0; k < steps; k += 1) {
    const x = (k + 0.5) / steps;
    sums.push(sums[k]! + x ** first * (1 - x) ** second);
  }
  const total = sums[steps]!;
  return (share) => {
    const aim = share * total;
    let k = 0;
    while (k < steps - 1 && sums[k + 1]! < aim) k += 1;
    const inside = (aim - sums[k]!) / (sums[k + 1]! - sums[k]!);
    return low + ((k + Math.min(1, Math.max(0, inside))) / steps) * (high - low);
  };
}

/** exp of a normal distribution. @param median in any unit @param deviation of the logarithm */
export function lognormalQuantiles(median: number, deviation: number): (share: number) => number {
  return (share) => median * Math.exp(deviation * normalQuantile(share));
}
