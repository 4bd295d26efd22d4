import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveCore } from '@/lib/scheduling/proof';
import type { CoreSolution } from '@/lib/scheduling/proof';
import { checkStarts, readCases, toCore } from '../bench/published';
import type { PublishedCase } from '../bench/published';

const read = (name: string): PublishedCase[] => readCases(readFileSync(new URL(`../golden/${name}`, import.meta.url), 'utf8'));
const solve = (published: PublishedCase, seed: number, work = 40_000_000): CoreSolution =>
  solveCore(toCore(published), { seed, stop: (progress) => progress.work > work });

/** PSPLIB: Kolisch & Sprecher 1996. RCPSP/max: Schwindt 1998 (ProGen/max). Optima from public collections; of ubo100_psp21 these have 260 to 262,
 * of j30_psp65, 67, 153 and 155 only the plans as long as the optimum, with bounds of 144, 91, 163 and 125. */
const precedence = read('published-psplib.jsonl');
const maximumLags = read('published-max-lags.jsonl');

describe('published optima', () => {
  // j605_1 takes seconds: it serves below, where the search is stopped.
  it.each(precedence.filter((c) => c.id !== 'j605_1').map((c) => [c.id, c] as const))('proves the optimum of %s', (_, published) => {
    const solution = solve(published, 1);
    expect([solution.status, solution.makespan, solution.lowerBound]).toEqual(['optimal', published.ub, published.ub]);
    expect(checkStarts(published, solution.starts, solution.makespan)).toEqual([]);
  });

  it.each(maximumLags.map((c) => [c.id, c] as const))('decides %s with maximum lags', (_, published) => {
    for (const seed of [1, 2]) {
      const solution = solve(published, seed);
      if (published.status === 'unsat') {
        expect(solution.status).toBe('infeasible');
        continue;
      }
      expect([solution.status, solution.makespan, solution.lowerBound]).toEqual(['optimal', published.ub, published.ub]);
      expect(checkStarts(published, solution.starts, solution.makespan)).toEqual([]);
    }
  });

  it('keeps bound, optimum and plan in order wherever it is stopped', () => {
    for (const published of [...precedence, ...maximumLags.filter((c) => c.status === 'opt')]) {
      for (const work of [0, 3000, 30_000, 300_000]) {
        const solution = solve(published, 3, work);
        expect(solution.lowerBound).toBeLessThanOrEqual(published.ub!);
        if (solution.makespan >= 0) {
          expect(solution.makespan).toBeGreaterThanOrEqual(published.ub!);
          expect(checkStarts(published, solution.starts, solution.makespan)).toEqual([]);
        }
      }
    }
  });
});
