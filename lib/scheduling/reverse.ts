import { compile } from './compile';
import type { Model } from './model';
import type { EventRef, Problem } from './problem';

function flip(event: EventRef): EventRef {
  return { activity: event.activity, at: event.at === 'start' ? 'end' : 'start' };
}

function isReversible(problem: Problem): boolean {
  const { activities, budgets, calendars, holds, lags, resources } = problem;
  if ((budgets ?? []).length > 0 || (holds ?? []).length > 0 || calendars.length > 0) return false;
  if ((problem.quotas ?? []).length > 0 || problem.upkeep !== undefined) return false;
  if (resources.some((resource) => resource.calendar !== undefined)) return false;
  if (lags.some((lag) => lag.min !== undefined && lag.min.kind !== 'elapsed')) return false;
  return activities.every((a) => a.due === undefined && a.pin === undefined && a.latestEnd === undefined
    && a.previousStart === undefined && (a.release ?? 0) === 0 && (a.crew ?? []).length === 0 && (a.states ?? []).length === 0);
}

/**
 * The same problem with time running backwards, for justification to the right; null where it would not be
 * the same problem (calendars, dates, people, states).
 */
export function reverse(problem: Problem): Model | null {
  if (!isReversible(problem)) return null;
  return compile({ ...problem, lags: problem.lags.map((lag) => ({ ...lag, from: flip(lag.to), to: flip(lag.from) })) });
}
