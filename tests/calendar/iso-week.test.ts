import { expect, test } from 'vitest';
import { formatIsoWeek, isoWeekOf, mondayOf, nextWeek, parseIsoWeek, previousWeek, weekDates, weeksInIsoYear } from '@/lib/calendar';

test('a week belongs to the year of its Thursday', () => {
  expect(isoWeekOf('2026-12-27')).toEqual({ year: 2026, week: 52 });
  expect(isoWeekOf('2026-12-28')).toEqual({ year: 2026, week: 53 });
  expect(isoWeekOf('2027-01-03')).toEqual({ year: 2026, week: 53 });
  expect(isoWeekOf('2027-01-04')).toEqual({ year: 2027, week: 1 });
});

test('years have 52 or 53 weeks', () => {
  expect([2020, 2024, 2025, 2026, 2027, 2032].map(weeksInIsoYear)).toEqual([53, 52, 52, 53, 52, 53]);
});

test('weeks step over New Year both ways', () => {
  expect(nextWeek({ year: 2026, week: 53 })).toEqual({ year: 2027, week: 1 });
  expect(previousWeek({ year: 2027, week: 1 })).toEqual({ year: 2026, week: 53 });
  expect(nextWeek({ year: 2025, week: 52 })).toEqual({ year: 2026, week: 1 });
  expect(nextWeek({ year: 2026, week: 48 })).toEqual({ year: 2026, week: 49 });
});

test('a week has seven dates from Monday to Sunday', () => {
  expect(weekDates({ year: 2026, week: 49 })).toEqual([
    '2026-11-30', '2026-12-01', '2026-12-02', '2026-12-03', '2026-12-04', '2026-12-05', '2026-12-06',
  ]);
  expect(mondayOf({ year: 2026, week: 1 })).toBe('2025-12-29');
});

test.each(['2026-W49', '2026-w49', '2026W49', ' 2026-W49 '])('%j is read as week 49 of 2026', (text) => {
  expect(parseIsoWeek(text)).toEqual({ ok: true, value: { year: 2026, week: 49 } });
});

test.each([
  ['', 'week-shape'],
  ['49', 'week-shape'],
  ['2026-49', 'week-shape'],
  ['2026-W9', 'week-shape'],
  ['2026-W49-1', 'week-shape'],
  ['0026-W49', 'week-year'],
  ['2026-W00', 'week-number'],
  ['2026-W54', 'week-number'],
  ['2025-W53', 'week-number'],
])('%j is refused with %s', (text, code) => {
  const result = parseIsoWeek(text);
  expect(result.ok ? null : result.error.map((found) => found.code)).toEqual([code]);
});

test('a week the year does not have is answered with the nearest it has', () => {
  const result = parseIsoWeek('2025-W53');
  expect(result.ok ? null : result.error[0]).toMatchObject({
    message: '"2025-W53" does not exist: 2025 has weeks 01 to 52.',
    fix: 'Write a week of that year, such as 2025-W52.',
  });
  expect(parseIsoWeek('2026-W53').ok).toBe(true);
});

test('weeks are written with two digits', () => {
  expect(formatIsoWeek({ year: 2026, week: 9 })).toBe('2026-W09');
  expect(formatIsoWeek({ year: 2026, week: 49 })).toBe('2026-W49');
});

test('a week that does not exist throws where one was expected', () => {
  for (const week of [0, 53, 1.5]) expect(() => mondayOf({ year: 2025, week })).toThrow(RangeError);
});
