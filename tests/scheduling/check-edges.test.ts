import { describe, expect, it } from 'vitest';
import { RULES, type Problem, type Schedule } from '@/lib/scheduling';
import { activity, finishToStart, lag, place, problem, schedule } from './simple';

const sessions = { id: 'sessions', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }, { start: 300, end: 400 }] };
const ann = { id: 'ann', capacity: 1 };
const ben = { id: 'ben', capacity: 1 };
const bench = { id: 'bench', capacity: 1 };
const onBench = { demands: [{ resource: 'bench', amount: 1 }] };
const two = [activity('a', 10), activity('b', 10)];
const inPauses = activity('a', 150, { ...onBench, calendar: 'sessions', mode: 'split' });
const overPause = place('a', 0, 250, { pieces: [{ start: 0, end: 100 }, { start: 200, end: 250 }] });

/** Of the rules it names, a schedule breaks those with the sentences beside them, and no other of them. */
type Row = readonly [title: string, problem: Problem, schedule: Schedule, rules: Partial<Record<keyof typeof RULES, readonly string[]>>];

function expectSaid([, asked, planned, rules]: Row): void {
  for (const [name, sentences] of Object.entries(rules)) {
    const rule = RULES[name as keyof typeof RULES];
    expect([name, rule(asked, planned).map(({ message }) => message)]).toEqual([name, sentences]);
  }
}

const use: readonly Row[] = [
  ['what is not held through pauses is free in them', problem([inPauses, activity('b', 10, onBench)], { calendars: [sessions], resources: [bench] }),
    schedule([overPause, place('b', 150, 160)]), { checkCapacity: [] }],
  ['each resource is counted alone', problem([activity('a', 10, onBench), activity('b', 10, { demands: [{ resource: 'oven', amount: 1 }] })], { resources: [bench, { id: 'oven', capacity: 1 }] }),
    schedule([place('a', 0, 10), place('b', 0, 10)]), { checkCapacity: [] }],
  ['somebody of a crew is at one place at a time', problem(two, { resources: [ann] }),
    schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 5, 15, { crew: ['ann'] })]), { checkCapacity: ['ann is used 2 times at 5, it has 1.'] }],
  ['an amount of nothing is not even bound to the hours of the resource', problem([activity('a', 10, { demands: [{ resource: 'bench', amount: 0 }] })], { calendars: [sessions], resources: [{ ...bench, calendar: 'sessions' }] }),
    schedule([place('a', 120, 130)]), { checkCapacity: [] }],
  ['minutes of a budget are those of its resource, in its span', problem([activity('a', 10, onBench), activity('b', 10, onBench), activity('c', 10)], { resources: [bench, ann], budgets: [{ id: 'day', resource: 'bench', within: { start: 0, end: 100 }, limit: 10 }] }),
    schedule([place('a', 90, 100), place('b', 100, 110), place('c', 0, 10, { crew: ['ann'] })]), { checkBudgets: [] }],
  ['a budget of a dose is no budget of minutes, and the other way round', problem([activity('a', 10, { ...onBench, doses: [{ kind: 'noise', perMinute: 1 }] })], {
    resources: [bench, ann], budgets: [{ id: 'noise', resource: 'bench', dose: 'noise', within: { start: 0, end: 100 }, limit: 0 }, { id: 'ann', resource: 'ann', within: { start: 0, end: 100 }, limit: 9 }],
  }), schedule([place('a', 0, 10, { crew: ['ann'] })]), { checkBudgets: ['ann: 10 minutes of ann are used, 9 allowed.'], checkDoses: [] }],
  ['a dose of another kind does not count', problem([activity('a', 10, { doses: [{ kind: 'noise', perMinute: 1 }, { kind: 'dust', perMinute: 3 }] })], { resources: [ann], budgets: [{ id: 'n', resource: 'ann', dose: 'noise', within: { start: 0, end: 100 }, limit: 10 }] }),
    schedule([place('a', 0, 10, { crew: ['ann'] })]), { checkDoses: [] }],
];

const heldFrom = (from: string, to: string): Problem => problem([activity('a', 10), activity('b', 10), activity('c', 10, onBench)], {
  resources: [bench], holds: [{ id: 'jig', resource: 'bench', amount: 1, from, to }],
});

const holds: readonly Row[] = [
  ['a hold whose first is left out takes nothing', heldFrom('a', 'b'), schedule([place('c', 0, 10)], ['a', 'b']), { checkHolds: [] }],
  ['a hold runs between its own two, wherever they are listed', heldFrom('a', 'b'), schedule([place('c', 0, 10), place('b', 50, 60), place('a', 20, 30)]), { checkHolds: [] }],
  ['a hold may begin in the minute in which its last ends', heldFrom('a', 'b'), schedule([place('b', 0, 10), place('a', 10, 20), place('c', 30, 40)]), { checkHolds: [] }],
  ['a hold may not begin after its last has ended', heldFrom('a', 'b'), schedule([place('c', 30, 40), place('b', 0, 10), place('a', 11, 21)]), { checkHolds: ['jig ends before it begins.'] }],
  ['a hold may not end without having begun', heldFrom('a', 'b'), schedule([place('b', 0, 10), place('c', 0, 10)], ['a']), { checkHolds: ['jig ends before it begins.'] }],
];

const pool = (ids: readonly string[], count = 1) => ({ pool: ids, count });
const crewed = (crew: readonly string[], needs: readonly ReturnType<typeof pool>[], pin?: readonly string[]): Row[1] => problem(
  [activity('a', 10, { crew: needs, ...(pin === undefined ? {} : { pin: { start: 0, crew: pin } }) })], { resources: crew.map((id) => ({ id, capacity: 1 })) },
);

const crews: readonly Row[] = [
  ['each need has its own part of the crew', crewed(['ann', 'ben'], [pool(['ann']), pool(['ben'])]), schedule([place('a', 0, 10, { crew: ['ann', 'ben'] })]), { checkCrew: [] }],
  ['a stranger to the pool is named', crewed(['ann', 'ben', 'cem'], [pool(['ann'], 2)]), schedule([place('a', 0, 10, { crew: ['ben', 'cem'] })]), { checkCrew: ['a has ben, cem, who is not in its pool.'] }],
  ['so is somebody in a pool whom the problem does not know', crewed(['ann'], [pool(['zoe'])]), schedule([place('a', 0, 10, { crew: ['zoe'] })]), { checkCrew: ['a has zoe, who is not in its pool.'] }],
  ['nobody may be too many', crewed(['ann', 'ben', 'cem'], [pool(['ann'])]), schedule([place('a', 0, 10, { crew: ['ann', 'ben', 'cem'] })]), { checkCrew: ['a has 2 people too many.'] }],
  ['work without a need has nobody', problem(two, { resources: [ann] }), schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 0, 10)]), { checkCrew: ['a has 1 people too many.'] }],
  ['people who are missing or counted twice are told', crewed(['ann', 'ben'], [pool(['ann', 'ben'], 3)]), schedule([place('a', 0, 10, { crew: ['ann', 'ann'] })]), { checkCrew: ['a has 2 of 3 people from ann, ben.', 'a counts somebody twice: ann, ann.'] }],
  ['a pinned crew that is kept is no fault', crewed(['ann', 'ben'], [pool(['ann', 'ben'], 2)], ['ben', 'ann']), schedule([place('a', 0, 10, { crew: ['ben', 'ann'] })]), { checkCrew: [] }],
  ['a pinned crew is kept person by person', crewed(['ann', 'ben'], [pool(['ann', 'ben'], 2)], ['ben', 'ann']), schedule([place('a', 0, 10, { crew: ['ann', 'ben'] })]), { checkCrew: ['a is pinned with ben, ann but has ann, ben.'] }],
];

const working = (minutes: number) => lag('a', 'b', { kind: 'working', minutes, calendar: 'sessions' });
const lagged = (only: ReturnType<typeof lag>, horizon = 1000): Problem => problem(two, { calendars: [sessions], lags: [only], horizon });

const lags: readonly Row[] = [
  ['no working time has passed at once, wherever that is', lagged(working(0)), schedule([place('a', 140, 150), place('b', 150, 160)]), { checkWorkingLags: [] }],
  ['working time in a pause begins with the next session', lagged(working(10)), schedule([place('a', 140, 150), place('b', 210, 220)]), { checkWorkingLags: [] }],
  ['working time that fills a session ends with it', lagged(working(10)), schedule([place('a', 80, 90), place('b', 100, 110)]), { checkWorkingLags: [] }],
  ['working time that the calendar no longer has never passes', lagged(working(301)), schedule([place('a', 0, 10), place('b', 900, 910)]), { checkWorkingLags: ['a>b: b comes at 900, not before ever allowed.'] }],
  ['beyond its last step a table lets nothing follow', lagged(lag('a', 'b', { kind: 'table', step: 10, ready: [20, 30] })), schedule([place('a', 1, 11), place('b', 500, 510)]), { checkTableLags: ['a>b: b comes at 500, not before ever allowed.'] }],
  ['a lag with a maximum alone has no minimum to break', lagged(lag('a', 'b', undefined, 20)), schedule([place('a', 0, 10), place('b', 5, 15)]), { checkElapsedLags: [], checkWorkingLags: [], checkTableLags: [], checkMaximumLags: [] }],
  ['the end of a window is told in minutes', lagged(lag('a', 'b', undefined, 20)), schedule([place('a', 0, 10), place('b', 31, 41)]), { checkMaximumLags: ['a>b: b comes at 31 or later, its window closed at 30.'] }],
  ['a window that nothing opened does not close', lagged(lag('a', 'b', undefined, 20)), schedule([place('b', 50, 60)], ['a']), { checkMaximumLags: [] }],
  ['what needs something left out may start where its overlap reaches over the horizon', lagged(finishToStart('a', 'b', -20), 100), schedule([place('b', 80, 90)], ['a']), { checkElapsedLags: [] }],
  ['and not a minute before', lagged(finishToStart('a', 'b', -20), 100), schedule([place('b', 79, 89)], ['a']), { checkElapsedLags: ['b is placed but a, which it needs first, is not.'].map((text) => `a>b: ${text}`) }],
  ['without an overlap it may not be placed, not even at the horizon', lagged(finishToStart('a', 'b'), 100), schedule([place('b', 100, 110)], ['a']), { checkElapsedLags: ['a>b: b is placed but a, which it needs first, is not.'] }],
];

const wet = { medium: 'air', state: 'wet', tail: 0 };
const dusty = { medium: 'air', state: 'dusty', tail: 0 };
const air = (first: object, second: object, length = 10): Problem => problem([activity('a', length, { states: [{ ...wet, ...first }] }), activity('b', 10, { states: [{ ...dusty, ...second }] })]);
const dry = { until: { step: 10, ready: [20, 45, 70] } };
const clash = (until: number, from: number) => ({ checkStates: [`a needs air wet until ${until} while b makes it dusty from ${from}.`] });

const states: readonly Row[] = [
  ['the same state goes beside itself', air({}, { state: 'wet' }), schedule([place('a', 0, 10), place('b', 0, 10)]), { checkStates: [] }],
  ['another medium is not touched', air({}, { medium: 'water' }), schedule([place('a', 0, 10), place('b', 0, 10)]), { checkStates: [] }],
  ['one state may follow the other at once, in either order', air({}, {}), schedule([place('a', 10, 20), place('b', 0, 10)]), { checkStates: [] }],
  ['a minute together is told once', air({}, {}), schedule([place('a', 9, 19), place('b', 0, 10)]), clash(19, 0)],
  ['an event without length puts the air into no state', air({}, {}, 0), schedule([place('a', 5, 5), place('b', 0, 10)]), { checkStates: [] }],
  ['nor is it in the way when it comes second', problem([activity('b', 10, { states: [dusty] }), activity('a', 0, { states: [wet] })]), schedule([place('b', 0, 10), place('a', 5, 5)]), { checkStates: [] }],
  ['a table tells when what ended by its step is over', air(dry, {}), schedule([place('a', 0, 10), place('b', 45, 55)]), { checkStates: [] }],
  ['and not before', air(dry, {}), schedule([place('a', 0, 10), place('b', 44, 54)]), clash(45, 44)],
  ['an end between two steps is read at the later one', air(dry, {}), schedule([place('a', 1, 11), place('b', 69, 79)]), clash(70, 69)],
  ['an end beyond the table lasts as long as its tail', air({ ...dry, tail: 5 }, {}), schedule([place('a', 20, 30), place('b', 35, 45)]), { checkStates: [] }],
  ['the tail counts where it is longer than the table', air({ ...dry, tail: 50 }, {}), schedule([place('a', 0, 10), place('b', 59, 69)]), clash(60, 59)],
  ['the first row of a table is as good as any other', air(dry, {}, 0), schedule([place('a', 0, 0), place('b', 19, 29)]), clash(20, 19)],
];

const split = (more: object): Problem => problem([activity('a', 60, { mode: 'split', ...more })], { calendars: [sessions] });
const pieces = (...list: readonly [number, number][]): Schedule => {
  const made = list.map(([start, end]) => ({ start, end }));
  return schedule([place('a', made[0]?.start ?? 0, made.at(-1)?.end ?? 0, { pieces: made })]);
};
const goesOn = { checkSplitPieces: ['a does not go on at once in the next interval of sessions.'] };
const whole = problem([activity('a', 10)]);
const unframed = (start: number, end: number) => ({ checkDuration: [`a runs from ${start} to ${end}, which its pieces do not.`] });

const work: readonly Row[] = [
  ['an event without length may lie on the end of a session', problem([activity('a', 0, { calendar: 'sessions' })], { calendars: [sessions] }), schedule([place('a', 100, 100)]), { checkCalendarMembership: [] }],
  ['and not outside of one', problem([activity('a', 0, { calendar: 'sessions' })], { calendars: [sessions] }), schedule([place('a', 101, 101)]), { checkCalendarMembership: ['a is worked from 101 to 101, outside sessions.'] }],
  ['pieces begin where the work begins', whole, schedule([place('a', 4, 15, { pieces: [{ start: 5, end: 15 }] })]), unframed(4, 15)],
  ['pieces end where the work ends', whole, schedule([place('a', 5, 16, { pieces: [{ start: 5, end: 15 }] })]), unframed(5, 16)],
  ['nothing begins before the first minute', whole, schedule([place('a', -1, 9)]), unframed(-1, 9)],
  ['nothing begins within a minute', whole, schedule([place('a', 0.5, 10.5)]), unframed(0.5, 10.5)],
  ['an event without length has no piece', problem([activity('a', 0)]), schedule([place('a', 5, 5, { pieces: [{ start: 5, end: 5 }] })]), unframed(5, 5)],
  ['work without pieces has not been done', whole, schedule([place('a', 5, 15, { pieces: [] })]), { checkDuration: ['a is worked 0 minutes instead of 10.', ...unframed(5, 15).checkDuration] }],
  ['work that knows no calendar knows no pauses', split({}), pieces([0, 30], [40, 70]), { checkOneGo: ['a is to be done in one go but has 2 pieces.'], checkSplitPieces: [] }],
  ['what has no shortest piece may have any', split({ calendar: 'sessions' }), pieces([99, 100], [200, 259]), { checkShortestPieces: [], checkSplitPieces: [], checkOneGo: [] }],
  ['the shortest piece is asked of split work alone', split({ calendar: 'sessions', mode: 'one-go', shortestPiece: 40 }), pieces([99, 100], [200, 259]), { checkShortestPieces: [] }],
  ['and of work with a calendar alone', split({ shortestPiece: 40 }), pieces([0, 10], [20, 70]), { checkShortestPieces: [] }],
  ['a piece of just the shortest length is long enough', split({ calendar: 'sessions', shortestPiece: 20 }), pieces([80, 100], [200, 240]), { checkShortestPieces: [], checkSplitPieces: [] }],
  ['a piece that is too short is told with its start', split({ calendar: 'sessions', shortestPiece: 20 }), pieces([81, 100], [200, 241]), { checkShortestPieces: ['a has a piece of 19 minutes at 81, shorter than 20.'] }],
  ['work that fills a session does not touch the next', split({ calendar: 'sessions', duration: 100 }), pieces([200, 300]), { checkSplitPieces: [] }],
  ['a piece too many is told', split({ calendar: 'sessions' }), schedule([place('a', 40, 100, { pieces: [{ start: 40, end: 100 }, { start: 200, end: 250 }] })]), goesOn],
  ['a piece too few is told', split({ calendar: 'sessions' }), schedule([place('a', 70, 230, { pieces: [{ start: 70, end: 100 }] })]), goesOn],
  ['a later piece that begins late is told', split({ calendar: 'sessions' }), pieces([50, 100], [210, 220]), goesOn],
  ['a piece that ends early is told', split({ calendar: 'sessions' }), pieces([40, 90], [200, 210]), goesOn],
];

const score = (asked: Problem, planned: Schedule, ...sentences: readonly string[]) => [asked, planned, { checkScore: sentences }] as const;
const heated = (within: { start: number; end: number }, cost = 7): Problem => problem([activity('a', 10, { ...onBench, crew: [pool(['ann'])] })], { resources: [bench, ann], upkeep: { resources: ['bench'], spans: [{ within, cost }] } });
const byAnn = place('a', 5, 15, { crew: ['ann'] });

const scores: readonly Row[] = [
  ['what stays where it was is not moved, whoever does it', ...score(problem([activity('a', 10, { previousStart: 0 })]), schedule([place('a', 0, 10)]))],
  ['what had a place and has none is moved', ...score(problem([activity('a', 10, { previousStart: 0 })]), schedule([], ['a'], { moved: 1 }))],
  ['what is left out is late up to the horizon', ...score(problem([activity('a', 10, { due: { at: 990, weight: 2 } })]), schedule([], ['a'], { tardiness: 19 }), 'tardiness is given as 19, the dates give 20.')],
  ['a span is heated for the last minute of it', ...score(heated({ start: 0, end: 6 }), schedule([byAnn], [], { cost: 7 }))],
  ['a span that ends where the work begins stays cold', ...score(heated({ start: 0, end: 5 }), schedule([byAnn]))],
  ['a span in which one piece of two lies is heated', ...score(problem([inPauses], { calendars: [sessions], resources: [bench], upkeep: { resources: ['bench'], spans: [{ within: { start: 200, end: 220 }, cost: 7 }] } }), schedule([overPause], [], { cost: 7 }))],
  ['work of others heats nothing', ...score(problem([activity('a', 10)], { resources: [ann, bench], upkeep: { resources: ['bench'], spans: [{ within: { start: 0, end: 20 }, cost: 7 }] } }), schedule([byAnn]))],
  ['nor does an amount of nothing', ...score(problem([activity('a', 10, { demands: [{ resource: 'bench', amount: 0 }] })], { resources: [bench], upkeep: { resources: ['bench'], spans: [{ within: { start: 0, end: 20 }, cost: 7 }] } }), schedule([place('a', 0, 10)]))],
  ['large sums may be a millionth off', ...score(heated({ start: 0, end: 6 }, 2_000_000), schedule([byAnn], [], { cost: 2_000_002 }))],
  ['and no more', ...score(heated({ start: 0, end: 6 }, 2_000_000), schedule([byAnn], [], { cost: 2_000_003 }), 'cost is given as 2000003, the dates give 2000000.')],
];

describe.each([['use', use], ['holds', holds], ['crews', crews], ['lags', lags], ['states', states], ['pieces and calendars', work], ['the score', scores]] as const)('the checker on %s', (_, rows) => {
  it.each(rows)('%s', (...row) => expectSaid(row));
});

describe('a rule that is broken', () => {
  const asked = problem([activity('a', 10, { ...onBench, release: 5, latestEnd: 12, pin: { start: 4 }, doses: [{ kind: 'noise', perMinute: 2 }] }), activity('b', 10, { ...onBench, calendar: 'sessions' })], {
    horizon: 100, calendars: [sessions], resources: [{ ...bench, calendar: 'sessions' }, ben],
    budgets: [{ id: 'day', resource: 'bench', within: { start: 0, end: 10 }, limit: 5 }, { id: 'ears', resource: 'ben', dose: 'noise', within: { start: 0, end: 10 }, limit: 4 }],
  });
  const planned = schedule([place('a', 3, 13, { crew: ['ben'] }), place('b', 95, 105), place('c', 0, 10)]);
  const said = (rule: keyof typeof RULES, at: Schedule = planned) => RULES[rule](asked, at);

  it('is told with its name, what is wrong where, and the activities to look at', () => {
    expect(said('checkReleases')).toEqual([{ rule: 'release', message: 'a starts at 3, before its release at 5.', activities: ['a'] }]);
    expect(said('checkLatestEnds')).toEqual([{ rule: 'latest-end', message: 'a ends at 13, after 12.', activities: ['a'] }]);
    expect(said('checkPins')).toEqual([{ rule: 'pin', message: 'a starts at 3 but is fixed at 4.', activities: ['a'] }]);
    expect(said('checkHorizon')).toEqual([{ rule: 'horizon', message: 'b ends at 105, after the horizon 100.', activities: ['b'] }]);
    expect(said('checkCalendarMembership')).toEqual([{ rule: 'calendar', message: 'b is worked from 95 to 105, outside sessions.', activities: ['b'] }]);
    expect(said('checkCapacity')).toEqual([{ rule: 'capacity', message: 'bench is used from 95 to 105, partly outside sessions.', activities: ['b'] }]);
    expect(said('checkBudgets')).toEqual([{ rule: 'budget', message: 'day: 7 minutes of bench are used, 5 allowed.', activities: ['a'] }]);
    expect(said('checkDoses')).toEqual([{ rule: 'dose', message: 'ears: ben gets 14 of noise, 4 allowed.', activities: ['a'] }]);
    expect(said('checkCrew')).toEqual([{ rule: 'crew', message: 'a has 1 people too many.', activities: ['a'] }]);
    expect(said('checkCompleteness')).toEqual([{ rule: 'completeness', message: 'c is not in the problem.', activities: ['c'] }]);
  });

  it('is told of what is listed twice or not at all', () => {
    expect(said('checkCompleteness', schedule([place('a', 0, 10), place('a', 20, 30)]))).toEqual([
      { rule: 'completeness', message: 'a is listed 2 times, not once.', activities: ['a'] },
      { rule: 'completeness', message: 'b is listed 0 times, not once.', activities: ['b'] },
    ]);
  });

  it('names everybody who shares in it, once', () => {
    const shared = schedule([place('a', 5, 15), place('b', 9, 19)]);
    expect(said('checkCapacity', shared)).toEqual([{ rule: 'capacity', message: 'bench is used 2 times at 9, it has 1.', activities: ['a', 'b'] }]);
    const held = problem(asked.activities, { resources: [bench], holds: [{ id: 'jig', resource: 'bench', amount: 1, from: 'a', to: 'a' }] });
    expect(RULES.checkHolds(held, schedule([place('a', 0, 10)]))).toContainEqual({ rule: 'hold', message: 'bench is used 2 times at 0, it has 1.', activities: ['a'] });
    expect(RULES.checkHolds(heldFrom('b', 'a'), schedule([place('a', 0, 10), place('b', 20, 30)]))).toEqual([{ rule: 'hold', message: 'jig ends before it begins.', activities: ['b', 'a'] }]);
  });

  it('is told by every other rule in the same way', () => {
    const asSplit = problem([activity('a', 60, { mode: 'split', calendar: 'sessions', shortestPiece: 20 })], { calendars: [sessions] });
    expect(RULES.checkShortestPieces(asSplit, pieces([95, 100], [200, 255]))).toEqual([{ rule: 'shortest-piece', message: 'a has a piece of 5 minutes at 95, shorter than 20.', activities: ['a'] }]);
    expect(RULES.checkSplitPieces(asSplit, pieces([40, 80], [200, 220]))).toEqual([{ rule: 'split-pieces', message: 'a does not go on at once in the next interval of sessions.', activities: ['a'] }]);
    expect(RULES.checkOneGo(split({}), pieces([0, 30], [40, 70]))).toEqual([{ rule: 'one-go', message: 'a is to be done in one go but has 2 pieces.', activities: ['a'] }]);
    expect(RULES.checkDuration(whole, schedule([place('a', 5, 16)]))).toEqual([{ rule: 'duration', message: 'a is worked 11 minutes instead of 10.', activities: ['a'] }]);
    expect(RULES.checkDuration(whole, schedule([place('a', 4, 15, { pieces: [{ start: 5, end: 15 }] })]))).toEqual([{ rule: 'duration', message: 'a runs from 4 to 15, which its pieces do not.', activities: ['a'] }]);
    expect(RULES.checkStates(air({}, {}), schedule([place('a', 0, 10), place('b', 9, 19)]))).toEqual([{ rule: 'state', message: 'a needs air wet until 10 while b makes it dusty from 9.', activities: ['a', 'b'] }]);
    expect(RULES.checkScore(whole, schedule([place('a', 0, 10)], [], { makespan: 11 }))).toEqual([{ rule: 'score', message: 'makespan is given as 11, the dates give 10.', activities: [] }]);
    expect(RULES.checkMaximumLags(lagged(lag('a', 'b', undefined, 20)), schedule([place('a', 0, 10), place('b', 31, 41)])).map(({ rule }) => rule)).toEqual(['max-lag']);
    expect(RULES.checkElapsedLags(lagged(finishToStart('a', 'b')), schedule([place('b', 0, 10)], ['a'])).map(({ rule }) => rule)).toEqual(['min-lag-elapsed']);
  });
});
