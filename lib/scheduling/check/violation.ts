import type { Activity, Calendar, Interval, Placement, Problem, Resource, Schedule } from '../problem';

/** A rule that a schedule breaks. */
export interface Violation {
  /** Name of the rule, kebab-case. */
  readonly rule: string;
  readonly message: string;
  readonly activities: readonly string[];
}

/** One rule: what it finds wrong in a schedule of a problem. */
export type Rule = (problem: Problem, schedule: Schedule) => readonly Violation[];

/** An activity with the place it got. */
export interface Dated {
  readonly activity: Activity;
  readonly placement: Placement;
}

/** Placed activities of the problem, in its order; the first placement of each counts. */
export function listDated(problem: Problem, schedule: Schedule): readonly Dated[] {
  return problem.activities.flatMap((activity) => {
    const placement = schedule.placements.find((p) => p.activity === activity.id);
    return placement === undefined ? [] : [{ activity, placement }];
  });
}

export function findCalendar(problem: Problem, id: string | undefined): Calendar | undefined {
  return problem.calendars.find((calendar) => calendar.id === id);
}

export function findResource(problem: Problem, id: string): Resource | undefined {
  return problem.resources.find((resource) => resource.id === id);
}

export function isInside(inner: Interval, outer: Interval): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}

/** Minutes that two intervals share. */
export function sharedMinutes(a: Interval, b: Interval): number {
  return Math.max(0, Math.min(a.end, b.end) - Math.max(a.start, b.start));
}
