/** How long a mixed pot may be used. */
import type { PotLife } from './coat-material';

/**
 * Minutes from mixing until the pot must be thrown away, at a temperature. Halves for each `halvesPer` kelvins of warmth
 * (UFGS 09 97 1x, 3.7.1.3: halves for every 10 K). An induction that the pot life holds already is not added again.
 * @example potLifeAt({ minutes: 240, at: 21, halvesPer: 10, induction: 0, isInductionIncluded: false }, 31) // 120
 */
export function potLifeAt(pot: PotLife, temperature: number): number {
  const life = pot.minutes * 2 ** ((pot.at - temperature) / pot.halvesPer);
  return pot.isInductionIncluded ? life : life + pot.induction;
}

export interface PotWindow {
  /** Minutes after mixing. */
  readonly usableFrom: number;
  readonly usableUntil: number;
}

/** When a pot may be used, minutes after mixing. Empty (until = from) when warmth leaves nothing after the induction. */
export function potWindow(pot: PotLife, temperature: number): PotWindow {
  return { usableFrom: pot.induction, usableUntil: Math.max(pot.induction, potLifeAt(pot, temperature)) };
}
