/** Checks that every exposure must pass before it is counted. */
import { issue, type Issue } from '@/lib/result';

/** A length that counts: more than nothing and at most a day. */
export function checkDuration(minutes: number, what: string, path: readonly (string | number)[]): readonly Issue[] {
  if (Number.isFinite(minutes) && minutes > 0 && minutes <= 1440) return [];
  const said = Number.isFinite(minutes) ? `${minutes} minutes` : 'no duration';
  return [issue('exposure-without-duration', `${what} has ${said}.`, 'Give the minutes, more than 0 and at most 1440.', { path })];
}

/** A magnitude within bounds, both allowed. */
export function checkMagnitude(value: number, what: string, bounds: { readonly low: number; readonly high: number; readonly unit: string }, path: readonly (string | number)[]): readonly Issue[] {
  const { low, high, unit } = bounds;
  if (Number.isFinite(value) && value >= low && value <= high) return [];
  return [issue('exposure-out-of-range', `${what} is ${Number.isFinite(value) ? `${value} ${unit}` : 'not a number'}.`, `Give a value from ${low} to ${high} ${unit}.`, { path })];
}
