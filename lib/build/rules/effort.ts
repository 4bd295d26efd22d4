import { issue, type Issue } from '@/lib/result';
import type { Task } from '../model';
import { quoteName, sayWork, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const POINTS = [['low', 'smallest'], ['likely', 'likeliest'], ['high', 'largest']] as const;

function checkEffort(task: Task): readonly Issue[] {
  const subjects = subjectsOf(task);
  const notPositive = POINTS.filter(([key]) => !(task.effort[key] > 0 && Number.isFinite(task.effort[key]))).map(([key, word]) =>
    issue('effort-not-positive', `${startWith(task)} has a ${word} hands-on time of ${sayWork(task.effort[key])}; it must be more than 0 min.`,
      `Type a ${word} time of 1 min or more.`, { path: ['effort', key], subjects }));
  if (notPositive.length > 0) return notPositive;
  const { low, likely, high } = task.effort;
  if (low <= likely && likely <= high) return [];
  const message = `The hands-on times of the task ${quoteName(task.name)} are out of order: smallest ${sayWork(low)}, likeliest ${sayWork(likely)}, largest ${sayWork(high)}.`;
  const path = low > likely ? ['effort', 'low'] : ['effort', 'high'];
  const fix = low > likely ? `Type a smallest time of ${sayWork(likely)} or less.` : `Type a largest time of ${sayWork(likely)} or more.`;
  return [issue('effort-out-of-order', message, fix, { path, subjects })];
}

function checkShots(task: Task): readonly Issue[] {
  return task.shots.flatMap((shot, index) => (shot.time >= 0 && Number.isFinite(shot.time) ? [] : [
    issue('shot-time-negative', `The shot ${quoteName(shot.name)} of the task ${quoteName(task.name)} takes ${sayWork(shot.time)}; it cannot take less than 0 min.`,
      'Type 0 min or more.', { path: ['shots', index, 'time'], subjects: subjectsOf(task) }),
  ]));
}

/** Three-point times are 0 < low <= likely <= high; shots take 0 min or more. */
export const checkEfforts: Rule = (document) => document.tasks.flatMap((task) => [...checkEffort(task), ...checkShots(task)]);
