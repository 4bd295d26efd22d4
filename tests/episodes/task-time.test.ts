import { expect, test } from 'vitest';
import { COMMON_PRACTICE } from '@/lib/estimate';
import { experiencedTime, filmingMinutes, typedTime, type Experience } from '@/lib/episodes';
import { minutes } from '@/lib/units';
import { sampleTask } from '../build/sample-series';

const factor = (value: number, more: Partial<ReturnType<Experience['handsOn']>> = {}) => ({ factor: value, deviation: 0, residual: 0, n: 0, ...more });
const EVEN: Experience = { filming: COMMON_PRACTICE, handsOn: () => factor(1), camera: () => factor(1) };
const shot = (id: string, purpose: 'before' | 'during', time: number) => ({ id, name: id, purpose, time: minutes(time), mustHave: true, filmedAt: null });
const WORK = { low: minutes(60), likely: minutes(90), high: minutes(180) };

test('typed time is the mean hands-on time and the shots filmed in the task', () => {
  const filmed = sampleTask('t', 0, 'Strip', { effort: WORK, irreversible: true, coverage: 'moved camera', shots: [shot('a', 'before', 20), shot('b', 'during', 15)] });
  expect(typedTime(filmed)).toMatchObject({ mean: 115, deviation: 20 });
  expect(filmingMinutes(typedTime(filmed))).toBe(15);
  expect(typedTime({ ...filmed, irreversible: false }).mean).toBe(135);
});

test('by experience, listed shots keep their times, and further takes and packing up come on top', () => {
  const filmed = sampleTask('t', 0, 'Sand', { effort: WORK, coverage: 'moved camera', shots: [shot('a', 'during', 15), shot('b', 'during', 15), shot('c', 'during', 15)] });
  expect(experiencedTime(filmed, EVEN).mean).toBeCloseTo(100 + 45 + 3 * (1 / 3) * 7 + 10, 10);
  expect(experiencedTime({ ...filmed, irreversible: true }, EVEN).mean).toBeCloseTo(100 + 45 + 25 + 10, 10);
});

test('without a shot list the coverage says what is filmed', () => {
  const filmed = sampleTask('t', 0, 'Sand', { effort: WORK, coverage: 'locked-off' });
  const terms = experiencedTime(filmed, EVEN).terms.map((term) => Math.round(term.minutes));
  expect(terms).toEqual([100, 8, 8, 9, 0, 10]);
  expect(experiencedTime({ ...filmed, coverage: 'none' }, EVEN).mean).toBe(100);
});

test('factors stretch hands-on time and filming apart, spreads with them', () => {
  const filmed = sampleTask('t', 0, 'Sand', { effort: WORK, coverage: 'locked-off' });
  const [even, slow] = [experiencedTime(filmed, EVEN), experiencedTime(filmed, { ...EVEN, handsOn: () => factor(1.5), camera: () => factor(2) })];
  expect(slow.terms[0]!.minutes).toBe(150);
  expect(filmingMinutes(slow)).toBeCloseTo(2 * filmingMinutes(even), 10);
  expect(slow.deviation).toBeGreaterThan(even.deviation * 1.5);
});

test('the uncertainty of a factor widens the P80, the scatter of finished work only where it is wider than the estimate', () => {
  const task = sampleTask('t', 0, 'Sand', { category: 'paint', effort: WORK });
  const time = (more: Partial<ReturnType<Experience['handsOn']>>) => experiencedTime(task, { ...EVEN, handsOn: () => factor(1.5, more) });
  const sure = time({});
  expect(sure).toMatchObject({ mean: 150, own: 30, deviation: 30, shared: [] });
  const unsure = time({ deviation: 0.2 });
  // A lognormal length with a log deviation of 0.2 has a deviation of √(e^0.04 - 1) = 0.20202 of its mean.
  expect(unsure.shared).toEqual([{ key: 'hands-on paint', deviation: expect.closeTo(30.3025, 4) }]);
  expect(unsure.deviation).toBeCloseTo(Math.hypot(30, 30.302), 2);
  expect(unsure.p80 - unsure.mean).toBeCloseTo(0.8416 * Math.hypot(30, 30.302), 2);
  expect(time({ residual: 0.1 }).own).toBe(30);
  expect(time({ residual: 0.3 }).own).toBeCloseTo(150 * Math.sqrt(Math.exp(0.09) - 1), 10);
});
