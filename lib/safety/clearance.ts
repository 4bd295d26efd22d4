/** How long the air of a place stays shut after a task that sprays isocyanate. */
import type { SeriesDocument, Task } from '@/lib/build';
import type { Result } from '@/lib/result';
import { isocyanateWait } from './exposure';
import { factsOfTask } from './task-facts';

/** Minutes after the task's end; null: it sprays none. Fails with `clearance-unknown` where nobody knows the air changes. */
export function clearanceOfTask(document: SeriesDocument, task: Task): Result<number> | null {
  const facts = factsOfTask(document, task).map(({ fact }) => fact);
  if (!facts.includes('isocyanate') || !facts.includes('spraying')) return null;
  return isocyanateWait(document.places.find(({ id }) => id === task.placeId)?.air.airChanges ?? null);
}
