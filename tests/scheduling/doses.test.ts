/** What work does to a person, day by day: nobody is chosen for more than their own limit. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, explainPlacement, repair, Replay, solve, Standing, type Activity, type Budget, type Problem, type Schedule } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { lowerToCore } from '@/lib/scheduling/exact/lower';
import { validate } from '@/lib/scheduling/validate';
import { activity, problem, scheduleOf, startOf } from './simple';

const DAY = 1440;
const PEOPLE = [{ id: 'ann', capacity: 1 }, { id: 'ben', capacity: 1 }];
/** Two days of eight hours. */
const DAYS = { id: 'days', intervals: [{ start: 0, end: 480 }, { start: DAY, end: DAY + 480 }] };

const shaking = (id: string, duration: number, pool: readonly string[], more: Partial<Activity> = {}): Activity =>
  activity(id, duration, { calendar: 'days', crew: [{ pool, count: 1 }], doses: [{ kind: 'vibration', perMinute: 2 }], ...more });

const limits = (limit: number, ids: readonly string[] = ['ann', 'ben']): readonly Budget[] =>
  ids.flatMap((id) => [0, 1].map((day) => ({ id: `${id} ${day}`, resource: id, dose: 'vibration', within: { start: day * DAY, end: (day + 1) * DAY }, limit })));

const noise = (id: string, limit: number): Budget => ({ id: `noise ${id}`, resource: id, dose: 'noise', within: { start: 0, end: DAY }, limit });

const ofDays = (activities: readonly Activity[], budgets: readonly Budget[]): Problem => problem(activities, { horizon: 2 * DAY, calendars: [DAYS], resources: PEOPLE, budgets });

function plan(input: Problem): Schedule {
  const schedule = scheduleOf(unwrap(solve(input, { stop: afterWork(20), seed: 1 })));
  expect(check(input, schedule)).toEqual([]);
  return schedule;
}

const crewOf = (schedule: Schedule, id: string) => schedule.placements.find((placement) => placement.activity === id)?.crew;

describe('a person without room left in a limit', () => {
  it('is not chosen: another who may do it is', () => {
    const schedule = plan(ofDays([shaking('first', 60, ['ann']), shaking('second', 60, ['ann', 'ben'])], limits(120)));
    expect(crewOf(schedule, 'second')).toEqual(['ben']);
    expect(schedule.score.makespan).toBe(60);
  });

  it('waits for the next day where nobody else may do it, and one minute of room is enough to share a day', () => {
    const alone = [shaking('first', 60, ['ann']), shaking('second', 60, ['ann'])];
    expect(plan(ofDays(alone, limits(239))).score.makespan).toBe(DAY + 60);
    expect(plan(ofDays(alone, limits(240))).score.makespan).toBe(120);
  });

  it('still does work that gives no such dose', () => {
    const schedule = plan(ofDays([shaking('first', 60, ['ann']), activity('quiet', 60, { calendar: 'days', crew: [{ pool: ['ann'], count: 1 }] })], limits(120)));
    expect(schedule.score.makespan).toBe(120);
  });

  it('starts work that pauses late enough to leave the rest for the next day', () => {
    const schedule = plan(ofDays([shaking('long', 100, ['ann'], { mode: 'split', shortestPiece: 30 })], limits(120)));
    expect(schedule.placements[0]?.pieces).toEqual([{ start: 420, end: 480 }, { start: DAY, end: DAY + 40 }]);
  });

  it('leaves out what is too much for anybody in one go, and names the limit', () => {
    const schedule = plan(ofDays([shaking('long', 100, ['ann'])], limits(199)));
    expect(schedule.unplaced).toHaveLength(1);
    expect(schedule.unplaced[0]?.because[0]).toEqual({ kind: 'budget', budget: 'ann 0', activity: 'long' });
  });

  it('counts a dose for everybody on the work, each on an own account, and several doses side by side', () => {
    const both = shaking('both', 60, [], { crew: [{ pool: ['ann', 'ben'], count: 2 }], doses: [{ kind: 'vibration', perMinute: 1 }, { kind: 'noise', perMinute: 5 }, { kind: 'vibration', perMinute: 1 }] });
    const after = shaking('after', 30, ['ann', 'ben'], { doses: [{ kind: 'noise', perMinute: 5 }] });
    const schedule = plan(ofDays([both, after], [...limits(120), noise('ann', 449), noise('ben', 450)]));
    expect(crewOf(schedule, 'after')).toEqual(['ben']);
    expect(plan(ofDays([both, after], limits(119))).unplaced).toHaveLength(1);
  });
});

describe('an answer about a limit', () => {
  const input = ofDays([shaking('first', 60, ['ann']), shaking('second', 60, ['ann'])], limits(120));

  it('tells why work waits', () => {
    const schedule = plan(input);
    const late = startOf(schedule, 'first') === 0 ? 'second' : 'first';
    expect(explainPlacement(input, schedule, late)[0]).toEqual({ fact: { kind: 'budget', budget: 'ann 0', activity: late }, until: DAY, activities: [] });
  });

  it('tells what has to give way to a start chosen by hand, and that nothing has to after it', () => {
    const schedule = plan(input);
    const [early, late] = startOf(schedule, 'first') === 0 ? ['first', 'second'] : ['second', 'first'];
    const standing = new Standing(input, schedule);
    expect(standing.tryStart(late, 200)).toMatchObject({ verdict: 'displaces', clashes: [{ fact: { kind: 'budget', budget: 'ann 0' }, activities: [early] }] });
    expect(standing.tryStart(late, DAY + 100).verdict).toBe('fits');
  });

  it('is given by the search for series, not by the exact core, which knows no people', () => {
    expect(lowerToCore(compile(input))).toBeNull();
  });

  it('is refused for a dose that is no whole number from 0', () => {
    const wrong = validate(ofDays([shaking('a', 10, ['ann'], { doses: [{ kind: 'vibration', perMinute: -1 }] })], limits(10)));
    expect(wrong.ok ? [] : wrong.error.map(({ code }) => code)).toEqual(['bad-dose']);
  });

  it('is kept when dates are rebuilt with longer work', () => {
    const replay = new Replay(input, plan(input).placements);
    replay.run();
    expect([...replay.end].toSorted((a, b) => a - b)).toEqual([60, DAY + 60]);
    const wide = ofDays(input.activities, limits(240));
    const other = new Replay(wide, plan(wide).placements);
    other.run();
    expect([...other.end].toSorted((a, b) => a - b)).toEqual([60, 120]);
    other.duration.fill(61);
    other.run();
    expect([...other.end].toSorted((a, b) => a - b)).toEqual([61, DAY + 61]);
  });
});

describe('limits of one person and day', () => {
  const works = fc.array(fc.record({ duration: fc.integer({ min: 1, max: 120 }), perMinute: fc.integer({ min: 0, max: 5 }), isSplit: fc.boolean(), count: fc.integer({ min: 1, max: 2 }) }), { minLength: 1, maxLength: 8 });

  it('are passed by no schedule', () => {
    fc.assert(fc.property(works, fc.integer({ min: 0, max: 500 }), (rows, limit) => {
      const input = ofDays(rows.map(({ count, duration, isSplit, perMinute }, k) => activity(`w${k}`, duration, {
        calendar: 'days', mode: isSplit ? 'split' : 'one-go', crew: [{ pool: ['ann', 'ben'], count }], doses: [{ kind: 'vibration', perMinute }],
      })), limits(limit));
      const schedule = plan(input);
      const near = scheduleOf(repair({ ...input, activities: input.activities.map((one) => ({ ...one, previousStart: 0 })) }));
      expect(check(input, near).filter(({ rule }) => rule === 'dose')).toEqual([]);
      for (const person of ['ann', 'ben']) {
        for (const day of [0, 1]) {
          const own = schedule.placements.filter(({ crew }) => crew.includes(person));
          const taken = own.flatMap(({ activity: id, pieces }) => pieces.filter(({ start }) => Math.floor(start / DAY) === day)
            .map(({ end, start }) => (end - start) * rows[Number(id.slice(1))]!.perMinute));
          expect(taken.reduce((sum, dose) => sum + dose, 0)).toBeLessThanOrEqual(limit);
        }
      }
    }), { numRuns: 150 });
  });

  it('let two people do in a day what one may not', () => {
    fc.assert(fc.property(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 1, max: 5 }), (duration, perMinute) => {
      const work = ['a', 'b'].map((id) => shaking(id, duration, ['ann', 'ben'], { doses: [{ kind: 'vibration', perMinute }] }));
      const limit = 2 * duration * perMinute - 1;
      expect(plan(ofDays(work, limits(limit))).score.makespan).toBeLessThan(DAY);
      const one = work.map((each) => ({ ...each, crew: [{ pool: ['ann'], count: 1 }] }));
      expect(plan(ofDays(one, limits(limit))).score.makespan).toBeGreaterThan(DAY);
    }), { numRuns: 40 });
  });
});
