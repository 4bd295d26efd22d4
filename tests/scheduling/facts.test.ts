import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterTime, afterWork, anyOf, atBound, solve, type Fact, type Problem, type Score, type Solution } from '@/lib/scheduling';
import { findLowerBound } from '@/lib/scheduling/bound';
import { compile } from '@/lib/scheduling/compile';
import { boundByCalendarEnergy } from '@/lib/scheduling/energy';
import { propagate } from '@/lib/scheduling/propagate';
import { activity, finishToStart, lag, problem, scheduleOf } from './simple';

const sessions = { id: 'sessions', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }] };
const bench = { id: 'bench', capacity: 1 };
const ann = { id: 'ann', capacity: 1 };
const onBench = { demands: [{ resource: 'bench', amount: 1 }] };
const byAnn = { crew: [{ pool: ['ann'], count: 1 }] };

const solved = (input: Problem): Solution => unwrap(solve(input, { stop: afterWork(20), seed: 1 }));

function factsOf(input: Problem): readonly Fact[] {
  const solution = solved(input);
  return solution.status === 'infeasible' ? solution.contradiction.facts : [];
}

/** As a row of words, in any order. */
const inWords = (facts: readonly Fact[]): readonly string[] => facts.map((fact) => [fact.kind, ...Object.entries(fact).flatMap(([name, value]) => (name === 'kind' || Array.isArray(value) ? [] : [String(value)]))].join(' ')).toSorted();

describe('facts that cannot hold together', () => {
  const cases: readonly (readonly [title: string, input: Problem, facts: readonly string[]])[] = [
    ['a length, a release and an end', problem([activity('a', 10, { release: 5, latestEnd: 14 })]), ['duration a', 'latest-end a', 'release a']],
    ['a length and an end', problem([activity('a', 10, { release: 5, latestEnd: 9 })]), ['duration a', 'latest-end a']],
    ['a release and an end', problem([activity('a', 10, { release: 15, latestEnd: 14 })]), ['latest-end a', 'release a']],
    ['a calendar and an end', problem([activity('a', 10, { calendar: 'c', latestEnd: 49 })], { calendars: [{ id: 'c', intervals: [{ start: 50, end: 200 }] }] }), ['calendar a', 'latest-end a']],
    ['a pin before a release', problem([activity('a', 10, { release: 6, pin: { start: 5 } })]), ['pin a', 'release a']],
    ['a pin outside the calendar', problem([activity('a', 10, { calendar: 'sessions', pin: { start: 150 } })], { calendars: [sessions] }), ['calendar a', 'pin a']],
    ['a pin too late for an end', problem([activity('a', 10, { latestEnd: 20, pin: { start: 11 } })]), ['duration a', 'latest-end a', 'pin a']],
    ['two pins and the wait between them', problem([activity('a', 10, { pin: { start: 1 } }), activity('b', 10, { pin: { start: 15 } })], { lags: [finishToStart('a', 'b', 5)] }), ['duration a', 'lag-min a>b', 'pin a', 'pin b']],
    ['two pins and the window between them', problem([activity('a', 10, { pin: { start: 0 } }), activity('b', 10, { pin: { start: 31 } })], { lags: [finishToStart('a', 'b', 0, 20)] }), ['lag-max a>b', 'pin a', 'pin b']],
    ['waits in a circle', problem([activity('a', 10), activity('b', 10), activity('c', 10)], { lags: [finishToStart('a', 'b'), finishToStart('b', 'a'), finishToStart('b', 'c')] }), ['duration a', 'lag-min a>b', 'lag-min b>a']],
    ['a window too short for the work between', problem([activity('a', 10), activity('b', 10), activity('c', 10)], { lags: [finishToStart('a', 'b'), finishToStart('b', 'c'), lag('a', 'c', undefined, 9)] }), ['duration b', 'lag-max a>c', 'lag-min a>b', 'lag-min b>c']],
    ['two pins on one bench', problem([activity('a', 10, { ...onBench, pin: { start: 0 } }), activity('b', 10, { ...onBench, pin: { start: 9 } }), activity('c', 10, { ...onBench, pin: { start: 40 } })], { resources: [bench] }), ['pin a', 'pin b', 'resource bench b']],
    ['two pins and the air', problem([activity('a', 10, { states: [{ medium: 'air', state: 'wet', tail: 30 }], pin: { start: 0 } }), activity('b', 10, { states: [{ medium: 'air', state: 'dusty', tail: 0 }], pin: { start: 39 } })]), ['pin a', 'pin b', 'state air b']],
    ['a pin and a budget', problem([activity('a', 10, { ...onBench, pin: { start: 0 } })], { resources: [bench], budgets: [{ id: 'day', resource: 'bench', within: { start: 0, end: 100 }, limit: 9 }] }), ['budget day a', 'pin a']],
  ];

  it.each(cases)('%s', (_, input, facts) => {
    expect(inWords(factsOf(input))).toEqual(facts);
  });

  it.each([
    ['an end that is just met', problem([activity('a', 10, { release: 5, latestEnd: 15 })])],
    ['pins with just the wait between them', problem([activity('a', 10, { pin: { start: 0 } }), activity('b', 10, { pin: { start: 15 } })], { lags: [finishToStart('a', 'b', 5, 5)] })],
    ['a window that the work between just fills', problem([activity('a', 10), activity('b', 10), activity('c', 10)], { lags: [finishToStart('a', 'b'), finishToStart('b', 'c'), lag('a', 'c', undefined, 10)] })],
    ['pins that touch on one bench', problem([activity('a', 10, { ...onBench, pin: { start: 0 } }), activity('b', 10, { ...onBench, pin: { start: 10 } })], { resources: [bench] })],
  ])('are none in %s', (_, input) => {
    expect(solved(input)).toMatchObject({ status: 'optimal', schedule: { unplaced: [] } });
  });
});

const reasons = (input: Problem, id = 'a') => {
  const row = scheduleOf(solved(input)).unplaced.find((left) => left.activity === id);
  return { because: inWords(row?.because ?? []), waitsFor: row?.waitsFor ?? [] };
};

describe('what is left out tells why', () => {

  it.each([
    ['its length and the horizon', problem([activity('a', 101)], { horizon: 100 }), ['duration a', 'horizon']],
    ['its release as well', problem([activity('a', 10, { release: 91 })], { horizon: 100 }), ['duration a', 'horizon', 'release a']],
    ['its calendar', problem([activity('a', 10, { calendar: 'late' })], { horizon: 205, calendars: [{ id: 'late', intervals: [{ start: 200, end: 300 }] }] }), ['calendar a', 'duration a', 'horizon']],
    ['the wait for what is placed', problem([activity('a', 10), activity('b', 60)], { horizon: 100, lags: [finishToStart('b', 'a', 31)] }), ['duration a', 'horizon', 'lag-min b>a']],
    ['who is busy all the time', problem([activity('a', 10, onBench), activity('b', 95, { ...onBench, pin: { start: 0 } })], { horizon: 100, resources: [bench] }), ['horizon', 'resource bench a']],
    ['a budget', problem([activity('a', 10, onBench)], { horizon: 100, resources: [bench], budgets: [{ id: 'day', resource: 'bench', within: { start: 0, end: 100 }, limit: 9 }] }), ['budget day a', 'horizon']],
    ['its own latest end', problem([activity('a', 10, { ...byAnn, latestEnd: 50 }), activity('b', 45, { ...byAnn, pin: { start: 0 } })], { horizon: 100, resources: [ann] }), ['crew a', 'horizon', 'latest-end a']],
  ] as const)('%s', (_, input, because) => {
    expect(reasons(input)).toEqual({ because, waitsFor: [] });
  });

  it('what it waits for, when that is left out too', () => {
    const input = problem([activity('a', 10), activity('b', 101), activity('c', 10)], { horizon: 100, lags: [finishToStart('b', 'a'), finishToStart('c', 'a')] });
    expect(reasons(input).waitsFor).toEqual(['b']);
  });
});

const bounds = (input: Problem) => {
  const model = compile(input);
  const propagation = propagate(model);
  if (!propagation.ok) throw new Error('A contradiction');
  const quick = findLowerBound(model, propagation.bounds);
  return [quick, boundByCalendarEnergy(model, propagation.bounds, quick)];
};

const three = (more: object) => ['a', 'b', 'c'].map((id) => activity(id, 10, more));

describe('the bound', () => {
  const dry = ['a', 'b', 'c'].map((id) => activity(`${id} dry`, 7));
  const thenDry = ['a', 'b', 'c'].map((id) => finishToStart(id, `${id} dry`));

  it.each([
    ['the longest chain', problem([activity('a', 10), activity('b', 20)], { lags: [finishToStart('a', 'b', 5)] }), [35, 35]],
    ['the horizon at the most', problem([activity('a', 10), activity('b', 20)], { horizon: 30, lags: [finishToStart('a', 'b', 5)] }), [30, 30]],
    ['all the work on one bench', problem(three(onBench), { resources: [bench] }), [30, 30]],
    ['half of it on two, rounded up', problem([...three(onBench), activity('d', 5, onBench)], { resources: [{ ...bench, capacity: 2 }] }), [18, 18]],
    ['the work after the first may begin', problem(three({ ...onBench, release: 4 }), { resources: [bench] }), [34, 34]],
    ['the work before the least that follows', problem([...three(onBench), ...dry], { resources: [bench], lags: thenDry }), [37, 37]],
    ['work in the sessions of its bench', problem(['a', 'b', 'c'].map((id) => activity(id, 50, onBench)), { calendars: [sessions], resources: [{ ...bench, calendar: 'sessions' }] }), [250, 250]],
    ['what two people can do together', problem(three({ crew: [{ pool: ['ann', 'ben'], count: 1 }] }), { resources: [ann, { id: 'ben', capacity: 1 }] }), [10, 15]],
    ['what each of two must do', problem(three({ crew: [{ pool: ['ann', 'ben'], count: 2 }] }), { resources: [ann, { id: 'ben', capacity: 1 }] }), [10, 30]],
    ['what a person can do in sessions, and then the least that follows', problem([...['a', 'b', 'c'].map((id) => activity(id, 50, byAnn)), ...dry], { calendars: [sessions], resources: [{ ...ann, calendar: 'sessions' }], lags: thenDry }), [57, 257]],
    ['what a budget leaves of the first session', problem(['a', 'b'].map((id) => activity(id, 50, byAnn)), { calendars: [sessions], resources: [{ ...ann, calendar: 'sessions' }], budgets: [{ id: 'day', resource: 'ann', within: { start: 0, end: 100 }, limit: 70 }] }), [50, 230]],
  ] as const)('counts %s', (_, input, expected) => {
    expect(bounds(input)).toEqual(expected);
  });
});

const at = (best: Score | null, lowerBound = 100, schedulesTried = 5) => ({ best, lowerBound, schedulesTried });

describe('a stopping rule', () => {
  const nothing: Score = { unplaced: 0, tardiness: 0, shortages: 0, moved: 0, makespan: 100, cost: 0, sumOfEnds: 100 };

  it('by work uses up its share with each schedule', () => {
    expect([0, 5, 10, 11].map((tried) => afterWork(10).share(at(null, 0, tried)))).toEqual([0, 0.5, 1, 1]);
    expect(afterWork(0).share(at(null, 0, 0))).toBe(1);
  });

  it('by time counts from the first time it is asked', () => {
    let now = 1000;
    const rule = afterTime(() => now, 200);
    const shares = [1000, 1050, 1200, 1300].map((time) => {
      now = time;
      return rule.share(at(null));
    });
    expect(shares).toEqual([0, 0.25, 1, 1]);
    expect(afterTime(() => 0, 0).share(at(null))).toBe(1);
  });

  it('by the bound waits for a plan that nothing but its length could make better', () => {
    expect(atBound().share(at(null))).toBe(0);
    expect(atBound().share(at(nothing))).toBe(1);
    expect(atBound().share(at(nothing, 99))).toBe(0);
    expect(atBound(0.25).share(at(nothing, 80))).toBe(1);
    expect(atBound(0.25).share(at(nothing, 79))).toBe(0);
    for (const term of ['unplaced', 'tardiness', 'shortages', 'moved', 'cost'] as const) expect([term, atBound().share(at({ ...nothing, [term]: 1 }))]).toEqual([term, 0]);
  });

  it('made of several goes by the one that is nearest its end', () => {
    expect(anyOf(afterWork(10), afterWork(6)).share(at(null, 0, 3))).toBe(0.5);
    expect(anyOf().share(at(null))).toBe(0);
  });
});
