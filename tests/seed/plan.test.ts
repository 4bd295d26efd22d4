import { describe, expect, it } from 'vitest';
import { addDays, instantOf } from '@/lib/calendar';
import { compilePlan } from '@/lib/plan';
import { afterWork, solve } from '@/lib/scheduling';
import { unwrap } from '@/lib/result';
import { demoSeries, DEMO_ZONE } from '@/seed/demo';

/** The demo's engine problem when it is loaded in the week of `monday`, so many days after it. */
function problemAt(monday: string, day: number) {
  const now = instantOf(addDays(monday, day), '09:00', DEMO_ZONE);
  return unwrap(compilePlan({ document: demoSeries(monday), now, previousBlocks: new Map() })).problem;
}

function planAt(monday: string, day: number) {
  const solution = unwrap(solve(problemAt(monday, day), { stop: afterWork(100), seed: 1 }));
  if (solution.status === 'infeasible' || solution.status === 'unknown') throw new Error(`No plan: ${JSON.stringify(solution)}`);
  return solution.schedule;
}

describe('a first plan of the demo', () => {
  it.each([['2026-11-23', 0], ['2026-11-23', 2], ['2026-11-23', 6], ['2027-02-01', 3], ['2026-06-01', 0], ['2027-12-13', 5]])(
    'finds a place for all work when it is loaded in the week of %s, day %i',
    (monday, day) => {
      expect(planAt(monday, day).unplaced.map((one) => one.activity)).toEqual([]);
    },
  );

  it('makes every shoot due date when it is loaded on the Monday of a week without holidays ahead', () => {
    expect(planAt('2027-02-01', 0).score).toMatchObject({ unplaced: 0, tardiness: 0 });
  });
});
