import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterWork, check, Replay, solve, type Interval, type LagLength, type Problem, type Schedule } from '@/lib/scheduling';
import { problems } from './random-problem';

/** Nobody looks ahead in a replay, so it keeps neither pins nor maximum lags nor wished dates; the rest of the contract holds. */
function withoutForesight(problem: Problem): Problem {
  return {
    ...problem,
    activities: problem.activities.map(({ due: _due, pin: _pin, previousStart: _previous, ...activity }) => activity),
    lags: problem.lags.map(({ max: _max, ...lag }) => lag).filter((lag) => lag.min !== undefined),
  };
}

/** The shortest piece follows from the length in the problem, so it is left aside where lengths change. */
function withoutShortest(problem: Problem): Problem {
  return { ...problem, activities: problem.activities.map(({ shortestPiece: _shortest, ...activity }) => activity) };
}

function piecesOf(problem: Problem, id: string, start: number, end: number): Interval[] {
  const activity = problem.activities.find((one) => one.id === id)!;
  if (activity.duration === 0) return [];
  const calendar = problem.calendars.find((one) => one.id === activity.calendar);
  if (calendar === undefined || activity.mode === 'one-go') return [{ start, end }];
  const intervals = calendar.intervals.filter((interval) => interval.end - interval.start >= Math.min(activity.shortestPiece ?? 0, activity.duration));
  return intervals.filter((interval) => interval.end > start && interval.start < end).map((interval) => ({ start: Math.max(start, interval.start), end: Math.min(end, interval.end) }));
}

function scheduleOf(problem: Problem, replay: Replay, planned: Schedule): Schedule {
  const crew = new Map(planned.placements.map((placement) => [placement.activity, placement.crew]));
  const first = (id: string) => problem.activities.find((one) => one.id === id)!.crew?.flatMap((need) => need.pool.slice(0, need.count)) ?? [];
  const placed = problem.activities.map((activity, i) => ({ activity, i })).filter(({ i }) => replay.isPlaced[i] === 1);
  const placements = placed.map(({ activity, i }) => ({
    activity: activity.id, start: replay.start[i]!, end: replay.end[i]!, pieces: piecesOf(problem, activity.id, replay.start[i]!, replay.end[i]!), crew: crew.get(activity.id) ?? first(activity.id),
  }));
  const known = new Set(placements.map((placement) => placement.activity));
  return {
    placements,
    unplaced: problem.activities.filter((activity) => !known.has(activity.id)).map((activity) => ({ activity: activity.id, because: [], waitsFor: [] })),
    score: planned.score,
  };
}

const seen = (problem: Problem, schedule: Schedule) => check(problem, schedule).filter(({ rule }) => rule !== 'score').map(({ message, rule }) => `${rule}: ${message}`);

const more = (minutes: number, perMille: number): number => Math.round((minutes * perMille) / 1000);

const stretched = (length: LagLength, perMille: number): LagLength => (length.kind === 'table'
  ? { ...length, ready: [...length.ready].map((ready, k) => k * length.step + more(ready - k * length.step, perMille)) }
  : { ...length, minutes: more(length.minutes, perMille) });

/** The first state of each activity lasts so long at least. */
const withUntil = (problem: Problem, lasts: number): Problem => ({
  ...problem,
  activities: problem.activities.map(({ states, ...activity }) => ({
    ...activity,
    ...(states === undefined ? {} : { states: states.map((state, k) => (k > 0 ? state : { ...state, until: { step: 7, ready: Array.from({ length: 20 }, (_, at) => at * 7 + lasts) } })) }),
  })),
});

describe('a replay', () => {
  it('keeps every rule that needs no foresight, as the independent checker sees it', () => {
    fc.assert(fc.property(problems.map(withoutForesight), fc.nat({ max: 3 }), (problem, blockable) => {
      const solution = solve(problem, { stop: afterWork(5), seed: 1 });
      fc.pre(solution.ok && 'schedule' in solution.value);
      if (!solution.ok || !('schedule' in solution.value)) return;
      // What nobody takes from outside may be left without a look.
      const replay = new Replay(problem, solution.value.schedule.placements, problem.resources.slice(0, blockable).map(({ id }) => id));
      replay.run();
      expect(seen(problem, scheduleOf(problem, replay, solution.value.schedule))).toEqual([]);
    }), { numRuns: 150, seed: 11 });
  });

  it('keeps them under other lengths', () => {
    fc.assert(fc.property(problems.map(withoutForesight).map(withoutShortest), fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 9, maxLength: 9 }), (problem, lengths) => {
      const solution = solve(problem, { stop: afterWork(5), seed: 1 });
      fc.pre(solution.ok && 'schedule' in solution.value);
      if (!solution.ok || !('schedule' in solution.value)) return;
      const replay = new Replay(problem, solution.value.schedule.placements);
      problem.activities.forEach((_, i) => {
        replay.duration[i] = lengths[i]!;
      });
      const longer: Problem = { ...problem, activities: problem.activities.map((activity, i) => ({ ...activity, duration: lengths[i]! })) };
      replay.run();
      expect(seen(longer, scheduleOf(longer, replay, solution.value.schedule))).toEqual([]);
    }), { numRuns: 150, seed: 12 });
  });

  it('stretches waits and states as if the problem had them so', () => {
    fc.assert(fc.property(problems.map(withoutForesight), fc.integer({ min: 1000, max: 2500 }), fc.integer({ min: 0, max: 60 }), (plain, perMille, lasts) => {
      const problem = withUntil({ ...plain, lags: plain.lags.filter(({ min }) => min?.kind === 'table' || (min?.minutes ?? 0) >= 0) }, lasts);
      const replay = new Replay(problem, []);
      problem.lags.forEach((_, lag) => replay.stretchLag(lag, perMille));
      problem.activities.forEach((_, activity) => replay.stretchStates(activity, perMille));
      replay.run();
      const other: Problem = {
        ...problem,
        lags: problem.lags.map((lag) => (lag.min === undefined ? lag : { ...lag, min: stretched(lag.min, perMille) })),
        activities: problem.activities.map(({ states, ...activity }) => ({
          ...activity,
          ...(states === undefined ? {} : { states: states.map((state) => ({
            ...state, tail: more(state.tail, perMille),
            ...(state.until === undefined ? {} : { until: { step: 7, ready: [...state.until.ready].map((ready, k) => k * 7 + more(ready - k * 7, perMille)) } }),
          })) }),
        })),
      };
      const whole = new Replay(other, []);
      whole.run();
      expect([...replay.start]).toEqual([...whole.start]);
      replay.reset();
      replay.run();
      const again = new Replay(problem, []);
      again.run();
      expect([...replay.start]).toEqual([...again.start]);
    }), { numRuns: 150, seed: 14 });
  });

  it('gives the same dates again after other runs', () => {
    fc.assert(fc.property(problems.map(withoutForesight), (problem) => {
      const replay = new Replay(problem, []);
      replay.run();
      const first = [...replay.start];
      replay.duration.fill(3);
      replay.block(0, 0, 50);
      replay.run();
      replay.reset();
      replay.run();
      expect([...replay.start]).toEqual(first);
    }), { numRuns: 50, seed: 13 });
  });
});
