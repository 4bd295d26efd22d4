import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '@/lib/scheduling/compile';
import { explainExactly } from '@/lib/scheduling/exact/conflict';
import { lowerToCore } from '@/lib/scheduling/exact/lower';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, type Lag, type LagLength, type Problem, type Schedule, type Solution } from '@/lib/scheduling';
import type { CoreInstance } from '@/lib/scheduling/proof';
import { validate } from '@/lib/scheduling/validate';
import { findOptimum } from '../scheduling-proof/brute-force';
import { withMaximumLags, withPrecedence } from '../scheduling-proof/small-instances';
import { activity, finishToStart, problem } from './simple';

const options = { stop: afterWork(20_000), seed: 5 };

/** The length of a plan with everything in it; null when there is none, with the status. */
const tell = (solution: Solution) => ({
  status: solution.status,
  makespan: 'schedule' in solution && solution.schedule.score.unplaced === 0 ? solution.schedule.score.makespan : null,
});

/** A core instance as a caller would state it. */
function state({ capacities, demands, durations, horizon, relations }: CoreInstance): Problem {
  const at = 'start' as const;
  return problem(durations.map((duration, i) => activity(`a${i}`, duration, {
    demands: demands[i]!.map((amount, k) => ({ resource: `r${k}`, amount })),
  })), {
    horizon,
    resources: capacities.map((capacity, k) => ({ id: `r${k}`, capacity })),
    lags: relations.flatMap((relation, k): Lag[] => ('lag' in relation ? [{
      id: `l${k}`, from: { activity: `a${relation.from}`, at }, to: { activity: `a${relation.to}`, at }, min: { kind: 'elapsed', minutes: relation.lag },
    }] : [])),
  });
}

describe('a problem that the core says exactly', () => {
  it('gets the optimum that trying every start gives, its proof, or the proof that there is no plan', () => {
    fc.assert(fc.property(withMaximumLags, (instance) => {
      const stated = state(instance);
      if (!validate(stated).ok) return;
      const optimum = findOptimum(instance);
      const solution = unwrap(solve(stated, options));
      if (optimum >= 0) {
        expect(tell(solution)).toEqual({ status: 'optimal', makespan: optimum });
        expect(solution).toMatchObject({ lowerBound: optimum });
      } else expect(tell(solution)).toEqual(tell(solution).status === 'infeasible' ? { status: 'infeasible', makespan: null } : { status: 'feasible', makespan: null });
      if ('schedule' in solution) expect(check(stated, solution.schedule)).toEqual([]);
    }), { numRuns: 70 });
  });

  it('is called infeasible only when more time would not help', () => {
    fc.assert(fc.property(withMaximumLags, (instance) => {
      const stated = state(instance);
      if (!validate(stated).ok) return;
      const here = unwrap(solve(stated, options));
      const wide = unwrap(solve({ ...stated, horizon: 60 }, options));
      expect(here.status === 'infeasible').toBe(wide.status === 'infeasible');
    }), { numRuns: 60 });
  });

  it('never gets a worse optimum when it is relaxed: a lag left out, or a unit more', () => {
    fc.assert(fc.property(withPrecedence, fc.nat(3), (instance, k) => {
      const stated = state(instance);
      const [full, fewer] = [stated, { ...stated, lags: stated.lags.filter((_, index) => index !== k) }].map((input) => tell(unwrap(solve(input, options))));
      const more = tell(unwrap(solve({ ...stated, resources: stated.resources.map((r, index) => (index === k % 2 ? { ...r, capacity: r.capacity + 1 } : r)) }, options)));
      if (full!.makespan === null) return;
      expect([fewer!.status, more.status]).toEqual(['optimal', 'optimal']);
      expect(fewer!.makespan!).toBeLessThanOrEqual(full!.makespan);
      expect(more.makespan!).toBeLessThanOrEqual(full!.makespan);
    }), { numRuns: 60 });
  });

  it('keeps its proven result when activities are listed in another order, and moves with releases that move', () => {
    fc.assert(fc.property(withMaximumLags, fc.integer({ min: 1, max: 500 }), (instance, shift) => {
      const stated = state(instance);
      if (!validate(stated).ok) return;
      const before = tell(unwrap(solve(stated, options)));
      const turned = { ...stated, activities: stated.activities.toReversed(), lags: stated.lags.toReversed() };
      expect(tell(unwrap(solve(turned, options)))).toEqual(before);
      const later = { ...stated, horizon: stated.horizon + shift, activities: stated.activities.map((a) => ({ ...a, release: shift })) };
      const moved = tell(unwrap(solve(later, options)));
      if (before.makespan !== null) expect(moved).toEqual({ status: 'optimal', makespan: before.makespan + shift });
      else expect(moved.makespan).toBeNull();
    }), { numRuns: 60 });
  });
});

const HORIZON = 13;
const sessions = fc.array(fc.record({ gap: fc.integer({ min: 0, max: 2 }), length: fc.integer({ min: 1, max: 5 }) }), { minLength: 1, maxLength: 4 }).map((rows) => {
  let at = 0;
  return rows.map(({ gap, length }) => ({ start: at + gap, end: (at += gap + length) }));
});
const table = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 5, maxLength: 5 }).map((waits): LagLength => {
  let ready = 0;
  return { kind: 'table', step: 3, ready: waits.map((wait, k) => (ready = Math.max(ready, 3 * k + wait))) };
});
const length = fc.oneof(table, fc.integer({ min: -2, max: 3 }).map((minutes): LagLength => ({ kind: 'elapsed', minutes })));
const timed: fc.Arbitrary<Problem> = fc.record({
  intervals: sessions,
  shopHours: sessions,
  isShopTimed: fc.boolean(),
  rows: fc.array(fc.record({
    duration: fc.integer({ min: 0, max: 4 }), isTimed: fc.boolean(), needs: fc.boolean(), release: fc.constantFrom(0, 0, 2), latestEnd: fc.constantFrom(HORIZON, HORIZON, 8),
  }), { minLength: 3, maxLength: 3 }),
  lags: fc.array(fc.record({ a: fc.nat(2), b: fc.nat(2), fromAt: fc.constantFrom('start' as const, 'end' as const), toAt: fc.constantFrom('start' as const, 'end' as const), min: length }), { maxLength: 2 }),
}).map(({ intervals, isShopTimed, lags, rows, shopHours }) => ({
  horizon: HORIZON,
  calendars: [{ id: 'own', intervals }, { id: 'shop', intervals: shopHours }],
  resources: [{ id: 'm', capacity: 1, ...(isShopTimed ? { calendar: 'shop' } : {}) }],
  activities: rows.map(({ duration, isTimed, latestEnd, needs, release }, i) => activity(`a${i}`, duration, {
    release, latestEnd, demands: needs ? [{ resource: 'm', amount: 1 }] : [], ...(isTimed ? { calendar: 'own' } : {}),
  })),
  lags: lags.filter(({ a, b }) => a < b).map(({ a, b, fromAt, min, toAt }, k) => ({ id: `l${k}`, from: { activity: `a${a}`, at: fromAt }, to: { activity: `a${b}`, at: toAt }, min })),
}));

/** The earliest finish among all plans that the independent checker passes; null without one. */
function tryAll(stated: Problem): number | null {
  let best: number | null = null;
  const lengths = stated.activities.map((a) => a.duration);
  const starts = lengths.map(() => 0);
  const visit = (i: number): void => {
    if (i < starts.length) {
      for (starts[i] = 0; starts[i]! + lengths[i]! <= HORIZON; starts[i]! += 1) visit(i + 1);
      return;
    }
    const ends = starts.map((start, k) => start + lengths[k]!);
    const makespan = Math.max(...ends);
    if (best !== null && makespan >= best) return;
    const placements = starts.map((start, k) => ({ activity: `a${k}`, start, end: ends[k]!, pieces: lengths[k] === 0 ? [] : [{ start, end: ends[k]! }], crew: [] }));
    const schedule: Schedule = { placements, unplaced: [], score: { unplaced: 0, tardiness: 0, shortages: 0, moved: 0, makespan, cost: 0, sumOfEnds: ends.reduce((sum, end) => sum + end, 0) } };
    if (check(stated, schedule).length === 0) best = makespan;
  };
  visit(0);
  return best;
}

describe('dates, calendars and tables in the core', () => {
  it('give the finish that the independent checker passes first', () => {
    fc.assert(fc.property(timed.filter((stated) => validate(stated).ok), (stated) => {
      const solution = unwrap(solve(stated, options));
      const expected = tryAll(stated);
      if ('schedule' in solution) expect(check(stated, solution.schedule)).toEqual([]);
      expect(tell(solution).makespan).toBe(expected);
      if (expected !== null) expect(solution.status).toBe('optimal');
    }), { numRuns: 15 });
  });
});

describe('lags and resources that cannot hold together', () => {
  const machine = { demands: [{ resource: 'machine', amount: 1 }] };
  const stated = problem([activity('a', 30, machine), activity('b', 30, machine), activity('c', 20, machine), activity('d', 5)], {
    resources: [{ id: 'machine', capacity: 1 }], lags: [{ ...finishToStart('a', 'b'), from: { activity: 'a', at: 'start' }, max: 20 }, finishToStart('b', 'c', 5), finishToStart('c', 'd', 0, 10)],
  });

  it('are named, and nothing else', () => {
    const solution = unwrap(solve(stated, { stop: afterWork(500), seed: 1 }));
    if (solution.status !== 'infeasible') throw new Error(solution.status);
    expect(solution.contradiction.activities).toEqual(['a', 'b']);
    expect(solution.contradiction.facts).toEqual([
      { kind: 'lag-min', lag: 'a>b' }, { kind: 'lag-max', lag: 'a>b' }, { kind: 'resource', resource: 'machine', activity: 'a', blockers: ['b'] },
    ]);
  });

  it('are named with what else there is, at once, when the search is stopped meanwhile', () => {
    const model = compile(stated);
    const core = lowerToCore(model)!;
    const wide = { ...core, isHorizonWide: true };
    const stopped = explainExactly(model, wide, 1, { aborted: true })!;
    expect(stopped.activities).toEqual(['a', 'b', 'c', 'd']);
    expect(explainExactly(model, wide, 1, { aborted: false })!.activities).toEqual(['a', 'b']);
  });

  it('can hold once any one of them is dropped', () => {
    const { lags, ...rest } = stated;
    const [window] = lags;
    const eased: Problem[] = [
      { ...rest, lags: [{ ...window!, max: 30 }, ...lags.slice(1)] },
      { ...rest, lags: lags.slice(1) },
      { ...stated, resources: [{ id: 'machine', capacity: 2 }] },
    ];
    for (const input of eased) expect(unwrap(solve(input, { stop: afterWork(500), seed: 1 })).status).toBe('optimal');
  });
});
