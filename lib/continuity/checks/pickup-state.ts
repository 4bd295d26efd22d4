import { startWith } from '@/lib/build';
import { nameOfState, sayAt } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

/** 19: a pickup shows its parts as the pictures that it goes between. */
export const pickupState = makeCheck(19, 'warn', 'A pickup shows its parts in the state of the pictures around it', (facts) =>
  facts.document.tasks.flatMap((task) => {
    const pickups = new Set(task.shots.filter(({ purpose }) => purpose === 'pickup').map(({ id }) => id));
    if (pickups.size === 0) return [];
    const takes = facts.takesOfTask.get(task.id) ?? [];
    const master = takes.findLast((take) => (take.shotId === null || !pickups.has(take.shotId)) && take.take.verdict === 'good');
    if (master === undefined) return [];
    return takes.filter(({ shotId }) => shotId !== null && pickups.has(shotId)).flatMap((take) => task.parts.flatMap(({ partId }) => {
      const line = facts.lineOf.get(partId);
      const part = facts.parts.get(partId);
      if (line === undefined || part === undefined) return [];
      const [was, is] = [stateAt(line, master.at, 'observed')?.stateId, stateAt(line, take.at, 'observed')?.stateId];
      if (was == null || is == null || was === is) return [];
      return [{
        key: `${take.id}/${partId}`, about: [task, part],
        message: `The pickup of ${sayAt(facts, take.at)} shows the part “${part.name}” ${nameOfState(part, is)}; ${startWith(task).replace('The', 'the')} was filmed with it ${nameOfState(part, was)}.`,
        fix: 'Use it only where the part is out of frame, or label it as filmed later.',
      }];
    }));
  }));
