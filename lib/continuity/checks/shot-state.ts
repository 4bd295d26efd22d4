import { startWith, statesForShot, statesOf, type Shot, type Task } from '@/lib/build';
import { nameOfState, sayAt, type Facts } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

/** Shots of before that the plan takes when a part is not as its work finds it. */
function planned(facts: Facts) {
  return facts.blocks.filter(({ kind }) => kind === 'before-shot').flatMap((block) => {
    const task = facts.tasks.get(block.subject.id);
    return (task?.parts ?? []).flatMap(({ partId, from }) => {
      const part = facts.parts.get(partId);
      const line = facts.lineOf.get(partId);
      const found = line === undefined ? null : stateAt(line, block.start, 'planned');
      if (task === undefined || part === undefined || from === null || found?.stateId == null || found.stateId === from) return [];
      return [{
        key: `${block.id}/${part.id}`, about: [task, part],
        message: `“${block.title}” is planned for ${sayAt(facts, block.start)} and needs the part “${part.name}” ${nameOfState(part, from)}; it is ${nameOfState(part, found.stateId)} then.`,
        fix: 'Plan again, or correct the state in the log.',
      }];
    });
  });
}

/** The states a shot asks for itself, and those of the task's own parts that it does not name. */
function statesAsked(task: Task, shot: Shot): readonly { readonly partId: string; readonly allowed: readonly string[] | null }[] {
  const named = new Map(statesOf(shot).map(({ partId, stateId }) => [partId, [stateId]]));
  const own = task.parts.filter(({ partId }) => !named.has(partId)).map((use) => ({ partId: use.partId, allowed: statesForShot(use, shot.purpose) }));
  return [...[...named].map(([partId, allowed]) => ({ partId, allowed })), ...own];
}

/** 2: a shot is taken, and planned, while every part in it is in a state that it asks for. */
export const shotState = makeCheck(2, 'stop', 'Every shot shows its parts in the state that it needs', (facts) => [
  ...planned(facts),
  ...facts.takes.flatMap((take) => {
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
  }),
]);
