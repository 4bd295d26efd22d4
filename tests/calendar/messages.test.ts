import { describe, expect, it } from 'vitest';
import {
  checkWeeklyHours, containsInterval, dateOfDayNumber, dayNumberOf, formatIsoWeek, minuteOfDay, mondayOf, parseCivilDate, parseIsoWeek, parseWallTime,
  parseZone, weeksInIsoYear, type Weekday,
} from '@/lib/calendar';
import type { Result } from '@/lib/result';

/** What a person reads: what is wrong, and one way out. */
function said(result: Result<unknown>): readonly string[] {
  return result.ok ? [] : result.error.map(({ fix, message }) => `${message} ${fix}`);
}

describe('what is refused says why and what to write', () => {
  it.each([
    ['a date', parseCivilDate('1/12/2026'), '"1/12/2026" is not a date. Write year, month and day like 2026-12-01.'],
    ['a year', parseCivilDate('0026-12-01'), '"0026-12-01" lies outside the years 1900 to 2999. Check the four digits of the year.'],
    ['a month', parseCivilDate('2026-13-01'), '"2026-13-01" has no such month: 13. Write a month from 01 to 12.'],
    ['a day', parseCivilDate('2026-02-30'), '"2026-02-30" does not exist: February 2026 has 28 days. Write a day from 01 to 28, such as 2026-02-28.'],
    ['a week', parseIsoWeek('week 49'), '"week 49" is not a week. Write year and week like 2026-W49.'],
    ['the year of a week', parseIsoWeek('3000-W01'), '"3000-W01" lies outside the years 1900 to 2999. Check the four digits of the year.'],
    ['a time', parseWallTime('25:00'), '"25:00" is not a time of day. Write hours and minutes like 18:30, from 00:00 to 23:59.'],
    ['a start at the end of the day', parseWallTime('24:00'), '24:00 ends a day and cannot start anything. Write 00:00 on the next day.'],
    ['no zone at all', parseZone('  '), 'The time zone is empty. Write area and city, such as Europe/London.'],
    ['a zone far from all', parseZone('Xqxqxqxq'), 'There is no time zone "Xqxqxqxq". Write area and city, such as Europe/London.'],
    ['a zone that is nearly one', parseZone('Europe/Lodnon'), 'There is no time zone "Europe/Lodnon". Write Europe/London.'],
    ['text of two letters, to which many are near', parseZone('Ro'), 'There is no time zone "Ro". Write area and city, such as Europe/London.'],
  ])('%s', (_, result, sentence) => {
    expect(said(result)).toEqual([sentence]);
  });

  it('names the weekday of hours that end before they start', () => {
    const names = ([1, 2, 3, 4, 5, 6, 7] as const).flatMap((weekday: Weekday) => said(checkWeeklyHours([{ weekday, from: '22:00', to: '02:00' }])));
    expect(names.map((text) => /on (\w+) end/.exec(text)?.[1])).toEqual(['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']);
    expect(names[0]).toBe('The hours on Monday end at 02:00, not after their start at 22:00. Choose an end after 22:00, or split hours past midnight into one row to 24:00 and one from 00:00 on the next day.');
  });

  it('tells of a wrong end alone when the start cannot be read either way', () => {
    expect(said(checkWeeklyHours([{ weekday: 1, from: '9', to: '08:00' }]))).toEqual(['"9" is not a time of day. Write hours and minutes like 18:30, from 00:00 to 23:59.']);
  });

  it('offers three near zones at most', () => {
    const offered = (/Write (.+)\.$/.exec(said(parseZone('Indian/Mahi'))[0] ?? '')?.[1] ?? '').split(' or ');
    expect(offered.length).toBeLessThanOrEqual(3);
    expect(offered).toContain('Indian/Mahe');
  });

  it('quotes long text by its beginning', () => {
    expect(said(parseCivilDate(`${'x'.repeat(40)}`))[0]).toBe(`"${'x'.repeat(40)}" is not a date. Write year, month and day like 2026-12-01.`);
    expect(said(parseCivilDate(` ${'x'.repeat(41)} `))[0]).toBe(`"${'x'.repeat(40)}…" is not a date. Write year, month and day like 2026-12-01.`);
  });
});

describe('the edges of what can be read', () => {
  it('years and weeks run from 1900 to 2999', () => {
    expect([parseIsoWeek('1900-W01'), parseIsoWeek('2999-W52')].map(({ ok }) => ok)).toEqual([true, true]);
    expect([parseIsoWeek('1899-W52'), parseIsoWeek('3000-W01')].map(({ ok }) => ok)).toEqual([false, false]);
    expect(['1900-01-01', '2999-12-31'].map((date) => dateOfDayNumber(dayNumberOf(date)))).toEqual(['1900-01-01', '2999-12-31']);
    expect(() => dateOfDayNumber(dayNumberOf('2999-12-31') + 1)).toThrow('is no whole day in the years 1900 to 2999');
    expect(() => dateOfDayNumber(dayNumberOf('1900-01-01') - 1)).toThrow(RangeError);
  });

  it('nothing may stand before a week or a time', () => {
    expect(said(parseIsoWeek('in 2026-W49'))).toHaveLength(1);
    expect(said(parseWallTime('at 18:30'))).toHaveLength(1);
    expect(parseWallTime(' 18:30 ')).toEqual({ ok: true, value: '18:30' });
  });

  it('a zone is an area and a city and nothing before them', () => {
    expect(said(parseZone('1 Europe/London'))).toHaveLength(1);
    expect(parseZone('utc')).toEqual({ ok: true, value: 'UTC' });
  });

  it('a bug is told in words as well', () => {
    expect(() => minuteOfDay('9:30')).toThrow('"9:30" is no wall time');
    expect(() => mondayOf({ year: 2025, week: 53 })).toThrow('There is no week 2025-W53');
    expect(() => dayNumberOf('2026-02-30')).toThrow('"2026-02-30" is no civil date');
  });

  it('years are written with four digits, weeks with two', () => {
    expect(formatIsoWeek({ year: 926, week: 1 })).toBe('0926-W01');
    expect(weeksInIsoYear(1900)).toBe(52);
  });

  it('an interval lies inside another only when both its ends do', () => {
    const list = [{ start: 2, end: 4 }];
    expect(containsInterval(list, { start: 2, end: 4 })).toBe(true);
    expect(containsInterval(list, { start: 1, end: 4 })).toBe(false);
    expect(containsInterval(list, { start: 5, end: 6 })).toBe(false);
    expect(containsInterval([], { start: 5, end: 6 })).toBe(false);
  });
});
