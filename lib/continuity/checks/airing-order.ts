import { shownStates, type Task } from '@/lib/build';
import type { Instant } from '@/lib/units';
import { nameOfState, type AiredPiece, type Facts } from '../facts';
import { makeCheck } from './check';

interface Shown {
  readonly piece: AiredPiece;
  readonly task: Task;
  readonly place: number;
  readonly stateId: string;
  readonly at: Instant;
}

/** When work is shown to happen: done, or planned. */
function momentOf(facts: Facts, task: Task): Instant | null {
  return task.doneAt ?? facts.blocksOfTask.get(task.id)?.[0]?.end ?? null;
}

/** What viewers see of each part, in the order of airing. */
function listShown(facts: Facts): ReadonlyMap<string, readonly Shown[]> {
  const shown = new Map<string, Shown[]>(facts.document.parts.map(({ id }) => [id, []]));
  const places = new Map(facts.document.parts.map((part) => [part.id, new Map(part.states.map(({ id }, index) => [id, index]))]));
  for (const piece of facts.airing) {
    for (const task of piece.taskIds.flatMap((id) => facts.tasks.get(id) ?? [])) {
      const at = momentOf(facts, task);
      for (const { partId, stateId } of shownStates(task)) {
        const place = places.get(partId)?.get(stateId);
        if (place !== undefined && at !== null) shown.get(partId)?.push({ piece, task, place, stateId, at });
      }
    }
  }
  return shown;
}

/** 17: what viewers see does not run backwards without saying so. */
export const airingOrder = makeCheck(17, 'warn', 'No part goes back in time between one picture and the next unless it is marked as a flashback', (facts) => {
  const shownOf = listShown(facts);
  return facts.document.parts.flatMap((part) => {
    let furthest: Shown | null = null;
    return (shownOf.get(part.id) ?? []).flatMap((shown) => {
      const before: Shown | null = furthest;
      if (before === null || (shown.at >= before.at || shown.place > before.place)) {
        furthest = shown;
        return [];
      }
      if (shown.piece.isFlashback || shown.place === before.place || shown.piece === before.piece) return [];
      return [{
        key: `${part.id}/${before.piece.id}>${shown.piece.id}`, about: [shown.task, before.task, part],
        message: `“${shown.piece.name}” shows the part “${part.name}” ${nameOfState(part, shown.stateId)} after “${before.piece.name}” has shown it ${nameOfState(part, before.stateId)}.`,
        fix: 'Air them the other way round, or mark the later one as a flashback.',
      }];
    });
  });
});
