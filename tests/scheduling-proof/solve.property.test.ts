import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveCore } from '@/lib/scheduling/proof';
import type { CoreInstance, CoreSolution } from '@/lib/scheduling/proof';
import { findOptimum, listFaults } from './brute-force';
import { withCurves, withMaximumLags, withPrecedence } from './small-instances';

const solve = (instance: CoreInstance, seed = 1): CoreSolution => solveCore(instance, { seed, stop: (progress) => progress.work > 400_000 });

/** The answer to a small instance is the one found by trying every start. */
function expectExact(instance: CoreInstance): void {
  const optimum = findOptimum(instance);
  const solution = solve(instance);
  if (optimum < 0) {
    expect(solution.status).toBe('infeasible');
    return;
  }
  expect(solution.status).toBe('optimal');
  expect(solution.makespan).toBe(optimum);
  expect(solution.lowerBound).toBe(optimum);
  expect(listFaults(instance, solution.starts)).toEqual([]);
}

describe('the core', () => {
  it('finds what trying every start finds, with precedence and resources', () => {
    fc.assert(fc.property(withPrecedence, expectExact), { numRuns: 150 });
  });

  it('finds what trying every start finds, with minimum and maximum lags', () => {
    fc.assert(fc.property(withMaximumLags, expectExact), { numRuns: 250 });
  });

  it('finds what trying every start finds, with start-dependent lags and holes', () => {
    fc.assert(fc.property(withCurves, expectExact), { numRuns: 250 });
  });

  it('never gets a longer optimum from more capacity', () => {
    fc.assert(fc.property(withPrecedence, fc.nat(1), (instance, k) => {
      const more = { ...instance, capacities: instance.capacities.map((c, r) => (r === k ? c + 1 : c)) };
      expect(solve(more).makespan).toBeLessThanOrEqual(solve(instance).makespan);
    }), { numRuns: 60 });
  });

  it('keeps the optimum when activities are renumbered', () => {
    fc.assert(fc.property(withMaximumLags, fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }), (instance, to) => {
      const place = to.map((_, i) => to.indexOf(i));
      const renumbered = {
        ...instance,
        durations: place.map((i) => instance.durations[i]!),
        demands: place.map((i) => instance.demands[i]!),
        relations: instance.relations.map((r) => ({ ...r, from: to[r.from]!, to: to[r.to]! })),
      };
      const [a, b] = [solve(instance), solve(renumbered)];
      expect([b.status, b.makespan]).toEqual([a.status, a.makespan]);
    }), { numRuns: 80 });
  });
});
