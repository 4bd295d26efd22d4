/** Which sessions could hold a task. */
import { minutes, minutesBetween, type Minutes } from '@/lib/units';
import type { SeriesDocument, Session, Task } from './model';

/**
 * Likeliest hands-on time and the time of its during-shots, minutes. Before-shots are filmed ahead of it.
 * @throws RangeError for times that are no finite numbers, which `checkSeries` refuses.
 */
export function taskLength(task: Task): Minutes {
  const filming = task.shots.filter((shot) => shot.purpose === 'during').reduce((sum, shot) => sum + shot.time, 0);
  return minutes(task.effort.likely + filming);
}

/** People a task needs at once. */
export function crewSize(task: Task): number {
  return task.crew.reduce((sum, need) => sum + need.count, 0);
}

/**
 * Length of a session, minutes; negative when its times are the wrong way round.
 * @throws RangeError for times that are no finite numbers, which `checkSeries` refuses.
 */
export function sessionLength(session: Session): Minutes {
  return minutesBetween(session.start, session.end);
}

/** Place, camera, daylight, noise and crew of a session allow the task; its length is not looked at. */
function couldHold(document: SeriesDocument, session: Session, task: Task): boolean {
  const crew = document.people.filter((person) => session.crewIds.includes(person.id));
  return session.placeIds.includes(task.placeId)
    && (task.coverage === 'none' || session.isRecording)
    && (!task.conditions.needsDaylight || session.hasDaylight)
    && (!task.isNoisy || session.isNoiseAllowed)
    && crew.length >= crewSize(task)
    && task.crew.every(({ skill, count }) => skill === null || crew.filter((person) => person.skills.includes(skill)).length >= count);
}

/** Sessions whose place, camera, daylight, noise and crew allow the task, of any length that is more than none. */
export function sessionsFor(document: SeriesDocument, task: Task): readonly Session[] {
  return document.sessions.filter((session) => session.end > session.start && Number.isFinite(session.end - session.start) && couldHold(document, session, task));
}
