import { expect, test } from 'vitest';
import { checkFilmingTimes, COMMON_PRACTICE, sessionTime, usualCounts, type FilmingManner } from '@/lib/estimate';

const WORK = { low: 100, likely: 120, high: 140 };

function ratio(manner: FilmingManner, happensOnce = false): number {
  return sessionTime(WORK, usualCounts(COMMON_PRACTICE.habits[manner], 120, happensOnce), COMMON_PRACTICE.times).mean / 120;
}

// Common practice, no source: hands-on to session time.
test.each([['none', 1, 1], ['locked-off', 1.2, 1.5], ['moved camera', 1.8, 2.5], ['inserts and teaching', 2.5, 4]] as const)(
  'two hours of work filmed as “%s” take %d to %d times as long', (manner, low, high) => {
    expect(ratio(manner)).toBeGreaterThanOrEqual(low);
    expect(ratio(manner)).toBeLessThanOrEqual(high);
  },
);

test('a step that happens once is set up once and no shot of it is taken again', () => {
  const counts = usualCounts(COMMON_PRACTICE.habits['moved camera'], 120, true);
  expect(counts).toMatchObject({ shots: 0, oneWayShots: 12, oneWaySetUps: 1 });
  const time = sessionTime(WORK, counts, COMMON_PRACTICE.times);
  expect(time.terms.find((term) => term.what === 'further takes')!.minutes).toBe(0);
  expect(time.deviation).toBeCloseTo(40 / 6, 10);
});

test('work that is not filmed takes its hands-on time, also when it happens once', () => {
  expect(ratio('none', true)).toBe(1);
});

test('the mean is the sum of its terms', () => {
  const time = sessionTime(WORK, { positions: 3, shots: 4, oneWayShots: 2, oneWaySetUps: 1, packUps: 2 }, COMMON_PRACTICE.times);
  expect(time.terms.reduce((sum, term) => sum + term.minutes, 0)).toBeCloseTo(time.mean, 10);
  expect(time.terms.find((term) => term.what === 'pack-up')!.minutes).toBe(20);
});

test('negative times and a chance of 0.91 are refused together; 0.9 is allowed', () => {
  const bad = checkFilmingTimes({ ...COMMON_PRACTICE.times, shot: -1, packUp: Number.NaN, retakeChance: 0.91 });
  expect(bad.ok ? [] : bad.error.map(({ code, path }) => [code, path[0]])).toEqual([['filming-time', 'shot'], ['filming-time', 'packUp'], ['retake-chance', 'retakeChance']]);
  expect(checkFilmingTimes({ ...COMMON_PRACTICE.times, retakeChance: 0.9 }).ok).toBe(true);
});

test('unchecked times are a bug', () => {
  expect(() => sessionTime(WORK, usualCounts(COMMON_PRACTICE.habits['none'], 60, false), { ...COMMON_PRACTICE.times, retakeChance: 1 })).toThrow(RangeError);
});
