import { expect, test } from 'vitest';
import { factorOf, learnFactors, type Observation } from '@/lib/estimate';

function pairs(category: string, ...list: readonly (readonly [number, number])[]): readonly Observation[] {
  return list.map(([estimate, actual]) => ({ category, estimate, actual, wasInterrupted: false }));
}

test('without observations every factor is 1, with an interval about it, and there is not enough to use', () => {
  const learned = learnFactors([]);
  expect(learned.unseen.factor).toBe(1);
  expect(learned.unseen.interval.low).toBeLessThan(1);
  expect(learned.isEnough).toBe(false);
});

test('interrupted work and lengths that are not above zero are left out and counted', () => {
  const learned = learnFactors([...pairs('paint', [60, 60], [60, 0], [0, 60]), { category: 'paint', estimate: 60, actual: 600, wasInterrupted: true }]);
  expect(learned.leftOut).toBe(3);
  expect(factorOf(learned, 'paint')).toMatchObject({ n: 1, factor: 1 });
});

test('one category alone keeps its own mean', () => {
  const learned = learnFactors(pairs('paint', [60, 120], [30, 60]));
  expect(factorOf(learned, 'paint').factor).toBeCloseTo(2, 10);
  expect(factorOf(learned, 'strip').factor).toBeCloseTo(2, 10);
});

test('a factor lies between that of its own work and that of all, closer to its own with more of it', () => {
  const few = learnFactors([...pairs('strip', [60, 60], [60, 66], [60, 57]), ...pairs('paint', [60, 120])]);
  const many = learnFactors([...pairs('strip', [60, 60], [60, 66], [60, 57]), ...pairs('paint', ...Array.from({ length: 12 }, () => [60, 120] as const))]);
  const [one, dozen] = [factorOf(few, 'paint'), factorOf(many, 'paint')];
  expect(one.factor).toBeGreaterThan(factorOf(few, 'strip').factor);
  expect(one.factor).toBeLessThan(2);
  expect(dozen.shrinkage).toBeLessThan(one.shrinkage);
  expect(dozen.interval.high / dozen.interval.low).toBeLessThan(one.interval.high / one.interval.low);
});

test('five observations are enough, four are not', () => {
  const five = pairs('strip', [60, 60], [60, 70], [60, 80], [60, 90], [60, 95]);
  expect(learnFactors(five).isEnough).toBe(true);
  expect(learnFactors(five.slice(1)).isEnough).toBe(false);
});

test('a hundred observations spread as the model says are covered by the interval of their category', () => {
  const noise = Array.from({ length: 100 }, (_, k) => Math.exp(0.4 + 0.3 * Math.sin(k * 12.9898)));
  const { interval } = factorOf(learnFactors(pairs('strip', ...noise.map((factor) => [60, 60 * factor] as const))), 'strip');
  expect(interval.low).toBeLessThan(Math.exp(0.4));
  expect(interval.high).toBeGreaterThan(Math.exp(0.4));
});
