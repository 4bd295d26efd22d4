import { expect, test } from 'vitest';
import { eachDate, formatClock, formatDay, formatLength, formatMoment, formatWorkLength } from '@/lib/calendar';
import { instant } from '@/lib/units';

test('a day is weekday, day without a leading nought, and month', () => {
  expect(eachDate('2026-11-30', '2026-12-06').map(formatDay)).toEqual([
    'Mon 30 Nov', 'Tue 1 Dec', 'Wed 2 Dec', 'Thu 3 Dec', 'Fri 4 Dec', 'Sat 5 Dec', 'Sun 6 Dec',
  ]);
  expect(Array.from({ length: 12 }, (_, index) => formatDay(`2026-${String(index + 1).padStart(2, '0')}-10`).slice(-3)).join(' ')).toBe(
    'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec',
  );
});

test('clock and moment are those of the zone', () => {
  const at = instant(Date.parse('2026-12-01T18:30Z'));
  expect(formatClock(at, 'Europe/London')).toBe('18:30');
  expect(formatMoment(at, 'Europe/London')).toBe('Tue 1 Dec 18:30');
  expect(formatMoment(at, 'Pacific/Auckland')).toBe('Wed 2 Dec 07:30');
});

test.each([
  [0, '0 min'],
  [0.4, '0 min'],
  [-0.4, '0 min'],
  [0.5, '1 min'],
  [59, '59 min'],
  [59.6, '1 h'],
  [60, '1 h'],
  [61, '1 h 1 min'],
  [80, '1 h 20 min'],
  [-80, '-1 h 20 min'],
  [1439, '23 h 59 min'],
  [1439.6, '1 d'],
  [1440, '1 d'],
  [1469, '1 d'],
  [1470, '1 d 1 h'],
  [2849, '1 d 23 h'],
  [2850, '2 d'],
  [4560, '3 d 4 h'],
  [-4560, '-3 d 4 h'],
])('%d elapsed minutes are written %s', (length, text) => {
  expect(formatLength(length)).toBe(text);
});

test.each([
  [0, '0 min'],
  [45, '45 min'],
  [1440, '24 h'],
  [1815, '30 h 15 min'],
  [-90, '-1 h 30 min'],
])('%d worked minutes are written %s', (length, text) => {
  expect(formatWorkLength(length)).toBe(text);
});

test('a length that is no number throws', () => {
  expect(() => formatLength(Number.NaN)).toThrow(RangeError);
  expect(() => formatWorkLength(Number.POSITIVE_INFINITY)).toThrow(RangeError);
});
