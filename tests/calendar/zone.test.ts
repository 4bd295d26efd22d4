import { expect, test } from 'vitest';
import { dateOf, endOfDay, instantOf, isZone, listZones, offsetMinutes, parseZone, startOfDay, wallOf } from '@/lib/calendar';
import { instant, type Instant } from '@/lib/units';

const at = (iso: string): Instant => instant(Date.parse(iso));
const hoursIn = (date: string, zone: string): number => (endOfDay(date, zone) - startOfDay(date, zone)) / 3_600_000;

const ANY_ZONE = 'Write area and city, such as Europe/London.';

test('area and city is a zone, a bare offset or an abbreviation is not', () => {
  for (const name of ['Europe/London', 'Asia/Kolkata', 'America/Argentina/Buenos_Aires', 'UTC', 'GMT']) expect(isZone(name)).toBe(true);
  for (const name of ['', ' ', 'London', '+01:00', 'BST', 'EST', 'GB', 'Europe/London ', 'Europe/', 'Local', 'x'.repeat(10_000)]) expect(isZone(name)).toBe(false);
});

test('the list of zones is sorted, without doubles, and holds present names', () => {
  const zones = listZones();
  expect(zones).toEqual([...new Set(zones)].toSorted());
  expect(zones).toEqual(expect.arrayContaining(['Europe/London', 'Asia/Kolkata', 'Europe/Kyiv', 'UTC']));
});

test.each([
  [' europe/london ', 'Europe/London'],
  ['ASIA/KOLKATA', 'Asia/Kolkata'],
  ['utc', 'UTC'],
  ['Europe/London', 'Europe/London'],
])('%j is read as %s', (text, zone) => {
  expect(parseZone(text)).toEqual({ ok: true, value: zone });
});

test.each([
  ['London', 'Write Europe/London.'],
  ['Europe/Lodnon', 'Write Europe/London.'],
  ['Eurpe/Lisbon', 'Write Europe/Lisbon.'],
  ['Wales/Lisbon', 'Write Europe/Lisbon.'],
  ['kolkata', 'Write Asia/Kolkata.'],
  ['New York', 'Write America/New_York.'],
  ['Narnia/Edinburgh', ANY_ZONE],
  ['BST', ANY_ZONE],
  ['+01:00', ANY_ZONE],
  ['', ANY_ZONE],
])('%j is refused: %s', (text, fix) => {
  const result = parseZone(text);
  const found = result.ok ? null : result.error[0];
  expect(found?.code).toBe('zone-unknown');
  expect(found?.fix).toBe(fix);
});

test('ten thousand characters for a zone give a short message', () => {
  const result = parseZone('x'.repeat(10_000));
  const found = result.ok ? null : result.error[0];
  expect(found?.message.length).toBeLessThan(80);
  expect(found?.fix).toBe(ANY_ZONE);
});

test('offsets are east of UTC positive and follow summer time', () => {
  expect(offsetMinutes('Europe/London', at('2026-03-29T00:59:59.999Z'))).toBe(0);
  expect(offsetMinutes('Europe/London', at('2026-03-29T01:00Z'))).toBe(60);
  expect(offsetMinutes('America/New_York', at('2026-01-15T00:00Z'))).toBe(-300);
  expect(offsetMinutes('Asia/Kolkata', at('2026-01-15T00:00Z'))).toBe(330);
  expect(offsetMinutes('Australia/Lord_Howe', at('2026-01-15T00:00Z'))).toBe(660);
  expect(offsetMinutes('Australia/Lord_Howe', at('2026-07-15T00:00Z'))).toBe(630);
});

test('an unknown zone throws where one was expected', () => {
  expect(() => offsetMinutes('Europe/Lodnon', at('2026-01-15T00:00Z'))).toThrow('There is no time zone "Europe/Lodnon"');
  expect(() => wallOf(at('2026-01-15T00:00Z'), '+01:00')).toThrow(RangeError);
});

test('the wall shows date, time and weekday of the zone', () => {
  expect(wallOf(at('2026-12-01T18:30:59.999Z'), 'Europe/London')).toEqual({ date: '2026-12-01', time: '18:30', weekday: 2 });
  expect(wallOf(at('2026-12-01T18:30Z'), 'Pacific/Auckland')).toEqual({ date: '2026-12-02', time: '07:30', weekday: 3 });
  expect(wallOf(at('2026-12-01T04:59Z'), 'America/New_York')).toEqual({ date: '2026-11-30', time: '23:59', weekday: 1 });
  expect(wallOf(at('2026-12-01T05:00Z'), 'America/New_York')).toEqual({ date: '2026-12-01', time: '00:00', weekday: 2 });
});

test('both sides of midnight belong to their own date', () => {
  expect(dateOf(at('2026-07-01T22:59:59.999Z'), 'Europe/London')).toBe('2026-07-01');
  expect(dateOf(at('2026-07-01T23:00Z'), 'Europe/London')).toBe('2026-07-02');
});

test('times just outside a gap are read as they stand', () => {
  expect(instantOf('2026-03-29', '00:59', 'Europe/London')).toBe(at('2026-03-29T00:59Z'));
  expect(instantOf('2026-03-29', '02:00', 'Europe/London')).toBe(at('2026-03-29T01:00Z'));
});

test('times just outside a repeated hour are read as they stand', () => {
  expect(instantOf('2026-10-25', '00:59', 'Europe/London')).toBe(at('2026-10-24T23:59Z'));
  expect(instantOf('2026-10-25', '02:00', 'Europe/London')).toBe(at('2026-10-25T02:00Z'));
});

test('24:00 is the start of the next date', () => {
  expect(instantOf('2026-12-31', '24:00', 'Europe/London')).toBe(instantOf('2027-01-01', '00:00', 'Europe/London'));
});

test('days of a clock change have 23 or 25 hours', () => {
  expect(['2026-03-28', '2026-03-29', '2026-10-24', '2026-10-25'].map((date) => hoursIn(date, 'Europe/London'))).toEqual([24, 23, 24, 25]);
  expect(hoursIn('2026-10-04', 'Australia/Lord_Howe')).toBe(23.5);
});

test('a day whose midnight is skipped starts after the gap', () => {
  const start = startOfDay('2026-09-06', 'America/Santiago');
  expect(wallOf(start, 'America/Santiago')).toMatchObject({ date: '2026-09-06', time: '01:00' });
  expect(dateOf(instant(start - 1), 'America/Santiago')).toBe('2026-09-05');
});

test('a date that a zone left out is an empty day', () => {
  expect(startOfDay('2011-12-30', 'Pacific/Apia')).toBe(endOfDay('2011-12-30', 'Pacific/Apia'));
  expect(dateOf(startOfDay('2011-12-30', 'Pacific/Apia'), 'Pacific/Apia')).toBe('2011-12-31');
});

test('wrong dates and times throw', () => {
  expect(() => instantOf('2026-02-30', '12:00', 'UTC')).toThrow(RangeError);
  expect(() => instantOf('2026-02-03', '24:01', 'UTC')).toThrow(RangeError);
});
