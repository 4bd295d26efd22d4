import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 11: no more tasks at a place than fit. */
export const placeFull = makeCheck(11, 'stop', 'No more work at a place than fits there', (facts) =>
  facts.document.places.flatMap((place) => {
    const pieces = facts.blocks.filter(({ kind, placeId }) => placeId === place.id && (kind === 'task' || kind === 'before-shot' || kind === 'late-work'))
      .flatMap((block) => block.pieces.map((piece) => ({ ...piece, block }))).toSorted((a, b) => a.start - b.start);
    return pieces.flatMap((piece) => {
      const there = pieces.filter((other) => other.start <= piece.start && other.end > piece.start);
      if (there.length <= place.capacity || there.at(-1) !== piece) return [];
      return [{
        key: `${place.id}/${there.map(({ block }) => block.id).join('+')}`, about: [facts.tasks.get(piece.block.subject.id), place],
        message: `At “${place.name}” there are ${there.length} tasks at ${sayAt(facts, piece.start)}, and ${place.capacity} fit: ${there.map(({ block }) => `“${block.title}”`).join(', ')}.`,
        fix: 'Plan again, or work somewhere else.',
      }];
    });
  }));
