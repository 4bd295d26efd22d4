import { expect, test } from 'vitest';
import { dateOf, formatIsoWeek, formatMoment, instantOf, isoWeekOf, offsetMinutes, wallOf, weekdayOf } from '@/lib/calendar';
import { addMinutes, instant, type Instant } from '@/lib/units';

const LONDON = 'Europe/London';
const NEW_YORK = 'America/New_York';
const at = (iso: string): Instant => instant(Date.parse(iso));

// ISO 8601 week dates. Values computed with an independent program.
test.each([
  ['2005-01-01', '2004-W53-6'],
  ['2008-12-29', '2009-W01-1'],
  ['2010-01-03', '2009-W53-7'],
  ['2024-12-30', '2025-W01-1'],
  ['2026-12-31', '2026-W53-4'],
])('ISO 8601: %s is %s', (date, weekDate) => {
  expect(`${formatIsoWeek(isoWeekOf(date))}-${weekdayOf(date)}`).toBe(weekDate);
});

// IANA time zone database, Europe/London 2026. Values computed with an independent program.
test.each([
  ['2026-03-29T01:00Z', 0, 60],
  ['2026-10-25T01:00Z', 60, 0],
])('time zone database: London changes its clocks at %s from %i to %i minutes', (iso, before, after) => {
  expect(offsetMinutes(LONDON, instant(at(iso) - 1))).toBe(before);
  expect(offsetMinutes(LONDON, at(iso))).toBe(after);
});

// Elapsed time over the same two changes. Values computed with an independent program.
test.each([
  ['2026-03-28', 'Sun 29 Mar 09:00'],
  ['2026-10-24', 'Sun 25 Oct 07:00'],
  ['2026-06-06', 'Sun 7 Jun 08:00'],
])('a cure of 12 h from %s 20:00 in London ends on %s: cure is elapsed time', (date, end) => {
  expect(formatMoment(addMinutes(instantOf(date, '20:00', LONDON), 12 * 60), LONDON)).toBe(end);
});

// Appointments are wall time: the same hour on the wall lies 23 or 25 hours apart over a change.
test.each([
  ['2026-03-28', '2026-03-29', 23],
  ['2026-10-24', '2026-10-25', 25],
  ['2026-06-06', '2026-06-07', 24],
])('an appointment at 20:00 on %s and on %s in London are %i h apart', (first, second, hours) => {
  const [from, to] = [instantOf(first, '20:00', LONDON), instantOf(second, '20:00', LONDON)];
  expect((to - from) / 3_600_000).toBe(hours);
});

// RFC 5545, 3.3.5, FORM #3: "TZID=America/New_York:20071104T013000 indicates November 4, 2007 at 1:30 A.M. EDT (UTC-04:00)".
test('RFC 5545, 3.3.5: a local time that comes twice is the first of the two', () => {
  expect(instantOf('2007-11-04', '01:30', NEW_YORK)).toBe(at('2007-11-04T01:30-04:00'));
});

// RFC 5545, 3.3.5, FORM #3: "TZID=America/New_York:20070311T023000 indicates March 11, 2007 at 3:30 A.M. EDT (UTC-04:00), one hour after 1:30 A.M. EST (UTC-05:00)".
test('RFC 5545, 3.3.5: a local time in a gap takes the offset before the gap', () => {
  const moment = instantOf('2007-03-11', '02:30', NEW_YORK);
  expect(moment).toBe(at('2007-03-11T03:30-04:00'));
  expect(moment - instantOf('2007-03-11', '01:30', NEW_YORK)).toBe(3_600_000);
  expect(wallOf(moment, NEW_YORK)).toMatchObject({ date: '2007-03-11', time: '03:30' });
});

// RFC 5545, 3.3.5, the same rule at the two changes of London.
test.each([
  ['2026-10-25', '00:59', '2026-10-24T23:59Z'],
  ['2026-10-25', '01:00', '2026-10-25T00:00Z'],
  ['2026-10-25', '01:59', '2026-10-25T00:59Z'],
  ['2026-10-25', '02:00', '2026-10-25T02:00Z'],
  ['2026-03-29', '00:59', '2026-03-29T00:59Z'],
  ['2026-03-29', '01:00', '2026-03-29T01:00Z'],
  ['2026-03-29', '01:59', '2026-03-29T01:59Z'],
  ['2026-03-29', '02:00', '2026-03-29T01:00Z'],
])('RFC 5545, 3.3.5: %s %s in London is %s', (date, time, iso) => {
  expect(instantOf(date, time, LONDON)).toBe(at(iso));
});

// RFC 5545, 3.6.1: an event from 28 June 2007 that lasts through 8 July ends, exclusively, on 9 July.
test('RFC 5545, 3.6.1: the end of a last day is the first moment of the day after', () => {
  expect(dateOf(instantOf('2007-07-08', '24:00', NEW_YORK), NEW_YORK)).toBe('2007-07-09');
});
