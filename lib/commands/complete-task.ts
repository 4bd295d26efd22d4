import { listOpenBefore, type OutsideJob, type Task } from '@/lib/build';
import { fail, issue, type Issue, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import type { Saved } from './save-edited';

/** Work before it that is still open: ask about it, leave it open, or say that it is done too. */
export type OpenBefore = 'ask' | 'leave' | 'too';

interface Completion {
  /** Left out: now. */
  readonly doneAt?: Instant;
  /** Left out: ask. */
  readonly before?: OpenBefore;
}

const MOST_NAMED = 3;

function askAbout(task: Task, open: readonly (Task | OutsideJob)[]): Issue {
  const names = open.slice(0, MOST_NAMED).map(({ name }) => name);
  const rest = open.length - names.length;
  const told = `${names.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
  const job = open.find(({ kind }) => kind === 'outsideJob');
  const fix = job === undefined ? `Say that ${open.length === 1 ? 'it is' : 'they are'} done too, or press again when it is done all the same.` : `Record the trips of ${job.name} in Waits, or press again when it is done all the same.`;
  return issue('work-before-open', `Before ${task.name} comes work that is not ticked: ${told}.`, fix, { severity: 'warn', subjects: open.map(({ id, kind, name }) => ({ kind, id, name })) });
}

/**
 * Says that a task is done, now or at the moment given. Fails with `work-before-open` while work that comes before it is open and nobody
 * has said what of that, and with `record-missing`, `stale-record` or `nothing-changed`.
 */
export async function completeTask(context: SeriesContext, seriesId: string, taskId: string, revision: number, { before = 'ask', doneAt = context.now() }: Completion = {}): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'task', id: taskId, revision }, (task, document) => {
    const open = task.doneAt === null && before !== 'leave' ? listOpenBefore(document, { kind: 'task', id: task.id }) : [];
    if (open.length > 0 && (before === 'ask' || open.some(({ kind }) => kind === 'outsideJob'))) return fail([askAbout(task, open)]);
    const others = open.flatMap((one) => (one.kind === 'task' ? [{ ...one, doneAt }] : []));
    return turnTo(others.length === 0 ? 'Done:' : `Done with ${others.length} before it:`, { ...task, doneAt }, ...others);
  });
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
