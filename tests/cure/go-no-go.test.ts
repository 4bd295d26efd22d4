import { expect, test } from 'vitest';
import { climateOfValues } from '@/lib/climate';
import { createCoatClock, earliestGo, judgeCoating, type GoOptions } from '@/lib/cure';
import { addMinutes } from '@/lib/units';
import { COAT, hour, hourly, ORIGIN } from './sample-coats';

const OPTIONS: GoOptions = { length: 60, dustSettledAt: null, zone: 'UTC' };
const missed = (verdict: ReturnType<typeof judgeCoating>): string[] => verdict.checks.filter((check) => !check.isMet).map((check) => check.code);

test('a warm dry shop is a go, and says when the coat is dry', () => {
  const verdict = judgeCoating(createCoatClock(hourly([20, 50]), COAT), ORIGIN, OPTIONS);
  expect(verdict).toMatchObject({ isGo: true, dryAt: hour(3) });
  expect(verdict.checks.every((check) => check.message.endsWith('.'))).toBe(true);
});

test('each reason of a no-go has its number', () => {
  const climate = climateOfValues(ORIGIN, { air: [6, ...Array.from({ length: 60 }, () => 8)], surface: [4, ...Array.from({ length: 60 }, () => 3)], humidity: Array.from({ length: 61 }, () => 90) });
  const verdict = judgeCoating(createCoatClock(climate, { ...COAT, belowMinimum: 'surface fault' }), ORIGIN, { ...OPTIONS, dustSettledAt: addMinutes(ORIGIN, 45) });
  expect(missed(verdict)).toEqual(['dust-not-settled', 'surface-too-cold', 'dew-margin', 'air-too-damp', 'margin-falling', 'cold-before-dry', 'dew-before-dry', 'damp-before-dry']);
  const byCode = new Map(verdict.checks.map((check) => [check.code, check]));
  expect(byCode.get('surface-too-cold')).toMatchObject({ value: 4, limit: 5, unit: '°C' });
  expect(byCode.get('dust-not-settled')).toMatchObject({ value: 45, unit: 'min' });
  expect(byCode.get('cold-before-dry')?.message).toBe('Until touch dry the coldest surface (Mon 30 Nov 01:00) is 3.0 °C, below 5 °C.');
});

test('cold after application is a no-go, though the reading at application is good', () => {
  const verdict = judgeCoating(createCoatClock(hourly([9, 2], [4, 90]), COAT), ORIGIN, OPTIONS);
  expect(verdict.isGo).toBe(false);
  expect(missed(verdict)).toContain('cold-before-dry');
  expect(missed(verdict)).not.toContain('surface-too-cold');
});

test('a falling margin warns and does not stop', () => {
  const verdict = judgeCoating(createCoatClock(hourly([20, 1], [18, 50]), COAT), ORIGIN, OPTIONS);
  const surface = climateOfValues(ORIGIN, { air: Array.from({ length: 50 }, () => 20), surface: Array.from({ length: 50 }, (_, k) => 20 - k / 20) });
  const falling = judgeCoating(createCoatClock(surface, COAT), ORIGIN, OPTIONS);
  expect(verdict.isGo).toBe(true);
  expect([falling.isGo, ...missed(falling)]).toEqual([true, 'margin-falling']);
});

test('a climate that ends before the coat is dry is a no-go of its own', () => {
  const coat = createCoatClock(hourly([20, 2]), COAT);
  expect(missed(judgeCoating(coat, ORIGIN, OPTIONS))).toEqual(['forecast-too-short']);
  expect(missed(judgeCoating(coat, hour(9), OPTIONS))).toEqual(['forecast-too-short']);
});

test('the earliest session that is a go is found, and a moment inside a session if its start is not', () => {
  const coat = createCoatClock(hourly([3, 30], [12, 100]), COAT);
  const sessions = [[2, 5], [20, 24], [28, 33], [50, 54]].map(([start, end]) => ({ start: hour(start!), end: hour(end!) }));
  expect(earliestGo(coat, sessions, OPTIONS)).toMatchObject({ session: 2, verdict: { at: hour(30), isGo: true } });
  expect(earliestGo(coat, sessions, { ...OPTIONS, length: 210 })).toMatchObject({ session: 3, verdict: { at: hour(50) } });
  expect(earliestGo(coat, sessions.slice(0, 2), OPTIONS)).toBeNull();
});

test('within a session it waits for the dust to settle', () => {
  const coat = createCoatClock(hourly([20, 100]), COAT);
  const settled = addMinutes(ORIGIN, 45);
  const found = earliestGo(coat, [{ start: ORIGIN, end: hour(3) }], { ...OPTIONS, dustSettledAt: settled });
  expect(found?.verdict.at).toBe(settled);
});

test('solvent and a heater that can light it are a no-go until touch dry, and the session goes on when it is off', () => {
  const coat = createCoatClock(hourly([20, 100]), { ...COAT, hasSolvent: true });
  // An hour of work and two until touch dry.
  const on = { ...OPTIONS, ignitingHours: [{ start: hour(2), end: hour(4) }] };
  const verdict = judgeCoating(coat, ORIGIN, on);
  expect(missed(verdict)).toEqual(['heater-on']);
  expect(verdict.checks.find(({ code }) => code === 'heater-on')).toMatchObject({ value: 60, limit: 0, unit: 'min', severity: 'stop', message: 'A heater that can light solvent is on from Mon 30 Nov 02:00 to Mon 30 Nov 04:00: 60 min of that before the coat is touch dry.' });
  expect(earliestGo(coat, [{ start: ORIGIN, end: hour(8) }], on)?.verdict).toMatchObject({ at: hour(4), isGo: true });
  expect(judgeCoating(coat, ORIGIN, { ...OPTIONS, ignitingHours: [{ start: hour(3), end: hour(9) }] }).isGo).toBe(true);
  expect(judgeCoating(createCoatClock(hourly([20, 100]), { ...COAT, hasSolvent: false }), ORIGIN, on).isGo).toBe(true);
});
