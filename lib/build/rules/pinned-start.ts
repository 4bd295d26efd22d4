import { issue } from '@/lib/result';
import { findRecord } from '../records';
import { quoteName, sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A start fixed by a person lies in a session of the task's place; otherwise it is pointed out. */
export const checkPinnedStarts: Rule = (document) =>
  document.tasks.flatMap((task) => {
    const { pinnedStart } = task;
    if (pinnedStart === null || task.doneAt !== null) return [];
    if (document.sessions.some((session) => session.placeIds.includes(task.placeId) && session.start <= pinnedStart && pinnedStart < session.end)) return [];
    const place = findRecord(document, 'place', task.placeId);
    return [issue('pin-outside-sessions', `${startWith(task)} is fixed to ${sayMoment(document, pinnedStart)}, when no session is on in ${quoteName(place?.name ?? task.placeId)}.`,
      'Fix it to a time inside a session of that place.', { severity: 'warn', path: ['pinnedStart'], subjects: subjectsOf(task, place) })];
  });
