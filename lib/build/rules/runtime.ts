import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** The wished runtime is more than 0 min and lies within its own limits. */
export const checkRuntime: Rule = ({ series }) => {
  const { min, target, max } = series.runtime;
  if (min > 0 && min <= target && target <= max) return [];
  const message = `${startWith(series)} wants episodes of ${formatNumber(target)} min, from ${formatNumber(min)} to ${formatNumber(max)} min; these do not fit together.`;
  const key = min > 0 ? 'target' : 'min';
  const fix = min > 0 ? `Type a shortest, a wished and a longest runtime in rising order.` : 'Type a shortest runtime of 1 min or more.';
  return [issue('runtime-out-of-range', message, fix, { path: ['runtime', key], subjects: subjectsOf(series) })];
};
