/** What is left of a plan as work is done. */
import type { SeriesDocument } from '@/lib/build';
import { beforeShots } from './compile/task-activities';
import type { PlanBlock, PlanResult } from './model';

/** True for worked blocks of which nothing is to be done any more. Waits are never worked. */
function isWorked({ outsideJobs, tasks }: SeriesDocument, { kind, subject }: PlanBlock): boolean {
  if (kind === 'drop-off' || kind === 'collection') {
    const job = outsideJobs.find(({ id }) => id === subject.id);
    return (kind === 'drop-off' ? job?.droppedOffAt : job?.collectedAt) != null;
  }
  if (kind !== 'task' && kind !== 'before-shot') return false;
  const task = tasks.find(({ id }) => id === subject.id);
  if (task === undefined) return false;
  return task.doneAt !== null || (kind === 'before-shot' && beforeShots(task).every(({ filmedAt }) => filmedAt !== null));
}

/** A plan without the blocks of work that is done: what a later plan no longer has because of that has not gone. */
export function openPlan(document: SeriesDocument, plan: PlanResult): PlanResult {
  return { ...plan, blocks: plan.blocks.filter((block) => !isWorked(document, block)) };
}
