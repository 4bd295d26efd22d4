/** Random numbers by name and run: the same thing meets the same luck in every forecast, so that two forecasts differ by their plans. */

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

/** The value at a drawn number, between two of the 65 points of a table of quantiles in proportion. */
export function readTable(table: Int32Array, draw: number): number {
  const at = draw >>> 26;
  const low = table[at]!;
  // 26 bits are left; 12 of them are enough and keep the product small.
  return low + (((table[at + 1]! - low) * ((draw >>> 14) & 0xfff)) >> 12);
}

/** A chance from 0 to 1 as a threshold for drawn numbers: it happens when the draw is below. */
export function thresholdOf(chance: number): number {
  return Math.round(Math.min(1, Math.max(0, chance)) * 0x1_0000_0000);
}

/**
 * Shares of 0, 1, 2, … takes made again before `takes` of them are good, each good with 1 - chance (negative binomial); the last share
 * holds the tail. Empty: nothing is made again.
 * @example retakeShares(1, 0.5, 2) // [0.5, 0.25, 0.25]
 */
export function retakeShares(takes: number, chance: number, most: number): number[] {
  if (takes === 0 || chance <= 0) return [];
  if (chance >= 1) return [...Array.from({ length: most }, () => 0), 1];
  const shares = [(1 - chance) ** takes];
  for (let again = 1; again < most; again += 1) shares.push((shares[again - 1]! * chance * (takes + again - 1)) / again);
  return [...shares, Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0))];
}
