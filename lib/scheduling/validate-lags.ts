import { issue, type Issue } from '@/lib/result';
import { findWrongEntry, isLength, isOffset, type Known } from './validate-known';
import type { Lag, LagLength } from './problem';

function findLengthIssues(lag: Lag, length: LagLength, known: Known): readonly (readonly [string, string, string])[] {
  if (length.kind === 'elapsed') {
    return isOffset(length.minutes) ? [] : [['not-a-minute', `Lag ${lag.id} has a minimum of ${length.minutes}.`, 'Use whole minutes.']];
  }
  if (length.kind === 'working') {
    const found: (readonly [string, string, string])[] = [];
    if (!isLength(length.minutes)) found.push(['negative-lag', `Lag ${lag.id} has a working minimum of ${length.minutes}.`, 'Use whole minutes from 0.']);
    if (!known.calendars.has(length.calendar)) {
      found.push(['unknown-calendar', `Lag ${lag.id} names the calendar ${length.calendar}, which is not there.`, 'Name a calendar of the problem.']);
    }
    return found;
  }
  if (!isLength(length.step) || length.step === 0) return [['bad-step', `Lag ${lag.id} has a table with step ${length.step}.`, 'Use whole minutes above 0.']];
  const wrong = findWrongEntry(length.ready, length.step);
  if (wrong < 0) return [];
  return [['table-not-first-in-first-out',
    `Lag ${lag.id}: entry ${wrong} of its table is ready at ${length.ready[wrong]}, earlier than it started (${wrong * length.step}) or than the entry before it.`,
    'A later start must never be ready earlier.']];
}

/** All issues of one lag. */
export function findLagIssues(lag: Lag, index: number, known: Known): readonly Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, message: string, fix: string) => {
    issues.push(issue(code, message, fix, { path: ['lags', index], subjects: [{ kind: 'lag', id: lag.id, name: lag.id }] }));
  };
  for (const id of new Set([lag.from.activity, lag.to.activity])) {
    if (!known.activities.has(id)) add('unknown-activity', `Lag ${lag.id} names the activity ${id}, which is not there.`, 'Name an activity of the problem.');
  }
  if (lag.min !== undefined) for (const [code, message, fix] of findLengthIssues(lag, lag.min, known)) add(code, message, fix);
  if (lag.max !== undefined && !isOffset(lag.max)) add('not-a-minute', `Lag ${lag.id} has a maximum of ${lag.max}.`, 'Use whole minutes.');
  if (lag.max !== undefined && lag.min?.kind === 'elapsed' && lag.min.minutes > lag.max) {
    add('lag-window-closed', `Lag ${lag.id} asks for at least ${lag.min.minutes} and at most ${lag.max} minutes.`, 'Raise the maximum or lower the minimum.');
  }
  if (lag.from.activity === lag.to.activity) {
    const isSpan = lag.from.at === 'start' && lag.to.at === 'end' && lag.min === undefined && lag.max !== undefined;
    const duration = known.activities.get(lag.from.activity)?.duration ?? 0;
    if (!isSpan) {
      add('lag-on-itself', `Lag ${lag.id} goes from ${lag.from.activity} to itself.`, 'Only a maximum from its start to its own end makes sense.');
    } else if (lag.max !== undefined && lag.max < duration) {
      add('lag-window-closed', `Lag ${lag.id} lets ${lag.from.activity} last at most ${lag.max} minutes, but it needs ${duration}.`, 'Raise the maximum.');
    }
  }
  return issues;
}
