/** Random numbers by name and run: the same thing meets the same luck in every forecast, so that two forecasts differ by their plans. */
import { normalQuantile } from '@/lib/outwork';

/** Points of a table of quantiles, the two ends included. */
const POINTS = 65;

/** A whole number from 0 to 2^32 - 1 for a name (FNV-1a, 32 bits). */
export function hashName(name: string, seed: number): number {
  let hash = (0x811c9dc5 ^ Math.imul(seed | 0, 0x9e3779b1)) | 0;
  for (let k = 0; k < name.length; k += 1) hash = Math.imul(hash ^ name.charCodeAt(k), 0x01000193);
  return hash >>> 0;
}

/** A whole number from 0 to 2^32 - 1 for a hashed name, a run and a purpose. Whole-number arithmetic only: the same on any machine. */
export function drawAt(hash: number, run: number, purpose: number): number {
  let x = (hash ^ Math.imul(run + 1, 0x9e3779b1) ^ Math.imul(purpose + 1, 0x85ebca6b)) | 0;
  x = Math.imul(x ^ (x >>> 16), 0x7feb352d);
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b);
  return (x ^ (x >>> 16)) >>> 0;
}

/** Whole quantiles of a distribution, evenly spread; its outermost points stand for the tails. */
export function tabulate(quantile: (share: number) => number): Int32Array {
  return Int32Array.from({ length: POINTS }, (_, k) => Math.round(quantile(Math.min(1 - 1e-3, Math.max(1e-3, k / (POINTS - 1))))));
}

/** The value at a drawn number, between two points of the table in proportion. */
export function readTable(table: Int32Array, draw: number): number {
  const at = draw >>> 26;
  const low = table[at]!;
  // 26 bits are left; 12 of them are enough and keep the product small.
  return low + (((table[at + 1]! - low) * ((draw >>> 14) & 0xfff)) >> 12);
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

/** A chance from 0 to 1 as a threshold for drawn numbers: it happens when the draw is below. */
export function thresholdOf(chance: number): number {
  return Math.round(Math.min(1, Math.max(0, chance)) * 0x1_0000_0000);
}
