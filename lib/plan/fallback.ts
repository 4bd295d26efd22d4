/** What to do in a week when the plan falls through. */
import { deriveOrder, type SeriesDocument, type Task } from '@/lib/build';
import { isFilmed } from './compile/session-calendars';
import { taskMinutes } from './compile/task-activities';

/** A task that can be done on any evening, alone, with what is in the workshop. */
export interface FallbackTask {
  readonly taskId: string;
  readonly title: string;
  readonly minutes: number;
  readonly placeId: string;
  readonly isFilmed: boolean;
}

/** Needs no daylight, no warmth, no coat, no helper and no outside part, and its predecessors are done. */
function isFallback(task: Task, isReady: (id: string) => boolean): boolean {
  const people = task.crew.reduce((sum, need) => sum + need.count, 0);
  const { conditions } = task;
  return task.doneAt === null && people <= 1 && task.coats.length === 0 && !conditions.needsDaylight && conditions.minimumTemperature === null && !task.irreversible && isReady(task.id);
}

/**
 * Up to `most` tasks for a fallback session, in the order of the task list. `inPlan` holds the tasks that the week
 * already has: they are left out.
 */
export function findFallback(document: SeriesDocument, inPlan: ReadonlySet<string>, most = 3): FallbackTask[] {
  const done = new Set([
    ...document.tasks.filter((task) => task.doneAt !== null).map((task) => `task ${task.id}`),
    ...document.outsideJobs.filter((job) => job.collectedAt !== null).map((job) => `outsideJob ${job.id}`),
  ]);
  const held = new Set(deriveOrder(document).filter((arc) => !done.has(`${arc.from.kind} ${arc.from.id}`)).map((arc) => `${arc.to.kind} ${arc.to.id}`));
  const isReady = (id: string) => !held.has(`task ${id}`);
  return document.tasks
    .filter((task) => !inPlan.has(task.id) && isFallback(task, isReady))
    .slice(0, most)
    .map((task) => ({ taskId: task.id, title: task.name, minutes: taskMinutes(task), placeId: task.placeId, isFilmed: isFilmed(task) }));
}
