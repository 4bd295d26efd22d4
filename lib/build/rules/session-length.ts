import { issue } from '@/lib/result';
import { MINUTES_PER_DAY, minutesBetween } from '@/lib/units';
import { sayLength, sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A session ends after it starts and lasts at most 24 h. */
export const checkSessionLengths: Rule = (document) =>
  document.sessions.flatMap((session) => {
    const more = { path: ['end'], subjects: subjectsOf(session) };
    const start = sayMoment(document, session.start);
    if (!Number.isFinite(session.end - session.start)) {
      return [issue('session-without-times', `${startWith(session)} has no start and end that can be read.`, 'Choose its start and end again.', more)];
    }
    const length = minutesBetween(session.start, session.end);
    if (length <= 0) {
      const when = length === 0 ? 'at its own start' : `${sayLength(-length)} before its start`;
      return [issue('session-ends-before-start', `${startWith(session)} on ${start} ends ${when}, at ${sayMoment(document, session.end)}.`,
        `Choose an end after ${start}.`, more)];
    }
    if (length <= MINUTES_PER_DAY) return [];
    return [issue('session-too-long', `${startWith(session)} from ${start} lasts ${sayLength(length)}; a session lasts at most 24 h.`,
      'Make one session a day of it.', more)];
  });
