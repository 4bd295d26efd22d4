import { minutes, type Minutes } from '@/lib/units';

/** The three values of an estimate, in any one unit. */
export interface Triple {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Mean (low + 4 likely + high) / 6, in the unit of the values.
 * Source: Malcolm, Roseboom, Clark, Fazar, "Application of a Technique for Research and Development
 * Program Evaluation", Operations Research 7 (1959), from memory.
 * @example threePointMean({ low: 60, likely: 90, high: 180 }) // 100
 */
export function threePointMean({ low, likely, high }: Triple): number {
  return (low + 4 * likely + high) / 6;
}

/** Standard deviation (high - low) / 6, same source. @example threePointDeviation({ low: 60, likely: 90, high: 180 }) // 20 */
export function threePointDeviation({ low, high }: Triple): number {
  return (high - low) / 6;
}

/** Minutes to book for a length: the next multiple of `step`. @example bookable(101) // 105 */
export function bookable(length: number, step = 5): Minutes {
  return minutes(Math.ceil(length / step - 1e-9) * step);
}
