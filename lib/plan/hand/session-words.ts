/** Why a task cannot be in the sessions at a moment: what each lacks, in the words of the build. */
import { isAttending } from '@/lib/build';
import { formatMoment, formatWorkLength } from '@/lib/calendar';
import type { Compiled } from '../compile/compile';
import { need, type Draft } from '../compile/draft';
import { readName } from '../compile/names';
import { sessionDemands } from '../compile/session-calendars';
import { taskMinutes } from '../compile/task-activities';
import type { Words } from '../explain/lag-words';

/** Names of the people in the session who have a skill. */
function countAble(draft: Draft, sessionId: string, skill: string | null): number {
  const { people, series, sessions } = draft.document;
  const session = sessions.find(({ id }) => id === sessionId);
  return session === undefined ? 0 : people.filter((person) => isAttending(person, session, series.zone) && (skill === null || person.skills.includes(skill))).length;
}

/** What stands against a start of a task at a minute, as far as sessions and who is there go. */
export function sessionWords({ draft }: Compiled, activity: string, minute: number): Words {
  const task = need(draft.tasks, readName(activity).id, 'task');
  const { document } = draft;
  const at = draft.clock.moment(minute);
  const when = formatMoment(at, document.series.zone);
  const session = document.sessions.find((one) => one.start <= at && at < one.end);
  if (session === undefined) return { text: `There is no session ${when}.`, change: 'Move it into a session, or add one there.' };
  const lacking = sessionDemands(draft, task).filter((demand) => !demand.isMet(session)).map(({ words }) => words);
  if (lacking.length > 0) return { text: `The session ${session.name} is not ${lacking.join(', not ')}.`, change: `Make the session fit: ${lacking.join(', ')}.` };
  const short = task.crew.find(({ count, skill }) => countAble(draft, session.id, skill) < count);
  if (short !== undefined) {
    const who = short.skill === null ? 'people' : `people who can “${short.skill}”`;
    return { text: `It takes ${short.count} ${who}, and the session ${session.name} has ${countAble(draft, session.id, short.skill)}.`, change: 'Bring somebody into the session.' };
  }
  const length = formatWorkLength(taskMinutes(document, task));
  return { text: `It takes ${length}${task.inOneGo ? ' in one go' : ''}, and from ${when} there is not so much time left in sessions that fit${task.inOneGo ? '' : ', in pieces long enough'}.`, change: 'Begin earlier in the session, or make it longer.' };
}
