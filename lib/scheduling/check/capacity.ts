import type { Interval, Problem, Schedule } from '../problem';
import { findCalendar, findResource, listDated, sharedMinutes, type Rule, type Violation } from './violation';

/** Units of a resource that somebody uses for a while. */
interface Use extends Interval {
  readonly resource: string;
  readonly amount: number;
  readonly by: string;
}

function listWork(problem: Problem, schedule: Schedule): readonly Use[] {
  return listDated(problem, schedule).flatMap(({ activity, placement }) => {
    const whole = { start: placement.start, end: placement.end };
    const demanded = activity.demands.flatMap((demand) => {
      const times = demand.throughPauses === true ? [whole] : placement.pieces;
      return times.map(({ end, start }) => ({ start, end, resource: demand.resource, amount: demand.amount, by: activity.id }));
    });
    const crewed = placement.crew.flatMap((resource) => placement.pieces.map(({ end, start }) => ({ start, end, resource, amount: 1, by: activity.id })));
    return [...demanded, ...crewed];
  });
}

/** A hold whose last activity is left out lasts to the horizon. */
function listHolds(problem: Problem, schedule: Schedule): readonly Use[] {
  return (problem.holds ?? []).flatMap((hold) => {
    const from = schedule.placements.find((p) => p.activity === hold.from);
    const to = schedule.placements.find((p) => p.activity === hold.to);
    if (from === undefined) return [];
    return [{ start: from.start, end: to?.end ?? problem.horizon, resource: hold.resource, amount: hold.amount, by: hold.from }];
  });
}

/** Overloads among the uses of each resource, looked at wherever a use begins. */
function findOverloads(problem: Problem, uses: readonly Use[], rule: string): readonly Violation[] {
  const found: Violation[] = [];
  for (const resource of problem.resources) {
    const own = uses.filter((use) => use.resource === resource.id && use.start < use.end && use.amount > 0);
    for (const { start } of own) {
      const running = own.filter((use) => use.start <= start && start < use.end);
      const units = running.reduce((sum, use) => sum + use.amount, 0);
      if (units <= resource.capacity) continue;
      found.push({ rule, message: `${resource.id} is used ${units} times at ${start}, it has ${resource.capacity}.`, activities: [...new Set(running.map((use) => use.by))] });
    }
    found.push(...findOutside(problem, resource.calendar, own, rule));
  }
  return found;
}

function findOutside(problem: Problem, calendarId: string | undefined, uses: readonly Use[], rule: string): readonly Violation[] {
  const calendar = findCalendar(problem, calendarId);
  if (calendar === undefined) return [];
  return uses.flatMap((use) => {
    const covered = calendar.intervals.reduce((sum, interval) => sum + sharedMinutes(use, interval), 0);
    if (covered === use.end - use.start) return [];
    return [{ rule, message: `${use.resource} is used from ${use.start} to ${use.end}, partly outside ${calendar.id}.`, activities: [use.by] }];
  });
}

/** At no minute more of a resource is worked with than there is. */
export const checkCapacity: Rule = (problem, schedule) => findOverloads(problem, listWork(problem, schedule), 'capacity');

/** Holds fit beside each other and beside the work. */
export const checkHolds: Rule = (problem, schedule) => {
  const holds = listHolds(problem, schedule);
  const held = new Set(holds.map((use) => use.resource));
  const uses = [...holds, ...listWork(problem, schedule)].filter((use) => held.has(use.resource));
  const order = (problem.holds ?? []).flatMap((hold): readonly Violation[] => {
    const from = schedule.placements.find((p) => p.activity === hold.from);
    const to = schedule.placements.find((p) => p.activity === hold.to);
    if (to === undefined || (from !== undefined && from.start <= to.end)) return [];
    return [{ rule: 'hold', message: `${hold.id} ends before it begins.`, activities: [hold.from, hold.to] }];
  });
  return [...order, ...findOverloads(problem, uses, 'hold')];
};

/** Work on a resource inside a budget's interval stays within its limit. Holds do not count, nor do doses. */
export const checkBudgets: Rule = (problem, schedule) => {
  const work = listWork(problem, schedule);
  return (problem.budgets ?? []).filter(({ dose }) => dose === undefined).flatMap((budget): readonly Violation[] => {
    const uses = work.filter((use) => use.resource === budget.resource && sharedMinutes(use, budget.within) > 0);
    const spent = uses.reduce((sum, use) => sum + use.amount * sharedMinutes(use, budget.within), 0);
    if (spent <= budget.limit) return [];
    return [{ rule: 'budget', message: `${budget.id}: ${spent} minutes of ${budget.resource} are used, ${budget.limit} allowed.`, activities: [...new Set(uses.map((use) => use.by))] }];
  });
};

/** Each crew need is filled from its pool by different people, in the order of the needs; a pinned crew is kept. */
export const checkCrew: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const found: Violation[] = [];
  const add = (message: string) => found.push({ rule: 'crew', message, activities: [activity.id] });
  let at = 0;
  for (const need of activity.crew ?? []) {
    const chosen = placement.crew.slice(at, at + need.count);
    at += need.count;
    if (chosen.length < need.count) add(`${activity.id} has ${chosen.length} of ${need.count} people from ${need.pool.join(', ')}.`);
    if (new Set(chosen).size < chosen.length) add(`${activity.id} counts somebody twice: ${chosen.join(', ')}.`);
    const strangers = chosen.filter((id) => !need.pool.includes(id) || findResource(problem, id) === undefined);
    if (strangers.length > 0) add(`${activity.id} has ${strangers.join(', ')}, who is not in its pool.`);
  }
  if (placement.crew.length > at) add(`${activity.id} has ${placement.crew.length - at} people too many.`);
  const pinned = activity.pin?.crew;
  if (pinned !== undefined && pinned.join('\n') !== placement.crew.join('\n')) add(`${activity.id} is pinned with ${pinned.join(', ')} but has ${placement.crew.join(', ')}.`);
  return found;
});
