/** The standard normal distribution, to about 14 digits. */

/** Share below z. Series around nought; beyond 8 it is nought or one. @example normalBelow(0.8416) // 0.8 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('The normal distribution needs a number');
  if (z <= -8) return 0;
  if (z >= 8) return 1;
  let term = z;
  let sum = z;
  for (let k = 1; Math.abs(term) > 1e-17 * Math.abs(sum) && k < 400; k += 1) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return Math.min(1, Math.max(0, 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)));
}

/** The z below which a share lies. @throws RangeError outside 0 to 1, both left out. @example normalQuantile(0.8) // 0.8416 */
export function normalQuantile(share: number): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`A share between 0 and 1 is needed, got ${share}`);
  let [low, high] = [-8, 8];
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (normalBelow(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
