/** Work that nobody does alone. */
import { crewSize, type SeriesDocument, type Task } from '@/lib/build';
import { findHazards } from './find-hazards';
import { listHazards } from './library-in-force';
import type { Hazard } from './model';

/**
 * The first hazard for which a task that asks for one person gets a second one; null where nobody is needed, or two are already.
 * @param hazards those in force, where the caller has them already
 */
export function asksForSecond(document: SeriesDocument, task: Task, hazards: readonly Hazard[] = listHazards(document)): Hazard | null {
  if (crewSize(task) !== 1) return null;
  return findHazards(document, task, hazards).found.find(({ hazard }) => hazard.needsSecondPerson)?.hazard ?? null;
}
