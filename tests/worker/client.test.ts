import { describe, expect, it } from 'vitest';
import { check, solve, afterWork, type Problem, type Progress } from '@/lib/scheduling';
import { unwrap } from '@/lib/result';
import { solveInWorker } from '@/lib/worker';
import { toProblem } from '../bench/published';
import { loadInstances } from '../scheduling/psplib';

function makeProblem(count: number): Problem {
  return {
    horizon: 100_000,
    calendars: [],
    resources: [{ id: 'bench', capacity: 2 }, { id: 'ann', capacity: 1 }],
    activities: Array.from({ length: count }, (_, i) => ({
      id: `a${i}`, duration: 7 + ((i * 5) % 11), mode: 'one-go' as const,
      demands: [{ resource: i % 3 === 0 ? 'ann' : 'bench', amount: 1 }],
    })),
    lags: Array.from({ length: count - 3 }, (_, i) => ({
      id: `l${i}`, from: { activity: `a${i}`, at: 'end' as const }, to: { activity: `a${i + 3}`, at: 'start' as const }, min: { kind: 'elapsed' as const, minutes: i % 4 },
    })),
  };
}

/** A problem that many times over on the same resources. */
function repeat(problem: Problem, times: number): Problem {
  const copies = Array.from({ length: times }, (_, k) => (id: string) => `${id}/${k}`);
  return {
    ...problem,
    horizon: problem.horizon * times,
    activities: copies.flatMap((named) => problem.activities.map((activity) => ({ ...activity, id: named(activity.id) }))),
    lags: copies.flatMap((named) => problem.lags.map((lag) => ({
      ...lag, id: named(lag.id), from: { ...lag.from, activity: named(lag.from.activity) }, to: { ...lag.to, activity: named(lag.to.activity) },
    }))),
  };
}

/** More work than is ever proved, and a bound below what any search reaches: it ends only when it is told to. */
const hardProblem = repeat(toProblem(loadInstances()[0]!), 12);

describe('solving in a worker thread', () => {
  it('gives the same answer as solving here, and a sound one', async () => {
    const problem = makeProblem(12);
    const inThread = unwrap(await solveInWorker(problem, { stop: { kind: 'work', schedules: 300 }, seed: 4 }));
    expect(inThread).toEqual(unwrap(solve(problem, { stop: afterWork(300), seed: 4 })));
    if (inThread.status === 'infeasible' || inThread.status === 'unknown') throw new Error(inThread.status);
    expect(check(problem, inThread.schedule)).toEqual([]);
  });

  it('tells its progress, and hands over the best so far when cancelled', async () => {
    const controller = new AbortController();
    const told: Progress[] = [];
    const began = performance.now();
    const solution = unwrap(await solveInWorker(hardProblem, { stop: { kind: 'time', milliseconds: 60_000 }, seed: 1 }, {
      signal: controller.signal,
      onProgress: (progress) => {
        told.push(progress);
        controller.abort();
      },
    }));
    expect(told[0]?.best?.unplaced).toBe(0);
    expect(performance.now() - began).toBeLessThan(20_000);
    if (solution.status !== 'feasible') throw new Error(`Too easy to show a cancel: ${solution.status}`);
    expect(check(hardProblem, solution.schedule)).toEqual([]);
  });

  it('answers even when cancelled before it began', async () => {
    const solution = unwrap(await solveInWorker(hardProblem, { stop: { kind: 'time', milliseconds: 60_000 }, seed: 1 }, { signal: AbortSignal.abort() }));
    expect(solution.status).toBe('feasible');
  });

  it('returns the issues of a malformed problem', async () => {
    const result = await solveInWorker({ ...makeProblem(4), horizon: 0 }, { stop: { kind: 'work', schedules: 1 }, seed: 1 });
    expect(result.ok ? [] : result.error.map((found) => found.code)).toContain('horizon-too-short');
  });
});
