/**
 * Between instants and the clock on the wall. Right for instants from 1973 on: older offsets were not always
 * whole minutes, and plans do not reach back that far.
 */
import { tzOffset } from '@date-fns/tz';
import { instant, MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { dateOfDayNumber, dayNumberOf, weekdayOf, type CivilDate, type Weekday } from './civil';
import { quoteText } from './quoted-text';
import { minuteOfDay, wallTimeOfMinute, type WallTime } from './wall-time';
import { isZone } from './zone-name';

/** What calendar and clock on the wall show at a moment. */
export interface WallMoment {
  readonly date: CivilDate;
  /** To the minute, seconds cut off. */
  readonly time: WallTime;
  readonly weekday: Weekday;
}

const MS_PER_DAY = MINUTES_PER_DAY * MS_PER_MINUTE;
const MOST_REMEMBERED_DAYS = 50_000;

/** Offset at the start of each UTC day already asked for, by zone: formatting is slow, a lookup is not. */
const offsetsByZone = new Map<string, Map<number, number>>();

function readOffset(zone: string, ms: number): number {
  const offset = tzOffset(zone, new Date(ms));
  if (Number.isNaN(offset)) throw new RangeError(`No offset of ${zone} at ${ms}`);
  return offset;
}

function rememberedOffsets(zone: string): Map<number, number> {
  let offsets = offsetsByZone.get(zone);
  if (offsets === undefined) {
    if (!isZone(zone)) throw new RangeError(`There is no time zone ${quoteText(zone)}`);
    offsets = new Map();
    offsetsByZone.set(zone, offsets);
  } else if (offsets.size > MOST_REMEMBERED_DAYS) {
    offsets.clear();
  }
  return offsets;
}

function offsetAtDayStart(zone: string, offsets: Map<number, number>, day: number): number {
  let offset = offsets.get(day);
  if (offset === undefined) {
    offset = readOffset(zone, day * MS_PER_DAY);
    offsets.set(day, offset);
  }
  return offset;
}

/**
 * Minutes the wall clock is ahead of UTC, negative when behind.
 * @throws RangeError when there is no such zone.
 * @example offsetMinutes('Europe/London', instant(Date.parse('2026-07-01T12:00Z'))) // 60
 */
export function offsetMinutes(zone: string, at: Instant): number {
  const offsets = rememberedOffsets(zone);
  const day = Math.floor(at / MS_PER_DAY);
  const before = offsetAtDayStart(zone, offsets, day);
  // No zone changes its clock twice in one day, so equal ends mean one offset in between.
  return before === offsetAtDayStart(zone, offsets, day + 1) ? before : readOffset(zone, at);
}

/**
 * The moment a wall clock shows a time. RFC 5545, 3.3.5: a time that comes twice means the first, a time the clock
 * skips is read with the offset before the gap. `24:00` is 00:00 of the next date.
 * @throws RangeError for a date, time or zone that does not exist.
 * @example instantOf('2026-12-01', '18:30', 'Europe/London') // Date.parse('2026-12-01T18:30Z')
 * @example instantOf('2026-10-25', '01:30', 'Europe/London') // Date.parse('2026-10-25T00:30Z')
 */
export function instantOf(date: CivilDate, time: WallTime, zone: string): Instant {
  const wall = dayNumberOf(date) * MS_PER_DAY + minuteOfDay(time) * MS_PER_MINUTE;
  // Offsets stay under a day, so these two lie on either side of any change near this time.
  const before = offsetMinutes(zone, instant(wall - MS_PER_DAY));
  const after = offsetMinutes(zone, instant(wall + MS_PER_DAY));
  const withBefore = instant(wall - before * MS_PER_MINUTE);
  if (before === after) return withBefore;
  const withAfter = instant(wall - after * MS_PER_MINUTE);
  // A time that comes twice fits both, first with the offset before; one in a gap fits neither.
  const fitsOnlyAfter = offsetMinutes(zone, withBefore) !== before && offsetMinutes(zone, withAfter) === after;
  return fitsOnlyAfter ? withAfter : withBefore;
}

/** Wall time as if it were UTC, in ms. */
function wallMs(at: Instant, zone: string): number {
  return at + offsetMinutes(zone, at) * MS_PER_MINUTE;
}

/** @example dateOf(instant(Date.parse('2026-07-01T23:30Z')), 'Europe/London') // '2026-07-02' */
export function dateOf(at: Instant, zone: string): CivilDate {
  return dateOfDayNumber(Math.floor(wallMs(at, zone) / MS_PER_DAY));
}

/** @example wallOf(instant(Date.parse('2026-12-01T18:30Z')), 'Europe/London') // { date: '2026-12-01', time: '18:30', weekday: 2 } */
export function wallOf(at: Instant, zone: string): WallMoment {
  const ms = wallMs(at, zone);
  const day = Math.floor(ms / MS_PER_DAY);
  const date = dateOfDayNumber(day);
  const time = wallTimeOfMinute(Math.floor((ms - day * MS_PER_DAY) / MS_PER_MINUTE));
  return { date, time, weekday: weekdayOf(date) };
}

/**
 * First moment of a date; where the clock skips midnight, the moment after the gap.
 * @example startOfDay('2026-03-29', 'Europe/London') // Date.parse('2026-03-29T00:00Z')
 */
export function startOfDay(date: CivilDate, zone: string): Instant {
  return instantOf(date, '00:00', zone);
}

/**
 * First moment after a date: a half-open end. Clock changes make a day of 23 or 25 hours.
 * @example endOfDay('2026-03-29', 'Europe/London') // Date.parse('2026-03-29T23:00Z')
 */
export function endOfDay(date: CivilDate, zone: string): Instant {
  return instantOf(date, '24:00', zone);
}
