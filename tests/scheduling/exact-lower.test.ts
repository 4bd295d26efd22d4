import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Activity, Calendar, LagLength, Problem } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { lowerToCore } from '@/lib/scheduling/exact';
import { followRelation } from '@/lib/scheduling/proof';
import { activity, finishToStart, lag, problem } from './simple';

const lower = (input: Problem) => lowerToCore(compile(input));
const machine = { resources: [{ id: 'machine', capacity: 2 }] };
const uses = { demands: [{ resource: 'machine', amount: 1 }] };
const week: Calendar = { id: 'week', intervals: [{ start: 10, end: 20 }, { start: 20, end: 25 }, { start: 40, end: 45 }] };

describe('what the core can say exactly', () => {
  const plain = problem([activity('a', 4, uses), activity('b', 3)], machine);
  const person = { id: 'p', capacity: 1 };

  it.each<readonly [string, Problem]>([
    ['resources alone', plain],
    ['work that may pause without a calendar', problem([activity('a', 4, { mode: 'split' })])],
    ['a milestone that may pause in a calendar', problem([activity('a', 0, { mode: 'split', calendar: 'week' })], { calendars: [week] })],
    ['a wished end that counts nothing', problem([activity('a', 4, { due: { at: 2, weight: 0 } })])],
    ['three hundred activities', problem(Array.from({ length: 300 }, (_, i) => activity(`a${i}`, 1)))],
  ])('includes %s', (_, input) => {
    expect(lower(input)).not.toBeNull();
  });

  it.each<readonly [string, Problem]>([
    ['more than three hundred activities', problem(Array.from({ length: 301 }, (_, i) => activity(`a${i}`, 1)))],
    ['a quota', { ...plain, quotas: [{ id: 'q', at: 9, least: 1, among: ['a'] }] }],
    ['spans that cost', { ...plain, upkeep: { resources: ['machine'], spans: [{ within: { start: 0, end: 9 }, cost: 1 }] } }],
    ['a budget', { ...plain, budgets: [{ id: 'b', resource: 'machine', within: { start: 0, end: 9 }, limit: 4 }] }],
    ['people to choose', problem([activity('a', 4, { crew: [{ pool: ['p'], count: 1 }] })], { resources: [person] })],
    ['a hold', { ...plain, holds: [{ id: 'h', resource: 'machine', amount: 1, from: 'a', to: 'b' }], activities: [activity('a', 4), activity('b', 3)] }],
    ['a state of the air', problem([activity('a', 4, { states: [{ medium: 'air', state: 'dusty', tail: 0 }] })])],
    ['work that pauses', problem([activity('a', 4, { mode: 'split', calendar: 'week' })], { calendars: [week] })],
    ['an accepted plan', problem([activity('a', 4, { previousStart: 0 })])],
    ['a wished end', problem([activity('a', 4, { due: { at: 2, weight: 1 } })])],
    ['a lag in working time', problem([activity('a', 4), activity('b', 3)], { calendars: [week], lags: [lag('a', 'b', { kind: 'working', minutes: 2, calendar: 'week' })] })],
  ])('does not include %s', (_, input) => {
    expect(lower(input)).toBeNull();
  });
});

describe('lags in the core', () => {
  it('lead between starts, whichever ends they were given for; a longest lag leads back', () => {
    const [fromEnd, toEnd] = [{ activity: 'a', at: 'end' as const }, { activity: 'b', at: 'end' as const }];
    const minutes = { kind: 'elapsed' as const, minutes: 5 };
    const ends = [[{ ...fromEnd, at: 'start' as const }, { ...toEnd, at: 'start' as const }], [fromEnd, { ...toEnd, at: 'start' as const }], [{ ...fromEnd, at: 'start' as const }, toEnd], [fromEnd, toEnd]] as const;
    const relations = ends.map(([from, to]) => lower(problem([activity('a', 4), activity('b', 3)], { lags: [{ id: 'l', from, to, min: minutes, max: 7 }] }))!.instance.relations);
    expect(relations).toEqual([
      [{ from: 0, to: 1, lag: 5 }, { from: 1, to: 0, lag: -7 }],
      [{ from: 0, to: 1, lag: 9 }, { from: 1, to: 0, lag: -11 }],
      [{ from: 0, to: 1, lag: 2 }, { from: 1, to: 0, lag: -4 }],
      [{ from: 0, to: 1, lag: 6 }, { from: 1, to: 0, lag: -8 }],
    ]);
  });

  it('read a table step by step, the last of it as never', () => {
    const table: LagLength = { kind: 'table', step: 10, ready: [5, 12, 30, 30, 41] };
    const { instance, isTimeless } = lower(problem([activity('a', 0), activity('b', 1)], { horizon: 50, lags: [lag('a', 'b', table)] }))!;
    // At 0 the first row counts, from 1 to 10 the second, from 11 to 30 the next two, which are alike.
    expect(instance.relations).toEqual([{ from: 0, to: 1, pieces: [{ from: -9, value: 5, slope: 0 }, { from: 1, value: 12, slope: 0 }, { from: 11, value: 30, slope: 0 }, { from: 31, value: 41, slope: 0 }, { from: 41, value: 51, slope: 0 }] }]);
    expect(isTimeless).toBe(false);
    expect(instance.horizon).toBe(50);
  });

  it('give what the table says for every start and length', () => {
    const row = fc.record({ step: fc.integer({ min: 1, max: 6 }), waits: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 8 }), before: fc.integer({ min: 0, max: 7 }), after: fc.integer({ min: 0, max: 5 }), isToEnd: fc.boolean() });
    fc.assert(fc.property(row, ({ step, waits, before, after, isToEnd }) => {
      let last = 0;
      const ready = waits.map((wait, k) => (last = Math.max(last, k * step + wait)));
      const horizon = 30;
      const { instance } = lower(problem([activity('a', before), activity('b', after)], { horizon, lags: [{ id: 'l', from: { activity: 'a', at: 'end' }, to: { activity: 'b', at: isToEnd ? 'end' : 'start' }, min: { kind: 'table', step, ready } }] }))!;
      const shift = isToEnd ? after : 0;
      for (let s = 0; s + before <= horizon; s++) {
        const entry = ready[Math.ceil((s + before) / step)];
        const reached = followRelation(instance.relations[0]!, s);
        if (entry === undefined || entry > horizon) expect(reached).toBeGreaterThan(horizon - shift);
        else expect(reached).toBe(entry - shift);
      }
    }), { numRuns: 60 });
  });
});

const startsOf = (more: Partial<Activity>, duration = 4) =>
  lower(problem([activity('a', duration, more), activity('b', 2)], { horizon: 60, calendars: [week], resources: [{ id: 'shop', capacity: 1, calendar: 'week' }, { id: 'any', capacity: 1 }] }))!.instance.allowedStarts?.[0];

describe('starts in the core', () => {
  it('are anywhere, unless dates or calendars say otherwise', () => {
    expect(startsOf({})).toBeUndefined();
    expect(startsOf({ release: 3 })).toEqual([{ first: 3, last: 56 }]);
    expect(startsOf({ latestEnd: 30 })).toEqual([{ first: 0, last: 26 }]);
    expect(startsOf({ latestEnd: 90 })).toBeUndefined();
    expect(startsOf({ pin: { start: 7 } })).toEqual([{ first: 7, last: 7 }]);
    expect(startsOf({ release: 30, latestEnd: 32 })).toEqual([]);
    expect(startsOf({ demands: [{ resource: 'any', amount: 1 }] })).toBeUndefined();
  });

  it('keep work inside one interval of its own calendar, and may lead over a border in those of resources', () => {
    expect(startsOf({ calendar: 'week' })).toEqual([{ first: 10, last: 16 }, { first: 20, last: 21 }, { first: 40, last: 41 }]);
    expect(startsOf({ demands: [{ resource: 'shop', amount: 1 }] })).toEqual([{ first: 10, last: 21 }, { first: 40, last: 41 }]);
    expect(startsOf({ calendar: 'week', release: 15, latestEnd: 44 })).toEqual([{ first: 15, last: 16 }, { first: 20, last: 21 }, { first: 40, last: 40 }]);
    expect(startsOf({ calendar: 'week' }, 5)).toEqual([{ first: 10, last: 15 }, { first: 20, last: 20 }, { first: 40, last: 40 }]);
    expect(startsOf({ calendar: 'week' }, 11)).toEqual([]);
    expect(startsOf({ demands: [{ resource: 'shop', amount: 1 }] }, 11)).toEqual([{ first: 10, last: 14 }]);
  });

  it('of one activity know nothing of what the next one uses', () => {
    const stated = problem([activity('a', 4), activity('b', 2, { demands: [{ resource: 'shop', amount: 1 }] })], { horizon: 60, calendars: [week], resources: [{ id: 'shop', capacity: 1, calendar: 'week' }] });
    expect(lower(stated)!.instance).toMatchObject({ demands: [[0], [1]], allowedStarts: [null, [{ first: 10, last: 23 }, { first: 40, last: 43 }]] });
  });

  it('let a milestone stand on the borders of its own calendar, and anywhere as far as resources go', () => {
    expect(startsOf({ calendar: 'week' }, 0)).toEqual([{ first: 10, last: 25 }, { first: 40, last: 45 }]);
    expect(startsOf({ demands: [{ resource: 'shop', amount: 1 }] }, 0)).toBeUndefined();
  });

  it('are those of every minute looked at alone', () => {
    const intervals = fc.array(fc.record({ gap: fc.integer({ min: 0, max: 3 }), length: fc.integer({ min: 1, max: 6 }) }), { minLength: 1, maxLength: 5 }).map((rows) => {
      let at = 0;
      return rows.map(({ gap, length }) => ({ start: at + gap, end: (at += gap + length) }));
    });
    const row = fc.record({ own: fc.option(intervals, { nil: null }), shop: intervals, tool: intervals, duration: fc.integer({ min: 0, max: 6 }), usesShop: fc.boolean(), usesTool: fc.boolean(), release: fc.integer({ min: 0, max: 6 }), latestEnd: fc.integer({ min: 12, max: 40 }) });
    fc.assert(fc.property(row, ({ own, shop, tool, duration, usesShop, usesTool, release, latestEnd }) => {
      const horizon = 36;
      const demands = [...(usesShop ? ['shop'] : []), ...(usesTool ? ['tool'] : [])].map((resource) => ({ resource, amount: 1 }));
      const core = lower(problem([activity('a', duration, { demands, release, latestEnd, ...(own ? { calendar: 'own' } : {}) }), activity('b', 1, { release: 1 })], {
        horizon,
        calendars: [{ id: 'own', intervals: own ?? [] }, { id: 'shop', intervals: shop }, { id: 'tool', intervals: tool }],
        resources: [{ id: 'shop', capacity: 1, calendar: 'shop' }, { id: 'tool', capacity: 1, calendar: 'tool' }],
      }))!;
      const isOpen = (rows: typeof shop, minute: number): boolean => rows.some(({ start, end }) => start <= minute && minute < end);
      const ranges = core.instance.allowedStarts![0];
      for (let s = 0; s + duration <= horizon; s++) {
        const minutes = Array.from({ length: duration }, (_, k) => s + k);
        const isAllowed = s >= release && s + duration <= latestEnd
          && (own === null || own.some(({ start, end }) => start <= s && s + duration <= end))
          && (!usesShop || minutes.every((minute) => isOpen(shop, minute))) && (!usesTool || minutes.every((minute) => isOpen(tool, minute)));
        expect(ranges === null || ranges!.some(({ first, last }) => first <= s && s <= last)).toBe(isAllowed);
      }
      for (const [k, range] of (ranges ?? []).entries()) {
        expect(range.first).toBeLessThanOrEqual(range.last);
        if (k > 0) expect(range.first).toBeGreaterThan(ranges![k - 1]!.last);
      }
    }), { numRuns: 80 });
  });
});

describe('the horizon of the core', () => {
  const lags = [finishToStart('a', 'b', 6)];
  const input = (horizon: number) => problem([activity('a', 4, uses), activity('b', 3, uses), activity('c', 0)], { ...machine, horizon, lags });

  it('is no longer than everything one after the other, where no date is in it', () => {
    // 4 + 6 from the first to the second, whose 3 follow.
    expect(lower(input(100))).toMatchObject({ isTimeless: true, isHorizonWide: true, instance: { horizon: 13 } });
    expect(lower(input(13))).toMatchObject({ isTimeless: true, isHorizonWide: true, instance: { horizon: 13 } });
    expect(lower(input(12))).toMatchObject({ isTimeless: true, isHorizonWide: false, instance: { horizon: 12 } });
    expect(lower(input(100))!.instance).not.toHaveProperty('allowedStarts');
  });

  it('stays as it is where there are dates', () => {
    const dated = { ...input(100), activities: [activity('a', 4, { ...uses, release: 5 }), activity('b', 3, uses), activity('c', 0)] };
    expect(lower(dated)).toMatchObject({ isTimeless: false, instance: { horizon: 100, allowedStarts: [[{ first: 5, last: 96 }], null, null] } });
  });

  it('comes with lengths, units and who needs them', () => {
    const { instance } = lower(problem([activity('a', 4, { demands: [{ resource: 'x', amount: 2 }, { resource: 'z', amount: 1 }] }), activity('b', 3, { demands: [{ resource: 'y', amount: 3 }] })], {
      resources: [{ id: 'x', capacity: 2 }, { id: 'y', capacity: 5 }, { id: 'z', capacity: 1 }],
    }))!;
    expect(instance).toMatchObject({ durations: [4, 3], capacities: [2, 5, 1], demands: [[2, 0, 1], [0, 3, 0]], relations: [] });
  });
});
