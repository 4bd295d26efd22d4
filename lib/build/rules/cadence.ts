import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const LONGEST = 365;

function isDays(value: number, least: number): boolean {
  return Number.isInteger(value) && value >= least && value <= LONGEST;
}

/** Releases are 1 to 365 days apart; the lead is 0 to 365 days. Whole days both. */
export const checkCadence: Rule = ({ series }) => {
  const subjects = subjectsOf(series);
  const cadence = isDays(series.cadenceDays, 1) ? [] : [
    issue('cadence', `${startWith(series)} releases every ${formatNumber(series.cadenceDays)} days; it must be a whole number of days from 1 to ${LONGEST}.`, 'Type 7 or 14 days.', { path: ['cadenceDays'], subjects }),
  ];
  if (isDays(series.leadDays, 0)) return cadence;
  return [...cadence, issue('lead-days', `${startWith(series)} is recorded ${formatNumber(series.leadDays)} days before a release; it must be a whole number of days from 0 to ${LONGEST}.`,
    'Type the days that edit, review and upload take.', { path: ['leadDays'], subjects })];
};
