/** Earliest and latest starts, the order of the work, and circles of waits: worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Activity, Lag, LagLength, Problem } from '@/lib/scheduling';
import { FAR } from '@/lib/scheduling/calendar-index';
import { compile } from '@/lib/scheduling/compile';
import { arrange } from '@/lib/scheduling/order';
import { findLatestStarts, propagate } from '@/lib/scheduling/propagate';
import { findPositiveCycle } from '@/lib/scheduling/pushing-cycle';
import { reverse } from '@/lib/scheduling/reverse';
import { makePriorities } from '@/lib/scheduling/rules';
import { activity, finishToStart, lag, problem } from './simple';

const shop = { id: 'shop', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }, { start: 400, end: 500 }] };
const split: Partial<Activity> = { calendar: 'shop', mode: 'split' };
const whole: Partial<Activity> = { calendar: 'shop' };

const chain = (length: LagLength | undefined, more: { readonly a?: Partial<Activity>; readonly b?: Partial<Activity>; readonly max?: number; readonly from?: 'start' | 'end'; readonly to?: 'start' | 'end' } = {}): Problem => {
  const row = lag('a', 'b', length, more.max);
  return problem([activity('a', 10, more.a), activity('b', 20, more.b)], { calendars: [shop], lags: [{ ...row, from: { activity: 'a', at: more.from ?? 'end' }, to: { activity: 'b', at: more.to ?? 'start' } }] });
};
const elapsed = (minutes: number): LagLength => ({ kind: 'elapsed', minutes });

const named = (values: Int32Array) => [...values].map((value) => (value === FAR ? 'never' : value));

/** Earliest starts and latest ones, or where it cannot be. */
const boundsOf = (input: Problem) => {
  const propagation = propagate(compile(input));
  if (!propagation.ok) return { at: propagation.at, cycle: propagation.cycleArcs };
  return { earliest: named(propagation.bounds.earliest), latest: named(propagation.bounds.latest) };
};

const table: LagLength = { kind: 'table', step: 50, ready: [0, 120, 180, 290, 350] };

const span = (max: number): Lag => ({ id: 'span', from: { activity: 'a', at: 'start' }, to: { activity: 'a', at: 'end' }, max });

describe('earliest starts', () => {
  it.each<readonly [string, Problem, readonly (number | string)[]]>([
    ['a wait after the end', chain(elapsed(5)), [0, 15]],
    ['a wait after the start', chain(elapsed(5), { from: 'start' }), [0, 5]],
    ['a wait to the end', chain(elapsed(35), { to: 'end' }), [0, 25]],
    ['a wait to an end that is late enough anyway', chain(elapsed(-5), { to: 'end' }), [0, 0]],
    ['an overlap before the first minute', chain(elapsed(-50)), [0, 0]],
    ['the next session that holds it', chain(elapsed(80), { b: whole }), [0, 200]],
    ['what is left of a session', chain(elapsed(80), { b: split }), [0, 90]],
    ['a session left out, as nothing long enough is left of it', chain(elapsed(80), { b: { ...split, shortestPiece: 15 } }), [0, 200]],
    ['the end of work that pauses', chain(elapsed(5), { a: { ...split, duration: 130 } }), [0, 235]],
    ['an end on the last minute of a session', chain(elapsed(0), { a: { ...split, duration: 100 }, b: split }), [0, 200]],
    ['a wait to the end over a pause', chain(elapsed(200), { b: split, to: 'end' }), [0, 90]],
    ['working time of a calendar', chain({ kind: 'working', minutes: 95, calendar: 'shop' }), [0, 205]],
    ['no working time', chain({ kind: 'working', minutes: 0, calendar: 'shop' }), [0, 10]],
    ['more working time than there is', chain({ kind: 'working', minutes: 291, calendar: 'shop' }), [0, 'never']],
    ['a table', chain(table), [0, 120]],
    ['a table on its step', chain(table, { a: { release: 90 } }), [90, 180]],
    ['a table just after its step', chain(table, { a: { release: 91 } }), [91, 290]],
    ['a table that has come to its end', chain(table, { a: { release: 191 } }), [191, 'never']],
    ['a release between sessions', chain(elapsed(0), { a: { ...whole, release: 95 }, b: whole }), [200, 210]],
    ['a milestone on the last minute of a session', chain(elapsed(90), { b: { ...whole, duration: 0 } }), [0, 100]],
    ['a milestone a minute later', chain(elapsed(91), { b: { ...whole, duration: 0 } }), [0, 200]],
    ['a start past the horizon', chain(elapsed(991)), [0, 'never']],
    ['a start at the horizon', chain(elapsed(990)), [0, 1000]],
  ])('keep %s', (_, input, earliest) => {
    expect(boundsOf(input)).toMatchObject({ earliest });
  });

  it.each([[189, 200], [190, 45], [1000, 45]])('go on to the next session where split work would take longer than %i minutes', (max, start) => {
    expect(boundsOf(problem([activity('a', 90, { ...split, release: 45 })], { calendars: [shop], lags: [span(max)] }))).toMatchObject({ earliest: [start] });
  });

  it('find none where no session is long enough for the span', () => {
    expect(boundsOf(problem([activity('a', 110, split)], { calendars: [shop], lags: [span(200)] }))).toMatchObject({ earliest: ['never'] });
    expect(boundsOf(problem([activity('b', 10), activity('a', 30, split)], { calendars: [shop], lags: [{ ...finishToStart('b', 'a', 75), id: 'wait' }, span(100)] }))).toMatchObject({ earliest: [0, 200] });
  });
});

const by = (latestEnd: number, more: Partial<Activity> = {}) => ({ ...more, latestEnd });

describe('latest starts', () => {
  it.each<readonly [string, Problem, readonly (number | string)[]]>([
    ['a wait after the end', chain(elapsed(5), { b: by(60) }), [25, 40]],
    ['a wait after the start', chain(elapsed(5), { from: 'start', b: by(60) }), [35, 40]],
    ['a wait to the end', chain(elapsed(35), { to: 'end', b: by(60) }), [15, 40]],
    ['a pin', chain(elapsed(5), { b: { pin: { start: 70 } } }), [55, 70]],
    ['an end before', chain(elapsed(5), { a: by(20), b: by(60) }), [10, 40]],
    ['a window', chain(elapsed(5), { a: by(20), max: 30 }), [10, 50]],
    ['the session it fits in', chain(elapsed(0), { a: whole, b: by(290, whole) }), [260, 270]],
    ['the session before', chain(elapsed(0), { a: whole, b: by(215, whole) }), [70, 80]],
    ['work that pauses', chain(elapsed(0), { b: by(210, split) }), [80, 90]],
    ['its shortest pieces', chain(elapsed(0), { b: by(210, { ...split, shortestPiece: 15 }) }), [70, 80]],
    ['a session that holds all pieces', chain(elapsed(0), { b: by(60, { ...split, shortestPiece: 15 }) }), [30, 40]],
    ['the last session of all', chain(elapsed(0), { from: 'start', a: { ...split, duration: 30, shortestPiece: 15 }, b: by(510) }), [470, 490]],
    ['working time of a calendar', chain({ kind: 'working', minutes: 50, calendar: 'shop' }, { b: by(240) }), [60, 220]],
    ['a table', chain(table, { b: by(200) }), [90, 180]],
    ['nothing but what was stated', chain(elapsed(5)), ['never', 'never']],
  ])('keep %s', (_, input, latest) => {
    expect(boundsOf(input)).toMatchObject({ latest });
  });

  it('of a wish that cannot be met lie before the first minute', () => {
    const model = compile(chain(elapsed(5), { b: split }));
    expect([...findLatestStarts(model, [1000, 30])]).toEqual([-1, 10]);
    expect([...findLatestStarts(model, [1000, 10])]).toEqual([990, -1]);
  });
});

const two = (...lags: readonly Lag[]) => problem([activity('a', 10), activity('b', 20)], { calendars: [shop], lags });

const startToStart = (from: string, to: string, min: LagLength | undefined, max?: number): Lag => ({ ...lag(from, to, min, max), from: { activity: from, at: 'start' }, to: { activity: to, at: 'start' } });

const found = (...lags: readonly Lag[]) => findPositiveCycle(compile(two(...lags)));

describe('waits in a circle', () => {

  it('push each other on for ever, or not', () => {
    expect(boundsOf(two(finishToStart('a', 'b', 5), startToStart('b', 'a', elapsed(-15))))).toEqual({ earliest: [0, 15], latest: ['never', 'never'] });
    expect(boundsOf(two(finishToStart('a', 'b', 5), startToStart('b', 'a', elapsed(-14))))).toMatchObject({ at: expect.arrayContaining([0, 1]), cycle: expect.arrayContaining([0, 1]) });
    expect(boundsOf(two(finishToStart('a', 'b', 5, 4 + 10)))).toMatchObject({ earliest: [0, 15] });
    expect(boundsOf(two(startToStart('a', 'b', elapsed(30)), startToStart('a', 'b', undefined, 29)))).toHaveProperty('cycle');
  });

  it('are found by their gains alone, whatever the calendars', () => {
    expect(found(finishToStart('a', 'b', 5), startToStart('b', 'a', elapsed(-15)))).toBeNull();
    expect(found(finishToStart('a', 'b', 5), startToStart('b', 'a', elapsed(-14)))?.arcs.toSorted()).toEqual([0, 1]);
    expect(found(finishToStart('a', 'b', 5), startToStart('b', 'a', { kind: 'working', minutes: 0, calendar: 'shop' }))?.activities.toSorted()).toEqual([0, 1]);
    expect(found(startToStart('a', 'b', table), startToStart('b', 'a', { kind: 'table', step: 50, ready: [0, 50] }))).toBeNull();
    expect(found(startToStart('a', 'b', { kind: 'working', minutes: 3, calendar: 'shop' }), startToStart('b', 'a', elapsed(-3)))).toBeNull();
    expect(found(startToStart('a', 'b', { kind: 'working', minutes: 4, calendar: 'shop' }), startToStart('b', 'a', elapsed(-3)))).not.toBeNull();
    // From the end of b back to the end of a, where the lengths count; work that pauses says nothing of its start by its end.
    const ends = (minutes: number): Lag => ({ ...lag('b', 'a', elapsed(minutes)), from: { activity: 'b', at: 'end' }, to: { activity: 'a', at: 'end' } });
    expect([found(finishToStart('a', 'b'), ends(-20)), found(finishToStart('a', 'b'), ends(-19))?.arcs.toSorted()]).toEqual([null, [0, 1]]);
    const pausing = problem([activity('a', 10, split), activity('b', 20)], { calendars: [shop], lags: [startToStart('a', 'b', elapsed(1)), { ...ends(-15), id: 'back', to: { activity: 'a', at: 'end' } }] });
    expect([findPositiveCycle(compile(pausing)), findPositiveCycle(compile({ ...pausing, activities: pausing.activities.map((row) => ({ ...row, mode: 'one-go' as const })) }))]).toEqual([null, null]);
    const stuck = { ...pausing, lags: [startToStart('a', 'b', elapsed(1)), { ...ends(-10), id: 'back' }] };
    expect([findPositiveCycle(compile(stuck)), findPositiveCycle(compile({ ...stuck, activities: stuck.activities.map((row) => ({ ...row, mode: 'one-go' as const })) }))?.arcs.toSorted()]).toEqual([null, [0, 1]]);
  });
});

const four = (lags: readonly Lag[], more: Partial<Problem> = {}) => arrange(compile(problem(['a', 'b', 'c', 'd'].map((id) => activity(id, 10)), { resources: [{ id: 'jig', capacity: 1 }], lags, ...more })));

const lists = (rows: readonly Int32Array[]) => rows.map((row) => [...row]);

describe('the order of the work', () => {

  it('goes by minimum lags, each pair once', () => {
    const order = four([finishToStart('a', 'b'), { ...finishToStart('a', 'b', 5), id: 'again' }, finishToStart('b', 'd'), finishToStart('c', 'd', -3)]);
    expect([lists(order.before), lists(order.after)]).toEqual([[[], [0], [], [1, 2]], [[1], [3], [3], []]]);
    expect([[...order.isOrder], [...order.blockOf], order.hasBlocks, lists(order.blocksBefore)]).toEqual([[1, 1, 1, 1], [0, 1, 2, 3], false, [[], [0], [], [1, 2]]]);
    expect(lists(order.backArcs)).toEqual([[], [], [], []]);
  });

  it('keeps together what a window or a hold ties, and what lies between', () => {
    const window = four([finishToStart('a', 'b'), finishToStart('b', 'c'), finishToStart('a', 'c', 20, 40)]);
    expect([[...window.blockOf], window.blockCount, window.hasBlocks, [...window.isOrder]]).toEqual([[0, 0, 0, 1], 2, true, [1, 1, 1, 0]]);
    expect(lists(window.backArcs)).toEqual([[], [], [3], []]);
    const hold = four([finishToStart('a', 'b'), finishToStart('b', 'c')], { holds: [{ id: 'away', resource: 'jig', amount: 1, from: 'b', to: 'd' }] });
    expect([[...hold.blockOf], lists(hold.blocksBefore), [...hold.isOrder]]).toEqual([[0, 1, 2, 1], [[], [0], [1]], [1, 1, 1]]);
  });

  it('leaves out an overlap that would close a circle, and ties both ends', () => {
    const order = four([finishToStart('a', 'b'), finishToStart('b', 'a', -40), finishToStart('c', 'd', -11), { ...finishToStart('d', 'c', -10), id: 'zero' }]);
    expect([[...order.isOrder], [...order.blockOf]]).toEqual([[1, 0, 0, 1], [0, 0, 1, 1]]);
  });

  it('ties nothing to what is pinned, which bounds from above', () => {
    const pinned = arrange(compile(problem([activity('a', 10), activity('b', 10, { pin: { start: 50 } }), activity('c', 10)], { lags: [finishToStart('a', 'b', 0, 20), finishToStart('a', 'c', 0, 20)] })));
    expect([[...pinned.blockOf], lists(pinned.backArcs)]).toEqual([[0, 1, 0], [[0], [1], [3]]]);
  });
});

const keysOf = (input: Problem) => {
  const model = compile(input);
  const propagation = propagate(model);
  if (!propagation.ok) throw new Error('A contradiction');
  return makePriorities(model, arrange(model), propagation.bounds).map((keys) => [...keys].map((key) => key + 0));
};

describe('the rules of priority', () => {
  it('are latest ends and starts, slack, followers and earliest starts; the accepted plan before all', () => {
    const rows = [activity('a', 10), activity('b', 20, { due: { at: 60, weight: 1 } }), activity('c', 5, { release: 7, latestEnd: 90 })];
    const plain = problem(rows, { horizon: 100, lags: [finishToStart('a', 'b', 5)] });
    expect(keysOf(plain)).toEqual([[35, 60, 90], [25, 40, 85], [25, 25, 78], [-1, 0, 0], [0, 15, 7]]);
    expect(keysOf({ ...plain, activities: rows.map((row) => (row.id === 'a' ? { ...row, previousStart: 3 } : row)) })[0]).toEqual([3, 140, 185]);
    const late = problem([activity('a', 10, { due: { at: 6, weight: 1 } }), activity('b', 5)], { horizon: 100, lags: [finishToStart('a', 'b')] });
    expect(keysOf(late).slice(0, 3)).toEqual([[10, 100], [-4, 95], [-4, 85]]);
  });
});

describe('time running backwards', () => {
  it('turns each lag around, where it is the same problem', () => {
    const model = reverse(problem([activity('a', 10), activity('b', 20)], { lags: [finishToStart('a', 'b', 5, 40)] }))!;
    const { arcs } = model;
    expect([[...arcs.from], [...arcs.to], [...arcs.isFromEnd], [...arcs.isToEnd], [...arcs.minutes]]).toEqual([[1, 0], [0, 1], [1, 0], [0, 1], [5, -40]]);
  });

  const plain = problem([activity('a', 10), activity('b', 20)], { resources: [{ id: 'jig', capacity: 1 }] });
  it.each<readonly [string, Partial<Problem>]>([
    ['budgets', { budgets: [{ id: 'day', resource: 'jig', within: { start: 0, end: 5 }, limit: 5 }] }],
    ['holds', { holds: [{ id: 'away', resource: 'jig', amount: 1, from: 'a', to: 'b' }] }],
    ['calendars', { calendars: [shop] }],
    ['quotas', { quotas: [{ id: 'week', at: 10, least: 1, among: ['a'] }] }],
    ['upkeep', { upkeep: { resources: [], spans: [] } }],
    ['lags by a table', { lags: [lag('a', 'b', table)] }],
    ...([{ due: { at: 5, weight: 1 } }, { pin: { start: 5 } }, { latestEnd: 90 }, { previousStart: 5 }, { release: 1 }, { crew: [{ pool: ['jig'], count: 1 }] }, { states: [{ medium: 'air', state: 'wet', tail: 0 }] }] as const)
      .map((more): readonly [string, Partial<Problem>] => [`a ${Object.keys(more)[0]!}`, { activities: [activity('a', 10, more), activity('b', 20)] }]),
  ])('is another problem with %s', (_, more) => {
    expect(reverse({ ...plain, ...more })).toBeNull();
  });

  it('is the same with what says nothing', () => {
    expect(reverse({ ...plain, budgets: [], holds: [], quotas: [], activities: [activity('a', 10, { release: 0, crew: [], states: [] }), activity('b', 20)], lags: [lag('a', 'b', undefined, 30)] })).not.toBeNull();
  });
});
