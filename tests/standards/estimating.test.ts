import { expect, test } from 'vitest';
import { factorOf, furtherTakes, learnFactors, p80Of, sessionTime, threePointDeviation, threePointMean, type Observation } from '@/lib/estimate';

// Malcolm, Roseboom, Clark and Fazar, Operations Research 7 (1959): mean (a + 4m + b)/6, variance ((b - a)/6)², from memory.
test.each([
  [{ low: 60, likely: 90, high: 180 }, 100, 400],
  [{ low: 1, likely: 2, high: 3 }, 2, 1 / 9],
  [{ low: 2, likely: 5, high: 14 }, 6, 4],
])('PERT 1959: %o has the mean %d and the variance %d', (triple, mean, variance) => {
  expect(threePointMean(triple)).toBeCloseTo(mean, 10);
  expect(threePointDeviation(triple) ** 2).toBeCloseTo(variance, 10);
});

// Worked example, computed by hand: 100 + 5·8 + 9·2 + 3·7 + 25 = 204; 20² + 9·(0.25/0.75²)·7² = 596.
test('a task of 60, 90 or 180 min, filmed from five positions in nine shots with one step that happens once, takes 204 min, spread 24.4, P80 225', () => {
  const time = sessionTime(
    { low: 60, likely: 90, high: 180 },
    { positions: 5, shots: 9, oneWayShots: 0, oneWaySetUps: 1, packUps: 0 },
    { position: 8, shot: 2, take: 3, reset: 4, retakeChance: 0.25, oneWay: 25, packUp: 10 },
  );
  expect(time.mean).toBeCloseTo(204, 10);
  expect(time.deviation).toBeCloseTo(24.413, 3);
  expect(Math.round(time.p80)).toBe(225);
  expect(time.terms.map((term) => Math.round(term.minutes))).toEqual([100, 40, 18, 21, 25, 0]);
});

// Geometric distribution (failures before the first success): mean p/(1-p), variance p/(1-p)². Any textbook of probability, from memory.
test.each([[0, 0, 0], [0.25, 1 / 3, 4 / 9], [0.5, 1, 2]])('further takes at a chance of %d: mean %d, variance %d', (chance, mean, variance) => {
  expect(furtherTakes(chance).mean).toBeCloseTo(mean, 12);
  expect(furtherTakes(chance).variance).toBeCloseTo(variance, 12);
});

test('the geometric figures agree with their series', () => {
  const chance = 0.37;
  const terms = Array.from({ length: 400 }, (_, k) => ({ k, weight: (1 - chance) * chance ** k }));
  const mean = terms.reduce((sum, { k, weight }) => sum + k * weight, 0);
  const variance = terms.reduce((sum, { k, weight }) => sum + (k - mean) ** 2 * weight, 0);
  expect(furtherTakes(chance).mean).toBeCloseTo(mean, 10);
  expect(furtherTakes(chance).variance).toBeCloseTo(variance, 10);
});

// Normal distribution, the 0.8 quantile 0.8416, from tables.
test('the P80 lies 0.8416 standard deviations above the mean', () => {
  expect(p80Of(0, 1)).toBeCloseTo(0.8416, 4);
});

const PAIRS: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  'strip': [[60, 95], [90, 100], [45, 80], [120, 115], [60, 90]],
  'paint': [[40, 100], [60, 75], [30, 66]],
  'wiring': [[90, 95], [60, 40]],
  'piece to camera': [[10, 22], [12, 15], [8, 20], [15, 24], [10, 14], [10, 26]],
  'weld': [[50, 120]],
};
const observations: readonly Observation[] = Object.entries(PAIRS)
  .flatMap(([category, pairs]) => pairs.map(([estimate, actual]) => ({ category, estimate, actual, wasInterrupted: false })));

// Shrinkage table, computed apart from this code.
test('the basis of the shrinkage: SS 1.134303, s² 0.093394, Q 14.45708, τ² 0.077583, mean 0.437453', () => {
  const { basis } = learnFactors(observations);
  expect(basis.n).toBe(17);
  expect(basis.within).toBeCloseTo(1.134303, 6);
  expect(basis.variance).toBeCloseTo(0.093394, 6);
  expect(basis.between).toBeCloseTo(14.45708, 4);
  expect(basis.spread).toBeCloseTo(0.077583, 6);
  expect(basis.mean).toBeCloseTo(0.437453, 6);
});

test.each([['strip', 1.39], ['paint', 1.79], ['wiring', 1.06], ['piece to camera', 1.8], ['weld', 1.89], ['upholstery', 1.55]])(
  'shrunk factor of %s: %d',
  (category, factor) => {
    expect(factorOf(learnFactors(observations), category).factor).toBeCloseTo(factor, 2);
  },
);
