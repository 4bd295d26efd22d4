/**
 * Small problems from a seed that mix every part of the contract: two calendars, lags of all kinds with windows, people by skill,
 * states of the air, budgets, doses, holds, pins, an accepted plan, quotas and upkeep. Well formed, not always possible. Their
 * minutes come in three scales, so that some of them end within a day and others go on for weeks.
 */
import type { Activity, Budget, Calendar, CrewNeed, Demand, Hold, Interval, Lag, LagLength, ObjectiveTerm, Problem, Quota, Resource, StateNeed, Upkeep } from '@/lib/scheduling';
import { Dice } from '../bench/series';

const CHANCES = [0, 0.2, 0.5] as const;
const TERMS: readonly ObjectiveTerm[] = ['tardiness', 'shortages', 'moved', 'makespan', 'cost'];
const CREWS: readonly (readonly CrewNeed[])[] = [
  [{ pool: ['ann', 'ben'], count: 1 }], [{ pool: ['ann', 'ben', 'cem'], count: 2 }], [{ pool: ['ann', 'ben', 'cem'], count: 1 }, { pool: ['ann'], count: 1 }], [{ pool: ['cem'], count: 1 }],
];

interface Draft {
  readonly dice: Dice;
  /** Minutes a unit of time. */
  readonly unit: number;
  readonly horizon: number;
  readonly sessions: readonly Interval[];
  readonly longest: number;
  /** All times on the grid of the unit, and little room: what touches and just fits is common. */
  readonly isTight: boolean;
  readonly chance: Readonly<Record<'calendar' | 'split' | 'crew' | 'state' | 'date' | 'due' | 'pin' | 'before' | 'dose' | 'window', number>>;
}

function makeSessions(dice: Dice, unit: number, horizon: number): Interval[] {
  const sessions: Interval[] = [];
  for (let at = dice.whole(0, 9) * unit; at < horizon;) {
    const end = at + dice.whole(4, 24) * unit;
    sessions.push({ start: at, end });
    at = end + (dice.is(0.2) ? 0 : dice.whole(1, 14) * unit);
  }
  return sessions;
}

function makeCalendars({ dice, longest, sessions }: Draft): Calendar[] {
  // The longest of all is in each, so that what is done in one go has its time.
  const some = (id: string, share: number) => ({ id, intervals: sessions.filter(({ end, start }) => end - start === longest || dice.is(share)) });
  return [{ id: 'all', intervals: sessions }, some('some', 0.6), some('attendance', 0.8)];
}

function makeStates({ dice, unit }: Draft): StateNeed[] {
  const until = dice.is(0.3) ? { until: { step: 5 * unit, ready: Array.from({ length: 60 }, (_, k) => (k * 5 + (k < 20 ? 3 : 11)) * unit) } } : {};
  const air: StateNeed = { medium: 'air', state: dice.pick(['dusty', 'wet']), tail: dice.whole(0, 20) * unit, ...until };
  return dice.is(0.3) ? [{ medium: 'surface', state: dice.pick(['bare', 'primed', 'done']), tail: dice.whole(0, 9) * unit }, air] : [air];
}

function makeDemands({ dice }: Draft, index: number): Demand[] {
  const demands: Demand[] = [];
  if (dice.is(0.5)) demands.push({ resource: 'bench', amount: dice.whole(1, 2), throughPauses: dice.is(0.3) });
  if (dice.is(0.4)) demands.push({ resource: `part ${index % 3}`, amount: 1, throughPauses: true });
  if (dice.is(0.2)) demands.push({ resource: 'press', amount: 1 });
  if (dice.is(0.1)) demands.push({ resource: 'ben', amount: 1 });
  return demands;
}

/** Dates that were stated, by a person or an accepted plan. */
function makeDates({ chance, dice, horizon, unit }: Draft, duration: number): Partial<Activity> {
  const at = (share: number) => dice.whole(0, Math.floor((horizon * share) / unit)) * unit;
  return {
    ...(dice.is(chance.date / 2) ? { release: at(0.4) } : {}),
    ...(dice.is(chance.date / 5) ? { latestEnd: Math.floor(horizon / 2) + at(0.5) } : {}),
    ...(dice.is(chance.due) ? { due: { at: at(0.5), weight: dice.whole(1, 4) } } : {}),
    ...(dice.is(chance.pin / 4) ? { pin: { start: Math.min(at(0.6), horizon - duration) } } : {}),
    ...(dice.is(chance.before) ? { previousStart: at(0.5), ...(dice.is(0.5) ? { previousCrew: dice.pick([[], ['ann'], ['ben'], ['cem', 'ann'], ['gone']]) } : {}) } : {}),
  };
}

function makeActivity(draft: Draft, index: number): Activity {
  const { chance, dice, isTight, longest, unit } = draft;
  const isSplit = dice.is(chance.split);
  const calendar = dice.is(chance.calendar) ? dice.pick(['all', 'some']) : null;
  const wished = dice.is(0.1) ? 0 : dice.whole(1, 14) * unit + (isTight ? 0 : dice.whole(0, unit - 1));
  const duration = calendar === null || isSplit ? wished : Math.min(wished, longest);
  return {
    id: `a${index}`, duration, mode: isSplit ? 'split' : 'one-go', demands: makeDemands(draft, index),
    ...(calendar === null ? {} : { calendar }),
    ...(isSplit && dice.is(0.5) ? { shortestPiece: Math.min(longest, dice.whole(1, 6) * unit) } : {}),
    ...(dice.is(chance.crew) ? { crew: dice.pick(CREWS) } : {}),
    ...(dice.is(chance.dose) ? { doses: [{ kind: 'noise', perMinute: dice.whole(1, 2) }, { kind: 'shake', perMinute: dice.whole(0, 3) }] } : {}),
    ...(dice.is(chance.state) ? { states: makeStates(draft) } : {}),
    ...makeDates(draft, duration),
  };
}

function makeLength({ dice, unit }: Draft): LagLength {
  const kind = dice.whole(0, 5);
  if (kind < 3) return { kind: 'elapsed', minutes: dice.whole(-3, 20) * unit };
  if (kind < 5) return { kind: 'working', minutes: dice.whole(0, 12) * unit, calendar: 'all' };
  const step = 8 * unit;
  let ready = 0;
  const table = Array.from({ length: 45 }, (_, k) => (ready = Math.max(ready, k * step + dice.whole(0, 20) * unit)));
  return { kind: 'table', step, ready: dice.is(0.5) ? Int32Array.from(table) : table };
}

function makeLags(draft: Draft, count: number): Lag[] {
  const { chance, dice, unit } = draft;
  const lags: Lag[] = [];
  for (let k = 0; k < count; k += 1) {
    const a = dice.whole(0, count - 1);
    const b = dice.whole(0, count - 1);
    if (a === b) continue;
    const min = dice.is(0.9) ? makeLength(draft) : undefined;
    const max = min === undefined || dice.is(chance.window) ? (dice.whole(10, 50) + (min?.kind === 'elapsed' ? 20 : 0)) * unit : undefined;
    lags.push({
      id: `l${k}`, from: { activity: `a${Math.min(a, b)}`, at: dice.is(0.8) ? 'end' : 'start' }, to: { activity: `a${Math.max(a, b)}`, at: dice.is(0.8) ? 'start' : 'end' },
      ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }),
    });
  }
  if (dice.is(chance.window)) lags.push({ id: 'span', from: { activity: 'a0', at: 'start' }, to: { activity: 'a0', at: 'end' }, max: 40 * unit });
  return lags;
}

function makeTightBudgets({ dice, sessions, unit }: Draft): Budget[] {
  const fills = ['ann', 'ben'].flatMap((resource) => sessions.map((within, k): Budget => ({ id: `fill ${resource} ${k}`, resource, within, limit: dice.whole(2, 12) * unit })));
  const own = ['bench', 'ann', 'part 0'].map((resource, k): Budget => {
    const start = dice.whole(0, 60) * unit;
    return { id: `week ${k}`, resource, within: { start, end: start + dice.whole(5, 60) * unit }, limit: dice.whole(4, 30) * unit, ...(dice.is(0.3) ? { dose: 'noise' } : {}) };
  });
  return [...fills.filter(() => dice.is(0.9)), ...own.filter(() => dice.is(0.4))];
}

function makeBudgets({ dice, horizon, sessions, unit }: Draft): Budget[] {
  const ofSessions = dice.is(0.4) ? sessions.slice(0, 12).map((within, k): Budget => ({ id: `fill ${k}`, resource: 'ann', within, limit: Math.floor((within.end - within.start) * 0.7) })) : [];
  const own = Array.from({ length: dice.whole(0, 3) }, (_, k): Budget => {
    const start = dice.whole(0, Math.floor(horizon / unit / 2)) * unit;
    const dose = dice.pick([undefined, 'noise', 'shake']);
    return { id: `b${k}`, resource: dice.pick(['ann', 'ben', 'bench', 'part 0']), within: { start, end: start + dice.whole(10, 60) * unit }, limit: dice.whole(0, 30) * unit, ...(dose === undefined ? {} : { dose }) };
  });
  return [...ofSessions, ...own];
}

function makeHolds({ dice }: Draft, count: number): Hold[] {
  if (!dice.is(0.4) || count < 4) return [];
  const first = dice.whole(0, count - 3);
  const hold: Hold = { id: 'away', resource: 'part 1', amount: 1, from: `a${first}`, to: `a${first + dice.whole(1, 2)}` };
  return dice.is(0.3) ? [hold, { id: 'kept', resource: 'press', amount: 1, from: `a${first}`, to: `a${first}` }] : [hold];
}

function shuffle(dice: Dice): readonly ObjectiveTerm[] {
  const left = [...TERMS];
  return TERMS.map(() => left.splice(dice.whole(0, left.length - 1), 1)[0]!);
}

function makeUpkeep({ dice, sessions, unit }: Draft): Upkeep {
  const spans = sessions.slice(0, 10).map(({ end, start }) => ({ within: { start: start + unit, end }, cost: dice.whole(0, 5) }));
  return { resources: dice.pick([['ann'], ['ann', 'ben'], ['bench']]), spans: spans.filter(({ within }) => within.start < within.end) };
}

/** The same seed gives the same problem. `isTight`: on a grid of time, with little room in every session. */
export function makeMixed(seed: number, isTight = false): Problem {
  const dice = new Dice(seed);
  const unit = dice.pick(isTight ? [1, 60] : [1, 7, 60]);
  const horizon = dice.whole(60, 320) * unit;
  const sessions = makeSessions(dice, unit, horizon);
  const some = () => dice.pick(CHANCES);
  const draft: Draft = {
    dice, unit, horizon, sessions, isTight, longest: Math.max(...sessions.map(({ end, start }) => end - start)),
    chance: { calendar: isTight ? 0.9 : 2 * some(), split: some(), crew: isTight ? 0.6 : some(), state: some(), date: some(), due: some(), pin: some(), before: some(), dose: some(), window: some() },
  };
  const count = dice.whole(4, 13);
  const resources: Resource[] = [
    { id: 'bench', capacity: dice.whole(2, 4) }, { id: 'press', capacity: 1, ...(dice.is(0.3) ? { calendar: 'some' } : {}) },
    ...[0, 1, 2].map((k) => ({ id: `part ${k}`, capacity: 1 })),
    { id: 'ann', capacity: 1, ...(dice.is(0.6) ? { calendar: 'attendance' } : {}) }, { id: 'ben', capacity: dice.is(0.2) ? 2 : 1 }, { id: 'cem', capacity: 1 },
  ];
  const holds = makeHolds(draft, count);
  const turns = new Set(holds.flatMap(({ from, to }) => [from, to]));
  const activities = Array.from({ length: count }, (_, i) => makeActivity(draft, i))
    .map((row) => (turns.has(row.id) ? { ...row, demands: row.demands.filter(({ resource }) => resource !== 'part 1' && resource !== 'press') } : row));
  const quotas = Array.from({ length: dice.is(0.4) ? dice.whole(1, 2) : 0 }, (_, k): Quota => ({ id: `q${k}`, at: dice.whole(10, 90) * unit, least: dice.whole(1, 3), among: activities.filter(() => dice.is(0.5)).map(({ id }) => id) }));
  return {
    horizon, resources, activities, holds, quotas, calendars: makeCalendars(draft), lags: makeLags(draft, count), budgets: isTight ? makeTightBudgets(draft) : makeBudgets(draft),
    ...(dice.is(0.3) ? { upkeep: makeUpkeep(draft) } : {}),
    ...(dice.is(0.3) ? { objective: shuffle(dice) } : {}),
  };
}
