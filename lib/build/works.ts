/** Tasks and outside jobs alike: both take parts from one state to another. */
import type { OutsideJob, PartUse, SeriesDocument, Task, WorkRef } from './model';

export interface Work {
  readonly ref: WorkRef;
  readonly record: Task | OutsideJob;
  readonly parts: readonly PartUse[];
}

/** All work of a series, tasks first, done work included. */
export function listWorks(document: SeriesDocument): readonly Work[] {
  return [...document.tasks, ...document.outsideJobs].map((record) => ({
    ref: { kind: record.kind, id: record.id }, record, parts: record.parts,
  }));
}

/** One text for a piece of work, for maps. @example workKey({ kind: 'task', id: 't1' }) // 'task:t1' */
export function workKey(ref: WorkRef): string {
  return `${ref.kind}:${ref.id}`;
}

/** The task or outside job, or undefined. */
export function findWork(document: SeriesDocument, ref: WorkRef): Task | OutsideJob | undefined {
  const list: readonly (Task | OutsideJob)[] = ref.kind === 'task' ? document.tasks : document.outsideJobs;
  return list.find((record) => record.id === ref.id);
}

/** Done: a finished task, or a job whose parts are back. */
export function isDone(work: Task | OutsideJob): boolean {
  return work.kind === 'task' ? work.doneAt !== null : work.collectedAt !== null;
}
