/** The hazards of a task, found from its facts; people add to them and take from them by signed statements. */
import type { HazardFact, SeriesDocument, Statement, Task } from '@/lib/build';
import { listHazards } from './library-in-force';
import type { Hazard, Trigger } from './model';
import { factsOfTask, type FoundFact } from './task-facts';

export interface FoundHazard {
  readonly hazard: Hazard;
  /** Facts that set it off; empty when only a person added it. */
  readonly because: readonly FoundFact[];
  /** A person added it. */
  readonly added: Statement | null;
  /** The facts say to leave it to somebody licensed or equipped for it. */
  readonly isDeferred: boolean;
}

/** Found by the facts, taken out by a person with a reason. It stays on record. */
export interface RemovedHazard {
  readonly hazard: Hazard;
  readonly because: readonly FoundFact[];
  readonly statement: Statement;
}

export interface TaskHazardList {
  /** In the order of the library. */
  readonly found: readonly FoundHazard[];
  readonly removed: readonly RemovedHazard[];
}

/** The facts of the first group that is complete, or null. */
function matchTrigger(trigger: Trigger, facts: ReadonlySet<HazardFact>): readonly HazardFact[] | null {
  return trigger.find((group) => group.length > 0 && group.every((fact) => facts.has(fact))) ?? null;
}

function isDeferred({ deferral }: Hazard, facts: ReadonlySet<HazardFact>): boolean {
  if (deferral === null) return false;
  return deferral.when === 'always' || matchTrigger(deferral.when, facts) !== null;
}

/** The last word of a person on a hazard of a task. */
function latestRuling({ statements }: SeriesDocument, taskId: string, hazardId: string): Statement | null {
  return statements.findLast(({ about }) =>
    (about.sort === 'hazard-added' || about.sort === 'hazard-removed') && about.taskId === taskId && about.hazardId === hazardId) ?? null;
}

/** What a task can do to people, as far as its facts tell. Nothing found does not mean that there is nothing. */
export function findHazards(document: SeriesDocument, task: Task, hazards: readonly Hazard[] = listHazards(document)): TaskHazardList {
  const facts = factsOfTask(document, task);
  const known = new Set(facts.map(({ fact }) => fact));
  const found: FoundHazard[] = [];
  const removed: RemovedHazard[] = [];
  for (const hazard of hazards) {
    const group = matchTrigger(hazard.trigger, known);
    const because = facts.filter(({ fact }) => group?.includes(fact) ?? false);
    const ruling = latestRuling(document, task.id, hazard.id);
    if (ruling?.about.sort === 'hazard-removed') removed.push({ hazard, because, statement: ruling });
    else if (group !== null || ruling !== null) found.push({ hazard, because, added: ruling, isDeferred: isDeferred(hazard, known) });
  }
  return { found, removed };
}
