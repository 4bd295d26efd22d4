import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, solve, type Problem } from '@/lib/scheduling';
import { findLowerBound } from '@/lib/scheduling/bound';
import { compile } from '@/lib/scheduling/compile';
import { boundByCalendarEnergy } from '@/lib/scheduling/energy';
import { propagate } from '@/lib/scheduling/propagate';
import { Supply } from '@/lib/scheduling/supply';
import { validate } from '@/lib/scheduling/validate';
import { problems } from './random-problem';
import { activity, problem } from './simple';

const wellFormed = problems.filter((input) => validate(input).ok);

/** The bounds of a problem without contradictions: the quick one and the better one. */
function boundsOf(input: Problem): { readonly quick: number; readonly better: number } | null {
  const model = compile(input);
  const propagation = propagate(model);
  if (!propagation.ok) return null;
  const quick = findLowerBound(model, propagation.bounds);
  return { quick, better: boundByCalendarEnergy(model, propagation.bounds, quick) };
}

describe('the bound by energy', () => {
  it('is never above the end of a plan with everything in it', () => {
    let seen = 0;
    let isBetter = 0;
    fc.assert(fc.property(wellFormed, (input) => {
      const bounds = boundsOf(input);
      const solution = unwrap(solve(input, { stop: afterWork(30), seed: 5 }));
      if (bounds === null || !('schedule' in solution) || solution.schedule.score.unplaced > 0) return;
      seen += 1;
      if (bounds.better > bounds.quick) isBetter += 1;
      expect(bounds.better).toBeLessThanOrEqual(solution.schedule.score.makespan);
    }), { numRuns: 500 });
    expect(seen).toBeGreaterThan(60);
    expect(isBetter).toBeGreaterThan(0);
  });

  it('never falls when a budget is added or somebody comes less often', () => {
    fc.assert(fc.property(wellFormed, fc.integer({ min: 0, max: 60 }), (input, limit) => {
      const before = boundsOf({ ...input, budgets: [] });
      const after = boundsOf({ ...input, budgets: [{ id: 'b', resource: 'ann', within: { start: 0, end: 90 }, limit }] });
      if (before === null || after === null) return;
      expect(after.better).toBeGreaterThanOrEqual(before.better);
    }), { numRuns: 200 });
  });

  it('fits the work of a person into their sessions up to the fill limit', () => {
    const calendars = [{ id: 'sessions', intervals: [0, 1, 2].map((day) => ({ start: day * 1000, end: day * 1000 + 100 })) }];
    const crew = [{ pool: ['ann'], count: 1 }];
    const input = problem(['a', 'b', 'c'].map((id) => activity(id, 70, { calendar: 'sessions', crew })), {
      horizon: 3000, calendars, resources: [{ id: 'ann', capacity: 1, calendar: 'sessions' }],
      budgets: [0, 1, 2].map((day) => ({ id: `b${day}`, resource: 'ann', within: { start: day * 1000, end: day * 1000 + 100 }, limit: 70 })),
    });
    expect(boundsOf(input)).toEqual({ quick: 70, better: 2070 });
  });

  it('counts what several people can give minute by minute', () => {
    fc.assert(fc.property(wellFormed, fc.integer({ min: 0, max: 400 }), (input, t) => {
      const model = compile(input);
      const [people, minutes] = [['ann', 'ben'], Array.from({ length: Math.min(t, input.horizon) }, (_, m) => m)];
      const free = (id: string, m: number) => {
        const { calendar } = input.resources.find((resource) => resource.id === id)!;
        return calendar === undefined || input.calendars.find((c) => c.id === calendar)!.intervals.some((i) => i.start <= m && m < i.end);
      };
      const indices = people.map((id) => input.resources.findIndex((resource) => resource.id === id));
      const isBudgeted = (input.budgets ?? []).some((budget) => people.includes(budget.resource));
      const given = new Supply(model, indices, -1).before(t);
      const all = people.reduce((sum, id) => sum + minutes.filter((m) => free(id, m)).length, 0);
      if (isBudgeted) expect(given).toBeLessThanOrEqual(all + 1e-6);
      else expect(given).toBeCloseTo(all, 6);
    }), { numRuns: 200 });
  });
});
