/** Hand-arm vibration of a person's day, by the points of the HSE ready reckoner. */
import { fail, ok, type Result } from '@/lib/result';
import { checkDuration, checkMagnitude } from './amount';

export interface VibrationPiece {
  /** m/s2. */
  readonly magnitude: number;
  /** Trigger time. */
  readonly minutes: number;
}

/** 2.5 m/s2 over eight hours: act. */
export const VIBRATION_ACTION_POINTS = 100;
/** 5 m/s2 over eight hours: never above. */
export const VIBRATION_LIMIT_POINTS = 400;

/** Points of one piece of work: 2 a^2 t, t in hours. @example vibrationPoints({ magnitude: 5, minutes: 180 }) // 150 */
export function vibrationPoints({ magnitude, minutes }: VibrationPiece): number {
  return (2 * magnitude ** 2 * minutes) / 60;
}

export interface VibrationDay {
  readonly points: number;
  /** A(8), m/s2. */
  readonly dailyValue: number;
}

/** The vibration of a day. Fails with `exposure-out-of-range` or `exposure-without-duration`, all of them. */
export function countVibration(pieces: readonly VibrationPiece[]): Result<VibrationDay> {
  const issues = pieces.flatMap(({ magnitude, minutes }, index) => [
    ...checkMagnitude(magnitude, 'The vibration', { low: 0, high: 100, unit: 'm/s2' }, [index, 'magnitude']),
    ...checkDuration(minutes, 'The vibration', [index, 'minutes']),
  ]);
  if (issues.length > 0) return fail(issues);
  const points = pieces.reduce((sum, piece) => sum + vibrationPoints(piece), 0);
  return ok({ points, dailyValue: Math.sqrt(points / 16) });
}
