import { isZone, parseZone } from '@/lib/calendar';
import { issue } from '@/lib/result';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** The series has a time zone that can be computed with. */
export const checkZone: Rule = ({ series }) => {
  if (isZone(series.zone)) return [];
  const parsed = parseZone(series.zone);
  const [reason] = parsed.ok ? [] : parsed.error;
  const message = reason?.message ?? 'The time zone is not written as it should be.';
  const fix = parsed.ok ? `Write ${parsed.value}.` : (reason?.fix ?? 'Write area and city, such as Europe/London.');
  return [issue('unknown-zone', `${startWith(series)}: ${message}`, fix, { path: ['zone'], subjects: subjectsOf(series) })];
};
