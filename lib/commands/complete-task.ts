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

/**
 * Says that the shots taken ahead of an irreversible task are in the can; those that have a moment already keep it.
 * With null they are all to be filmed again. Fails like {@link completeTask}.
 */
export async function recordBeforeShots(
  context: SeriesContext, seriesId: string, taskId: string, revision: number, filmedAt: Instant | null = context.now(),
): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task) => {
    const shots = task.shots.map((shot) => (shot.purpose === 'before' ? { ...shot, filmedAt: filmedAt === null ? null : (shot.filmedAt ?? filmedAt) } : shot));
    return turnTo(filmedAt === null ? 'Before-shots to be filmed again:' : 'Filmed the before-shots of', { ...task, shots });
  });
}

/** Says that a task is not done after all. Fails like {@link completeTask}. */
export async function reopenTask(context: SeriesContext, seriesId: string, taskId: string, revision: number): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task) => turnTo('Not done:', { ...task, doneAt: null }));
}
