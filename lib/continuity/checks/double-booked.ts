import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 10: nobody is in two places at once. */
export const doubleBooked = makeCheck(10, 'stop', 'Nobody is booked twice at the same time', (facts) =>
  facts.document.people.flatMap((person) => {
    const booked = facts.blocks.filter(({ crewIds }) => crewIds.includes(person.id))
      .flatMap((block) => block.pieces.map((piece) => ({ ...piece, block }))).toSorted((a, b) => a.start - b.start);
    return booked.flatMap((second, index) => {
      const first = booked.slice(0, index).findLast((one) => one.end > second.start && one.block !== second.block);
      if (first === undefined) return [];
      return [{
        key: `${person.id}/${first.block.id}+${second.block.id}`, about: [facts.tasks.get(second.block.subject.id), facts.tasks.get(first.block.subject.id), person],
        message: `${person.name} is booked for “${first.block.title}” and “${second.block.title}” at ${sayAt(facts, second.start)}.`,
        fix: 'Plan again, or let somebody else do one of them.',
      }];
    });
  }));
