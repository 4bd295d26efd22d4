import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterWork, check, repair, solve, type Problem, type Schedule } from '@/lib/scheduling';
import { problems } from './random-problem';

/** The problem with a schedule of it as the one before. */
function following(problem: Problem, schedule: Schedule): Problem {
  const placed = new Map(schedule.placements.map((placement) => [placement.activity, placement]));
  return {
    ...problem,
    activities: problem.activities.map((activity) => {
      const { previousCrew: _crew, previousStart: _start, ...rest } = activity;
      const before = placed.get(activity.id);
      return before === undefined ? rest : { ...rest, previousStart: before.start, previousCrew: before.crew };
    }),
  };
}

describe('a repair', () => {
  it('keeps every rule, as the independent checker sees it, and leaves no more out than the schedule before', () => {
    fc.assert(fc.property(problems, (problem) => {
      const solution = solve(problem, { stop: afterWork(3), seed: 1 });
      fc.pre(solution.ok && 'schedule' in solution.value);
      if (!solution.ok || !('schedule' in solution.value)) return;
      const next = following(problem, solution.value.schedule);
      const mended = repair(next, 10);
      if (!('schedule' in mended)) throw new Error('A problem with a schedule was told to have none.');
      expect(check(next, mended.schedule).map(({ message }) => message)).toEqual([]);
      expect(mended.schedule.score.unplaced).toBeLessThanOrEqual(solution.value.schedule.score.unplaced);
    }), { numRuns: 60, seed: 21 });
  });
});
