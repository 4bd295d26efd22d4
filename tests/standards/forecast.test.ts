import { describe, expect, it } from 'vitest';
import { calibrate, earnedSchedule, meanOf, pinballLoss } from '@/lib/forecast';
import { Simulation } from '@/lib/simulation';
import { threePointQuantiles } from '@/lib/forecast/quantiles';
import { threePointDeviation, threePointMean } from '@/lib/estimate';
import { normalBelow, normalQuantile } from '@/lib/outwork';
import { unwrap } from '@/lib/result';
import { networkInput, type Arrow } from '../forecast/networks';

const RUNS = 20_000;
/** Minutes to a unit of the examples. */
const SCALE = 200;

function simulate(arrows: readonly Arrow[], horizon: number): { mean: number; variance: number; shareBy: (limit: number) => number; critical: (id: string) => number } {
  const block = new Simulation(networkInput(arrows, horizon)).runMany(0, RUNS);
  const ends = Array.from(block.finish, (end) => end / SCALE);
  const mean = meanOf(ends);
  return {
    mean,
    variance: meanOf(ends.map((end) => (end - mean) ** 2)),
    shareBy: (limit) => ends.filter((end) => end <= limit).length / RUNS,
    critical: (id) => block.critical[arrows.findIndex((arrow) => arrow.id === id)]! / block.criticalRuns,
  };
}

/** Hillier & Lieberman, Introduction to Operations Research, the building project of the chapter on PERT/CPM; from memory, arithmetic checked. */
const BUILDING: readonly (readonly [string, string, readonly [number, number, number]])[] = [
  ['A', '', [1, 2, 3]], ['B', 'A', [2, 3.5, 8]], ['C', 'B', [6, 9, 18]], ['D', 'C', [4, 5.5, 10]], ['E', 'C', [1, 4.5, 5]], ['F', 'E', [4, 4, 10]], ['G', 'D', [5, 6.5, 11]],
  ['H', 'EG', [5, 8, 17]], ['I', 'C', [3, 7.5, 9]], ['J', 'FI', [3, 9, 9]], ['K', 'J', [4, 4, 4]], ['L', 'J', [1, 5.5, 7]], ['M', 'H', [1, 2, 3]], ['N', 'KL', [5, 5.5, 9]],
];
const CRITICAL = 'ABCEFJLN';

const triple = ([low, likely, high]: readonly [number, number, number]) => ({ low, likely, high });
const arrowOf = (id: string, after: string, three: readonly [number, number, number]): Arrow => {
  const quantile = threePointQuantiles(triple(three));
  return { id, after: [...after], quantile: (share) => quantile(share) * SCALE };
};
const means = new Map(BUILDING.map(([id, , three]) => [id, threePointMean(triple(three))]));

describe('PERT (Malcolm, Roseboom, Clark, Fazar 1959) on the building project', () => {
  it('gives the critical path the mean 44, the variance 9 and 84.13 % for 47 weeks on the single path', () => {
    const path = BUILDING.filter(([id]) => CRITICAL.includes(id));
    const mean = path.reduce((sum, [id]) => sum + means.get(id)!, 0);
    const variance = path.reduce((sum, [, , three]) => sum + threePointDeviation(triple(three)) ** 2, 0);
    expect(mean).toBeCloseTo(44, 9);
    expect(variance).toBeCloseTo(9, 9);
    expect(normalBelow((47 - mean) / Math.sqrt(variance))).toBeCloseTo(0.8413, 4);
  });

  it('simulates the critical path alone to the same mean, variance and odds', () => {
    const chain = [...CRITICAL].map((id, k) => arrowOf(id, k === 0 ? '' : CRITICAL[k - 1]!, BUILDING.find(([one]) => one === id)![2]));
    const { mean, shareBy, variance } = simulate(chain, 30_000);
    expect(mean).toBeCloseTo(44, 0);
    expect(Math.abs(mean - 44)).toBeLessThan(0.1);
    // A beta with the mean of three points has not quite the variance ((b - a)/6)^2: within a fifth of it.
    expect(Math.abs(variance - 9)).toBeLessThan(1.8);
    expect(Math.abs(shareBy(47) - 0.8413)).toBeLessThan(0.03);
  });

  it('is less sure of 47 weeks over the whole network than the single path says', () => {
    const network = BUILDING.map(([id, after, three]) => arrowOf(id, after, three));
    const { critical, mean, shareBy } = simulate(network, 30_000);
    expect(mean).toBeGreaterThan(44.2);
    expect(shareBy(47)).toBeLessThan(0.8413 - 0.02);
    // A, B and C lie on every path, so they hold up every run.
    expect(critical('A')).toBe(1);
    expect(critical('C')).toBe(1);
    expect(critical('F')).toBeGreaterThan(critical('I'));
  });

  it('finds the length 44 by the likeliest lengths of the textbook case', () => {
    const fixed = BUILDING.map(([id, after]): Arrow => ({ id, after: [...after], quantile: () => means.get(id)! * SCALE }));
    expect(simulate(fixed, 30_000)).toMatchObject({ mean: 44, variance: 0 });
  });
});

const uniforms = (count: number): Arrow[] => Array.from({ length: count }, (_, k) => ({ id: `u${k}`, after: [], quantile: (share) => share * 50 * SCALE }));

describe('merge bias', () => {
  it.each([1, 2, 3, 5])('ends %i parallel uniform activities at n / (n + 1) on average', (count) => {
    expect(Math.abs(simulate(uniforms(count), 20_000).mean / 50 - count / (count + 1))).toBeLessThan(0.01);
  });

  it('ends two parallel standard normals 1 / sqrt(pi) = 0.5642 above their mean, where the single path says 0', () => {
    const normals = [0, 1].map((k): Arrow => ({ id: `n${k}`, after: [], quantile: (share) => (10 + normalQuantile(share)) * SCALE }));
    expect(Math.abs(simulate(normals, 10_000).mean - 10 - 1 / Math.sqrt(Math.PI))).toBeLessThan(0.02);
  });
});

describe('networks with a known distribution', () => {
  it('adds up: three uniforms one after another have the mean 1.5 and the variance 1/4', () => {
    const chain = [0, 1, 2].map((k): Arrow => ({ id: `c${k}`, after: k === 0 ? [] : [`c${k - 1}`], quantile: (share) => share * 50 * SCALE }));
    const { mean, shareBy, variance } = simulate(chain, 40_000);
    expect(Math.abs(mean / 50 - 1.5)).toBeLessThan(0.01);
    expect(Math.abs(variance / 2500 - 0.25)).toBeLessThan(0.01);
    // Irwin-Hall: the sum of three is at most 1 with 1/6.
    expect(Math.abs(shareBy(50) - 1 / 6)).toBeLessThan(0.01);
  });

  it('takes the maximum: two uniforms are both done by x with x squared', () => {
    const both = [0, 1].map((k): Arrow => ({ id: `m${k}`, after: [], quantile: (share) => share * 50 * SCALE }));
    const { shareBy } = simulate(both, 20_000);
    for (const x of [0.25, 0.5, 0.9]) expect(Math.abs(shareBy(50 * x) - x * x)).toBeLessThan(0.015);
  });
});

describe('earned schedule (Lipke 2003, from memory; the example is common practice)', () => {
  it('reads 2.5 periods, the index 0.8333 and 4.8 periods at completion', () => {
    const found = unwrap(earnedSchedule([10, 30, 60, 100], 45, 3));
    expect(found.earned).toBeCloseTo(2.5, 12);
    expect(found.index).toBeCloseTo(0.8333, 4);
    expect(found.atCompletion).toBeCloseTo(4.8, 12);
  });
});

describe('proper scores (Koenker & Bassett 1978, from memory)', () => {
  it('is least, on average, for the true quantile', () => {
    const actual = Array.from({ length: 1000 }, (_, k) => (k + 0.5) / 1000);
    const loss = (value: number) => meanOf(actual.map((one) => pinballLoss(0.8, value, one)));
    expect(loss(0.8)).toBeLessThan(loss(0.7));
    expect(loss(0.8)).toBeLessThan(loss(0.9));
    expect(loss(0.8)).toBeCloseTo(0.08, 4);
  });

  it('finds the coverage of the 80 % interval of a true forecast', () => {
    const quantiles = Array.from({ length: 99 }, (_, k) => ({ share: (k + 1) / 100, value: (k + 1) / 100 }));
    const judged = Array.from({ length: 200 }, (_, k) => ({ quantiles, actual: (k + 0.5) / 200 }));
    expect(unwrap(calibrate(judged))).toMatchObject({ count: 200, coverage: 0.8, belowEighty: 0.8 });
  });
});
