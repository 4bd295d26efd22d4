import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterTime, afterWork, anyOf, atBound, check, solve, type Fact, type Problem, type Progress, type Schedule } from '@/lib/scheduling';
import { activity, finishToStart, lag, problem, scheduleOf, startOf } from './simple';

const DAY = 1440;
/** Four evenings from 18:00 to 21:00. */
const evenings = { id: 'evenings', intervals: [0, 1, 2, 3].map((day) => ({ start: day * DAY + 1080, end: day * DAY + 1260 })) };
const crew = [{ id: 'ann', capacity: 1 }, { id: 'ben', capacity: 1 }];
const inEvenings = { calendar: 'evenings' };

function plan(input: Problem, schedules = 60): Schedule {
  const schedule = scheduleOf(unwrap(solve(input, { stop: afterWork(schedules), seed: 1 })));
  expect(check(input, schedule)).toEqual([]);
  return schedule;
}

/** Work for Ann with a wished end. */
const dueBy = (at: number, weight: number) => ({ demands: [{ resource: 'ann', amount: 1 }], due: { at, weight } });

const stateWith = (makespan: number, tardiness: number) => ({ schedulesTried: 5, lowerBound: 10, best: { unplaced: 0, tardiness, shortages: 0, moved: 0, makespan, cost: 0, sumOfEnds: 0 } });

function factsOf(input: Problem): readonly Fact[] {
  const solution = unwrap(solve(input, { stop: afterWork(5), seed: 1 }));
  return solution.status === 'infeasible' ? solution.contradiction.facts : [];
}

describe('placing activities', () => {
  it('does work in one go in one session and waits for the next when the rest is too short', () => {
    const schedule = plan(problem([activity('a', 100, inEvenings), activity('b', 100, inEvenings)], { horizon: 4 * DAY, calendars: [evenings], lags: [finishToStart('a', 'b')] }));
    expect(startOf(schedule, 'a')).toBe(1080);
    expect(startOf(schedule, 'b')).toBe(DAY + 1080);
  });

  it('interrupts split work at the end of a session and goes on in the next', () => {
    const schedule = plan(problem([activity('a', 200, { ...inEvenings, mode: 'split' })], { horizon: 4 * DAY, calendars: [evenings] }));
    expect(schedule.placements[0]?.pieces).toEqual([{ start: 1080, end: 1260 }, { start: DAY + 1080, end: DAY + 1100 }]);
  });

  it('begins split work later rather than leave a scrap at the end of a session', () => {
    const busy = activity('busy', 170, { ...inEvenings, pin: { start: 1080 }, demands: [{ resource: 'ann', amount: 1 }] });
    const split = activity('a', 100, { ...inEvenings, mode: 'split', demands: [{ resource: 'ann', amount: 1 }] });
    const piecesOf = (more: object) => plan(problem([busy, { ...split, ...more }], { horizon: 4 * DAY, calendars: [evenings], resources: crew })).placements[1]?.pieces;
    expect(piecesOf({})).toEqual([{ start: 1250, end: 1260 }, { start: DAY + 1080, end: DAY + 1170 }]);
    expect(piecesOf({ shortestPiece: 30 })).toEqual([{ start: DAY + 1080, end: DAY + 1180 }]);
  });

  it('reads a cure that depends on when it starts from its table', () => {
    const schedule = plan(problem([activity('coat', 55), activity('sand', 10)], { lags: [lag('coat', 'sand', { kind: 'table', step: 30, ready: [100, 200, 300, 400] })] }));
    expect(startOf(schedule, 'sand')).toBe(300);
  });

  it('lays a coat later when the next one could not follow within its window', () => {
    // The second coat needs a free hour of the booth, which is taken from 50 to 500.
    const booth = { demands: [{ resource: 'booth', amount: 1 }] };
    const schedule = plan(problem([activity('coat 1', 20, booth), activity('coat 2', 60, booth), activity('other', 450, { ...booth, pin: { start: 50 } })], {
      resources: [{ id: 'booth', capacity: 1 }], lags: [finishToStart('coat 1', 'coat 2', 20, 60)],
    }));
    expect(startOf(schedule, 'coat 1')).toBe(500);
    expect(startOf(schedule, 'coat 2')).toBe(540);
  });

  it('leaves a coat out when the next one cannot follow before the window closes', () => {
    const schedule = plan(problem([activity('coat 1', 20, inEvenings), activity('coat 2', 20, { release: 4 * DAY + 1000 })], {
      horizon: 5 * DAY, calendars: [evenings], lags: [finishToStart('coat 1', 'coat 2', 0, 300)],
    }));
    expect(startOf(schedule, 'coat 1')).toBeUndefined();
    expect(schedule.unplaced.find((row) => row.activity === 'coat 1')?.because[0]).toEqual({ kind: 'lag-max', lag: 'coat 1>coat 2' });
  });

  it('keeps the same people through pauses and does not waste a scarce skill', () => {
    const schedule = plan(problem([
      activity('weld', 60, { crew: [{ pool: ['ann'], count: 1 }] }),
      activity('sweep', 60, { crew: [{ pool: ['ann', 'ben'], count: 1 }] }),
    ], { resources: crew }));
    expect(schedule.score.makespan).toBe(60);
    expect(schedule.placements.map((placement) => placement.crew)).toEqual([['ann'], ['ben']]);
  });

  it('keeps dust away from wet paint until it is dry', () => {
    const schedule = plan(problem([
      activity('paint', 30, { states: [{ medium: 'air', state: 'wet', tail: 240 }] }),
      activity('grind', 30, { states: [{ medium: 'air', state: 'dusty', tail: 60 }] }),
    ]));
    expect(schedule.score.makespan).toBe(120);
    expect(startOf(schedule, 'paint')).toBe(90);
  });

  it('keeps a part away from drop-off to collection', () => {
    const schedule = plan(problem([
      activity('drop off', 10), activity('collect', 10), activity('fit', 20, { demands: [{ resource: 'frame', amount: 1 }] }),
    ], {
      resources: [{ id: 'frame', capacity: 1 }],
      lags: [finishToStart('drop off', 'collect', 200)],
      holds: [{ id: 'away', resource: 'frame', amount: 1, from: 'drop off', to: 'collect' }],
    }));
    expect(startOf(schedule, 'fit')).toBe(0);
    expect(startOf(schedule, 'drop off')).toBe(20);
  });

  it('keeps to a budget by moving work to the next day', () => {
    const grinding = { demands: [{ resource: 'ann', amount: 1 }] };
    const schedule = plan(problem([activity('a', 100, { ...inEvenings, ...grinding }), activity('b', 60, { ...inEvenings, ...grinding })], {
      horizon: 4 * DAY, calendars: [evenings], resources: crew,
      budgets: [{ id: 'vibration', resource: 'ann', within: { start: 0, end: DAY }, limit: 120 }],
    }));
    expect(schedule.placements.map((placement) => Math.floor(placement.start / DAY)).toSorted()).toEqual([0, 1]);
  });

  describe('the objective', () => {
    const one = { demands: [{ resource: 'ann', amount: 1 }] };

    it('keeps the accepted place when changes outweigh the finish, and gives it up when the finish outweighs them', () => {
      const input = problem([activity('a', 10, { ...one, previousStart: 40 })], { resources: crew });
      expect(startOf(plan(input), 'a')).toBe(40);
      expect(startOf(plan({ ...input, objective: ['tardiness', 'shortages', 'makespan', 'moved', 'cost'] }), 'a')).toBe(0);
    });

    it('has enough finished by the moment a quota is looked at, at the price of a later finish of other work', () => {
      const input = problem([activity('long', 50, one), activity('first', 10, one), activity('second', 10, one)], { resources: crew, lags: [finishToStart('long', 'tail')].slice(1) });
      const quotas = [{ id: 'week', at: 20, least: 2, among: ['first', 'second'] }];
      const met = plan({ ...input, quotas });
      expect([met.score.shortages, startOf(met, 'long')]).toEqual([0, 20]);
      expect(plan({ ...input, quotas: [{ ...quotas[0]!, at: 19 }] }).score.shortages).toBe(1);
    });

    it('works in the session that is heated already, where that costs nothing else', () => {
      const heated = { id: 'heated', intervals: [{ start: 0, end: 30 }, { start: 100, end: 160 }] };
      const upkeep = { resources: ['ann'], spans: [{ within: { start: 0, end: 30 }, cost: 4 }, { within: { start: 100, end: 160 }, cost: 9 }] };
      const input = problem([activity('short', 20, { ...one, calendar: 'heated' }), activity('long', 40, { ...one, calendar: 'heated' })], { resources: crew, calendars: [heated], upkeep });
      expect(plan(input).score).toMatchObject({ makespan: 140, cost: 13 });
      expect(plan({ ...input, objective: ['cost', 'tardiness', 'shortages', 'moved', 'makespan'] }).score).toMatchObject({ makespan: 160, cost: 9 });
    });
  });

  it('plans around what a person fixed', () => {
    const one = { demands: [{ resource: 'ann', amount: 1 }] };
    const schedule = plan(problem([activity('fixed', 50, { ...one, pin: { start: 20 } }), activity('free', 30, one)], { resources: crew }));
    expect(startOf(schedule, 'free')).toBe(70);
  });

  it('leaves out what does not fit before the horizon, and what waits for it, with the reasons', () => {
    const schedule = plan(problem([activity('a', 60, { demands: [{ resource: 'ann', amount: 1 }] }), activity('b', 60, { demands: [{ resource: 'ann', amount: 1 }] }), activity('c', 5)], {
      horizon: 100, resources: crew, lags: [finishToStart('a', 'c'), finishToStart('b', 'c')],
    }));
    expect(schedule.score.unplaced).toBe(2);
    const [late, waiting] = schedule.unplaced;
    expect(late?.because[0]).toMatchObject({ kind: 'resource', resource: 'ann', blockers: [schedule.placements[0]?.activity] });
    expect(late?.because.at(-1)).toEqual({ kind: 'horizon' });
    expect(waiting).toMatchObject({ activity: 'c', waitsFor: [late?.activity] });
  });

  it('keeps the accepted plan where nothing asks for a change', () => {
    const one = { demands: [{ resource: 'ann', amount: 1 }] };
    const schedule = plan(problem([
      activity('a', 30, { ...one, previousStart: 100 }), activity('b', 30, { ...one, previousStart: 40 }), activity('new', 30, one),
    ], { resources: crew }));
    expect(schedule.score.moved).toBe(0);
    expect(startOf(schedule, 'new')).toBe(0);
  });

  it('keeps the people of the accepted plan, and takes others where one of them is busy', () => {
    const pair = { crew: [{ pool: ['ann', 'ben', 'cem'], count: 1 }] };
    const people = ['ann', 'ben', 'cem'].map((id) => ({ id, capacity: 1 }));
    const before = [activity('a', 30, { ...pair, previousStart: 0, previousCrew: ['cem'] }), activity('b', 30, { ...pair, previousStart: 0, previousCrew: ['ben'] })];
    const kept = plan(problem(before, { resources: people }));
    expect(kept.placements.map((placement) => placement.crew)).toEqual([['cem'], ['ben']]);
    expect(kept.score.moved).toBe(0);
    const away = plan(problem(before, { resources: people.map((person) => (person.id === 'cem' ? { ...person, capacity: 0 } : person)) }));
    expect(away.score.moved).toBe(1);
    expect(startOf(away, 'a')).toBe(0);
  });

  it('puts the episode that is due first, by weight', () => {
    const schedule = plan(problem([activity('a', 50, dueBy(50, 1)), activity('b', 50, dueBy(50, 3))], { resources: crew }));
    expect(schedule.score.tardiness).toBe(50);
    expect(startOf(schedule, 'b')).toBe(0);
  });
});

describe('contradictions', () => {
  it('names a circle of lags and nothing else', () => {
    const found = factsOf(problem([activity('a', 5), activity('b', 5), activity('c', 5), activity('d', 5)], {
      lags: [finishToStart('a', 'b'), finishToStart('b', 'c'), finishToStart('c', 'b'), finishToStart('c', 'd')],
    }));
    expect(found.flatMap((fact) => (fact.kind === 'lag-min' ? [fact.lag] : [])).toSorted()).toEqual(['b>c', 'c>b']);
    expect(found.some((fact) => 'activity' in fact && (fact.activity === 'a' || fact.activity === 'd'))).toBe(false);
  });

  it('names the cure, the fixed start and the latest end that cannot hold together', () => {
    const found = factsOf(problem([activity('coat', 30, { pin: { start: 100 } }), activity('fit', 30, { latestEnd: 200 })], { lags: [finishToStart('coat', 'fit', 120)] }));
    expect(found.map((fact) => fact.kind).toSorted()).toEqual(['lag-min', 'latest-end', 'pin']);
  });

  it('names two fixed starts that need the same person', () => {
    const one = { demands: [{ resource: 'ann', amount: 1 }] };
    const found = factsOf(problem([activity('a', 30, { ...one, pin: { start: 0 } }), activity('b', 30, { ...one, pin: { start: 20 } }), activity('c', 30, { ...one, pin: { start: 90 } })], { resources: crew }));
    expect(found.flatMap((fact) => (fact.kind === 'pin' ? [fact.activity] : []))).toEqual(['a', 'b']);
    expect(found.at(-1)).toMatchObject({ kind: 'resource', resource: 'ann', blockers: ['a'] });
  });

  it('takes a lag window that no session meets as not fitting, never as a hang', () => {
    const schedule = plan(problem([activity('coat', 30, inEvenings), activity('next', 30, inEvenings)], {
      horizon: 4 * DAY, calendars: [evenings], lags: [finishToStart('coat', 'next', 300, 400)],
    }));
    expect(schedule.score.unplaced).toBe(2);
  });
});

describe('stopping', () => {
  const one = { demands: [{ resource: 'ann', amount: 1 }] };
  const hard = problem(Array.from({ length: 12 }, (_, i) => activity(`a${i}`, 10 + i, { ...one, due: { at: 40, weight: 1 + (i % 3) } })), { resources: crew });

  it('honours the work allowed', () => {
    const solution = unwrap(solve(hard, { stop: afterWork(37), seed: 1 }));
    expect(solution).toMatchObject({ status: 'feasible', schedulesTried: 37 });
  });

  it('honours the time allowed by a clock given to it', () => {
    let now = 0;
    const solution = unwrap(solve(hard, { stop: afterTime(() => (now += 10), 500), seed: 1 }));
    // Each look takes ten of the 500; the first one takes two.
    expect(solution).toMatchObject({ schedulesTried: 50 });
  });

  it('stops at once when asked to, with a schedule', () => {
    const solution = unwrap(solve(hard, { stop: afterWork(100_000), seed: 1, signal: { aborted: true } }));
    expect(solution).toMatchObject({ schedulesTried: 1 });
    expect(check(hard, scheduleOf(solution))).toEqual([]);
  });

  it('stops at the bound, or at whichever rule comes first', () => {
    expect(atBound().share(stateWith(10, 0))).toBe(1);
    expect(atBound().share(stateWith(11, 0))).toBe(0);
    expect(atBound().share(stateWith(10, 1))).toBe(0);
    expect([atBound(0.1).share(stateWith(11, 0)), atBound(0.1).share(stateWith(12, 0))]).toEqual([1, 0]);
    expect(anyOf(afterWork(10), atBound()).share(stateWith(11, 0))).toBe(0.5);
    expect(anyOf(afterWork(10), atBound()).share(stateWith(10, 0))).toBe(1);
    expect(anyOf(afterWork(5), atBound()).share(stateWith(11, 0))).toBe(1);
  });

  it('tells its progress: the best never gets worse, the share never falls', () => {
    const told: Progress[] = [];
    solve(hard, { stop: afterWork(400), seed: 2, onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(10);
    for (const [k, progress] of told.entries()) {
      const before = told[k - 1];
      if (before === undefined) continue;
      expect(progress.share).toBeGreaterThanOrEqual(before.share);
      expect(progress.best?.tardiness ?? 0).toBeLessThanOrEqual(before.best?.tardiness ?? 0);
    }
  });

  it('finds the optimum of weighted lateness on one person, which trying all orders gives', () => {
    const small = problem([3, 1, 4, 2, 5].map((size, i) => activity(`a${i}`, size * 7, { ...one, due: { at: 20 + 3 * i, weight: 1 + ((i * 2) % 5) } })), { resources: crew });
    const orders = (rest: readonly number[], at: number): number => Math.min(...(rest.length === 0 ? [0] : rest.map((i) => {
      const { due, duration } = small.activities[i]!;
      return due!.weight * Math.max(0, at + duration - due!.at) + orders(rest.filter((other) => other !== i), at + duration);
    })));
    expect(plan(small, 400).score.tardiness).toBe(orders([0, 1, 2, 3, 4], 0));
  });
});

describe('a cycle of lags that pushes itself past the horizon', () => {
  const lags: Problem['lags'] = [
    { id: 'long wait', from: { activity: 'a', at: 'start' }, to: { activity: 'b', at: 'start' }, min: { kind: 'working', minutes: 26, calendar: 'short' } },
    { id: 'window', from: { activity: 'a', at: 'start' }, to: { activity: 'b', at: 'end' }, min: { kind: 'working', minutes: 16, calendar: 'short' }, max: 30 },
  ];
  const pushing: Problem = {
    horizon: 150,
    calendars: [{ id: 'short', intervals: [{ start: 0, end: 15 }] }],
    resources: [],
    activities: [{ id: 'a', duration: 0, mode: 'one-go', demands: [] }, { id: 'b', duration: 5, mode: 'one-go', demands: [] }],
    lags,
  };

  it.each([['as stated', lags], ['the other way round', lags.toReversed()]])('is a contradiction with its lags %s', (_, stated) => {
    const solution = unwrap(solve({ ...pushing, lags: stated }, { stop: afterWork(2), seed: 1 }));
    if (solution.status !== 'infeasible') throw new Error(`It was ${solution.status}.`);
    const kinds = solution.contradiction.facts.map((fact) => ('lag' in fact ? `${fact.kind} ${fact.lag}` : fact.kind)).toSorted();
    expect(kinds).toEqual(['duration', 'lag-max window', 'lag-min long wait']);
  });
});
