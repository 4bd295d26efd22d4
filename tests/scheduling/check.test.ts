import { describe, expect, it } from 'vitest';
import { check, RULES, type Problem, type Schedule } from '@/lib/scheduling';
import { activity, finishToStart, lag, place, problem, schedule } from './simple';

const sessions = { id: 'sessions', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }, { start: 300, end: 400 }] };

interface Case {
  readonly rule: keyof typeof RULES;
  readonly says: string;
  readonly problem: Problem;
  readonly sound: Schedule;
  readonly broken: Schedule;
}

const inSessions = activity('a', 60, { calendar: 'sessions' });
const splitWork = activity('a', 150, { calendar: 'sessions', mode: 'split' });
const onBench = { demands: [{ resource: 'bench', amount: 1 }] };
const bench = { id: 'bench', capacity: 1 };
const twoPeople = [{ id: 'ann', capacity: 1 }, { id: 'ben', capacity: 1 }];
/** Ten minutes each, two points a minute, by either. */
const twoShaking = ['a', 'b'].map((id) => activity(id, 10, { crew: [{ pool: ['ann', 'ben'], count: 1 }], doses: [{ kind: 'vibration', perMinute: 2 }] }));
const vibrationOf = (resource: string, limit: number) => ({ id: `vibration ${resource}`, resource, dose: 'vibration', within: { start: 0, end: 100 }, limit });
const two = [activity('a', 10), activity('b', 10)];

/** One activity of ten minutes, with a quota at a minute and a heated span from another. */
const rated = (shortages: number, cost: number): Schedule => schedule([place('a', 0, 10)], [], { shortages, cost });
const ratedProblem = (quotaAt: number, heatedFrom: number): Problem => problem([activity('a', 10, onBench)], {
  resources: [bench], quotas: [{ id: 'week', at: quotaAt, least: 1, among: ['a'] }],
  upkeep: { resources: ['bench'], spans: [{ within: { start: heatedFrom, end: 100 }, cost: 7 }] },
});

const cases: readonly Case[] = [
  {
    rule: 'checkCompleteness', says: 'each activity is placed or left out once', problem: problem(two),
    sound: schedule([place('a', 0, 10)], ['b']), broken: schedule([place('a', 0, 10)]),
  },
  {
    rule: 'checkDuration', says: 'the pieces add up to the duration', problem: problem([activity('a', 10)]),
    sound: schedule([place('a', 5, 15)]), broken: schedule([place('a', 5, 14)]),
  },
  {
    rule: 'checkDuration', says: 'start and end are those of the pieces', problem: problem([activity('a', 10)]),
    sound: schedule([place('a', 5, 15)]), broken: schedule([place('a', 5, 15, { pieces: [{ start: 6, end: 16 }] })]),
  },
  {
    rule: 'checkDuration', says: 'a milestone has no length', problem: problem([activity('a', 0)]),
    sound: schedule([place('a', 5, 5)]), broken: schedule([place('a', 5, 6, { pieces: [] })]),
  },
  {
    rule: 'checkCalendarMembership', says: 'work lies inside the calendar', problem: problem([inSessions], { calendars: [sessions] }),
    sound: schedule([place('a', 40, 100)]), broken: schedule([place('a', 41, 101)]),
  },
  {
    rule: 'checkCalendarMembership', says: 'work does not cross from one interval into one that touches it', problem: problem([inSessions], { calendars: [sessions] }),
    sound: schedule([place('a', 300, 360)]), broken: schedule([place('a', 299, 359)]),
  },
  {
    rule: 'checkShortestPieces', says: 'no piece of split work is a scrap',
    problem: problem([activity('a', 150, { calendar: 'sessions', mode: 'split', shortestPiece: 40 })], { calendars: [sessions] }),
    sound: schedule([place('a', 50, 300, { pieces: [{ start: 50, end: 100 }, { start: 200, end: 300 }] })]),
    broken: schedule([place('a', 61, 311, { pieces: [{ start: 61, end: 100 }, { start: 200, end: 300 }, { start: 300, end: 311 }] })]),
  },
  {
    rule: 'checkShortestPieces', says: 'work shorter than the shortest piece is one piece',
    problem: problem([activity('a', 30, { calendar: 'sessions', mode: 'split', shortestPiece: 40 })], { calendars: [sessions] }),
    sound: schedule([place('a', 70, 100)]),
    broken: schedule([place('a', 80, 210, { pieces: [{ start: 80, end: 100 }, { start: 200, end: 210 }] })]),
  },
  {
    rule: 'checkSplitPieces', says: 'only intervals too short for a piece are passed over',
    problem: problem([activity('a', 150, { calendar: 'uneven', mode: 'split', shortestPiece: 40 })], { calendars: [{ id: 'uneven', intervals: [{ start: 0, end: 100 }, { start: 150, end: 189 }, { start: 200, end: 240 }, { start: 300, end: 400 }] }] }),
    sound: schedule([place('a', 0, 310, { pieces: [{ start: 0, end: 100 }, { start: 200, end: 240 }, { start: 300, end: 310 }] })]),
    broken: schedule([place('a', 0, 350, { pieces: [{ start: 0, end: 100 }, { start: 300, end: 350 }] })]),
  },
  {
    rule: 'checkOneGo', says: 'work in one go has one piece', problem: problem([inSessions], { calendars: [sessions] }),
    sound: schedule([place('a', 0, 60)]), broken: schedule([place('a', 70, 230, { pieces: [{ start: 70, end: 100 }, { start: 200, end: 230 }] })]),
  },
  {
    rule: 'checkSplitPieces', says: 'split work goes on at once in the next interval', problem: problem([splitWork], { calendars: [sessions] }),
    sound: schedule([place('a', 0, 250, { pieces: [{ start: 0, end: 100 }, { start: 200, end: 250 }] })]),
    broken: schedule([place('a', 0, 350, { pieces: [{ start: 0, end: 100 }, { start: 300, end: 350 }] })]),
  },
  {
    rule: 'checkElapsedLags', says: 'an elapsed minimum lag is waited for', problem: problem(two, { lags: [finishToStart('a', 'b', 5)] }),
    sound: schedule([place('a', 0, 10), place('b', 15, 25)]), broken: schedule([place('a', 0, 10), place('b', 14, 24)]),
  },
  {
    rule: 'checkElapsedLags', says: 'nothing is placed whose predecessor is left out', problem: problem(two, { lags: [finishToStart('a', 'b')] }),
    sound: schedule([place('a', 0, 10)], ['b']), broken: schedule([place('b', 50, 60)], ['a']),
  },
  {
    rule: 'checkWorkingLags', says: 'a working lag counts minutes of its calendar only',
    problem: problem(two, { calendars: [sessions], lags: [lag('a', 'b', { kind: 'working', minutes: 120, calendar: 'sessions' })] }),
    sound: schedule([place('a', 0, 10), place('b', 230, 240)]), broken: schedule([place('a', 0, 10), place('b', 229, 239)]),
  },
  {
    rule: 'checkTableLags', says: 'a table lag is read at the next step',
    problem: problem(two, { lags: [lag('a', 'b', { kind: 'table', step: 10, ready: [20, 30, 70] })] }),
    sound: schedule([place('a', 0, 10), place('b', 30, 40)]), broken: schedule([place('a', 1, 11), place('b', 69, 79)]),
  },
  {
    rule: 'checkMaximumLags', says: 'a maximum lag is met', problem: problem(two, { lags: [finishToStart('a', 'b', 0, 20)] }),
    sound: schedule([place('a', 0, 10), place('b', 30, 40)]), broken: schedule([place('a', 0, 10), place('b', 31, 41)]),
  },
  {
    rule: 'checkMaximumLags', says: 'a window opened and not met must reach the horizon', problem: problem(two, { horizon: 100, lags: [finishToStart('a', 'b', 0, 20)] }),
    sound: schedule([place('a', 70, 80)], ['b']), broken: schedule([place('a', 69, 79)], ['b']),
  },
  {
    rule: 'checkCapacity', says: 'no more is used than there is',
    problem: problem([activity('a', 10, onBench), activity('b', 10, onBench)], { resources: [bench] }),
    sound: schedule([place('a', 0, 10), place('b', 10, 20)]), broken: schedule([place('a', 0, 10), place('b', 9, 19)]),
  },
  {
    rule: 'checkCapacity', says: 'a resource is used inside its calendar only',
    problem: problem([activity('a', 10, onBench)], { calendars: [sessions], resources: [{ ...bench, calendar: 'sessions' }] }),
    sound: schedule([place('a', 90, 100)]), broken: schedule([place('a', 95, 105)]),
  },
  {
    rule: 'checkCapacity', says: 'what is held through pauses is taken in them too',
    problem: problem([activity('a', 150, { calendar: 'sessions', mode: 'split', demands: [{ resource: 'bench', amount: 1, throughPauses: true }] }), activity('b', 10, onBench)], { calendars: [sessions], resources: [bench] }),
    sound: schedule([place('a', 0, 250, { pieces: [{ start: 0, end: 100 }, { start: 200, end: 250 }] }), place('b', 250, 260)]),
    broken: schedule([place('a', 0, 250, { pieces: [{ start: 0, end: 100 }, { start: 200, end: 250 }] }), place('b', 150, 160)]),
  },
  {
    rule: 'checkCrew', says: 'the crew comes from its pool, all different',
    problem: problem([activity('a', 10, { crew: [{ pool: ['ann', 'ben'], count: 2 }] })], { resources: [{ id: 'ann', capacity: 1 }, { id: 'ben', capacity: 1 }] }),
    sound: schedule([place('a', 0, 10, { crew: ['ben', 'ann'] })]), broken: schedule([place('a', 0, 10, { crew: ['ann', 'ann'] })]),
  },
  {
    rule: 'checkCrew', says: 'the crew is complete',
    problem: problem([activity('a', 10, { crew: [{ pool: ['ann', 'ben'], count: 1 }] })], { resources: [{ id: 'ann', capacity: 1 }, { id: 'ben', capacity: 1 }] }),
    sound: schedule([place('a', 0, 10, { crew: ['ben'] })]), broken: schedule([place('a', 0, 10)]),
  },
  {
    rule: 'checkHolds', says: 'a held unit is away from the start of the first to the end of the last',
    problem: problem([...two, activity('c', 10, onBench)], { resources: [bench], holds: [{ id: 'h', resource: 'bench', amount: 1, from: 'a', to: 'b' }] }),
    sound: schedule([place('a', 0, 10), place('b', 50, 60), place('c', 60, 70)]), broken: schedule([place('a', 0, 10), place('b', 50, 60), place('c', 20, 30)]),
  },
  {
    rule: 'checkHolds', says: 'a hold whose end is left out lasts to the horizon',
    problem: problem([...two, activity('c', 10, onBench)], { resources: [bench], holds: [{ id: 'h', resource: 'bench', amount: 1, from: 'a', to: 'b' }] }),
    sound: schedule([place('a', 20, 30), place('c', 0, 10)], ['b']), broken: schedule([place('a', 20, 30), place('c', 900, 910)], ['b']),
  },
  {
    rule: 'checkBudgets', says: 'a budget is not overspent',
    problem: problem([activity('a', 10, onBench), activity('b', 10, onBench)], { resources: [bench], budgets: [{ id: 'day', resource: 'bench', within: { start: 0, end: 100 }, limit: 15 }] }),
    sound: schedule([place('a', 0, 10), place('b', 95, 105)]), broken: schedule([place('a', 0, 10), place('b', 94, 104)]),
  },
  {
    rule: 'checkDoses', says: 'nobody gets more of a dose than a day allows',
    problem: problem(twoShaking, { resources: twoPeople, budgets: [vibrationOf('ann', 30)] }),
    sound: schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 95, 105, { crew: ['ann'] })]),
    broken: schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 94, 104, { crew: ['ann'] })]),
  },
  {
    rule: 'checkDoses', says: 'a dose is counted for each person alone',
    problem: problem(twoShaking, { resources: twoPeople, budgets: [vibrationOf('ann', 20), vibrationOf('ben', 20)] }),
    sound: schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 0, 10, { crew: ['ben'] })]),
    broken: schedule([place('a', 0, 10, { crew: ['ann'] }), place('b', 20, 30, { crew: ['ann'] })]),
  },
  {
    rule: 'checkStates', says: 'a different state waits for the tail',
    problem: problem([activity('a', 10, { states: [{ medium: 'air', state: 'wet', tail: 30 }] }), activity('b', 10, { states: [{ medium: 'air', state: 'dusty', tail: 0 }] })]),
    sound: schedule([place('a', 0, 10), place('b', 40, 50)]), broken: schedule([place('a', 0, 10), place('b', 39, 49)]),
  },
  {
    rule: 'checkReleases', says: 'nothing starts before its release', problem: problem([activity('a', 10, { release: 5 })]),
    sound: schedule([place('a', 5, 15)]), broken: schedule([place('a', 4, 14)]),
  },
  {
    rule: 'checkLatestEnds', says: 'nothing ends after its latest end', problem: problem([activity('a', 10, { latestEnd: 20 })]),
    sound: schedule([place('a', 10, 20)]), broken: schedule([place('a', 11, 21)]),
  },
  {
    rule: 'checkPins', says: 'what is fixed stays', problem: problem([activity('a', 10, { pin: { start: 7 } })]),
    sound: schedule([place('a', 7, 17)]), broken: schedule([place('a', 8, 18)]),
  },
  {
    rule: 'checkHorizon', says: 'nothing ends after the horizon', problem: problem([activity('a', 10)], { horizon: 20 }),
    sound: schedule([place('a', 10, 20)]), broken: schedule([place('a', 11, 21)]),
  },
  {
    rule: 'checkScore', says: 'other people than before are a change, another order of them is none',
    problem: problem([activity('a', 10, { crew: [{ pool: ['ann', 'ben', 'cem'], count: 2 }], previousStart: 0, previousCrew: ['ben', 'ann'] })]),
    sound: schedule([place('a', 0, 10, { crew: ['ann', 'ben'] })]),
    broken: schedule([place('a', 0, 10, { crew: ['ann', 'cem'] })]),
  },
  {
    rule: 'checkScore', says: 'the score is what the dates give', problem: problem([activity('a', 10, { due: { at: 4, weight: 2 }, previousStart: 3 })]),
    sound: schedule([place('a', 0, 10)], [], { tardiness: 12, moved: 1 }),
    broken: schedule([place('a', 0, 10)], [], { tardiness: 11, moved: 1 }),
  },
  { rule: 'checkScore', says: 'a quota is met by work that ends in its minute', problem: ratedProblem(10, 10), sound: rated(0, 0), broken: rated(1, 0) },
  { rule: 'checkScore', says: 'a quota is missed by work that ends a minute later', problem: ratedProblem(9, 10), sound: rated(1, 0), broken: rated(0, 0) },
  { rule: 'checkScore', says: 'a heated span is paid for from the first minute of work in it', problem: ratedProblem(10, 9), sound: rated(0, 7), broken: rated(0, 0) },
];

describe('the checker, one rule at a time', () => {
  it.each(cases.map((row) => [row.says, row] as const))('%s', (_, row) => {
    expect(RULES[row.rule](row.problem, row.sound)).toEqual([]);
    expect(RULES[row.rule](row.problem, row.broken)).not.toEqual([]);
    expect(check(row.problem, row.broken).length).toBeGreaterThan(0);
  });

  it('has for every rule a schedule that breaks only it', () => {
    const alone = cases.filter(({ broken, problem: asked, rule }) => {
      const others = Object.entries(RULES).filter(([name]) => name !== rule && name !== 'checkScore');
      return others.every(([, other]) => other(asked, broken).length === 0);
    });
    expect([...new Set(alone.map((row) => row.rule))].toSorted()).toEqual(Object.keys(RULES).toSorted());
  });

  it('looks at every rule in these cases', () => {
    expect([...new Set(cases.map((row) => row.rule))].toSorted()).toEqual(Object.keys(RULES).toSorted());
  });

  it('names the activities and minutes in its message', () => {
    const [found] = RULES.checkElapsedLags(problem(two, { lags: [finishToStart('a', 'b', 5)] }), schedule([place('a', 0, 10), place('b', 14, 24)]));
    expect(found).toEqual({ rule: 'min-lag-elapsed', message: 'a>b: b comes at 14, not before 15 allowed.', activities: ['a', 'b'] });
  });
});
