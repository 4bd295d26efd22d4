import { startWith } from '@/lib/build';
import { nameOfState, sayAt, statesForShot } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

/** 2: a take shows its parts in a state that its shot asks for. */
export const shotState = makeCheck(2, 'stop', 'Every take shows its parts in the state that its shot needs', (facts) =>
  facts.takes.flatMap((take) => {
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
  }));
