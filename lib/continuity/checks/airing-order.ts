import { shownStates, type Part, type SeriesRecord, type Task } from '@/lib/build';
import type { Instant } from '@/lib/units';
import type { AiredPiece } from '../airing';
import { nameOfState, sayAt, type Facts } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

interface Shown {
  readonly piece: AiredPiece;
  readonly task: Task;
  readonly partId: string;
  readonly place: number;
  readonly stateId: string;
  /** When it was filmed, or what it shows is done or planned. */
  readonly at: Instant;
}

type Seen = Pick<Shown, 'partId' | 'stateId' | 'at'>;

/** What the takes of a task show: each part in the state it was in at the last of them that is not failed. */
function seenInTakes(facts: Facts, task: Task): readonly Seen[] | null {
  const last = (facts.takesOfTask.get(task.id) ?? []).findLast(({ take }) => take.verdict !== 'no good' && !take.isReenacted);
  if (last === undefined) return null;
  return task.parts.flatMap(({ partId }) => {
    const line = facts.lineOf.get(partId);
    const state = line === undefined ? null : stateAt(line, last.at, 'observed');
    return state?.stateId == null ? [] : [{ partId, stateId: state.stateId, at: last.at }];
  });
}

/** Without takes: each part as its shots show it or the work leaves it, when that is done, or planned to be. */
function seenInWork(facts: Facts, task: Task): readonly Seen[] {
  const at = task.doneAt ?? facts.blocksOfTask.get(task.id)?.[0]?.end ?? null;
  return at === null ? [] : shownStates(task).map(({ partId, stateId }) => ({ partId, stateId, at }));
}

/** What viewers see of each part, in the order of airing. */
function listShown(facts: Facts): ReadonlyMap<string, readonly Shown[]> {
  const shown = new Map<string, Shown[]>(facts.document.parts.map(({ id }) => [id, []]));
  const places = new Map(facts.document.parts.map((part) => [part.id, new Map(part.states.map(({ id }, index) => [id, index]))]));
  for (const piece of facts.airing) {
    for (const task of piece.taskIds.flatMap((id) => facts.tasks.get(id) ?? [])) {
      for (const seen of seenInTakes(facts, task) ?? seenInWork(facts, task)) {
        const place = places.get(seen.partId)?.get(seen.stateId);
        if (place !== undefined) shown.get(seen.partId)?.push({ ...seen, piece, task, place });
      }
    }
  }
  return shown;
}

function describe(facts: Facts, part: Part, before: Shown, shown: Shown) {
  const about: readonly (SeriesRecord | undefined)[] = [shown.piece.segment ?? shown.task, before.piece.segment ?? before.task, part];
  return {
    key: `${part.id}/${before.piece.id}>${shown.piece.id}`, about,
    message: `“${shown.piece.name}” shows the part “${part.name}” ${nameOfState(part, shown.stateId)} (${sayAt(facts, shown.at)}) after “${before.piece.name}” has shown it ${nameOfState(part, before.stateId)} (${sayAt(facts, before.at)}).`,
    fix: shown.piece.segment === null ? 'Air them the other way round, or make segments of them and mark the later one as a flashback.' : 'Air them the other way round, or mark the later one as a flashback.',
  };
}

/** 17: what viewers see does not run backwards without saying so. A part that was filmed again after going back runs forwards. */
export const airingOrder = makeCheck(17, 'warn', 'No part goes back in time between one picture and the next unless it is marked as a flashback', (facts) => {
  const shownOf = listShown(facts);
  return facts.document.parts.flatMap((part) => {
    let furthest: Shown | null = null;
    return (shownOf.get(part.id) ?? []).flatMap((shown) => {
      const before: Shown | null = furthest;
      if (shown.piece.isFlashback) return [];
      if (before === null || shown.at >= before.at || shown.place > before.place) {
        furthest = shown;
        return [];
      }
      return shown.place === before.place || shown.piece === before.piece ? [] : [describe(facts, part, before, shown)];
    });
  });
});
