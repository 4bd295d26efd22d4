import { describe, expect, it } from 'vitest';
import { afterWork, check, solve, type Problem } from '@/lib/scheduling';
import { unwrap } from '@/lib/result';

/** Paint laid by minute 100 is dry at 400, later paint 50 minutes after it was laid. */
const until = { step: 100, ready: [300, 400, 400, 400, 450, 550, 650, 750, 850, 950, 1050] };
const problem: Problem = {
  horizon: 1000, calendars: [], resources: [], lags: [],
  activities: [
    { id: 'paint', duration: 10, mode: 'one-go', demands: [], pin: { start: 60 }, states: [{ medium: 'air', state: 'wet', tail: 0, until }] },
    { id: 'grind', duration: 10, mode: 'one-go', demands: [], release: 60, states: [{ medium: 'air', state: 'dusty', tail: 0 }] },
  ],
};

describe('a state that lasts to a table', () => {
  it('keeps another state out until the minute of the table', () => {
    const solution = unwrap(solve(problem, { stop: afterWork(5), seed: 1 }));
    if (!('schedule' in solution)) throw new Error('No schedule');
    expect(solution.schedule.placements.find(({ activity }) => activity === 'grind')?.start).toBe(400);
    expect(check(problem, solution.schedule)).toEqual([]);
  });

  it('is missed by no schedule that the checker passes', () => {
    const solution = unwrap(solve(problem, { stop: afterWork(5), seed: 1 }));
    if (!('schedule' in solution)) throw new Error('No schedule');
    const early = { ...solution.schedule, placements: solution.schedule.placements.map((placement) => (placement.activity === 'grind' ? { ...placement, start: 399, end: 409, pieces: [{ start: 399, end: 409 }] } : placement)) };
    expect(check(problem, early).map(({ rule }) => rule)).toContain('state');
  });

  it('is refused when a later end would be over earlier', () => {
    const [paint, grind] = problem.activities;
    const wrong = { ...problem, activities: [{ ...paint!, states: [{ medium: 'air', state: 'wet', tail: 0, until: { step: 100, ready: [300, 200] } }] }, grind!] };
    const result = solve(wrong, { stop: afterWork(5), seed: 1 });
    expect(result.ok ? [] : result.error.map(({ code }) => code)).toContain('table-not-fifo');
  });
});
