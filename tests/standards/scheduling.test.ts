import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, type Problem } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { findLatestStarts, propagate } from '@/lib/scheduling/propagate';
import { toProblem } from '../bench/published';
import { loadInstances } from '../scheduling/psplib';
import { activity, finishToStart, problem, scheduleOf } from '../scheduling/simple';

/**
 * Hillier & Lieberman, Introduction to Operations Research, chapter on PERT/CPM: a building project of 14 activities.
 * From memory; the arithmetic was checked.
 */
const DURATIONS = { A: 2, B: 4, C: 10, D: 6, E: 4, F: 5, G: 7, H: 9, I: 7, J: 8, K: 4, L: 5, M: 2, N: 6 };
const PREDECESSORS: Readonly<Record<string, string>> = {
  B: 'A', C: 'B', D: 'C', E: 'C', F: 'E', G: 'D', H: 'EG', I: 'C', J: 'FI', K: 'J', L: 'J', M: 'H', N: 'KL',
};
const building: Problem = problem(Object.entries(DURATIONS).map(([id, duration]) => activity(id, duration)), {
  lags: Object.entries(PREDECESSORS).flatMap(([to, list]) => [...list].map((from) => finishToStart(from, to))),
});

describe('the critical path of the 14-activity building project (Hillier & Lieberman, from memory)', () => {
  it('is 44 weeks long, which the bound proves', () => {
    const solution = unwrap(solve(building, { stop: afterWork(10), seed: 1 }));
    expect(solution).toMatchObject({ status: 'optimal', lowerBound: 44 });
    expect(scheduleOf(solution).score.makespan).toBe(44);
    expect(check(building, scheduleOf(solution))).toEqual([]);
  });

  it('goes through A B C E F J L N, the activities without slack', () => {
    const model = compile(building);
    const latest = findLatestStarts(model, building.activities.map(() => 44));
    const { bounds } = propagate(model);
    const critical = building.activities.filter((_, i) => latest[i] === bounds.earliest[i]).map((a) => a.id);
    expect(critical.join(' ')).toBe('A B C E F J L N');
  });

  it('gives the slack of the others: 4 for D, G, H and M, 2 for I, 1 for K', () => {
    const model = compile(building);
    const latest = findLatestStarts(model, building.activities.map(() => 44));
    const { bounds } = propagate(model);
    const slack = Object.fromEntries(building.activities.map((a, i) => [a.id, latest[i]! - bounds.earliest[i]!]));
    expect(slack).toMatchObject({ D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 });
  });
});

describe('published optima (Kolisch & Sprecher 1996, PSPLIB, set j30)', () => {
  it.each(loadInstances())('$id comes within five percent of its optimum after 2,000 schedules', (instance) => {
    const plain = toProblem(instance);
    const solution = unwrap(solve(plain, { stop: afterWork(2000), seed: 7 }));
    if (solution.status === 'infeasible' || solution.status === 'unknown') throw new Error(solution.status);
    const { makespan } = solution.schedule.score;
    expect(check(plain, solution.schedule)).toEqual([]);
    expect(solution.lowerBound).toBeLessThanOrEqual(instance.ub);
    expect(solution.lowerBound).toBeGreaterThanOrEqual(instance.cpm);
    expect(makespan).toBeGreaterThanOrEqual(instance.lb);
    expect(makespan).toBeLessThanOrEqual(Math.floor(instance.ub * 1.05));
  });
});
