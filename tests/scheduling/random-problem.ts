import * as fc from 'fast-check';
import type { Activity, Budget, Calendar, Hold, Lag, LagLength, ObjectiveTerm, Problem, Quota, Resource, Upkeep } from '@/lib/scheduling';

const STEP = 10;

/** Sessions of one to five hours with gaps, some touching, over about four weeks of short days. */
const intervals = fc.array(fc.record({ gap: fc.integer({ min: 0, max: 40 }), length: fc.integer({ min: 5, max: 40 }) }), { minLength: 3, maxLength: 12 })
  .map((rows) => {
    let at = 0;
    return rows.map(({ gap, length }) => {
      const start = at + gap;
      at = start + length;
      return { start, end: at };
    });
  });

const calendars: fc.Arbitrary<Calendar[]> = fc.tuple(intervals, intervals)
  .map(([a, b]) => [{ id: 'evenings', intervals: a }, { id: 'weekends', intervals: b }]);

const resources: fc.Arbitrary<Resource[]> = fc.record({ bench: fc.integer({ min: 1, max: 3 }), isTimed: fc.boolean() }).map(({ bench, isTimed }) => [
  { id: 'bench', capacity: bench },
  { id: 'part', capacity: 1 },
  { id: 'ann', capacity: 1, ...(isTimed ? { calendar: 'evenings' } : {}) },
  { id: 'ben', capacity: 1 },
  { id: 'cem', capacity: 1 },
]);

/** Left out `weight` times as often as given. */
const optional = <T>(arbitrary: fc.Arbitrary<T>, weight = 4): fc.Arbitrary<T | undefined> => fc.oneof(
  { arbitrary: fc.constant(undefined), weight },
  { arbitrary, weight: 1 },
);

function activity(index: number): fc.Arbitrary<Activity> {
  return fc.record({
    duration: fc.integer({ min: 0, max: 20 }),
    calendar: fc.constantFrom(undefined, 'evenings', 'weekends'),
    mode: fc.constantFrom('one-go' as const, 'split' as const),
    bench: fc.integer({ min: 0, max: 1 }),
    part: fc.integer({ min: 0, max: 4 }),
    isThrough: fc.boolean(),
    crew: fc.constantFrom(undefined, { pool: ['ann', 'ben'], count: 1 }, { pool: ['ann', 'ben', 'cem'], count: 2 }),
    state: optional(fc.record({ state: fc.constantFrom('dusty', 'wet'), tail: fc.integer({ min: 0, max: 30 }) }), 2),
    release: optional(fc.integer({ min: 0, max: 80 })),
    latestEnd: optional(fc.integer({ min: 60, max: 300 }), 6),
    due: optional(fc.record({ at: fc.integer({ min: 0, max: 200 }), weight: fc.integer({ min: 1, max: 3 }) }), 2),
    pin: optional(fc.integer({ min: 0, max: 150 }), 12),
    shortestPiece: optional(fc.integer({ min: 1, max: 12 }), 1),
    doses: fc.constantFrom(undefined, undefined, [{ kind: 'noise', perMinute: 1 }], [{ kind: 'shake', perMinute: 2 }, { kind: 'noise', perMinute: 1 }], [{ kind: 'shake', perMinute: 3 }]),
    previousCrew: fc.constantFrom(undefined, [], ['ann'], ['ben'], ['cem', 'ann'], ['gone']),
    previous: optional(fc.integer({ min: 0, max: 150 }), 3),
  }).map((row) => ({
    id: `a${index}`,
    duration: row.duration,
    mode: row.mode,
    ...(row.calendar === undefined ? {} : { calendar: row.calendar }),
    demands: [
      ...(row.bench > 0 ? [{ resource: 'bench', amount: row.bench, throughPauses: row.isThrough }] : []),
      ...(row.part === 0 ? [{ resource: 'part', amount: 1, throughPauses: true }] : []),
    ],
    ...(row.crew === undefined ? {} : { crew: [row.crew] }),
    ...(row.doses === undefined ? {} : { doses: row.doses }),
    ...(row.state === undefined ? {} : { states: [{ medium: 'air', ...row.state }] }),
    ...(row.shortestPiece === undefined || row.mode === 'one-go' ? {} : { shortestPiece: row.shortestPiece }),
    ...(row.release === undefined ? {} : { release: row.release }),
    ...(row.latestEnd === undefined ? {} : { latestEnd: row.latestEnd }),
    ...(row.due === undefined ? {} : { due: row.due }),
    ...(row.pin === undefined ? {} : { pin: { start: row.pin } }),
    ...(row.previous === undefined ? {} : { previousStart: row.previous, ...(row.previousCrew === undefined ? {} : { previousCrew: row.previousCrew }) }),
  }));
}

const length: fc.Arbitrary<LagLength | undefined> = fc.oneof(
  fc.integer({ min: -15, max: 60 }).map((minutes): LagLength => ({ kind: 'elapsed', minutes })),
  fc.integer({ min: 0, max: 30 }).map((minutes): LagLength => ({ kind: 'working', minutes, calendar: 'evenings' })),
  fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 20, maxLength: 40 }).map((waits): LagLength => {
    let ready = 0;
    return { kind: 'table', step: STEP, ready: waits.map((wait, k) => (ready = Math.max(ready, k * STEP + wait))) };
  }),
  fc.constant(undefined),
);

/** Lags from lower to higher numbers; now and then a maximum (recoat window). */
function lag(index: number, count: number): fc.Arbitrary<Lag | null> {
  return fc.record({
    a: fc.integer({ min: 0, max: count - 1 }),
    b: fc.integer({ min: 0, max: count - 1 }),
    fromAt: fc.constantFrom('start' as const, 'end' as const, 'end' as const),
    toAt: fc.constantFrom('start' as const, 'start' as const, 'end' as const),
    min: length,
    max: optional(fc.integer({ min: 30, max: 120 }), 3),
  }).map(({ a, b, fromAt, toAt, min, max }) => {
    if (a === b || (min === undefined && max === undefined)) return null;
    return {
      id: `l${index}`,
      from: { activity: `a${Math.min(a, b)}`, at: fromAt },
      to: { activity: `a${Math.max(a, b)}`, at: toAt },
      ...(min === undefined ? {} : { min }),
      ...(max === undefined ? {} : { max: Math.max(max, min?.kind === 'elapsed' ? min.minutes : 0) }),
    };
  });
}

const budgets: fc.Arbitrary<Budget[]> = fc.array(fc.record({
  resource: fc.constantFrom('ann', 'bench', 'ben'),
  dose: fc.constantFrom(undefined, 'noise', 'shake'),
  start: fc.integer({ min: 0, max: 150 }),
  length: fc.integer({ min: 10, max: 80 }),
  limit: fc.integer({ min: 0, max: 40 }),
}), { maxLength: 4 }).map((rows) => rows.map(({ dose, length: minutes, limit, resource, start }, k) => ({
  id: `b${k}`, resource, limit, within: { start, end: start + minutes }, ...(dose === undefined ? {} : { dose }),
})));

const upkeep: fc.Arbitrary<Upkeep> = fc.record({ resources: fc.subarray(['ann', 'ben', 'bench']), from: fc.integer({ min: 0, max: 60 }), length: fc.integer({ min: 5, max: 60 }), cost: fc.integer({ min: 0, max: 9 }) })
  .map(({ cost, from, length: minutes, resources: ids }) => ({ resources: ids, spans: [0, 1, 2].map((k) => ({ within: { start: from + k * minutes, end: from + (k + 1) * minutes - 2 }, cost: cost + k })) }));

const quotasOf = (count: number): fc.Arbitrary<Quota[]> => fc.array(fc.record({
  at: fc.integer({ min: 0, max: 200 }), least: fc.integer({ min: 0, max: 3 }), among: fc.subarray(Array.from({ length: count }, (_, i) => `a${i}`)),
}), { maxLength: 3 }).map((rows) => rows.map((row, k) => ({ id: `q${k}`, ...row })));

const TERM_ORDER: readonly ObjectiveTerm[] = ['tardiness', 'shortages', 'moved', 'makespan', 'cost'];

/** Small problems that use every part of the contract. Well formed, not always possible. */
export const problems: fc.Arbitrary<Problem> = fc.integer({ min: 2, max: 9 }).chain((count) => fc.record({
  horizon: fc.integer({ min: 150, max: 500 }),
  calendars,
  resources,
  activities: fc.tuple(...Array.from({ length: count }, (_, i) => activity(i))),
  lags: fc.tuple(...Array.from({ length: count }, (_, i) => lag(i, count))),
  hold: optional(fc.tuple(fc.integer({ min: 0, max: count - 1 }), fc.integer({ min: 0, max: count - 1 })), 2),
  budgets,
  quotas: quotasOf(count),
  upkeep: optional(upkeep, 1),
  objective: optional(fc.shuffledSubarray([...TERM_ORDER], { minLength: TERM_ORDER.length }), 1),
})).map(({ activities, hold, lags, objective, upkeep: spans, ...rest }) => {
  const holds: Hold[] = hold === undefined || hold[0] === hold[1] ? [] : [
    { id: 'h0', resource: 'part', amount: 1, from: `a${Math.min(...hold)}`, to: `a${Math.max(...hold)}` },
  ];
  // The ends of the hold must not ask for the part a second time.
  const ends = new Set(holds.flatMap((h) => [h.from, h.to]));
  return {
    ...rest,
    holds,
    ...(objective === undefined ? {} : { objective }),
    ...(spans === undefined ? {} : { upkeep: spans }),
    lags: lags.filter((row) => row !== null),
    activities: activities.map((a) => (ends.has(a.id) ? { ...a, demands: a.demands.filter((d) => d.resource !== 'part') } : a)),
  };
});
