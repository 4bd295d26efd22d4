import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { learnRatio, normalBelow, normalQuantile, shrinkGroups, type Group, type PastJob } from '@/lib/outwork';

const RATIOS: Readonly<Record<string, readonly (readonly [estimate: number, actual: number])[]>> = {
  strip: [[60, 95], [90, 100], [45, 80], [120, 115], [60, 90]],
  paint: [[40, 100], [60, 75], [30, 66]],
  wiring: [[90, 95], [60, 40]],
  ptc: [[10, 22], [12, 15], [8, 20], [15, 24], [10, 14], [10, 26]],
  weld: [[50, 120]],
};
const GROUPS: readonly Group[] = Object.entries(RATIOS).map(([key, pairs]) => ({ key, values: pairs.map(([estimate, actual]) => Math.log(actual / estimate)) }));

// Computed with an independent program from the formulas of normal-normal shrinkage.
test('shrinkage gives the spreads, the mean and the factor of each group of the worked example', () => {
  const shrunk = shrinkGroups([...GROUPS, { key: 'new', values: [] }]);
  expect(shrunk.within).toBeCloseTo(0.093394, 6);
  expect(shrunk.between).toBeCloseTo(0.077583, 6);
  expect(shrunk.mean).toBeCloseTo(0.437453, 6);
  const factors = [...shrunk.groups].map(([key, { mean }]) => [key, Math.exp(mean).toFixed(2)]);
  expect(factors).toEqual([['strip', '1.39'], ['paint', '1.79'], ['wiring', '1.06'], ['ptc', '1.80'], ['weld', '1.89'], ['new', '1.55']]);
  expect(shrunk.groups.get('new')).toMatchObject({ count: 0, pull: 1 });
});

test('with no job at all the ratio is one, with the prior spread', () => {
  const ratio = learnRatio([], { tradeId: 't', craft: 'galvanizer' });
  expect(ratio.factor).toBe(1);
  expect(ratio.counts).toEqual({ trade: 0, craft: 0, all: 0 });
  expect(ratio.deviation).toBeGreaterThan(0.3);
});

const job = (tradeId: string, craft: string, factor: number): PastJob => ({ tradeId, craft, quoted: 10, actual: 10 * factor });
const HISTORY: readonly PastJob[] = [
  ...[2, 2.2, 1.9, 2.1].map((f) => job('slow', 'galvanizer', f)), job('other', 'galvanizer', 1.8), job('other', 'galvanizer', 1.7),
  ...[1, 0.95, 1.05, 1.1].map((f) => job('prompt', 'machinist', f)),
];

const learned = (tradeId: string, craft: string) => learnRatio(HISTORY, { tradeId, craft });

test('a trade known by many jobs keeps its own ratio, a new one takes that of its craft, a new craft that of all', () => {
  expect(learned('slow', 'galvanizer').factor).toBeGreaterThan(1.8);
  expect(learned('slow', 'galvanizer').counts).toEqual({ trade: 4, craft: 6, all: 10 });
  const freshGalvanizer = learned('fresh', 'galvanizer');
  const freshMachinist = learned('fresh', 'machinist');
  const freshPlater = learned('fresh', 'plater');
  expect(freshGalvanizer.counts).toEqual({ trade: 0, craft: 6, all: 10 });
  expect(freshGalvanizer.factor).toBeGreaterThan(freshPlater.factor);
  expect(freshPlater.factor).toBeGreaterThan(freshMachinist.factor);
  expect(freshPlater.deviation).toBeGreaterThan(learned('slow', 'galvanizer').deviation);
});

const valuesOf = (jobs: readonly PastJob[], craft: string): number[] => jobs.filter((j) => j.craft === craft).map((j) => Math.log(j.actual / j.quoted));

test('a ratio lies between what the trade did and what its craft does, and nearer to the trade the more jobs it has', () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: 50, max: 300 }), { minLength: 1, maxLength: 6 }), (hundredths) => {
    const jobs = [...HISTORY, ...hundredths.map((f) => job('mine', 'galvanizer', f / 100))];
    const own = hundredths.reduce((sum, f) => sum + Math.log(f / 100), 0) / hundredths.length;
    const crafts = shrinkGroups(['galvanizer', 'machinist'].map((key) => ({ key, values: valuesOf(jobs, key) })));
    const craft = crafts.groups.get('galvanizer')!.mean;
    const { mean } = learnRatio(jobs, { tradeId: 'mine', craft: 'galvanizer' });
    expect(mean).toBeGreaterThanOrEqual(Math.min(own, craft) - 1e-12);
    expect(mean).toBeLessThanOrEqual(Math.max(own, craft) + 1e-12);
  }));
  const pulls = [1, 2, 6].map((count) => {
    const group = { key: 'mine', values: Array.from({ length: count }, () => 0.5) };
    return shrinkGroups([group, { key: 'other', values: [0, 0.1, -0.1] }]).groups.get('mine')!.pull;
  });
  expect(pulls).toEqual(pulls.toSorted((x, y) => y - x));
});

test('jobs without a quote do not count', () => {
  expect(learnRatio([{ tradeId: 't', craft: 'c', quoted: 0, actual: 3 }], { tradeId: 't', craft: 'c' }).counts.all).toBe(0);
});

// Tables of the standard normal distribution.
test('normal shares: 0.8413 below 1, 0.975 below 1.96, 0.8 below 0.8416', () => {
  expect(normalBelow(1)).toBeCloseTo(0.8413447461, 9);
  expect(normalBelow(1.959964)).toBeCloseTo(0.975, 7);
  expect(normalBelow(-1)).toBeCloseTo(0.1586552539, 9);
  expect(normalBelow(0)).toBe(0.5);
  expect(normalQuantile(0.8)).toBeCloseTo(0.8416212, 6);
  expect([normalBelow(-9), normalBelow(9)]).toEqual([0, 1]);
});
