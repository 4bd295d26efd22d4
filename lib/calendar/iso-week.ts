/** Weeks of ISO 8601: they start on Monday, and week 1 is the one with the year's first Thursday. */
import { fail, issue, ok, type Result } from '@/lib/result';
import { addDays, daysBetween, eachDate, FIRST_YEAR, LAST_YEAR, weekdayOf, type CivilDate } from './civil';
import { quoteText } from './quoted-text';

export interface IsoWeek {
  /** The week's own year, which near New Year may differ from the date's. */
  readonly year: number;
  /** 1 to 53. */
  readonly week: number;
}

const SHAPE = /^(\d{4})-?W(\d{2})$/i;

/** @example isoWeekOf('2026-12-01') // { year: 2026, week: 49 } */
export function isoWeekOf(date: CivilDate): IsoWeek {
  const thursday = addDays(date, 4 - weekdayOf(date));
  const year = Number(thursday.slice(0, 4));
  return { year, week: Math.floor(daysBetween(`${thursday.slice(0, 4)}-01-01`, thursday) / 7) + 1 };
}

/** 52 or 53. @example weeksInIsoYear(2026) // 53 */
export function weeksInIsoYear(year: number): number {
  return isoWeekOf(`${String(year).padStart(4, '0')}-12-28`).week;
}

/** @example formatIsoWeek({ year: 2026, week: 9 }) // '2026-W09' */
export function formatIsoWeek(week: IsoWeek): string {
  return `${String(week.year).padStart(4, '0')}-W${String(week.week).padStart(2, '0')}`;
}

/**
 * Reads `2026-W49`, also in small letters or without the dash.
 * Fails with `week-shape`, `week-year` or `week-number`.
 * @example parseIsoWeek('2026-W49') // { ok: true, value: { year: 2026, week: 49 } }
 * @example parseIsoWeek('2025-W53').ok // false
 */
export function parseIsoWeek(text: string): Result<IsoWeek> {
  const shown = quoteText(text);
  const match = SHAPE.exec(text.trim());
  if (!match) return fail([issue('week-shape', `${shown} is not a week.`, 'Write year and week like 2026-W49.')]);
  const [year, week] = [Number(match[1]), Number(match[2])];
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    return fail([
      issue('week-year', `${shown} lies outside the years ${FIRST_YEAR} to ${LAST_YEAR}.`, 'Check the four digits of the year.'),
    ]);
  }
  const last = weeksInIsoYear(year);
  if (week < 1 || week > last) {
    const near = formatIsoWeek({ year, week: Math.min(Math.max(week, 1), last) });
    return fail([issue('week-number', `${shown} does not exist: ${year} has weeks 01 to ${last}.`, `Write a week of that year, such as ${near}.`)]);
  }
  return ok({ year, week });
}

/**
 * The Monday a week starts on.
 * @throws RangeError when the year has no such week.
 * @example mondayOf({ year: 2026, week: 49 }) // '2026-11-30'
 */
export function mondayOf(week: IsoWeek): CivilDate {
  if (!Number.isInteger(week.week) || week.week < 1 || week.week > weeksInIsoYear(week.year)) {
    throw new RangeError(`There is no week ${formatIsoWeek(week)}`);
  }
  // 4 January is in week 1 of every year.
  const fourth = `${String(week.year).padStart(4, '0')}-01-04`;
  return addDays(fourth, 1 - weekdayOf(fourth) + 7 * (week.week - 1));
}

/** Its seven dates, Monday first. @example weekDates({ year: 2026, week: 49 })[6] // '2026-12-06' */
export function weekDates(week: IsoWeek): CivilDate[] {
  const monday = mondayOf(week);
  return eachDate(monday, addDays(monday, 6));
}

/** @example nextWeek({ year: 2026, week: 53 }) // { year: 2027, week: 1 } */
export function nextWeek(week: IsoWeek): IsoWeek {
  return isoWeekOf(addDays(mondayOf(week), 7));
}

/** @example previousWeek({ year: 2027, week: 1 }) // { year: 2026, week: 53 } */
export function previousWeek(week: IsoWeek): IsoWeek {
  return isoWeekOf(addDays(mondayOf(week), -7));
}
