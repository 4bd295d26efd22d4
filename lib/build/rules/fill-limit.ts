import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** The share of a session that may be booked is more than 0 and at most 1. */
export const checkFillLimit: Rule = ({ series }) => {
  if (series.fillLimit > 0 && series.fillLimit <= 1) return [];
  return [issue('fill-limit', `${startWith(series)} books ${formatNumber(series.fillLimit)} of a session; the share must be more than 0 and at most 1.`,
    'Type 0.7 to keep three tenths free.', { path: ['fillLimit'], subjects: subjectsOf(series) })];
};
