import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, type Problem, type Schedule } from '@/lib/scheduling';
import { activity, finishToStart, lag, place, problem, scheduleOf, startOf } from './simple';

const ann = { id: 'ann', capacity: 1 };
const ben = { id: 'ben', capacity: 1 };
const bench = { id: 'bench', capacity: 1 };
const byEither = { crew: [{ pool: ['ben', 'ann'], count: 1 }] };
const onBench = { demands: [{ resource: 'bench', amount: 1 }] };

/** A schedule that keeps every rule. */
function planned(input: Problem, work = 20): Schedule {
  const schedule = scheduleOf(unwrap(solve(input, { stop: afterWork(work), seed: 1 })));
  expect(check(input, schedule)).toEqual([]);
  return schedule;
}

function whyLeftOut(schedule: Schedule, id: string): readonly string[] {
  return (schedule.unplaced.find((row) => row.activity === id)?.because ?? []).map((fact) => [fact.kind, 'lag' in fact ? fact.lag : 'hold' in fact ? fact.hold : ''].join(' ').trim()).toSorted();
}

describe('people', () => {
  it('who are named for one fixed start are not taken by another that anybody may do', () => {
    const schedule = planned(problem([activity('any', 10, { ...byEither, pin: { start: 0 } }), activity('named', 10, { ...byEither, pin: { start: 0, crew: ['ben'] } })], { resources: [ann, ben] }));
    expect(schedule.placements.map(({ activity: id, crew, start }) => [id, start, ...crew])).toEqual([['any', 0, 'ann'], ['named', 0, 'ben']]);
  });

  it('of the accepted plan come back in the minute in which they are free', () => {
    const schedule = planned(problem([
      activity('before', 10, { crew: [{ pool: ['ann'], count: 1 }], pin: { start: 0 } }), activity('kept', 10, { ...byEither, previousStart: 10, previousCrew: ['ann'] }),
    ], { resources: [ann, ben] }));
    expect(schedule.placements[1]).toEqual(place('kept', 10, 20, { crew: ['ann'] }));
    expect(schedule.score.moved).toBe(0);
  });
});

describe('work of the accepted plan', () => {
  it('stays where it just ends in time', () => {
    const schedule = planned(problem([activity('a', 10, { previousStart: 50, latestEnd: 60 })]));
    expect([startOf(schedule, 'a'), schedule.score.moved]).toEqual([50, 0]);
  });

  it('stays where it just follows what it waits for', () => {
    const schedule = planned(problem([activity('b', 40), activity('a', 10, { previousStart: 50 })], { lags: [finishToStart('b', 'a', 10)] }));
    expect([startOf(schedule, 'a'), schedule.score.moved]).toEqual([50, 0]);
  });

  it('moves when it would begin a minute too early', () => {
    const schedule = planned(problem([activity('b', 40), activity('a', 10, { previousStart: 49 })], { lags: [finishToStart('b', 'a', 10)] }));
    expect([startOf(schedule, 'a'), schedule.score.moved]).toEqual([50, 1]);
  });
});

describe('what is left out', () => {
  it('is a fixed start in the first minute when the window it opens cannot be met, and what it opened for', () => {
    const schedule = planned(problem([activity('a', 10, { pin: { start: 0 } }), activity('b', 10, onBench), activity('busy', 200, { ...onBench, pin: { start: 0 } })], { resources: [bench], lags: [finishToStart('a', 'b', 0, 20)] }));
    expect(schedule.placements.map((row) => row.activity)).toEqual(['busy']);
    expect(whyLeftOut(schedule, 'a')).toContain('lag-max a>b');
  });

  it('is the beginning of a hold that could not go on to the end of all', () => {
    const schedule = planned(problem([activity('a', 10), activity('b', 5000), activity('late', 10, { ...onBench, pin: { start: 900 } })], {
      resources: [bench], lags: [finishToStart('a', 'b')], holds: [{ id: 'jig', resource: 'bench', amount: 1, from: 'a', to: 'b' }],
    }));
    expect(startOf(schedule, 'late')).toBe(900);
    expect(whyLeftOut(schedule, 'a')).toContain('hold jig');
  });

  it('names the wait that pushes it over the horizon, and no other', () => {
    const schedule = planned(problem([activity('a', 10), activity('b', 60), activity('c', 10)], { horizon: 100, lags: [finishToStart('b', 'a', 31), finishToStart('c', 'a', 5)] }));
    expect(whyLeftOut(schedule, 'a')).toEqual(['duration', 'horizon', 'lag-min b>a']);
  });

  it('does not blame a release in the first minute', () => {
    expect(whyLeftOut(planned(problem([activity('a', 101, { release: 0 })], { horizon: 100 })), 'a')).toEqual(['duration', 'horizon']);
    expect(whyLeftOut(planned(problem([activity('a', 100, { release: 1 })], { horizon: 100 })), 'a')).toEqual(['duration', 'horizon', 'release']);
  });

  it('does not keep the rest from being planned better', () => {
    const jobs = [3, 1, 4, 2, 5].map((size, i) => activity(`a${i}`, size * 7, { ...onBench, due: { at: 20 + 3 * i, weight: 1 + ((i * 2) % 5) } }));
    const alone = planned(problem(jobs, { resources: [bench] }), 200);
    const beside = planned(problem([...jobs, activity('endless', 5000)], { resources: [bench] }), 200);
    expect(beside.score).toMatchObject({ unplaced: 1, tardiness: alone.score.tardiness });
  });
});

const coats = (most: number, more: object = {}): Problem => problem([activity('first', 10), activity('second', 10, more)], { lags: [lag('first', 'second', { kind: 'elapsed', minutes: 20 }, most)] });

describe('a window', () => {
  it('may be as short as the wait in it', () => {
    const schedule = planned(coats(20));
    expect([startOf(schedule, 'first'), startOf(schedule, 'second')]).toEqual([0, 30]);
  });

  it('draws what opens it along when its other end has to be late', () => {
    const schedule = planned(coats(25, { release: 100 }));
    expect([startOf(schedule, 'first'), startOf(schedule, 'second')]).toEqual([65, 100]);
  });

  it('may be met in its last minute', () => {
    const schedule = planned(coats(25, { pin: { start: 35 } }));
    expect(startOf(schedule, 'first')).toBe(0);
  });
});
