import { expect, test } from 'vitest';
import {
  addDays, compareDates, dateOfDayNumber, dayNumberOf, daysBetween, daysInMonth, eachDate, isCivilDate, minuteOfDay, parseCivilDate,
  parseWallTime, wallTimeOfMinute, weekdayOf,
} from '@/lib/calendar';

function issueOf(text: string): { readonly code: string; readonly message: string; readonly fix: string } | null {
  const result = parseCivilDate(text);
  return result.ok ? null : (result.error[0] ?? null);
}

test.each(['1900-01-01', '2028-02-29', '2026-12-31', '2999-12-31', ' 2026-12-01 '])('%s is read as a date', (text) => {
  expect(parseCivilDate(text)).toEqual({ ok: true, value: text.trim() });
});

test.each([
  ['', 'date-shape'],
  ['1/12/2026', 'date-shape'],
  ['2026-12-1', 'date-shape'],
  ['20261201', 'date-shape'],
  ['2026-12-01T00:00', 'date-shape'],
  ['1899-12-31', 'date-year'],
  ['3000-01-01', 'date-year'],
  ['0026-12-01', 'date-year'],
  ['2026-00-10', 'date-month'],
  ['2026-13-10', 'date-month'],
  ['2026-12-00', 'date-day'],
  ['2026-12-32', 'date-day'],
  ['2026-02-29', 'date-day'],
  ['2100-02-29', 'date-day'],
])('%j is refused with %s', (text, code) => {
  expect(issueOf(text)?.code).toBe(code);
});

test('a refused date says why and names one date that would do', () => {
  expect(issueOf('2026-02-30')).toMatchObject({
    message: '"2026-02-30" does not exist: February 2026 has 28 days.',
    fix: 'Write a day from 01 to 28, such as 2026-02-28.',
  });
});

test('ten thousand characters for a date give a short message', () => {
  expect(issueOf('9'.repeat(10_000))?.message.length).toBeLessThan(80);
  expect(issueOf(`a\n\u0000\u202eb`)?.message).toBe('"a b" is not a date.');
});

test('a civil date has exactly one spelling', () => {
  expect(isCivilDate('2026-12-01')).toBe(true);
  expect(isCivilDate(' 2026-12-01')).toBe(false);
  expect(isCivilDate('2026-12-01\n')).toBe(false);
  expect(isCivilDate('2026-02-30')).toBe(false);
});

test('days are added over the ends of months, years and leap days', () => {
  expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
  expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
  expect(addDays('2026-12-01', 0)).toBe('2026-12-01');
});

test('days are counted from the first date to the second', () => {
  expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
  expect(daysBetween('2026-03-30', '2026-03-28')).toBe(-2);
  expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  expect(dayNumberOf('1970-01-01')).toBe(0);
  expect(dateOfDayNumber(-1)).toBe('1969-12-31');
});

test('an ISO week runs from Monday, 1, to Sunday, 7', () => {
  expect(eachDate('2026-11-30', '2026-12-06').map(weekdayOf)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  expect(weekdayOf('1970-01-01')).toBe(4);
  expect(weekdayOf('1969-12-31')).toBe(3);
});

test('dates compare by time', () => {
  expect(['2027-01-01', '2026-02-01', '2026-12-01'].toSorted(compareDates)).toEqual(['2026-02-01', '2026-12-01', '2027-01-01']);
  expect(compareDates('2026-12-01', '2026-12-01')).toBe(0);
});

test('each date of a span includes both ends, and a reversed span has none', () => {
  expect(eachDate('2026-12-30', '2027-01-01')).toEqual(['2026-12-30', '2026-12-31', '2027-01-01']);
  expect(eachDate('2026-12-30', '2026-12-30')).toEqual(['2026-12-30']);
  expect(eachDate('2026-12-30', '2026-12-29')).toEqual([]);
});

test('months have their lengths', () => {
  expect([1, 2, 4, 12].map((month) => daysInMonth(2026, month))).toEqual([31, 28, 30, 31]);
  expect(daysInMonth(2000, 2)).toBe(29);
  expect(daysInMonth(2100, 2)).toBe(28);
});

test('arithmetic with something that is no date throws', () => {
  expect(() => addDays('2026-02-30', 1)).toThrow(RangeError);
  expect(() => addDays('2026-02-03', 0.5)).toThrow(RangeError);
  expect(() => addDays('2999-12-31', 1)).toThrow(RangeError);
  expect(() => addDays('1900-01-01', -1)).toThrow(RangeError);
  expect(() => weekdayOf('tomorrow')).toThrow('"tomorrow" is no civil date');
});

test.each(['00:00', '09:30', '23:59'])('%s is a time of day', (text) => {
  expect(parseWallTime(text)).toEqual({ ok: true, value: text });
});

test.each([['24:00', 'time-end-of-day'], ['24:01', 'time-shape'], ['23:60', 'time-shape'], ['9:30', 'time-shape'], ['', 'time-shape'], ['18:30:00', 'time-shape']])(
  '%j is refused as a start with %s',
  (text, code) => {
    const result = parseWallTime(text);
    expect(result.ok ? null : result.error.map((found) => found.code)).toEqual([code]);
  },
);

test('24:00 passes as an end', () => {
  expect(parseWallTime('24:00', 'end')).toEqual({ ok: true, value: '24:00' });
  expect(parseWallTime('24:01', 'end').ok).toBe(false);
});

test('wall times and minutes of the day go both ways', () => {
  expect(['00:00', '00:59', '01:00', '23:59', '24:00'].map(minuteOfDay)).toEqual([0, 59, 60, 1439, 1440]);
  expect([0, 59, 60, 1439, 1440].map(wallTimeOfMinute)).toEqual(['00:00', '00:59', '01:00', '23:59', '24:00']);
  expect(() => minuteOfDay('25:00')).toThrow(RangeError);
  for (const minute of [-1, 1441, 0.5, Number.NaN]) expect(() => wallTimeOfMinute(minute)).toThrow(RangeError);
});
