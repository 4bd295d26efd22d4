/**
 * Civil dates: a day on the wall calendar, with no zone and no time. All arithmetic is on whole days,
 * so no clock change and no machine setting can touch it.
 */
import { fail, issue, ok, type Result } from '@/lib/result';
import { MINUTES_PER_DAY, MS_PER_MINUTE } from '@/lib/units';
import { quoteText } from './quoted-text';

/** `2026-12-01`, Gregorian, years {@link FIRST_YEAR} to {@link LAST_YEAR}. */
export type CivilDate = string;
/** ISO weekday, 1 = Monday to 7 = Sunday. */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** A year outside these is a slip of the keyboard such as 0026. */
export const FIRST_YEAR = 1900;
export const LAST_YEAR = 2999;

const MS_PER_DAY = MINUTES_PER_DAY * MS_PER_MINUTE;
const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTHS = [
  'January', 'February', 'March', 'April', 'May', 'June',
  'July', 'August', 'September', 'October', 'November', 'December',
] as const;
const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const satisfies readonly Weekday[];

/** @example daysInMonth(2028, 2) // 29 */
export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

const pad = (value: number, width: number): string => String(value).padStart(width, '0');

function writeDate(year: number, month: number, day: number): CivilDate {
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
}

/**
 * Reads a date as typed or stored. Spaces around it are ignored.
 * Fails with `date-shape`, `date-year`, `date-month` or `date-day`.
 * @example parseCivilDate('2026-12-01') // { ok: true, value: '2026-12-01' }
 * @example parseCivilDate('2026-02-30').ok // false
 */
export function parseCivilDate(text: string): Result<CivilDate> {
  const shown = quoteText(text);
  const match = SHAPE.exec(text.trim());
  if (!match) {
    return fail([issue('date-shape', `${shown} is not a date.`, 'Write year, month and day like 2026-12-01.')]);
  }
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    return fail([
      issue('date-year', `${shown} lies outside the years ${FIRST_YEAR} to ${LAST_YEAR}.`, 'Check the four digits of the year.'),
    ]);
  }
  const monthName = MONTHS[month - 1];
  if (monthName === undefined) {
    return fail([issue('date-month', `${shown} has no such month: ${match[2]}.`, 'Write a month from 01 to 12.')]);
  }
  const last = daysInMonth(year, month);
  if (day < 1 || day > last) {
    const near = writeDate(year, month, Math.min(Math.max(day, 1), last));
    return fail([issue('date-day', `${shown} does not exist: ${monthName} ${year} has ${last} days.`, `Write a day from 01 to ${last}, such as ${near}.`)]);
  }
  return ok(writeDate(year, month, day));
}

/** Exactly a civil date, nothing around it. @example isCivilDate('2026-2-1') // false */
export function isCivilDate(text: string): boolean {
  return SHAPE.test(text) && parseCivilDate(text).ok;
}

/**
 * Days since 1970-01-01, negative before it.
 * @throws RangeError when the text is no civil date.
 * @example dayNumberOf('1970-01-31') // 30
 */
export function dayNumberOf(date: CivilDate): number {
  const match = SHAPE.exec(date);
  const ms = match ? Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])) : Number.NaN;
  const day = ms / MS_PER_DAY;
  if (Number.isNaN(ms) || dateOfDayNumber(day) !== date) throw new RangeError(`${quoteText(date)} is no civil date`);
  return day;
}

/** Dates by day number: writing one takes longer than all else that is done with it, and there are no more than the years hold. */
const writtenDates = new Map<number, CivilDate>();

/**
 * The date that many days after 1970-01-01.
 * @throws RangeError when it is not whole or leaves the years a date can have.
 * @example dateOfDayNumber(30) // '1970-01-31'
 */
export function dateOfDayNumber(day: number): CivilDate {
  const known = writtenDates.get(day);
  if (known !== undefined) return known;
  const date = Number.isInteger(day) ? new Date(day * MS_PER_DAY) : new Date(Number.NaN);
  const year = date.getUTCFullYear();
  if (!(year >= FIRST_YEAR && year <= LAST_YEAR)) {
    throw new RangeError(`Day ${day} is no whole day in the years ${FIRST_YEAR} to ${LAST_YEAR}`);
  }
  const written = date.toISOString().slice(0, 10);
  writtenDates.set(day, written);
  return written;
}

/** @example addDays('2026-12-31', 1) // '2027-01-01' */
export function addDays(date: CivilDate, days: number): CivilDate {
  return dateOfDayNumber(dayNumberOf(date) + days);
}

/** Days from the first to the second, negative when it is earlier. @example daysBetween('2026-12-01', '2026-12-24') // 23 */
export function daysBetween(from: CivilDate, to: CivilDate): number {
  return dayNumberOf(to) - dayNumberOf(from);
}

/** @example weekdayOf('2026-12-01') // 2 */
export function weekdayOf(date: CivilDate): Weekday {
  // 1970-01-01 was a Thursday, index 3.
  const index = (((dayNumberOf(date) + 3) % 7) + 7) % 7;
  const weekday = WEEKDAYS[index];
  if (weekday === undefined) throw new Error(`No weekday with index ${index}`);
  return weekday;
}

/** Negative, zero or positive as the first is earlier, the same or later: for `sort`. @example compareDates('2026-12-01', '2026-12-02') // -1 */
export function compareDates(a: CivilDate, b: CivilDate): number {
  return Math.sign(daysBetween(b, a));
}

/**
 * Every date of a span, both ends in it; empty when `to` is before `from`.
 * @example eachDate('2026-12-30', '2027-01-01') // ['2026-12-30', '2026-12-31', '2027-01-01']
 */
export function eachDate(from: CivilDate, to: CivilDate): CivilDate[] {
  const first = dayNumberOf(from);
  const count = Math.max(0, dayNumberOf(to) - first + 1);
  return Array.from({ length: count }, (_, index) => dateOfDayNumber(first + index));
}
