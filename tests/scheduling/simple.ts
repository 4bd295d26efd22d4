import type { Activity, Lag, LagLength, Placement, Problem, Schedule, Score, Solution } from '@/lib/scheduling';

/** An activity in one go without needs, unless told otherwise. */
export function activity(id: string, duration: number, more: Partial<Activity> = {}): Activity {
  return { id, duration, mode: 'one-go', demands: [], ...more };
}

/** `to` starts after the end of `from`. */
export function finishToStart(from: string, to: string, minutes = 0, max?: number): Lag {
  return lag(from, to, { kind: 'elapsed', minutes }, max);
}

export function lag(from: string, to: string, min: LagLength | undefined, max?: number): Lag {
  return {
    id: `${from}>${to}`,
    from: { activity: from, at: 'end' },
    to: { activity: to, at: 'start' },
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
  };
}

export function problem(activities: readonly Activity[], more: Partial<Problem> = {}): Problem {
  return { horizon: 1000, calendars: [], resources: [], lags: [], activities, ...more };
}

/** The schedule of a solution that has one. */
export function scheduleOf(solution: Solution): Schedule {
  if (solution.status === 'infeasible' || solution.status === 'unknown') throw new Error(`No schedule: ${JSON.stringify(solution)}`);
  return solution.schedule;
}

export function startOf(planned: Schedule, id: string): number | undefined {
  return planned.placements.find((placement) => placement.activity === id)?.start;
}

/** A placement with one piece and nobody, unless told otherwise. */
export function place(id: string, start: number, end: number, more: Partial<Placement> = {}): Placement {
  return { activity: id, start, end, pieces: start < end ? [{ start, end }] : [], crew: [], ...more };
}

/** A schedule whose score knows its dates alone, unless told otherwise: late, moved or paid for is nothing. */
export function schedule(placements: readonly Placement[], unplaced: readonly string[] = [], more: Partial<Score> = {}): Schedule {
  return {
    placements,
    unplaced: unplaced.map((id) => ({ activity: id, because: [], waitsFor: [] })),
    score: {
      unplaced: unplaced.length, tardiness: 0, shortages: 0, moved: 0, makespan: Math.max(0, ...placements.map((p) => p.end)), cost: 0,
      sumOfEnds: placements.reduce((sum, p) => sum + p.end, 0), ...more,
    },
  };
}
