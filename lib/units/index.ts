/** Numbers that know their unit. The brand exists for the compiler only; at run time they are plain numbers. */

declare const unit: unique symbol;

type Branded<Name extends string> = number & { readonly [unit]: Name };

/** A moment, milliseconds since 1970-01-01T00:00Z. */
export type Instant = Branded<'instant'>;
/** A length of time in minutes, elapsed or worked as the name beside it says. */
export type Minutes = Branded<'minutes'>;
/** A temperature reading in degrees Celsius. A difference is not a reading: see {@link Kelvins}. */
export type Celsius = Branded<'celsius'>;
/** A temperature difference in kelvins (the same size as a degree Celsius). */
export type Kelvins = Branded<'kelvins'>;

export const MS_PER_MINUTE = 60_000;
export const MINUTES_PER_HOUR = 60;
export const MINUTES_PER_DAY = 1440;

/** @throws RangeError when not finite. */
function finite(value: number, name: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`);
  return value;
}

export const instant = (ms: number): Instant => finite(ms, 'instant') as Instant;
export const minutes = (value: number): Minutes => finite(value, 'minutes') as Minutes;
export const celsius = (value: number): Celsius => finite(value, 'celsius') as Celsius;
export const kelvins = (value: number): Kelvins => finite(value, 'kelvins') as Kelvins;

/** A moment later (or earlier, with a negative length) by elapsed time. */
export const addMinutes = (at: Instant, by: number): Instant => instant(at + by * MS_PER_MINUTE);
/** Elapsed minutes from `from` to `to`; negative when `to` is before `from`. */
export const minutesBetween = (from: Instant, to: Instant): Minutes => minutes((to - from) / MS_PER_MINUTE);
