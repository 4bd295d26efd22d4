import type { Activity, Lag, LagLength, Problem, Schedule, Solution } from '@/lib/scheduling';

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

export function startOf(schedule: Schedule, id: string): number | undefined {
  return schedule.placements.find((placement) => placement.activity === id)?.start;
}
