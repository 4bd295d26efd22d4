import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, Standing, type Activity, type Placement, type Problem, type Schedule } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { FAR } from '@/lib/scheduling/calendar-index';
import { listPieces } from '@/lib/scheduling/describe';
import { endOf } from '@/lib/scheduling/timing';
import { problems } from './random-problem';

/** Every way to fill the crew of an activity. */
function listCrews({ crew = [] }: Activity): readonly (readonly string[])[] {
  const slots = crew.flatMap(({ count, pool }) => Array.from({ length: count }, () => pool));
  return slots.reduce<readonly (readonly string[])[]>((all, pool) => all.flatMap((chosen) => pool.map((id) => [...chosen, id])), [[]]);
}

/** The problem with the activity fixed there, and the schedule with it there. */
function move(problem: Problem, schedule: Schedule, placement: Placement): { readonly problem: Problem; readonly schedule: Schedule } {
  const { activity: id, start } = placement;
  const activities = problem.activities.map((activity) => (activity.id === id ? { ...activity, pin: { start } } : activity));
  return {
    problem: { ...problem, activities },
    schedule: { ...schedule, placements: [...schedule.placements.filter((other) => other.activity !== id), placement], unplaced: schedule.unplaced.filter((other) => other.activity !== id) },
  };
}

function breaks(problem: Problem, schedule: Schedule, placement: Placement): readonly string[] {
  const moved = move(problem, schedule, placement);
  return check(moved.problem, moved.schedule).map(({ rule }) => rule).filter((rule) => rule !== 'score');
}

const asked = fc.record({ problem: problems, which: fc.nat(8), start: fc.integer({ min: 0, max: 220 }) });

describe('a start chosen by hand', () => {
  it('fits exactly when the independent checker finds nothing broken, whoever does it', () => {
    const seen = { fits: 0, displaces: 0, impossible: 0 };
    fc.assert(fc.property(asked, ({ problem, start, which }) => {
      const schedule = planOrNull(problem);
      if (schedule === null) return;
      const activity = problem.activities[which % problem.activities.length]!;
      const trial = new Standing(problem, schedule).tryStart(activity.id, start);
      seen[trial.verdict] += 1;
      if (trial.placement !== null) {
        expect(breaks(problem, schedule, trial.placement)).toEqual([]);
        return;
      }
      if (trial.contradiction !== null) {
        const activities = problem.activities.map((other) => (other === activity ? { ...other, pin: { start } } : other));
        expect(unwrap(solve({ ...problem, activities }, { stop: afterWork(1), seed: 1 })).status).toBe('infeasible');
        return;
      }
      const { pin: _, ...free } = activity;
      const model = compile({ ...problem, activities: problem.activities.map((other) => (other === activity ? free : other)) });
      const end = endOf(model, which % problem.activities.length, start);
      if (end >= FAR) return;
      const pieces = listPieces(model, which % problem.activities.length, start, end);
      for (const crew of listCrews(activity)) expect(breaks(problem, schedule, { activity: activity.id, start, end, pieces, crew })).not.toEqual([]);
    }), { numRuns: 120 });
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(3);
  });

  it('gives a start that fits, and the first that does', () => {
    fc.assert(fc.property(asked, ({ problem, start, which }) => {
      const schedule = planOrNull(problem);
      if (schedule === null) return;
      const { id } = problem.activities[which % problem.activities.length]!;
      const standing = new Standing(problem, schedule);
      const isFitting = (at: number) => standing.tryStart(id, at).verdict === 'fits';
      const found = standing.earliest(id, start, start + 30);
      const fitting = Array.from({ length: 31 }, (_, k) => start + k).filter(isFitting);
      expect(found).toBe(fitting[0] ?? null);
    }), { numRuns: 12 });
  });

  it('settles work that was taken out so that the independent checker finds nothing broken', () => {
    let settled = 0;
    fc.assert(fc.property(fc.record({ problem: problems, which: fc.nat(8), next: fc.nat(8) }), ({ next, problem, which }) => {
      const schedule = planOrNull(problem);
      if (schedule === null) return;
      const out = [...new Set([which, next].map((k) => problem.activities[k % problem.activities.length]!.id))];
      const left = { ...schedule, placements: schedule.placements.filter(({ activity }) => !out.includes(activity)) };
      const standing = new Standing(problem, left);
      const placements = out.map((id, k) => standing.settle(id, out.slice(k + 1)));
      if (placements.some((placement) => placement === null)) return;
      settled += 1;
      const whole = { ...left, placements: [...left.placements, ...placements.filter((placement) => placement !== null)], unplaced: schedule.unplaced.filter(({ activity }) => !out.includes(activity)) };
      expect(check(problem, whole).filter(({ rule }) => rule !== 'score')).toEqual([]);
      for (const [k, id] of out.entries()) expect(standing.startOf(id)).toBe(placements[k]!.start);
    }), { numRuns: 150 });
    expect(settled).toBeGreaterThan(30);
  });
});

function planOrNull(problem: Problem): Schedule | null {
  const solution = solve(problem, { stop: afterWork(3), seed: 1 });
  return solution.ok && 'schedule' in solution.value ? solution.value.schedule : null;
}
