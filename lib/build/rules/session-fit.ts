import { issue, type Issue } from '@/lib/result';
import type { SeriesDocument, Session, Task } from '../model';
import { findRecord } from '../records';
import { crewSize, sessionLength, sessionsFor, taskLength } from '../task-sessions';
import { count, listNames, quoteName, sayMoment, sayWork, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** What a session must offer, in words. */
function sayNeeds(document: SeriesDocument, task: Task): string {
  const skills = task.crew.flatMap(({ skill }) => (skill === null ? [] : [skill]));
  return [
    `in ${quoteName(findRecord(document, 'place', task.placeId)?.name ?? task.placeId)}`,
    task.coverage === 'none' ? '' : 'with recording',
    task.conditions.needsDaylight ? 'with daylight' : '',
    task.isNoisy ? 'with noise allowed' : '',
    crewSize(task) > 0 ? `with ${count(crewSize(task), 'person', 'people')}` : '',
    skills.length > 0 ? `with somebody for ${listNames(skills)}` : '',
  ].filter((need) => need !== '').join(', ');
}

/** Times that make no sense are told by another rule. */
function hasRealTimes(task: Task): boolean {
  return [task.effort.likely, ...task.shots.map((shot) => shot.time)].every(Number.isFinite);
}

function checkTask(document: SeriesDocument, task: Task): readonly Issue[] {
  const subjects = subjectsOf(task);
  const longest = sessionsFor(document, task).reduce<Session | undefined>((best, session) => (best !== undefined && sessionLength(best) >= sessionLength(session) ? best : session), undefined);
  if (longest === undefined) {
    return [issue('no-session-for-task', `${startWith(task)} needs a session ${sayNeeds(document, task)}; there is none yet.`,
      'Add such a session.', { severity: 'warn', subjects })];
  }
  if (!task.inOneGo || !hasRealTimes(task)) return [];
  const [length, limit] = [taskLength(task), sessionLength(longest)];
  if (length <= limit) return [];
  const message = `${startWith(task)} is to be done in one go and takes ${sayWork(length)} with its filming, `
    + `but the longest session that could hold it is ${quoteName(longest.name)} on ${sayMoment(document, longest.start)}, ${sayWork(limit)} long.`;
  return [issue('task-longer-than-any-session', message, `Split it into tasks of ${sayWork(limit)} or less.`, { path: ['inOneGo'], subjects })];
}

/**
 * A task in one go fits into one of the sessions that have its place, its crew and what else it asks for.
 * Silent while there is no session at all.
 */
export const checkSessionFit: Rule = (document) =>
  document.sessions.length === 0 ? [] : document.tasks.filter((task) => task.doneAt === null).flatMap((task) => checkTask(document, task));
