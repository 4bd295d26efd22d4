/** Noise of a person's day: dose by both exchange rates, and the daily level. Levels in dB(A) at the ear, without protection. */
import { fail, ok, type Issue, type Result } from '@/lib/result';
import { checkDuration, checkMagnitude } from './amount';

export interface NoisePiece {
  /** dB(A). */
  readonly level: number;
  readonly minutes: number;
}

/** UK and EU daily level, dB(A): information and protection on offer, protection worn, never above (at the ear, protection counted). */
export const NOISE_ACTION_LOWER = 80;
export const NOISE_ACTION_UPPER = 85;
export const NOISE_LIMIT = 87;

/** Below it neither dose counts anything, dB(A). */
const THRESHOLD = 80;

/** Hours allowed by OSHA 1910.95 App. A (5 dB exchange rate, 90 dB(A) for 8 h). @example oshaHours(95) // 4 */
export function oshaHours(level: number): number {
  return 8 / 2 ** ((level - 90) / 5);
}

/** Minutes allowed by NIOSH (3 dB exchange rate, 85 dB(A) for 8 h). @example nioshMinutes(100) // 15 */
export function nioshMinutes(level: number): number {
  return 480 / 2 ** ((level - 85) / 3);
}

/** The eight-hour level of an OSHA dose in percent. @example oshaAverage(50) // 85 */
export function oshaAverage(dose: number): number {
  return 16.61 * Math.log10(dose / 100) + 90;
}

export interface NoiseDay {
  /** Percent of a day, OSHA. */
  readonly oshaDose: number;
  /** Percent of a day, NIOSH. */
  readonly nioshDose: number;
  /** Daily level over eight hours, dB(A), UK and EU. null: no noise. */
  readonly dailyLevel: number | null;
}

function checkPieces(pieces: readonly NoisePiece[]): readonly Issue[] {
  return pieces.flatMap(({ level, minutes }, index) => [
    ...checkMagnitude(level, 'The noise level', { low: 0, high: 150, unit: 'dB(A)' }, [index, 'level']),
    ...checkDuration(minutes, 'The noise', [index, 'minutes']),
  ]);
}

/**
 * The noise of a day. Fails with `exposure-out-of-range` or `exposure-without-duration`, all of them.
 * @example countNoise([{ level: 100, minutes: 30 }]) // OSHA 25 %, NIOSH 200 %, daily level 87.96
 */
export function countNoise(pieces: readonly NoisePiece[]): Result<NoiseDay> {
  const issues = checkPieces(pieces);
  if (issues.length > 0) return fail(issues);
  const counted = pieces.filter(({ level }) => level >= THRESHOLD);
  const energy = pieces.reduce((sum, { level, minutes }) => sum + (minutes / 480) * 10 ** (level / 10), 0);
  return ok({
    oshaDose: 100 * counted.reduce((sum, { level, minutes }) => sum + minutes / 60 / oshaHours(level), 0),
    nioshDose: 100 * counted.reduce((sum, { level, minutes }) => sum + minutes / nioshMinutes(level), 0),
    dailyLevel: energy > 0 ? 10 * Math.log10(energy) : null,
  });
}
