/** Opening hours that repeat every week, laid onto real days. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { dateOfDayNumber, dayNumberOf, weekdayOf, type CivilDate, type Weekday } from './civil';
import { containsPoint, mergeOverlapping, mergeOverlappingAndTouching, type InstantInterval } from './intervals';
import { minuteOfDay, parseWallTime, type WallTime } from './wall-time';
import { instantOf } from './zone';

export interface WeeklyHours {
  readonly weekday: Weekday;
  readonly from: WallTime;
  /** After `from`; `24:00` is the end of the day. Hours past midnight are two rows. */
  readonly to: WallTime;
}

/** Both dates are in it. */
export interface CivilSpan {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

const WEEKDAY_NAMES: Readonly<Record<Weekday, string>> = {
  1: 'Monday', 2: 'Tuesday', 3: 'Wednesday', 4: 'Thursday', 5: 'Friday', 6: 'Saturday', 7: 'Sunday',
};

function checkRow(row: WeeklyHours, index: number): Issue[] {
  const [from, to] = [parseWallTime(row.from, 'start'), parseWallTime(row.to, 'end')];
  const issues: Issue[] = [];
  if (!from.ok) issues.push(...from.error.map((found) => ({ ...found, path: [index, 'from'] })));
  if (!to.ok) issues.push(...to.error.map((found) => ({ ...found, path: [index, 'to'] })));
  if (from.ok && to.ok && minuteOfDay(to.value) <= minuteOfDay(from.value)) {
    const message = `The hours on ${WEEKDAY_NAMES[row.weekday]} end at ${to.value}, not after their start at ${from.value}.`;
    const fix = `Choose an end after ${from.value}, or split hours past midnight into one row to 24:00 and one from 00:00 on the next day.`;
    issues.push(issue('hours-end-before-start', message, fix, { path: [index, 'to'] }));
  }
  return issues;
}

/**
 * Whether each row makes sense by itself; rows may overlap. All issues are collected, with the row's place and field as path.
 * Fails with `time-shape`, `time-end-of-day` or `hours-end-before-start`.
 * @example checkWeeklyHours([{ weekday: 1, from: '18:00', to: '18:00' }]).ok // false
 */
export function checkWeeklyHours(hours: readonly WeeklyHours[]): Result<readonly WeeklyHours[]> {
  const issues = hours.flatMap(checkRow);
  return issues.length > 0 ? fail(issues) : ok(hours);
}

/**
 * The hours as instants from one date to another, both in it, less closed spans. Sorted and disjoint; overlapping rows are one,
 * touching rows stay two. Wall time rules: on a day of a clock change 01:00 to 03:00 may last one or three hours,
 * and hours that the clock skips altogether are left out.
 * @throws RangeError for hours that {@link checkWeeklyHours} refuses, or a date or zone that does not exist.
 * @example expandWeeklyHours([{ weekday: 2, from: '18:30', to: '21:00' }], { from: '2026-11-30', to: '2026-12-06' }, 'UTC').length // 1
 */
export function expandWeeklyHours(
  hours: readonly WeeklyHours[],
  over: CivilSpan,
  zone: string,
  closed: readonly CivilSpan[] = [],
): InstantInterval[] {
  if (!checkWeeklyHours(hours).ok) throw new RangeError('Weekly hours must be checked first');
  const closedDays = mergeOverlappingAndTouching(
    closed.map(({ from, to }) => ({ start: dayNumberOf(from), end: dayNumberOf(to) + 1 })),
  );
  const found: InstantInterval[] = [];
  const last = dayNumberOf(over.to);
  for (let day = dayNumberOf(over.from); day <= last; day += 1) {
    if (containsPoint(closedDays, day)) continue;
    const date = dateOfDayNumber(day);
    const weekday = weekdayOf(date);
    for (const row of hours) {
      if (row.weekday !== weekday) continue;
      const [start, end] = [instantOf(date, row.from, zone), instantOf(date, row.to, zone)];
      if (start < end) found.push({ start, end });
    }
  }
  return mergeOverlapping(found);
}
