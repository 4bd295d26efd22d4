import { startWith, statesForShot, statesOf, type Shot, type Task } from '@/lib/build';
import { nameOfState, sayAt } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

/** The states a shot asks for itself, and those of the task's own parts that it does not name. */
function statesAsked(task: Task, shot: Shot): readonly { readonly partId: string; readonly allowed: readonly string[] | null }[] {
  const named = new Map(statesOf(shot).map(({ partId, stateId }) => [partId, [stateId]]));
  const own = task.parts.filter(({ partId }) => !named.has(partId)).map((use) => ({ partId: use.partId, allowed: statesForShot(use, shot.purpose) }));
  return [...[...named].map(([partId, allowed]) => ({ partId, allowed })), ...own];
}

/** 2: a take shows its parts in a state that its shot asks for. */
export const shotState = makeCheck(2, 'stop', 'Every take shows its parts in the state that its shot needs', (facts) =>
  facts.takes.flatMap((take) => {
    const task = take.taskId === null ? undefined : facts.tasks.get(take.taskId);
    const shot = task?.shots.find(({ id }) => id === take.shotId);
    if (task === undefined || shot === undefined || take.take.isReenacted) return [];
    return statesAsked(task, shot).flatMap(({ partId, allowed }) => {
      const part = facts.parts.get(partId);
      const line = facts.lineOf.get(partId);
      const found = line === undefined ? null : stateAt(line, take.at, 'observed');
      if (part === undefined || allowed === null || found?.stateId == null || allowed.includes(found.stateId)) return [];
      return [{
        key: `${take.id}/${part.id}`, about: [task, part],
        message: `${startWith(part)} was ${nameOfState(part, found.stateId)} when take ${take.take.number} of “${shot.name}” was filmed on ${sayAt(facts, take.at)}; the shot needs it ${allowed.map((id) => nameOfState(part, id)).join(' or ')}.`,
        fix: 'Correct the state in the log, mark the take as a re-enactment, or film it again.',
      }];
    });
  }));
