import { issue } from '@/lib/result';
import { MINUTES_PER_DAY, minutesBetween } from '@/lib/units';
import { sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Time that was logged ends after it started and lasts at most 24 h. */
export const checkTimeLogs: Rule = (document) =>
  document.timeLogs.flatMap((log) => {
    const more = { path: ['end'], subjects: subjectsOf(log) };
    if (log.end === null) return [];
    const start = sayMoment(document, log.start);
    if (!(log.end > log.start)) {
      return [issue('time-log-ends-before-start', `${startWith(log)} starts on ${start} and ends on ${sayMoment(document, log.end)}, which is not after it.`, `Choose an end after ${start}.`, more)];
    }
    if (minutesBetween(log.start, log.end) <= MINUTES_PER_DAY) return [];
    return [issue('time-log-too-long', `${startWith(log)} runs from ${start} for more than 24 h.`, 'Choose the moment the work really stopped.', more)];
  });
