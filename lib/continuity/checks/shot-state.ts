import { startWith } from '@/lib/build';
import { nameOfState, sayAt, statesForShot, type Facts } from '../facts';
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

/** 2: a shot is taken, and planned, while every part in it is in a state that it asks for. */
export const shotState = makeCheck(2, 'stop', 'Every shot shows its parts in the state that it needs', (facts) => [
  ...planned(facts),
  ...facts.takes.flatMap((take) => {
    const task = take.taskId === null ? undefined : facts.tasks.get(take.taskId);
    const shot = task?.shots.find(({ id }) => id === take.shotId);
    if (task === undefined || shot === undefined || take.take.isReenacted) return [];
    return task.parts.flatMap((use) => {
      const part = facts.parts.get(use.partId);
      const line = facts.lineOf.get(use.partId);
      const allowed = statesForShot(use, shot.purpose);
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
