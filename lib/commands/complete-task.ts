import type { Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import type { Saved } from './save-edited';

/** Says that a task is done, now or at the moment given. Fails with `record-missing`, `stale-record` or `nothing-changed`. */
export async function completeTask(
  context: SeriesContext, seriesId: string, taskId: string, revision: number, doneAt: Instant = context.now(),
): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task) => turnTo('Done:', { ...task, doneAt }));
}

/** Says that a task is not done after all. Fails like {@link completeTask}. */
export async function reopenTask(context: SeriesContext, seriesId: string, taskId: string, revision: number): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task) => turnTo('Not done:', { ...task, doneAt: null }));
}
