'use server';

import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';
import { completeTask, pinTask, recordBeforeShots, recordJobEvent, reopenTask, unpinTask, type OpenBefore } from '@/lib/commands';

/** Says that a task is done now. `revision` is the one the page showed; `before` what becomes of open work before it. */
export async function completeTaskAction(seriesId: string, taskId: string, revision: number, before: OpenBefore): Promise<Outcome> {
  return runAction(seriesId, (context) => completeTask(context, seriesId, taskId, revision, { before: before === 'leave' || before === 'too' ? before : 'ask' }));
}

/** Says that the before-shots of a task are filmed now, or takes that back. */
export async function beforeShotsAction(seriesId: string, taskId: string, revision: number, isFilmed: boolean): Promise<Outcome> {
  return runAction(seriesId, (context) => recordBeforeShots(context, seriesId, taskId, revision, isFilmed ? context.now() : null));
}

/** Says that a task is not done after all. */
export async function reopenTaskAction(seriesId: string, taskId: string, revision: number): Promise<Outcome> {
  return runAction(seriesId, (context) => reopenTask(context, seriesId, taskId, revision));
}

/** Fixes a task where the plan has it; `start` is an instant. */
export async function pinTaskAction(seriesId: string, taskId: string, revision: number, start: number): Promise<Outcome> {
  return runAction(seriesId, (context) => pinTask(context, seriesId, taskId, revision, start));
}

/** Lets the plan choose the start of a task again. */
export async function unpinTaskAction(seriesId: string, taskId: string, revision: number): Promise<Outcome> {
  return runAction(seriesId, (context) => unpinTask(context, seriesId, taskId, revision));
}

/** Says that an outside job was dropped off or collected now, or takes that back. */
export async function jobTripAction(seriesId: string, jobId: string, revision: number, event: 'dropped off' | 'collected', isDone: boolean): Promise<Outcome> {
  return runAction(seriesId, (context) => recordJobEvent(context, seriesId, jobId, revision, { event, at: isDone ? context.now() : null }));
}
