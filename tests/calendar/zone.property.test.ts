import * as fc from 'fast-check';
import { getISOWeek, getISOWeekYear, addDays as addDaysToDate } from 'date-fns';
import { UTCDate } from '@date-fns/utc';
import { expect, test } from 'vitest';
import {
  addDays, dateOf, dateOfDayNumber, dayNumberOf, endOfDay, formatIsoWeek, instantOf, isoWeekOf, listZones, mondayOf, nextWeek, offsetMinutes,
  parseIsoWeek, previousWeek, startOfDay, wallOf, wallTimeOfMinute, weekdayOf,
} from '@/lib/calendar';
import { instant, MS_PER_MINUTE } from '@/lib/units';

const anyZone = fc.constantFrom(...listZones());
/** Whole minutes from 1975 to 2060. */
const anyMoment = fc
  .integer({ min: Date.UTC(1975, 0) / MS_PER_MINUTE, max: Date.UTC(2060, 0) / MS_PER_MINUTE })
  .map((minute) => instant(minute * MS_PER_MINUTE));
/** Days near which the clocks of many zones change, and any others. */
const anyDate = fc.oneof(
  fc.integer({ min: dayNumberOf('2012-01-01'), max: dayNumberOf('2060-01-01') }),
  fc.integer({ min: dayNumberOf('2026-03-01'), max: dayNumberOf('2026-04-10') }),
  fc.integer({ min: dayNumberOf('2026-09-01'), max: dayNumberOf('2026-11-05') }),
).map(dateOfDayNumber);
const anyTime = fc.integer({ min: 0, max: 1439 }).map(wallTimeOfMinute);

/** The same question put to the platform's own formatter, with no memory. */
function wallByPlatform(zone: string, at: number): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit',
  }).formatToParts(new Date(at));
  const part = (type: string): string => parts.find((found) => found.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')}`;
}

test('the wall agrees with the platform in every zone', () => {
  fc.assert(
    fc.property(anyZone, anyMoment, (zone, at) => {
      const { date, time } = wallOf(at, zone);
      expect(`${date} ${time}`).toBe(wallByPlatform(zone, at));
    }),
    { numRuns: 500 },
  );
});

test('a moment read from the wall is the moment itself or its twin an earlier clock change away', () => {
  fc.assert(
    fc.property(anyZone, anyMoment, (zone, at) => {
      const { date, time } = wallOf(at, zone);
      const back = instantOf(date, time, zone);
      expect(back).toBeLessThanOrEqual(at);
      expect(wallOf(back, zone)).toEqual(wallOf(at, zone));
      if (offsetMinutes(zone, back) === offsetMinutes(zone, at)) expect(back).toBe(at);
    }),
    { numRuns: 500 },
  );
});

test('the wall shows what was asked for, or in a gap a later time by the length of the gap', () => {
  fc.assert(
    fc.property(anyZone, anyDate, anyTime, (zone, date, time) => {
      const at = instantOf(date, time, zone);
      const wall = wallOf(at, zone);
      if (wall.date === date && wall.time === time) return;
      const asked = Date.parse(`${date}T${time}Z`);
      const shown = Date.parse(`${wall.date}T${wall.time}Z`);
      const gap = offsetMinutes(zone, at) - offsetMinutes(zone, instant(asked - 86_400_000));
      expect(gap).toBeGreaterThan(0);
      expect(shown - asked).toBe(gap * MS_PER_MINUTE);
    }),
    { numRuns: 1000 },
  );
});

test('a day starts with its date, ends before the next and joins it', () => {
  fc.assert(
    fc.property(anyZone, anyDate, (zone, date) => {
      const start = startOfDay(date, zone);
      expect(dateOf(start, zone)).toBe(date);
      expect(dateOf(instant(start - 1), zone)).toBe(addDays(date, -1));
      expect(endOfDay(date, zone)).toBe(startOfDay(addDays(date, 1), zone));
    }),
    { numRuns: 1000 },
  );
});

test('ISO weeks agree with date-fns on every date', () => {
  fc.assert(
    fc.property(anyDate, (date) => {
      const utc = new UTCDate(`${date}T00:00Z`);
      expect(isoWeekOf(date)).toEqual({ year: getISOWeekYear(utc), week: getISOWeek(utc) });
      expect(weekdayOf(date)).toBe(utc.getUTCDay() || 7);
    }),
    { numRuns: 1000 },
  );
});

test('weeks written and read again are the same, and next undoes previous', () => {
  fc.assert(
    fc.property(anyDate, (date) => {
      const week = isoWeekOf(date);
      expect(parseIsoWeek(formatIsoWeek(week))).toEqual({ ok: true, value: week });
      expect(isoWeekOf(mondayOf(week))).toEqual(week);
      expect(weekdayOf(mondayOf(week))).toBe(1);
      expect(previousWeek(nextWeek(week))).toEqual(week);
    }),
  );
});

test('adding days agrees with date-fns and returns', () => {
  fc.assert(
    fc.property(anyDate, fc.integer({ min: -4000, max: 4000 }), (date, days) => {
      const later = addDays(date, days);
      expect(later).toBe(addDaysToDate(new UTCDate(`${date}T00:00Z`), days).toISOString().slice(0, 10));
      expect(addDays(later, -days)).toBe(date);
    }),
  );
});
