import { fail, issue, ok, type Issue, type Result, type Subject } from '@/lib/result';
import { findActivityIssues } from './validate-activities';
import { findLagIssues } from './validate-lags';
import { isLength, type Known } from './validate-known';
import type { Calendar, ObjectiveTerm, Problem } from './problem';

function findRepeats(kind: string, list: string, rows: readonly { readonly id: string }[]): readonly Issue[] {
  const seen = new Set<string>();
  const issues: Issue[] = [];
  rows.forEach((row, index) => {
    if (seen.has(row.id)) {
      issues.push(issue('duplicate-id', `Two ${kind}s have the id ${row.id}.`, 'Give each its own id.', { path: [list, index, 'id'], subjects: [subject(kind, row.id)] }));
    }
    seen.add(row.id);
  });
  return issues;
}

function subject(kind: string, id: string): Subject {
  return { kind, id, name: id };
}

function findCalendarIssues(calendar: Calendar, index: number): readonly Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, message: string, fix: string, at: number) => {
    issues.push(issue(code, message, fix, { path: ['calendars', index, 'intervals', at], subjects: [subject('calendar', calendar.id)] }));
  };
  calendar.intervals.forEach((interval, at) => {
    if (!isLength(interval.start) || !isLength(interval.end)) {
      add('not-a-minute', `Calendar ${calendar.id} has an interval from ${interval.start} to ${interval.end}: not whole minutes from 0.`, 'Use whole minutes from 0.', at);
    } else if (interval.start >= interval.end) {
      add('interval-ends-before-start', `Calendar ${calendar.id} has an interval that starts at ${interval.start} and ends at ${interval.end}.`, 'Let it end after its start.', at);
    }
    const before = calendar.intervals[at - 1];
    if (before === undefined) return;
    if (interval.start < before.start) {
      add('calendar-unsorted', `Calendar ${calendar.id}: the interval at ${interval.start} comes after the one at ${before.start}.`, 'Sort the intervals by their start.', at);
    } else if (interval.start < before.end) {
      add('calendar-overlap', `Calendar ${calendar.id}: the interval at ${interval.start} begins before the one at ${before.start} ends (${before.end}).`, 'Join or separate them.', at);
    }
  });
  return issues;
}

function findResourceIssues(problem: Problem, known: Known): readonly Issue[] {
  const issues: Issue[] = [];
  problem.resources.forEach((resource, index) => {
    const more = { path: ['resources', index], subjects: [subject('resource', resource.id)] };
    if (!isLength(resource.capacity)) {
      issues.push(issue('bad-capacity', `Resource ${resource.id} has capacity ${resource.capacity}.`, 'Use a whole number from 0.', more));
    }
    if (resource.calendar === undefined) return;
    if (!known.calendars.has(resource.calendar)) {
      issues.push(issue('unknown-calendar', `Resource ${resource.id} names the calendar ${resource.calendar}, which is not there.`, 'Name a calendar of the problem.', more));
    }
  });
  return issues;
}

function findHoldIssues(problem: Problem, known: Known): readonly Issue[] {
  return (problem.holds ?? []).flatMap((hold, index) => {
    const issues: Issue[] = [];
    const add = (code: string, message: string, fix: string) => {
      issues.push(issue(code, message, fix, { path: ['holds', index], subjects: [subject('hold', hold.id)] }));
    };
    for (const id of [hold.from, hold.to]) {
      if (!known.activities.has(id)) add('unknown-activity', `Hold ${hold.id} names the activity ${id}, which is not there.`, 'Name an activity of the problem.');
    }
    if (!isLength(hold.amount)) add('bad-amount', `Hold ${hold.id} takes ${hold.amount} units.`, 'Use a whole number from 0.');
    const resource = known.resources.get(hold.resource);
    if (resource === undefined) {
      add('unknown-resource', `Hold ${hold.id} names the resource ${hold.resource}, which is not there.`, 'Name a resource of the problem.');
      return issues;
    }
    for (const id of new Set([hold.from, hold.to])) {
      const own = (known.activities.get(id)?.demands ?? []).reduce((sum, d) => sum + (d.resource === hold.resource ? d.amount : 0), 0);
      if (hold.amount + own <= resource.capacity) continue;
      add('hold-above-capacity', `Hold ${hold.id} takes ${hold.amount} of ${hold.resource} and activity ${id} needs ${own} more at the same time, but only ${resource.capacity} exist.`,
        own > 0 ? 'Leave the resource to the hold alone.' : 'Hold less, or raise the capacity.');
    }
    return issues;
  });
}

function findBudgetIssues(problem: Problem, known: Known): readonly Issue[] {
  return (problem.budgets ?? []).flatMap((budget, index) => {
    const issues: Issue[] = [];
    const more = { path: ['budgets', index], subjects: [subject('budget', budget.id)] };
    if (!known.resources.has(budget.resource)) {
      issues.push(issue('unknown-resource', `Budget ${budget.id} names the resource ${budget.resource}, which is not there.`, 'Name a resource of the problem.', more));
    }
    if (!isLength(budget.limit)) {
      issues.push(issue('bad-limit', `Budget ${budget.id} has the limit ${budget.limit}.`, 'Use a whole number from 0.', more));
    }
    const { start, end } = budget.within;
    if (!isLength(start) || !isLength(end) || start >= end) {
      issues.push(issue('interval-ends-before-start', `Budget ${budget.id} counts from ${start} to ${end}.`, 'Use whole minutes with the end after the start.', more));
    }
    return issues;
  });
}

function findQuotaIssues(problem: Problem, known: Known): readonly Issue[] {
  return (problem.quotas ?? []).flatMap((quota, index) => {
    const issues: Issue[] = [];
    const add = (code: string, message: string, fix: string) => {
      issues.push(issue(code, message, fix, { path: ['quotas', index], subjects: [subject('quota', quota.id)] }));
    };
    for (const id of quota.among) {
      if (!known.activities.has(id)) add('unknown-activity', `Quota ${quota.id} names the activity ${id}, which is not there.`, 'Name an activity of the problem.');
    }
    if (new Set(quota.among).size < quota.among.length) add('repeated-activity', `Quota ${quota.id} names an activity twice.`, 'Name each once.');
    if (!Number.isInteger(quota.at)) add('not-a-minute', `Quota ${quota.id} is looked at at ${quota.at}.`, 'Use whole minutes.');
    if (!isLength(quota.least)) add('bad-count', `Quota ${quota.id} asks for ${quota.least} activities.`, 'Use a whole number from 0.');
    return issues;
  });
}

function findUpkeepIssues({ upkeep }: Problem, known: Known): readonly Issue[] {
  if (upkeep === undefined) return [];
  const issues: Issue[] = [];
  for (const id of upkeep.resources) {
    if (!known.resources.has(id)) issues.push(issue('unknown-resource', `The upkeep names the resource ${id}, which is not there.`, 'Name a resource of the problem.', { path: ['upkeep', 'resources'] }));
  }
  upkeep.spans.forEach(({ cost, within }, index) => {
    const path = ['upkeep', 'spans', index];
    if (!(Number.isFinite(cost) && cost >= 0)) issues.push(issue('bad-cost', `The upkeep from ${within.start} costs ${cost}.`, 'Use a number from 0.', { path }));
    if (!isLength(within.start) || !isLength(within.end) || within.start >= within.end) {
      issues.push(issue('interval-ends-before-start', `An upkeep span counts from ${within.start} to ${within.end}.`, 'Use whole minutes with the end after the start.', { path }));
    }
    const before = upkeep.spans[index - 1];
    if (before !== undefined && within.start < before.within.end) {
      issues.push(issue('calendar-overlap', `The upkeep span at ${within.start} begins before the one at ${before.within.start} ends.`, 'Sort the spans and join those that overlap.', { path }));
    }
  });
  return issues;
}

const TERM_NAMES: Readonly<Record<ObjectiveTerm, true>> = { tardiness: true, shortages: true, moved: true, makespan: true, cost: true };

function findObjectiveIssues({ objective }: Problem): readonly Issue[] {
  if (objective === undefined) return [];
  const names = Object.keys(TERM_NAMES);
  if (objective.length === names.length && names.every((name) => objective.some((term) => term === name))) return [];
  return [issue('bad-objective', `The objective is given as ${objective.join(', ') || 'nothing'}.`, `Name each of ${names.join(', ')} once.`, { path: ['objective'] })];
}

/** Every issue of the problem, or the problem itself when there is none. */
export function validate(problem: Problem): Result<Problem, readonly Issue[]> {
  const issues: Issue[] = [];
  if (!isLength(problem.horizon) || problem.horizon === 0) {
    issues.push(issue('horizon-too-short', `The horizon is ${problem.horizon}: nothing can happen before it.`, 'Set it to a whole number of minutes above 0.', { path: ['horizon'] }));
  }
  issues.push(...findRepeats('calendar', 'calendars', problem.calendars));
  issues.push(...findRepeats('resource', 'resources', problem.resources));
  issues.push(...findRepeats('activity', 'activities', problem.activities));
  issues.push(...findRepeats('lag', 'lags', problem.lags));
  issues.push(...findRepeats('hold', 'holds', problem.holds ?? []));
  issues.push(...findRepeats('budget', 'budgets', problem.budgets ?? []), ...findRepeats('quota', 'quotas', problem.quotas ?? []));
  const known: Known = {
    calendars: new Map(problem.calendars.map((row) => [row.id, row])),
    resources: new Map(problem.resources.map((row) => [row.id, row])),
    activities: new Map(problem.activities.map((row) => [row.id, row])),
  };
  issues.push(...problem.calendars.flatMap(findCalendarIssues));
  issues.push(...findResourceIssues(problem, known));
  problem.activities.forEach((activity, index) => issues.push(...findActivityIssues(problem, activity, index, known)));
  problem.lags.forEach((lag, index) => issues.push(...findLagIssues(lag, index, known)));
  issues.push(...findHoldIssues(problem, known), ...findBudgetIssues(problem, known));
  issues.push(...findQuotaIssues(problem, known), ...findUpkeepIssues(problem, known), ...findObjectiveIssues(problem));
  return issues.length > 0 ? fail(issues) : ok(problem);
}
