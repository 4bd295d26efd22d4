/** Hazards of tasks, as far as the checks of the crew need them. */
import type { Task } from '@/lib/build';
import { findHazards, listHazards, type FoundHazard, type Hazard } from '@/lib/safety';
import type { Facts } from './facts';
import { once } from './once';

const libraryOf = once((facts: Facts): readonly Hazard[] => listHazards(facts.document));

/** What a task can do to people. */
export function hazardsOf(facts: Facts, task: Task): readonly FoundHazard[] {
  return findHazards(facts.document, task, libraryOf(facts)).found;
}
