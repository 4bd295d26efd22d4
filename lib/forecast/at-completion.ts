/** Crew work of the whole build when it is done: what finished work took, and what the rest will by what was learned. */
import type { SeriesDocument, Task } from '@/lib/build';
import { experienceOf, experiencedTime, gatherExperience, typedTime } from '@/lib/episodes';
import { MS_PER_MINUTE } from '@/lib/units';

/** Worked minutes. */
export interface AtCompletion {
  /** Finished tasks: by their time logs; as typed where nobody kept a log. */
  readonly spent: number;
  /** Finished tasks without a log. */
  readonly unlogged: number;
  /** Open tasks as typed, and by the factors learned from finished ones. */
  readonly openTyped: number;
  readonly openLearned: number;
  /** False: too little is finished to learn from, so that both are the same. */
  readonly isLearned: boolean;
}

function logged({ timeLogs }: SeriesDocument, task: Task): number | null {
  const logs = timeLogs.filter((log) => log.taskId === task.id && log.end !== null);
  return logs.length === 0 ? null : logs.reduce((sum, { end, start }) => sum + ((end ?? start) - start) / MS_PER_MINUTE, 0);
}

/** Estimate at completion: actual + remaining x learned factor, task by task. */
export function estimateAtCompletion(document: SeriesDocument): AtCompletion {
  const experience = experienceOf(document);
  const done = document.tasks.filter(({ doneAt }) => doneAt !== null).map((task) => ({ task, actual: logged(document, task) }));
  const open = document.tasks.filter(({ doneAt }) => doneAt === null);
  const { learnedFilming, learnedHandsOn } = gatherExperience(document);
  return {
    spent: done.reduce((sum, { actual, task }) => sum + (actual ?? typedTime(task).mean), 0),
    unlogged: done.filter(({ actual }) => actual === null).length,
    openTyped: open.reduce((sum, task) => sum + typedTime(task).mean, 0),
    openLearned: open.reduce((sum, task) => sum + experiencedTime(task, experience).mean, 0),
    isLearned: learnedHandsOn.isEnough || learnedFilming.isEnough,
  };
}
