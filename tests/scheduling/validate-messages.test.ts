import { describe, expect, it } from 'vitest';
import { validate, type Activity, type Lag, type LagLength, type Problem } from '@/lib/scheduling';
import { activity, finishToStart, lag, problem } from './simple';

const evenings = { id: 'evenings', intervals: [{ start: 0, end: 60 }, { start: 100, end: 160 }] };
const ann = { id: 'ann', capacity: 1 };
const ben = { id: 'ben', capacity: 1 };
const away = { id: 'away', capacity: 0 };
const LARGEST = 100_000_000;

/** Where it is, what is wrong and what to do; one line an issue. */
function said(input: Problem): readonly string[] {
  const result = validate(input);
  return result.ok ? [] : result.error.map(({ code, fix, message, path, subjects }) => `${path.join('.')} [${[code, ...subjects.map(({ id, kind }) => `${kind} ${id}`)].join(', ')}] ${message} ${fix}`);
}

type Row = readonly [title: string, input: Problem, ...lines: readonly string[]];

const one = (duration: number, more: Partial<Activity> = {}): Problem => problem([activity('a', duration, more)], {
  calendars: [evenings, { id: 'none', intervals: [] }], resources: [ann, ben, away],
});
const of = (code: string) => `activities.0 [${code}, activity a]`;
const split = (duration: number, shortestPiece: number): Problem => one(duration, { mode: 'split', calendar: 'evenings', shortestPiece });
const crew = (...needs: readonly (readonly [pool: readonly string[], count: number])[]): Partial<Activity> => ({ crew: needs.map(([pool, count]) => ({ pool, count })) });
const state = (name: string, tail: number, medium = 'air') => ({ medium, state: name, tail });

const activities: readonly Row[] = [
  ['a length below nothing', one(-1), `${of('negative-duration')} Activity a lasts -1 minutes. Use whole minutes from 0.`],
  ['a length that is not whole', one(1.5), `${of('not-a-minute')} Activity a lasts 1.5 minutes. Use whole minutes from 0.`],
  ['the longest length that sums without overflow', one(LARGEST)],
  ['a length beyond it', one(LARGEST + 1), `${of('not-a-minute')} Activity a lasts 100000001 minutes. Use whole minutes from 0.`],
  ['dates between minutes', one(1, { release: 0.5, latestEnd: 9.5, due: { at: 8.5, weight: 1 }, previousStart: 1.5 }),
    ...[['release', 0.5], ['latestEnd', 9.5], ['due', 8.5], ['previousStart', 1.5]].map(([name, time]) => `${of('not-a-minute')} Activity a has ${name} ${time}. Use whole minutes.`)],
  ['dates before the first minute, which are as good as none', one(1, { release: -5, due: { at: -5, weight: 0 } })],
  ['previous people alone', one(1, { previousCrew: ['ann'] }), `${of('previous-crew-without-start')} Activity a names its previous people but no previous start. Give both, or neither.`],
  ['previous people and start', one(1, { previousCrew: ['ann'], previousStart: 0 })],
  ['a weight below nothing', one(1, { due: { at: 5, weight: -0.1 } }), `${of('bad-weight')} Activity a has the weight -0.1. Use a number from 0.`],
  ['a weight without end', one(1, { due: { at: 5, weight: Infinity } }), `${of('bad-weight')} Activity a has the weight Infinity. Use a number from 0.`],
  ['a pin that just ends at the horizon', one(10, { pin: { start: 990 } })],
  ['a pin a minute later', one(10, { pin: { start: 991 } }), `${of('pin-after-horizon')} Activity a is pinned at 991 and lasts 10, past the horizon 1000. Pin it earlier or move the horizon.`],
  ['a pin before the first minute', one(10, { pin: { start: -1 } }), `${of('not-a-minute')} Activity a is pinned at -1. Use whole minutes from 0.`],
  ['a calendar nobody wrote', one(10, { calendar: 'nights' }), `${of('unknown-calendar')} Activity a names the calendar nights, which is not there. Name a calendar of the problem.`],
  ['a calendar without time', one(10, { calendar: 'none' }), `${of('empty-calendar')} Activity a can only be worked in the calendar none, which has no time in it. Add time to the calendar.`],
  ['work in one go that fills the longest session', one(60, { calendar: 'evenings' })],
  ['work in one go a minute longer', one(61, { calendar: 'evenings' }), `${of('longer-than-any-interval')} Activity a takes 61 minutes in one go, but the longest interval of evenings is 60. Let it be interrupted, shorten it, or make an interval longer.`],
  ['the same work when it may be split', one(61, { mode: 'split', calendar: 'evenings' })],
  ['a shortest piece of nothing', split(100, 0), `${of('bad-shortest-piece')} Activity a has 0 minutes as its shortest piece. Use whole minutes from 1.`],
  ['a shortest piece that is not whole', split(100, 1.5), `${of('bad-shortest-piece')} Activity a has 1.5 minutes as its shortest piece. Use whole minutes from 1.`],
  ['a shortest piece of work in one go', one(10, { calendar: 'evenings', shortestPiece: 5 }), `${of('pieces-in-one-go')} Activity a is done in one go but has a shortest piece of 5 minutes. Leave the shortest piece out, or let the work be split.`],
  ['a shortest piece that fills a session', split(100, 60)],
  ['a shortest piece that no session holds', split(100, 61), `${of('interval-too-short')} No interval of the calendar evenings holds a piece of 61 minutes, the shortest that activity a allows. Allow shorter pieces, or make an interval longer.`],
  ['a shortest piece longer than the work, which is then one piece', split(60, 90)],
  ['a dose below nothing', one(10, { doses: [{ kind: 'dust', perMinute: -1 }] }), `${of('bad-dose')} Each minute of activity a gives a dose of -1 of dust. Use a whole number from 0.`],
  ['a need below nothing', one(10, { demands: [{ resource: 'ann', amount: -1 }] }), `${of('bad-amount')} Activity a needs -1 of ann. Use a whole number from 0.`],
  ['a need of something nobody has', one(10, { demands: [{ resource: 'lathe', amount: 1 }] }), `${of('unknown-resource')} Activity a needs the resource lathe, which is not there. Name a resource of the problem.`],
  ['needs that together just fit', one(10, { demands: [{ resource: 'ann', amount: 1 }, { resource: 'ann', amount: 0 }] })],
  ['needs that together do not', one(10, { demands: [{ resource: 'ann', amount: 1 }, { resource: 'ann', amount: 1 }] }), `${of('demand-above-capacity')} Activity a needs 2 of ann, but only 1 exist. Lower the need or raise the capacity.`],
];

const people: readonly Row[] = [
  ['a stranger in a pool', one(1, crew([['zoe'], 1])), `${of('unknown-resource')} Activity a may take zoe as crew, which is not there. Name a resource of the problem.`],
  ['half a person', one(1, crew([['ann'], 0.5])), `${of('bad-amount')} Activity a needs 0.5 people. Use a whole number from 0.`],
  ['more than the pool', one(1, crew([['ann', 'ben'], 3])), `${of('pool-too-small')} Activity a needs 3 out of 2 (ann, ben). Add people to the pool or need fewer.`],
  ['nobody to choose from', one(1, crew([[], 1])), `${of('pool-too-small')} Activity a needs 1 out of 0 (nobody). Add people to the pool or need fewer.`],
  ['somebody who is never there', one(1, crew([['ann', 'away'], 2])), `${of('pool-too-small')} Activity a needs 2 out of 1 (ann, away). Add people to the pool or need fewer.`],
  ['one name twice in a pool', one(1, crew([['ann', 'ann'], 2])), `${of('pool-too-small')} Activity a needs 2 out of 1 (ann, ann). Add people to the pool or need fewer.`],
  ['all of a pool', one(1, crew([['ann', 'ben'], 2]))],
  ['two needs of which the first has to leave the only one who can do the second', one(1, crew([['ann', 'ben'], 1], [['ann'], 1]))],
  ['two needs for the same one person', one(1, crew([['ann'], 1], [['ann'], 1])), `${of('pool-too-small')} Activity a needs 2 different people, but its pools together do not hold so many. Add people to the pools or need fewer.`],
  ['a pinned crew in the order of the needs', one(1, { ...crew([['ann'], 1], [['ben'], 1]), pin: { start: 0, crew: ['ann', 'ben'] } })],
  ['a pinned crew in another order', one(1, { ...crew([['ann'], 1], [['ben'], 1]), pin: { start: 0, crew: ['ben', 'ann'] } }), `${of('pinned-crew-does-not-fit')} Activity a is pinned with ben, ann, which does not fill its 2 places from their pools. Name one able person for each place, in order.`],
  ['a pinned crew with one person twice', one(1, { ...crew([['ann', 'ben'], 2]), pin: { start: 0, crew: ['ann', 'ann'] } }), `${of('pinned-crew-does-not-fit')} Activity a is pinned with ann, ann, which does not fill its 2 places from their pools. Name one able person for each place, in order.`],
  ['a pinned crew of nobody', one(1, { ...crew([['ann'], 1]), pin: { start: 0, crew: [] } }), `${of('pinned-crew-does-not-fit')} Activity a is pinned with nobody, which does not fill its 1 places from their pools. Name one able person for each place, in order.`],
  ['a pinned crew of one too many', one(1, { ...crew([['ann', 'ben'], 1]), pin: { start: 0, crew: ['ann', 'ben'] } }), `${of('pinned-crew-does-not-fit')} Activity a is pinned with ann, ben, which does not fill its 1 places from their pools. Name one able person for each place, in order.`],
];

const until = (step: number, ready: readonly number[]): Partial<Activity> => ({ states: [{ ...state('wet', 0), until: { step, ready } }] });
const tables = `${of('table-not-fifo')} Activity a leaves air wet until a table whose entry`;

const states: readonly Row[] = [
  ['a tail below nothing', one(1, { states: [state('wet', -1)] }), `${of('negative-duration')} Activity a leaves air wet for -1 minutes. Use whole minutes from 0.`],
  ['two states of one medium', one(1, { states: [state('wet', 0), state('dusty', 0)] }), `${of('two-states-at-once')} Activity a puts air into two states at once. Give it one state for each medium.`],
  ['states of two media, and one said twice', one(1, { states: [state('wet', 0), state('wet', 5), state('dusty', 0, 'floor')] })],
  ['a table that goes on', one(1, until(10, [0, 0, 5]))],
  ['a table that goes back', one(1, until(10, [0, 6, 5])), `${tables} 2 comes before the one before it. A later end must never be over earlier.`],
  ['a table without steps', one(1, until(0, [0, 5])), `${tables} 0 comes before the one before it. A later end must never be over earlier.`],
];

const link = (row: Lag, duration = 10): Problem => problem([activity('a', duration), activity('b', 10)], { lags: [row], calendars: [evenings] });
const min = (length: LagLength): Problem => link(lag('a', 'b', length));
const at = (code: string) => `lags.0 [${code}, lag a>b]`;
const span = (max: number): Lag => ({ id: 'a>b', from: { activity: 'a', at: 'start' }, to: { activity: 'a', at: 'end' }, max });
const toItself = `${at('lag-on-itself')} Lag a>b goes from a to itself. Only a maximum from its start to its own end makes sense.`;

const lags: readonly Row[] = [
  ['ends that are not there', link(finishToStart('x', 'y')), 'lags.0 [unknown-activity, lag x>y] Lag x>y names the activity x, which is not there. Name an activity of the problem.',
    'lags.0 [unknown-activity, lag x>y] Lag x>y names the activity y, which is not there. Name an activity of the problem.'],
  ['a minimum between minutes', link(finishToStart('a', 'b', 1.5)), `${at('not-a-minute')} Lag a>b has a minimum of 1.5. Use whole minutes.`],
  ['a minimum too far below nothing', link(finishToStart('a', 'b', -LARGEST - 1)), `${at('not-a-minute')} Lag a>b has a minimum of -100000001. Use whole minutes.`],
  ['the largest overlap', link(finishToStart('a', 'b', -LARGEST))],
  ['a maximum between minutes', link(finishToStart('a', 'b', 0, 1.5)), `${at('not-a-minute')} Lag a>b has a maximum of 1.5. Use whole minutes.`],
  ['a window of one minute', link(finishToStart('a', 'b', 20, 20))],
  ['a window that closes before it opens', link(finishToStart('a', 'b', 21, 20)), `${at('lag-window-closed')} Lag a>b asks for at least 21 and at most 20 minutes. Raise the maximum or lower the minimum.`],
  ['working time below nothing in a calendar nobody wrote', min({ kind: 'working', minutes: -1, calendar: 'nights' }), `${at('negative-lag')} Lag a>b has a working minimum of -1. Use whole minutes from 0.`,
    `${at('unknown-calendar')} Lag a>b names the calendar nights, which is not there. Name a calendar of the problem.`],
  ['no working time', min({ kind: 'working', minutes: 0, calendar: 'evenings' })],
  ['a table without steps', min({ kind: 'table', step: 0, ready: [0] }), `${at('bad-step')} Lag a>b has a table with step 0. Use whole minutes above 0.`],
  ['a table that is ready at its step', min({ kind: 'table', step: 10, ready: [0, 10, 20] })],
  ['a table that is ready before it', min({ kind: 'table', step: 10, ready: [0, 10, 19] }), `${at('table-not-first-in-first-out')} Lag a>b: entry 2 of its table is ready at 19, earlier than it started (20) or than the entry before it. A later start must never be ready earlier.`],
  ['a table with half a minute', min({ kind: 'table', step: 10, ready: [0.5, 10] }), `${at('table-not-first-in-first-out')} Lag a>b: entry 0 of its table is ready at 0.5, earlier than it started (0) or than the entry before it. A later start must never be ready earlier.`],
  ['a longest span of just its length', link(span(10))],
  ['a longest span below its length', link(span(9)), `${at('lag-window-closed')} Lag a>b lets a last at most 9 minutes, but it needs 10. Raise the maximum.`],
  ['a minimum from work to itself', link({ ...span(20), min: { kind: 'elapsed', minutes: 0 } }), toItself],
  ['a window from an end to the same end', link({ ...span(20), from: { activity: 'a', at: 'end' } }), toItself],
  ['a window from a start to the same start', link({ ...span(20), to: { activity: 'a', at: 'start' } }), toItself],
];

const withCalendar = (...intervals: readonly { start: number; end: number }[]): Problem => problem([], { calendars: [{ id: 'c', intervals }] });
const inCalendar = (code: string, nth: number) => `calendars.0.intervals.${nth} [${code}, calendar c]`;
const held = (amount: number, own: number, more: object = {}): Problem => problem([activity('a', 1, { demands: [{ resource: 'ann', amount: own }] }), activity('b', 1)], {
  resources: [ann, ben], holds: [{ id: 'jig', resource: 'ann', amount, from: 'a', to: 'b', ...more }],
});
const onHold = (code: string) => `holds.0 [${code}, hold jig]`;
const budget = (limit: number, start: number, end: number, resource = 'ann'): Problem => problem([], { resources: [ann], budgets: [{ id: 'day', resource, limit, within: { start, end } }] });
const inBudget = (code: string) => `budgets.0 [${code}, budget day]`;
const quota = (more: object): Problem => problem([activity('a', 1)], { quotas: [{ id: 'week', at: 10, least: 1, among: ['a'], ...more }] });
const inQuota = (code: string) => `quotas.0 [${code}, quota week]`;
const spans = (...list: readonly (readonly [cost: number, start: number, end: number])[]): Problem => problem([], { resources: [ann], upkeep: { resources: ['ann'], spans: list.map(([cost, start, end]) => ({ cost, within: { start, end } })) } });

const rest: readonly Row[] = [
  ['intervals that touch', withCalendar({ start: 0, end: 10 }, { start: 10, end: 20 })],
  ['an interval between minutes', withCalendar({ start: 0.5, end: 10 }), `${inCalendar('not-a-minute', 0)} Calendar c has an interval from 0.5 to 10: not whole minutes from 0. Use whole minutes from 0.`],
  ['an interval that ends between minutes', withCalendar({ start: 0, end: 9.5 }), `${inCalendar('not-a-minute', 0)} Calendar c has an interval from 0 to 9.5: not whole minutes from 0. Use whole minutes from 0.`],
  ['an interval of nothing', withCalendar({ start: 5, end: 5 }), `${inCalendar('interval-ends-before-start', 0)} Calendar c has an interval that starts at 5 and ends at 5. Let it end after its start.`],
  ['intervals out of order', withCalendar({ start: 10, end: 20 }, { start: 0, end: 5 }), `${inCalendar('calendar-unsorted', 1)} Calendar c: the interval at 0 comes after the one at 10. Sort the intervals by their start.`],
  ['intervals that overlap by a minute', withCalendar({ start: 0, end: 10 }, { start: 9, end: 20 }), `${inCalendar('calendar-overlap', 1)} Calendar c: the interval at 9 begins before the one at 0 ends (10). Join or separate them.`],
  ['a resource less than nothing, in a calendar nobody wrote', problem([], { resources: [{ id: 'ann', capacity: -1, calendar: 'nights' }] }), 'resources.0 [bad-capacity, resource ann] Resource ann has capacity -1. Use a whole number from 0.',
    'resources.0 [unknown-calendar, resource ann] Resource ann names the calendar nights, which is not there. Name a calendar of the problem.'],
  ['a hold of all there is', held(1, 0)],
  ['a hold of more than there is', held(2, 0), `${onHold('hold-above-capacity')} Hold jig takes 2 of ann and activity a needs 0 more at the same time, but only 1 exist. Hold less, or raise the capacity.`,
    `${onHold('hold-above-capacity')} Hold jig takes 2 of ann and activity b needs 0 more at the same time, but only 1 exist. Hold less, or raise the capacity.`],
  ['a hold of what its own ends need', held(1, 1), `${onHold('hold-above-capacity')} Hold jig takes 1 of ann and activity a needs 1 more at the same time, but only 1 exist. Leave the resource to the hold alone.`],
  ['a hold of something else than its ends need', held(1, 1, { resource: 'ben' })],
  ['a hold of half a thing nobody has, between activities that are not there', held(0.5, 0, { from: 'x', to: 'y', resource: 'lathe' }),
    `${onHold('unknown-activity')} Hold jig names the activity x, which is not there. Name an activity of the problem.`, `${onHold('unknown-activity')} Hold jig names the activity y, which is not there. Name an activity of the problem.`,
    `${onHold('bad-amount')} Hold jig takes 0.5 units. Use a whole number from 0.`, `${onHold('unknown-resource')} Hold jig names the resource lathe, which is not there. Name a resource of the problem.`],
  ['a budget of one minute', budget(0, 5, 6)],
  ['a budget of less than nothing over nothing', budget(-1, 5, 5, 'lathe'), `${inBudget('unknown-resource')} Budget day names the resource lathe, which is not there. Name a resource of the problem.`,
    `${inBudget('bad-limit')} Budget day has the limit -1. Use a whole number from 0.`, `${inBudget('interval-ends-before-start')} Budget day counts from 5 to 5. Use whole minutes with the end after the start.`],
  ['a budget from between minutes', budget(0, 0.5, 6), `${inBudget('interval-ends-before-start')} Budget day counts from 0.5 to 6. Use whole minutes with the end after the start.`],
  ['a budget to between minutes', budget(0, 0, 5.5), `${inBudget('interval-ends-before-start')} Budget day counts from 0 to 5.5. Use whole minutes with the end after the start.`],
  ['a quota before the first minute', quota({ at: -5, least: 0 })],
  ['a quota that cannot be counted', quota({ at: 1.5, least: -1, among: ['a', 'a', 'x'] }), `${inQuota('unknown-activity')} Quota week names the activity x, which is not there. Name an activity of the problem.`,
    `${inQuota('repeated-activity')} Quota week names an activity twice. Name each once.`, `${inQuota('not-a-minute')} Quota week is looked at at 1.5. Use whole minutes.`, `${inQuota('bad-count')} Quota week asks for -1 activities. Use a whole number from 0.`],
  ['upkeep over spans that touch, for nothing', spans([0, 0, 10], [0.5, 10, 20])],
  ['upkeep below nothing', spans([-1, 0, 10]), 'upkeep.spans.0 [bad-cost] The upkeep from 0 costs -1. Use a number from 0.'],
  ['upkeep without end', spans([Infinity, 0, 10]), 'upkeep.spans.0 [bad-cost] The upkeep from 0 costs Infinity. Use a number from 0.'],
  ['upkeep over nothing', spans([1, 5, 5]), 'upkeep.spans.0 [interval-ends-before-start] An upkeep span counts from 5 to 5. Use whole minutes with the end after the start.'],
  ['upkeep between minutes', spans([1, 0.5, 5], [1, 5, 6.5]), 'upkeep.spans.0 [interval-ends-before-start] An upkeep span counts from 0.5 to 5. Use whole minutes with the end after the start.',
    'upkeep.spans.1 [interval-ends-before-start] An upkeep span counts from 5 to 6.5. Use whole minutes with the end after the start.'],
  ['upkeep over spans that overlap by a minute', spans([1, 0, 10], [1, 9, 20]), 'upkeep.spans.1 [calendar-overlap] The upkeep span at 9 begins before the one at 0 ends. Sort the spans and join those that overlap.'],
  ['upkeep of something nobody has', problem([], { upkeep: { resources: ['lathe'], spans: [] } }), 'upkeep.resources [unknown-resource] The upkeep names the resource lathe, which is not there. Name a resource of the problem.'],
  ['an objective in any order', problem([], { objective: ['cost', 'makespan', 'moved', 'shortages', 'tardiness'] })],
  ['an objective without all terms', problem([], { objective: ['cost', 'makespan'] }), 'objective [bad-objective] The objective is given as cost, makespan. Name each of tardiness, shortages, moved, makespan, cost once.'],
  ['an objective with a term twice', problem([], { objective: ['cost', 'cost', 'moved', 'shortages', 'tardiness'] }), 'objective [bad-objective] The objective is given as cost, cost, moved, shortages, tardiness. Name each of tardiness, shortages, moved, makespan, cost once.'],
  ['an objective of nothing', problem([], { objective: [] }), 'objective [bad-objective] The objective is given as nothing. Name each of tardiness, shortages, moved, makespan, cost once.'],
  ['a horizon of nothing', problem([], { horizon: 0 }), 'horizon [horizon-too-short] The horizon is 0: nothing can happen before it. Set it to a whole number of minutes above 0.'],
  ['a horizon between minutes', problem([], { horizon: 0.5 }), 'horizon [horizon-too-short] The horizon is 0.5: nothing can happen before it. Set it to a whole number of minutes above 0.'],
  ['a horizon of a minute', problem([], { horizon: 1 })],
];

describe.each([['an activity', activities], ['the people of an activity', people], ['the states of an activity', states], ['a lag', lags], ['the rest of a problem', rest]] as const)('what is said of %s', (_, rows) => {
  it.each(rows.map(([title, input, ...lines]) => ({ title, input, lines })))('$title', ({ input, lines }) => expect(said(input)).toEqual(lines));
});

describe('an id that stands twice', () => {
  it('is told for each kind of row, at the second', () => {
    const within = { start: 0, end: 5 };
    const lines = said({
      horizon: 100, calendars: [evenings, evenings], resources: [ann, ann], activities: [activity('a', 1), activity('b', 1), activity('a', 1)], lags: [finishToStart('a', 'b'), finishToStart('a', 'b')],
      holds: [0, 1].map(() => ({ id: 'jig', resource: 'ann', amount: 1, from: 'a', to: 'b' })), budgets: [0, 1].map(() => ({ id: 'day', resource: 'ann', limit: 5, within })),
      quotas: [0, 1].map(() => ({ id: 'week', at: 5, least: 1, among: ['a'] })),
    });
    expect(lines).toEqual([
      ['calendars.1', 'calendar', 'evenings'], ['resources.1', 'resource', 'ann'], ['activities.2', 'activity', 'a'], ['lags.1', 'lag', 'a>b'], ['holds.1', 'hold', 'jig'], ['budgets.1', 'budget', 'day'], ['quotas.1', 'quota', 'week'],
    ].map(([path, kind, id]) => `${path}.id [duplicate-id, ${kind} ${id}] Two ${kind}s have the id ${id}. Give each its own id.`));
  });
});
