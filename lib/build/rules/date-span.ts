import { compareDates, isCivilDate, parseCivilDate } from '@/lib/calendar';
import { issue, type Issue } from '@/lib/result';
import type { DateSpan, SeriesRecord } from '../model';
import { quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Dates of a build; earlier or later ones are a slip, and sums with them would leave the calendar. */
export const [EARLIEST_DATE, LATEST_DATE] = ['1973-01-01', '2990-12-31'] as const;

/** What is wrong with a date, or nothing. Shared by all rules that read one. */
export function checkDate(record: SeriesRecord, date: string, path: Issue['path']): readonly Issue[] {
  const subjects = subjectsOf(record);
  if (isCivilDate(date)) {
    if (date >= EARLIEST_DATE && date <= LATEST_DATE) return [];
    return [issue('date-out-of-range', `${startWith(record)} has the date ${date}, which no build reaches.`, `Choose a date from ${EARLIEST_DATE} to ${LATEST_DATE}.`, { path, subjects })];
  }
  const parsed = parseCivilDate(date);
  const [reason] = parsed.ok ? [] : parsed.error;
  return [issue('unknown-date', `${startWith(record)}: ${reason?.message ?? `${quoteName(date)} is not written as a date.`}`,
    reason?.fix ?? 'Write the date as 2026-12-01.', { path, subjects })];
}

function checkSpans(record: SeriesRecord, field: string, spans: readonly DateSpan[]): readonly Issue[] {
  return spans.flatMap(({ from, to }, index) => {
    const dates = [...checkDate(record, from, [field, index, 'from']), ...checkDate(record, to, [field, index, 'to'])];
    if (dates.length > 0 || compareDates(from, to) <= 0) return dates;
    return [issue('dates-out-of-order', `${startWith(record)} has days off that end on ${to}, before they start on ${from}.`,
      `Choose a last day on or after ${from}.`, { path: [field, index, 'to'], subjects: subjectsOf(record) })];
  });
}

/** Days off of people and trades, and promised dates, are real and in order. */
export const checkDateSpans: Rule = (document) => [
  ...document.people.flatMap((person) => checkSpans(person, 'away', person.away)),
  ...document.trades.flatMap((trade) => checkSpans(trade, 'closed', trade.closed)),
  ...document.outsideJobs.flatMap((job) => (job.promisedFor === null ? [] : checkDate(job, job.promisedFor, ['promisedFor']))),
];
