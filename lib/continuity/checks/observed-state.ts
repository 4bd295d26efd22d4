import { startWith } from '@/lib/build';
import { nameOfState, sayAt } from '../facts';
import { makeCheck } from './check';

/** 34: what is seen agrees with what the records say. */
export const observedState = makeCheck(34, 'warn', 'What somebody saw agrees with what the records say', (facts) =>
  facts.disagreements.map(({ partId, at, about, seen, said }) => {
    const part = facts.parts.get(partId);
    const subject = part === undefined ? 'A part' : startWith(part);
    const words = about === 'state'
      ? `${seen.source.kind === 'log' ? 'was seen' : 'is'} ${nameOfState(part, seen.stateId)} (${seen.source.name}), while ${said.isPlanned ? 'the plan' : 'the record'} says ${nameOfState(part, said.stateId)} (${said.source.name})`
      : `was seen ${seen.whereabouts?.kind === 'trade' ? 'away' : 'here'} (${seen.source.name}), while the record says ${said.whereabouts?.kind === 'trade' ? 'away' : 'here'} (${said.source.name})`;
    return {
      key: `${partId}/${seen.source.id}/${said.source.id}`, about: [part, said.source.kind === 'task' ? facts.tasks.get(said.source.id) : facts.jobs.get(said.source.id)],
      message: `${subject} ${words}, at ${sayAt(facts, at)}.`, fix: 'Look at the part. Then mark the work as done, or log what you see.',
    };
  }));
