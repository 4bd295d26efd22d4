import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Problem, Progress } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import type { Outcome } from '@/lib/scheduling/describe';
import { lowerToCore, searchExactly } from '@/lib/scheduling/exact';
import { explainExactly } from '@/lib/scheduling/exact/conflict';
import type { ExactInput } from '@/lib/scheduling/exact/search';
import { shiftEarlier } from '@/lib/scheduling/exact/shift';
import { TERMS } from '@/lib/scheduling/objective';
import { PLACED } from '@/lib/scheduling/placer';
import { followRelation, solveCore, type CoreInstance } from '@/lib/scheduling/proof';
import { rate } from '@/lib/scheduling/score';
import { listFaults, listPlans } from '../scheduling-proof/brute-force';
import { withCurves, withMaximumLags, withPrecedence } from '../scheduling-proof/small-instances';
import { makePrecedence } from '../scheduling-proof/made-instances';
import { activity, finishToStart, lag, problem } from './simple';

const single = { resources: [{ id: 'machine', capacity: 1 }] };
const uses = { demands: [{ resource: 'machine', amount: 1 }] };

/** What is asked of the exact search, from a plan known before; null: nothing placed. */
function ask(stated: Problem, starts: readonly number[] | null, more: Partial<ExactInput> = {}): ExactInput {
  const model = compile(stated);
  const count = model.count;
  const known: Outcome = {
    status: new Uint8Array(count).fill(starts ? PLACED : 0), start: Int32Array.from(starts ?? model.duration), end: Int32Array.from(model.duration, (d, i) => d + (starts?.[i] ?? 0)),
    crew: new Int32Array(0), cause: new Uint8Array(count), causeAt: new Int32Array(count), terms: new Float64Array(TERMS),
  };
  rate(model, known, known.terms);
  return { model, core: lowerToCore(model)!, lowerBound: 0, known, schedulesTried: 7, stop: { share: ({ schedulesTried }) => schedulesTried / 50_000 }, seed: 1, ...more };
}

/** Six in a row on one machine, the last of which takes long and waits for nobody. */
const row = problem([...['a', 'b', 'c', 'd'].map((id) => activity(id, 5, uses)), activity('long', 18), activity('after', 6)], { ...single, horizon: 90, lags: [finishToStart('a', 'after', 3)] });

describe('the exact search', () => {
  it('proves the least finish, with every start as early as it can be', () => {
    const outcome = searchExactly(ask(row, null));
    expect(outcome).toMatchObject({ kind: 'schedule', lowerBound: 20, contradiction: null });
    expect(outcome.schedulesTried).toBeGreaterThan(7);
    expect(Array.from(outcome.best.status)).toEqual([PLACED, PLACED, PLACED, PLACED, PLACED, PLACED]);
    expect(Math.max(...outcome.best.end)).toBe(20);
    expect(Array.from(outcome.best.end, (end, i) => end - outcome.best.start[i]!)).toEqual([5, 5, 5, 5, 18, 6]);
    expect([outcome.best.start[4], outcome.best.start[5]! - outcome.best.end[0]!]).toEqual([0, 3]);
    expect(outcome.best.terms[0]).toBe(0);
  });

  it('keeps the plan known before unless its own is better', () => {
    const first = searchExactly(ask(row, null)).best;
    const again = ask(row, Array.from(first.start));
    expect(searchExactly(again).best).toBe(again.known);
    // As long, but one start later than needed.
    const late = ask(row, Array.from(first.start, (s, i) => (i === 4 ? s + 1 : s)));
    expect(Array.from(searchExactly(late).best.start)).toEqual(Array.from(first.start));
    const stopped = ask(row, null, { stop: { share: () => 1 } });
    expect(stopped.known.terms[0]).toBe(6);
    expect(searchExactly(stopped).best.terms[0]).toBe(0);
  });

  it('begins from a whole plan, and from a plan with something left out not', () => {
    // A longest lag leaves no place for lists.
    const windowed = { ...row, lags: [finishToStart('a', 'after', 3, 40)] };
    const best = Array.from(searchExactly(ask(windowed, null)).best.start);
    const whole = ask(windowed, best);
    const { instance } = whole.core;
    const costOf = (known?: readonly number[]): number => {
      const { entries, schedules } = solveCore(instance, { seed: 1, stop: () => false, share: () => 0, ...(known ? { known } : {}) });
      return 7 + schedules + Math.floor((12 * entries) / 6);
    };
    expect(costOf(best)).toBeLessThan(costOf());
    expect(searchExactly(whole).schedulesTried).toBe(costOf(best));
    const partly = ask(windowed, best);
    partly.known.terms[0] = 1;
    expect(searchExactly(partly).schedulesTried).toBe(costOf());
  });

  it('counts the work of the core as schedules, and tells bound and best as it goes', () => {
    const made = makePrecedence({ activities: 18, resources: 2, capacity: 6 }, 36);
    const stated = problem(made.durations.map((d, i) => activity(`a${i}`, d, { demands: made.demands[i]!.map((amount, k) => ({ resource: `r${k}`, amount })).filter(({ amount }) => amount > 0) })), {
      horizon: made.horizon, resources: made.capacities.map((capacity, k) => ({ id: `r${k}`, capacity })),
      lags: made.relations.map(({ from, to }, k) => ({ ...finishToStart(`a${from}`, `a${to}`), id: `l${k}` })),
    });
    const told: Progress[] = [];
    const input = ask(stated, null, { lowerBound: 11, stop: { share: ({ schedulesTried }) => schedulesTried / 6000 }, onProgress: (progress) => told.push(progress) });
    const outcome = searchExactly(input);
    const core = solveCore(input.core.instance, { seed: 1, stop: () => false, share: () => 0 });
    expect([outcome.lowerBound, core.lowerBound, outcome.best.terms[0]]).toEqual([24, 24, 0]);
    expect(outcome.schedulesTried).toBe(7 + core.schedules + Math.floor((12 * core.entries) / 18));
    expect(told.length).toBeGreaterThan(5);
    for (const [k, progress] of told.entries()) {
      expect(progress.share).toBeCloseTo(progress.schedulesTried / 6000, 9);
      if (k > 0) expect(progress.share - told[k - 1]!.share).toBeGreaterThanOrEqual(0.02);
    }
    expect(told[0]!.lowerBound).toBeGreaterThanOrEqual(11);
    expect(told.at(-1)!.best).toMatchObject({ unplaced: 0, makespan: 24 });
  });

  it('never tells a bound beyond the horizon, nor below the one it was given', () => {
    expect(searchExactly(ask(row, null, { lowerBound: 12, stop: { share: () => 1 } })).lowerBound).toBe(20);
    expect(searchExactly(ask(row, null, { lowerBound: 33, stop: { share: () => 1 } })).lowerBound).toBe(33);
    expect(searchExactly(ask(row, null, { lowerBound: 300, stop: { share: () => 1 } })).lowerBound).toBe(90);
  });

  it('stops when it is told to', () => {
    let asked = 0;
    const signal = { aborted: false };
    const share = (): number => {
      asked++;
      signal.aborted = asked > 2;
      return 0;
    };
    const hard = { ...row, activities: [...row.activities, activity('wide', 4, { demands: [{ resource: 'other', amount: 1 }] })], resources: [...single.resources, { id: 'other', capacity: 1 }] };
    searchExactly(ask(hard, null, { signal, stop: { share } }));
    expect(asked).toBeLessThan(12);
  });

  it('tells facts that contradict each other from dates that leave no room', () => {
    const window = { ...finishToStart('a', 'b'), from: { activity: 'a', at: 'start' as const }, max: 4 };
    const never = problem([activity('a', 5, uses), activity('b', 5, uses)], { ...single, horizon: 60, lags: [{ ...window, min: { kind: 'elapsed' as const, minutes: 0 } }] });
    const outcome = searchExactly(ask(never, null));
    expect(outcome).toMatchObject({ kind: 'contradiction', contradiction: { activities: ['a', 'b'] } });
    expect(outcome.contradiction!.facts).toHaveLength(3);
    const short = { ...row, horizon: 19 };
    const cut = ask(short, null);
    expect(searchExactly(cut)).toMatchObject({ kind: 'no-room', contradiction: null, best: cut.known });
    const dated = { ...never, activities: [activity('a', 5, { ...uses, release: 1 }), activity('b', 5, uses)] };
    expect(searchExactly(ask(dated, null))).toMatchObject({ kind: 'no-room', contradiction: null });
  });
});

const explain = (stated: Problem) => {
  const model = compile(stated);
  return explainExactly(model, lowerToCore(model)!, 1);
};

describe('a contradiction in the core', () => {
  it('names each resource once, with the first who needs it and the others', () => {
    // Three of four hours have to begin within seven hours of each other: two machines are too few, three enough.
    const ids = ['a', 'b', 'c'];
    const demands = [{ resource: 'pair', amount: 1 }, { resource: 'spare', amount: 1 }];
    const together = ids.flatMap((from) => ids.filter((to) => to !== from).map((to) => ({ id: `${from}${to}`, from: { activity: from, at: 'start' as const }, to: { activity: to, at: 'start' as const }, max: 3 })));
    const stated = problem([...ids.map((id) => activity(id, 4, { demands })), activity('d', 4, { demands }), activity('e', 0, { demands })], { horizon: 200, resources: [{ id: 'pair', capacity: 2 }, { id: 'spare', capacity: 9 }], lags: together });
    const found = explain(stated)!;
    expect(found.activities).toEqual(ids);
    expect(found.facts.filter((fact) => fact.kind === 'resource')).toEqual([{ kind: 'resource', resource: 'pair', activity: 'a', blockers: ['b', 'c'] }]);
    // Some of the windows are enough, none of those named can be spared.
    const lags = found.facts.flatMap((fact) => (fact.kind === 'lag-max' ? [fact.lag] : []));
    expect(found.facts).toHaveLength(lags.length + 1);
    const hold = (kept: readonly string[]): boolean => solveCore(lowerToCore(compile({ ...stated, lags: together.filter(({ id }) => kept.includes(id)) }))!.instance, { seed: 1, stop: () => false }).status !== 'infeasible';
    expect(hold(lags)).toBe(false);
    for (const left of lags) expect(hold(lags.filter((other) => other !== left))).toBe(true);
  });

  it('names a circle of lags alone', () => {
    const stated = problem([activity('z', 2, uses), activity('a', 3, uses), activity('b', 4), activity('c', 1)], {
      ...single, horizon: 200, lags: [finishToStart('c', 'z'), lag('a', 'b', { kind: 'elapsed', minutes: 2 }, 5), { ...lag('b', 'a', { kind: 'elapsed', minutes: -8 }), id: 'back' }],
    });
    expect(explain(stated)).toEqual({ facts: [{ kind: 'lag-min', lag: 'a>b' }, { kind: 'lag-min', lag: 'back' }], activities: ['a', 'b'] });
  });

  it('is none where only the horizon is too short', () => {
    const stated = problem([activity('a', 5, uses), activity('b', 5, uses)], { ...single, horizon: 9 });
    expect(explain(stated)).toBeNull();
    // With a lag the time it takes has to be looked at too.
    expect(explain(problem([activity('a', 5, uses), activity('b', 5)], { ...single, horizon: 30, lags: [finishToStart('a', 'b', 25)] }))).toBeNull();
  });

  it('is found although the horizon is too short as well', () => {
    const window = { id: 'w', from: { activity: 'a', at: 'start' as const }, to: { activity: 'b', at: 'start' as const }, min: { kind: 'elapsed' as const, minutes: 0 }, max: 4 };
    const stated = problem([activity('a', 5, uses), activity('b', 5, uses), activity('c', 5, uses)], { ...single, horizon: 9, lags: [window] });
    expect(explain(stated)).toEqual({
      facts: [{ kind: 'lag-min', lag: 'w' }, { kind: 'lag-max', lag: 'w' }, { kind: 'resource', resource: 'machine', activity: 'a', blockers: ['b'] }], activities: ['a', 'b'],
    });
  });
});

/** Each in the order of its start to the first time it may have beside the others as they then stand. */
function shiftSimply(instance: CoreInstance, starts: readonly number[]): number[] {
  const now = [...starts];
  const order = starts.map((_, i) => i).toSorted((a, b) => starts[a]! - starts[b]! || a - b);
  for (const i of order) {
    for (let t = 0; t < now[i]!; t++) {
      if (instance.relations.some((relation) => relation.to === i && t < followRelation(relation, now[relation.from]!))) continue;
      const tried = now.map((s, j) => (j === i ? t : s));
      if (listFaults({ ...instance, relations: [] }, tried).length > 0) continue;
      now[i] = t;
      break;
    }
  }
  return now;
}

describe('a plan pushed to the left', () => {
  it.each([['precedence', withPrecedence, 9], ['maximum lags', withMaximumLags, 7], ['curves and starts that are not allowed', withCurves, 8]] as const)('is what trying each minute gives, with %s', (_, instances, horizon) => {
    let moved = 0;
    fc.assert(fc.property(instances, fc.nat(), (drawn, pick) => {
      const instance = { ...drawn, horizon };
      const plans = listPlans(instance);
      for (let k = 0; k < Math.min(6, plans.length); k++) {
        const plan = plans[(pick + k * 37) % plans.length]!;
        const shifted = Array.from(shiftEarlier(instance, plan));
        expect(shifted).toEqual(shiftSimply(instance, plan));
        expect(listFaults(instance, shifted)).toEqual([]);
        if (shifted.some((s, i) => s < plan[i]!)) moved++;
      }
    }), { numRuns: 15 });
    expect(moved).toBeGreaterThan(5);
  });
});
