import { fail, issue, type Result } from '@/lib/result';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import type { Saved } from './save-edited';
import { momentIn, splitMessage } from './schemas/values';

/**
 * Fixes the start of a task, to an instant or a local time like `2026-12-01T18:30`. A start outside every session of
 * the task's place is kept with a warning. Fails with `input-value`, `record-missing`, `stale-record` or `nothing-changed`.
 */
export async function pinTask(context: SeriesContext, seriesId: string, taskId: string, revision: number, start: unknown): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task, document) => {
    const moment = momentIn({ zone: document.series.zone, newId: context.newId }).safeParse(start);
    if (moment.success) return turnTo('Fixed the start of', { ...task, pinnedStart: moment.data });
    const { problem, fix } = splitMessage(moment.error.issues[0]?.message ?? '');
    return fail([issue('input-value', `Fixed start: ${problem}`, fix, { path: ['pinnedStart'] })]);
  });
}

/** Lets the plan choose the start of a task again. */
export async function unpinTask(context: SeriesContext, seriesId: string, taskId: string, revision: number): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task) => turnTo('Freed the start of', { ...task, pinnedStart: null }));
}
