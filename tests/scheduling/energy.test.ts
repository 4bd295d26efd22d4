/** What people and things can give, the bound that follows, and what is told of what stood in the way: worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Activity, Budget, Problem, Resource } from '@/lib/scheduling';
import { findLowerBound } from '@/lib/scheduling/bound';
import { FAR } from '@/lib/scheduling/calendar-index';
import { compile } from '@/lib/scheduling/compile';
import { boundByCalendarEnergy } from '@/lib/scheduling/energy';
import { isBareCrew, sortFacts } from '@/lib/scheduling/obstacles';
import { propagate } from '@/lib/scheduling/propagate';
import { Supply } from '@/lib/scheduling/supply';
import { activity, finishToStart, problem } from './simple';

const calendars = [
  { id: 'shop', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }] },
  { id: 'late', intervals: [{ start: 50, end: 120 }, { start: 250, end: 400 }] },
  { id: 'first', intervals: [{ start: 0, end: 100 }] },
];
const ann: Resource = { id: 'ann', capacity: 1, calendar: 'shop' };
const two: Resource = { id: 'two', capacity: 2 };
const none: Resource = { id: 'none', capacity: 0 };
const limit = (start: number, end: number, most: number, resource = 'ann'): Budget => ({ id: `${resource} ${start}`, resource, within: { start, end }, limit: most });

/** Unit-minutes before moments, those that nothing later can have instead, and the first moments for so much work. */
const supplied = (resources: readonly number[], calendar: number, times: readonly number[], works: readonly number[], budgets: readonly Budget[] = []) => {
  const supply = new Supply(compile(problem([], { horizon: 500, calendars, resources: [ann, two, none], budgets })), resources, calendar);
  return [times.map((t) => supply.before(t)), times.map((t) => supply.spent(t)), works.map((work) => (supply.timeFor(work) === FAR ? 'never' : supply.timeFor(work)))];
};

describe('what can be given', () => {
  it.each<readonly [string, ReturnType<typeof supplied>, ReturnType<typeof supplied>]>([
    ['a person in their sessions', supplied([0], -1, [-5, 0, 40, 150, 201, 900], [0, 1, 100, 101, 200, 201]), [[0, 0, 40, 100, 101, 200], [0, 0, 40, 100, 101, 200], [0, 1, 100, 201, 300, 'never']]],
    ['a person in the calendar of the work', supplied([0], 1, [60, 150, 400], [50, 51, 101]), [[10, 50, 100], [10, 50, 100], [100, 251, 'never']]],
    ['two units up to the horizon', supplied([1, 2], -1, [10, 600], [5, 1000, 1001]), [[20, 1000], [20, 1000], [3, 500, 'never']]],
    ['several together', supplied([0, 1], -1, [10, 150, 210], [30, 31, 301]), [[30, 400, 530], [30, 400, 530], [10, 11, 101]]],
    ['nobody', supplied([2], -1, [10], [1]), [[0], [0], ['never']]],
    ['a limit, taken early or late', supplied([0], -1, [10, 30, 100, 210, 300], [30, 31, 130, 131], [limit(0, 100, 30)]), [[10, 30, 30, 40, 130], [0, 0, 30, 40, 130], [30, 201, 300, 'never']]],
    ['a limit of two units', supplied([1], -1, [10, 15, 100], [30, 31], [limit(0, 100, 30, 'two')]), [[20, 30, 30], [0, 0, 30], [15, 101]]],
    ['limits with time between them', supplied([0], -1, [20, 35, 60, 100], [6], [limit(0, 20, 5), limit(50, 80, 5)]), [[5, 20, 40, 60], [5, 20, 35, 60], [21]]],
    ['limits that overlap, one at a time', supplied([0], -1, [60, 100], [11], [limit(0, 60, 10), limit(40, 100, 20)]), [[10, 30], [10, 30], [61]]],
    ['a limit over two sessions', supplied([0], -1, [100, 205, 300], [51, 61], [limit(50, 250, 10)]), [[60, 60, 110], [50, 50, 110], [51, 251]]],
    ['a limit that is never reached', supplied([0], -1, [100], [100], [limit(0, 100, 400)]), [[100], [100], [100]]],
  ])('by %s', (_, given, expected) => {
    expect(given).toEqual(expected);
  });
});

/** The quick bound and the better one. */
const bounds = (activities: readonly Activity[], more: Partial<Problem> = {}) => {
  const model = compile(problem(activities, { calendars, ...more }));
  const propagation = propagate(model);
  if (!propagation.ok) throw new Error('A contradiction');
  const quick = findLowerBound(model, propagation.bounds);
  return [quick, boundByCalendarEnergy(model, propagation.bounds, quick)];
};
const on = (id: string, more: Partial<Activity> = {}): Partial<Activity> => ({ ...more, demands: [{ resource: id, amount: 1 }] });
const of = (pool: string, more: Partial<Activity> = {}): Partial<Activity> => ({ ...more, crew: [{ pool: pool.split(' '), count: 1 }] });
const many = (count: number, duration: number, more: Partial<Activity>, name = 'a') => Array.from({ length: count }, (_, k) => activity(`${name}${k}`, duration, more));
const people = ['ann', 'ben', 'cem'].map((id) => ({ id, capacity: 1 }));

describe('the bound by what can be given', () => {
  it.each<readonly [string, readonly number[], readonly number[]]>([
    ['two pools that share somebody', bounds([...many(4, 10, of('ann ben')), ...many(4, 10, of('ben cem'), 'b')], { resources: people }), [10, 27]],
    ['two pools that share nobody, each for itself', bounds([...many(4, 10, of('ann')), ...many(2, 10, of('ben cem'), 'b')], { resources: people }), [10, 40]],
    ['a thing, and the least that follows', bounds([...many(2, 30, on('jig')), ...many(2, 7, {}, 'dry')], { resources: [{ id: 'jig', capacity: 1 }], lags: [0, 1].map((k) => finishToStart(`a${k}`, `dry${k}`, 4)) }), [60, 71]],
    ['the busiest things, where there are many', bounds([...['p', 'q', 'r', 's', 't', 'u'].flatMap((id) => many(2, 5, on(id), id)), ...many(3, 30, on('jig')), ...many(3, 7, {}, 'dry')], {
      resources: ['p', 'q', 'r', 's', 't', 'u', 'jig'].map((id) => ({ id, capacity: 1 })), lags: [0, 1, 2].map((k) => finishToStart(`a${k}`, `dry${k}`)),
    }), [90, 97]],
    ['work of one calendar, in its sessions alone', bounds(many(3, 50, of('ann', { calendar: 'shop' })), { resources: people }), [50, 250]],
    ['work of two calendars, of which one lies in the other', bounds([...many(2, 40, of('ann', { calendar: 'shop' })), activity('b', 40, of('ann', { calendar: 'first' }))], { resources: people }), [40, 220]],
    ['what surely takes a person, not what could be done by another', bounds([...many(2, 50, of('ann')), ...many(2, 10, of('ann ben'), 'b')], { resources: people }), [50, 100]],
    ['work that begins late, with what nobody can have before it', bounds([...many(2, 50, of('ann', { release: 30 })), activity('b', 20, of('ann'))], { resources: people }), [80, 130]],
    ['working time after it, at the least', bounds([...many(2, 50, of('ann')), activity('z', 5)], {
      resources: people, lags: [0, 1].map((k) => ({ ...finishToStart(`a${k}`, 'z'), min: { kind: 'working' as const, minutes: 20, calendar: 'shop' } })),
    }), [75, 125]],
    ['the least wait of a table after it', bounds([...many(2, 50, of('ann')), activity('z', 5)], {
      resources: people, lags: [0, 1].map((k) => ({ ...finishToStart(`a${k}`, 'z'), min: { kind: 'table' as const, step: 50, ready: [100, 113, 120, 270] } })),
    }), [118, 125]],
    ['no more than the horizon', bounds(many(3, 50, of('ann', { calendar: 'shop' })), { resources: people, horizon: 220 }), [50, 220]],
    ['nothing of a single activity', bounds([activity('a', 50, of('ann', { calendar: 'shop' }))], { resources: people }), [50, 50]],
    ['nothing more where there are neither calendars nor people', bounds([...many(2, 30, on('jig')), ...many(2, 7, {}, 'dry')], { calendars: [], resources: [{ id: 'jig', capacity: 1 }], lags: [0, 1].map((k) => finishToStart(`a${k}`, `dry${k}`)) }), [67, 67]],
    ['a wait from a start, less the work itself', bounds([...many(2, 50, of('ann')), activity('z', 5)], { resources: people, lags: [0, 1].map((k) => ({ ...finishToStart(`a${k}`, 'z', 70), from: { activity: `a${k}`, at: 'start' as const } })) }), [75, 125]],
    ['a wait to an end', bounds([...many(2, 50, of('ann')), activity('z', 5)], { resources: people, lags: [0, 1].map((k) => ({ ...finishToStart(`a${k}`, 'z', 30), to: { activity: 'z', at: 'end' as const } })) }), [80, 130]],
  ])('counts %s', (_, found, expected) => {
    expect(found).toEqual(expected);
  });
});

const resource = (id: string, ...blockers: readonly string[]) => ({ kind: 'resource', resource: id, activity: 'x', blockers }) as const;

const crew = (...blockers: readonly string[]) => ({ kind: 'crew', activity: 'x', pool: ['ann'], blockers }) as const;

const state = (...blockers: readonly string[]) => ({ kind: 'state', medium: 'air', activity: 'x', blockers }) as const;

const budget = (id: string) => ({ kind: 'budget', budget: id, activity: 'x' }) as const;

describe('what stood in the way', () => {

  it('is told once for each thing with all its work, the one that took most time first', () => {
    expect(sortFacts([
      { fact: resource('jig', 'a'), from: 0, until: 10 }, { fact: state('p'), from: 10, until: 25 }, { fact: resource('jig', 'b', 'a'), from: 25, until: 35 }, { fact: resource('bench', 'c'), from: 35, until: 36 },
      { fact: state('q'), from: 36, until: 38 }, { fact: budget('day'), from: 40, until: 45 }, { fact: budget('week'), from: 45, until: 52 }, { fact: budget('day'), from: 52, until: 60 },
    ])).toEqual([resource('jig', 'a', 'b'), state('p', 'q'), budget('day'), budget('week'), resource('bench', 'c')]);
  });

  it('is a budget rather than a crew that nobody keeps busy, however long', () => {
    expect(sortFacts([{ fact: crew(), from: 0, until: 90 }, { fact: budget('day'), from: 90, until: 95 }, { fact: budget('week'), from: 95, until: 100 }, { fact: state('p'), from: 0, until: 4 }])).toEqual([budget('day'), budget('week'), crew(), state('p')]);
    expect(sortFacts([{ fact: budget('day'), from: 90, until: 95 }, { fact: crew('a'), from: 0, until: 90 }])).toEqual([crew('a'), budget('day')]);
    expect(sortFacts([{ fact: state('p'), from: 0, until: 50 }, { fact: crew(), from: 0, until: 90 }])).toEqual([crew(), state('p')]);
    expect([isBareCrew(crew()), isBareCrew(crew('a')), isBareCrew(state())]).toEqual([true, false, false]);
  });
});
