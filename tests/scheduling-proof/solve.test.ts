import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveCore } from '@/lib/scheduling/proof';
import type { CoreInstance, CoreProgress, CoreSolution } from '@/lib/scheduling/proof';
import { checkStarts, readCases, toCore } from '../bench/published';
import { Genetic } from '@/lib/scheduling/proof/genetic';
import { Random } from '@/lib/scheduling/proof/random';
import { orderForward } from '@/lib/scheduling/proof/forward';
import { listFaults } from './brute-force';

const never = (): boolean => false;
const byWork = (most: number) => (progress: CoreProgress): boolean => progress.work > most;
const plain = { durations: [2, 3], capacities: [1], demands: [[1], [1]], relations: [], horizon: 10 } satisfies CoreInstance;
const hard = readCases(readFileSync(new URL('../golden/published-psplib.jsonl', import.meta.url), 'utf8')).find((c) => c.id === 'j605_1')!;

const run = (seed: number): CoreSolution => solveCore(toCore(hard), { seed, stop: byWork(150_000) });

describe('solving the core', () => {
  it('puts two activities that need the only unit one after the other', () => {
    const solution = solveCore(plain, { seed: 1, stop: never });
    expect([solution.status, solution.makespan]).toEqual(['optimal', 5]);
    expect(listFaults(plain, solution.starts)).toEqual([]);
  });

  it('answers an empty problem with an empty plan', () => {
    expect(solveCore({ durations: [], capacities: [], demands: [], relations: [], horizon: 0 }, { seed: 1, stop: never })).toMatchObject({ status: 'optimal', makespan: 0, starts: [] });
  });

  it('calls a cycle of lags that leads past itself infeasible', () => {
    const relations = [{ from: 0, to: 1, lag: 4 }, { from: 1, to: 0, lag: -3 }];
    expect(solveCore({ ...plain, relations }, { seed: 1, stop: never }).status).toBe('infeasible');
    expect(solveCore({ ...plain, relations: [{ from: 0, to: 1, lag: 3 }, { from: 1, to: 0, lag: -3 }] }, { seed: 1, stop: never }).status).toBe('optimal');
  });

  it('calls a demand above the capacity infeasible, unless nothing is held for any time', () => {
    expect(solveCore({ ...plain, demands: [[2], [1]] }, { seed: 1, stop: never }).status).toBe('infeasible');
    expect(solveCore({ ...plain, durations: [0, 3], demands: [[2], [1]] }, { seed: 1, stop: never }).status).toBe('optimal');
  });

  it('calls a horizon that is too short infeasible', () => {
    expect(solveCore({ ...plain, horizon: 4 }, { seed: 1, stop: never }).status).toBe('infeasible');
    expect(solveCore({ ...plain, horizon: 5 }, { seed: 1, stop: never }).makespan).toBe(5);
    expect(solveCore({ ...plain, horizon: 1 }, { seed: 1, stop: never }).status).toBe('infeasible');
  });

  it('calls an activity without an allowed start infeasible', () => {
    expect(solveCore({ ...plain, allowedStarts: [[], null] }, { seed: 1, stop: never }).status).toBe('infeasible');
  });

  it('keeps to allowed starts and to lags that depend on when they begin', () => {
    const instance: CoreInstance = {
      durations: [2, 3, 1], capacities: [1], demands: [[1], [1], [0]], horizon: 60,
      relations: [{ from: 0, to: 2, pieces: [{ from: 0, value: 30, slope: 0 }, { from: 5, value: 32, slope: 1 }] }],
      allowedStarts: [[{ first: 1, last: 3 }, { first: 8, last: 20 }], [{ first: 2, last: 5 }], null],
    };
    const solution = solveCore(instance, { seed: 1, stop: never });
    expect([solution.status, solution.makespan]).toEqual(['optimal', 31]);
    expect(listFaults(instance, solution.starts)).toEqual([]);
  });

  it('gives the same answer for the same seed and work', () => {
    expect(run(7)).toEqual(run(7));
    expect(run(8).seed).toBe(8);
  });

  it('stops at once when told to, with whatever it has', () => {
    const solution = solveCore(toCore(hard), { seed: 1, stop: () => true });
    expect(['unknown', 'feasible']).toContain(solution.status);
    if (solution.makespan >= 0) expect(checkStarts(hard, solution.starts, solution.makespan)).toEqual([]);
  });

  it('goes on searching when every list gives the same schedule', () => {
    const chain: CoreInstance = {
      durations: [1, 1, 1, 3], capacities: [1], demands: [[1], [1], [1], [0]], horizon: 20,
      relations: [{ from: 0, to: 1, lag: 1 }, { from: 1, to: 2, lag: 1 }],
    };
    const order = orderForward(chain)!;
    const genetic = new Genetic(chain, order, new Random(1));
    for (let k = 0; k < 30_000; k++) genetic.step();
    expect(genetic.best).toBe(3);
  });

  it('keeps the best schedule when it breeds afresh, and breeds feasible parents', () => {
    const genetic = new Genetic(toCore(hard), orderForward(toCore(hard))!, new Random(1));
    for (let k = 0; k < 400; k++) genetic.step();
    const { best } = genetic;
    const starts = genetic.bestStart.slice();
    genetic.renew();
    expect(genetic.best).toBe(best);
    expect(genetic.bestStart).toEqual(starts);
    expect(genetic.recall(new Int32Array(starts.length))).toBe(-1);
    for (let k = 0; k < 400; k++) genetic.step();
    const recalled = new Int32Array(starts.length);
    const makespan = genetic.recall(recalled);
    expect(checkStarts(hard, Array.from(recalled), makespan)).toEqual([]);
    expect(genetic.best).toBeLessThanOrEqual(best);
  });

  it('tells of better plans and bounds only', () => {
    const told: CoreProgress[] = [];
    solveCore(toCore(hard), { seed: 1, stop: byWork(300_000), onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(2);
    for (let k = 1; k < told.length; k++) {
      const [before, now] = [told[k - 1]!, told[k]!];
      expect(now.lowerBound).toBeGreaterThanOrEqual(before.lowerBound);
      if (before.makespan >= 0) expect(now.makespan).toBeLessThanOrEqual(before.makespan);
      expect(now.lowerBound > before.lowerBound || now.makespan !== before.makespan).toBe(true);
    }
  });

  it('refuses data that is no instance', () => {
    expect(() => solveCore({ ...plain, durations: [2, -1] }, { seed: 1, stop: never })).toThrow('Duration of activity 1');
    expect(() => solveCore({ ...plain, capacities: [0.5] }, { seed: 1, stop: never })).toThrow('Capacity 0.5');
    expect(() => solveCore({ ...plain, demands: [[1]] }, { seed: 1, stop: never })).toThrow('rows of demands');
    expect(() => solveCore({ ...plain, relations: [{ from: 0, to: 5, lag: 1 }] }, { seed: 1, stop: never })).toThrow('from 0 to 5');
    const falling = [{ from: 0, value: 9, slope: 0 as const }, { from: 4, value: 3, slope: 0 as const }];
    expect(() => solveCore({ ...plain, relations: [{ from: 0, to: 1, pieces: falling }] }, { seed: 1, stop: never })).toThrow('rising curve');
  });
});
