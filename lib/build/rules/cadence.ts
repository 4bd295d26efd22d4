import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Releases are at least a day apart; the lead is 0 days or more. Whole days both. */
export const checkCadence: Rule = ({ series }) => {
  const subjects = subjectsOf(series);
  const cadence = Number.isInteger(series.cadenceDays) && series.cadenceDays >= 1 ? [] : [
    issue('cadence', `${startWith(series)} releases every ${formatNumber(series.cadenceDays)} days; it must be a whole number of days from 1.`, 'Type 7 or 14 days.', { path: ['cadenceDays'], subjects }),
  ];
  if (Number.isInteger(series.leadDays) && series.leadDays >= 0) return cadence;
  return [...cadence, issue('lead-days', `${startWith(series)} is recorded ${formatNumber(series.leadDays)} days before a release; it must be a whole number of days from 0.`,
    'Type the days that edit, review and upload take.', { path: ['leadDays'], subjects })];
};
