import type { Calendar, EventRef, Lag, LagLength, Problem, Schedule } from '../problem';
import { findCalendar, type Rule, type Violation } from './violation';

function timeOf(schedule: Schedule, event: EventRef): number | null {
  const placement = schedule.placements.find((p) => p.activity === event.activity);
  if (placement === undefined) return null;
  return event.at === 'start' ? placement.start : placement.end;
}

/** Walks the calendar minute by interval: the earliest moment by which so many of its minutes have passed; null: never. */
function addWorking(calendar: Calendar, from: number, minutes: number): number | null {
  let left = minutes;
  if (left === 0) return from;
  for (const interval of calendar.intervals) {
    const start = Math.max(from, interval.start);
    if (start >= interval.end) continue;
    if (start + left <= interval.end) return start + left;
    left -= interval.end - start;
  }
  return null;
}

/** Earliest moment the lag lets its second event happen; null: never. */
function earliestAfter(problem: Problem, length: LagLength, from: number): number | null {
  if (length.kind === 'elapsed') return from + length.minutes;
  if (length.kind === 'table') return length.ready.find((_, k) => k * length.step >= from) ?? null;
  const calendar = findCalendar(problem, length.calendar);
  return calendar === undefined ? null : addWorking(calendar, from, length.minutes);
}

function violation(rule: string, lag: Lag, message: string): Violation {
  return { rule, message: `${lag.id}: ${message}`, activities: [lag.from.activity, lag.to.activity] };
}

/**
 * Minimum lags of one kind. What is left out counts as happening at the horizon or later, so that what follows it
 * must be left out too, unless an allowed overlap reaches that far.
 */
function checkMinimum(kind: LagLength['kind']): Rule {
  return (problem, schedule) => problem.lags.flatMap((lag) => {
    if (lag.min === undefined || lag.min.kind !== kind) return [];
    const to = timeOf(schedule, lag.to);
    if (to === null) return [];
    const from = timeOf(schedule, lag.from);
    if (from === null) {
      const isAllowed = lag.min.kind === 'elapsed' && lag.min.minutes < 0 && to >= problem.horizon + lag.min.minutes;
      return isAllowed ? [] : [violation(`min-lag-${kind}`, lag, `${lag.to.activity} is placed but ${lag.from.activity}, which it needs first, is not.`)];
    }
    const earliest = earliestAfter(problem, lag.min, from);
    if (earliest !== null && to >= earliest) return [];
    return [violation(`min-lag-${kind}`, lag, `${lag.to.activity} comes at ${to}, not before ${earliest ?? 'ever'} allowed.`)];
  });
}

export const checkElapsedLags = checkMinimum('elapsed');
export const checkWorkingLags = checkMinimum('working');
export const checkTableLags = checkMinimum('table');

/** Maximum lags: a window that was opened is met; when the second is left out, it must reach the horizon. */
export const checkMaximumLags: Rule = (problem, schedule) => problem.lags.flatMap((lag) => {
  if (lag.max === undefined) return [];
  const from = timeOf(schedule, lag.from);
  if (from === null) return [];
  const to = timeOf(schedule, lag.to) ?? problem.horizon;
  if (to <= from + lag.max) return [];
  return [violation('max-lag', lag, `${lag.to.activity} comes at ${to} or later, its window closed at ${from + lag.max}.`)];
});
