import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  checkWeeklyHours, dateOf, eachDate, expandWeeklyHours, isSortedDisjoint, minuteOfDay, totalLength, wallOf, wallTimeOfMinute, weekdayOf, type CivilSpan, type WeeklyHours,
} from '@/lib/calendar';

const LONDON = 'Europe/London';
const row = (weekday: WeeklyHours['weekday'], from: string, to: string): WeeklyHours => ({ weekday, from, to });
const on = (from: string, to = from): CivilSpan => ({ from, to });

/** Starts and ends in UTC, as text. */
function expand(hours: readonly WeeklyHours[], over: CivilSpan, zone = LONDON, closed: readonly CivilSpan[] = []): string[] {
  return expandWeeklyHours(hours, over, zone, closed).map(
    ({ start, end }) => `${new Date(start).toISOString().slice(0, 16)}Z ${new Date(end).toISOString().slice(0, 16)}Z`,
  );
}

const evenings = [row(2, '18:30', '21:00'), row(4, '18:30', '21:00')];

test('hours fall on their weekdays, both ends of the range in it', () => {
  expect(expand(evenings, on('2026-12-01', '2026-12-08'))).toEqual([
    '2026-12-01T18:30Z 2026-12-01T21:00Z',
    '2026-12-03T18:30Z 2026-12-03T21:00Z',
    '2026-12-08T18:30Z 2026-12-08T21:00Z',
  ]);
  expect(expand(evenings, on('2026-12-02', '2026-12-02'))).toEqual([]);
  expect(expand(evenings, on('2026-12-08', '2026-12-01'))).toEqual([]);
});

test('closed spans take out both their ends and nothing more', () => {
  const daily = ([1, 2, 3, 4, 5, 6, 7] as const).map((weekday) => row(weekday, '09:00', '10:00'));
  const closed = [on('2026-12-24', '2026-12-26'), on('2026-12-26', '2026-12-27'), on('2026-12-25')];
  const dates = expandWeeklyHours(daily, on('2026-12-22', '2026-12-29'), LONDON, closed).map(({ start }) => dateOf(start, LONDON));
  expect(dates).toEqual(['2026-12-22', '2026-12-23', '2026-12-28', '2026-12-29']);
});

test('overlapping rows become one, touching rows stay two', () => {
  expect(expand([row(2, '09:00', '12:00'), row(2, '11:00', '13:00')], on('2026-12-01'))).toEqual(['2026-12-01T09:00Z 2026-12-01T13:00Z']);
  expect(expand([row(2, '12:00', '17:00'), row(2, '09:00', '12:00')], on('2026-12-01'))).toEqual([
    '2026-12-01T09:00Z 2026-12-01T12:00Z',
    '2026-12-01T12:00Z 2026-12-01T17:00Z',
  ]);
});

test('24:00 ends a day, and the next row may start there', () => {
  expect(expand([row(2, '22:00', '24:00'), row(3, '00:00', '01:00')], on('2026-12-01', '2026-12-02'))).toEqual([
    '2026-12-01T22:00Z 2026-12-02T00:00Z',
    '2026-12-02T00:00Z 2026-12-02T01:00Z',
  ]);
});

test('the same wall hours are other instants in summer', () => {
  expect(expand([row(2, '18:30', '21:00')], on('2026-07-07'))).toEqual(['2026-07-07T17:30Z 2026-07-07T20:00Z']);
});

test('a night of a clock change is an hour shorter or longer', () => {
  const night = [row(7, '00:00', '04:00')];
  expect(totalLength(expandWeeklyHours(night, on('2026-03-29'), LONDON))).toBe(3 * 3_600_000);
  expect(totalLength(expandWeeklyHours(night, on('2026-10-25'), LONDON))).toBe(5 * 3_600_000);
});

test('hours the clock skips are left out', () => {
  expect(expand([row(7, '01:30', '02:00')], on('2026-03-22', '2026-03-29'))).toEqual(['2026-03-22T01:30Z 2026-03-22T02:00Z']);
});

test('every row that makes no sense is named with its place', () => {
  const result = checkWeeklyHours([row(1, '09:00', '17:00'), row(2, '18:00', '18:00'), row(3, '24:00', '25:00'), row(5, '22:00', '02:00')]);
  expect(result.ok ? [] : result.error.map(({ code, path }) => [code, path])).toEqual([
    ['hours-end-before-start', [1, 'to']],
    ['time-end-of-day', [2, 'from']],
    ['time-shape', [2, 'to']],
    ['hours-end-before-start', [3, 'to']],
  ]);
  expect(result.ok ? '' : result.error[3]?.message).toBe('The hours on Friday end at 02:00, not after their start at 22:00.');
});

test('good rows pass, down to a single minute', () => {
  const hours = [row(1, '23:59', '24:00'), row(1, '18:00', '18:01')];
  expect(checkWeeklyHours(hours)).toEqual({ ok: true, value: hours });
});

test('expanding rows that were refused throws', () => {
  expect(() => expandWeeklyHours([row(2, '18:00', '18:00')], on('2026-12-01'), LONDON)).toThrow(RangeError);
  expect(() => expandWeeklyHours(evenings, on('2026-12-01'), 'London')).toThrow(RangeError);
});

test('whatever the rows, hours are sorted, disjoint and inside a row of their weekday', () => {
  const anyRow = fc
    .tuple(fc.constantFrom(1, 2, 3, 4, 5, 6, 7), fc.nat(1439), fc.integer({ min: 1, max: 1440 }))
    .filter(([, from, to]) => from < to)
    .map(([weekday, from, to]) => row(weekday, wallTimeOfMinute(from), wallTimeOfMinute(to)));
  fc.assert(
    fc.property(fc.array(anyRow, { maxLength: 6 }), fc.constantFrom(LONDON, 'America/New_York', 'Pacific/Auckland', 'Asia/Kolkata'), (rows, zone) => {
      // No clock changes within: those nights are told apart above.
      const over = on('2026-06-01', '2026-06-21');
      const found = expandWeeklyHours(rows, over, zone);
      expect(isSortedDisjoint(found)).toBe(true);
      for (const { start } of found) {
        const wall = wallOf(start, zone);
        expect(rows.some(({ weekday, from }) => weekday === wall.weekday && from === wall.time)).toBe(true);
      }
      for (const date of eachDate(over.from, over.to)) {
        const minutesOpen = found
          .filter(({ start }) => dateOf(start, zone) === date)
          .reduce((sum, { start, end }) => sum + (end - start) / 60_000, 0);
        const open = new Set<number>();
        for (const { weekday, from, to } of rows) {
          if (weekday === weekdayOf(date)) for (let m = minuteOfDay(from); m < minuteOfDay(to); m += 1) open.add(m);
        }
        expect(minutesOpen).toBe(open.size);
      }
    }),
    { numRuns: 50 },
  );
});
