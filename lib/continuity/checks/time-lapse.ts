import { startWith } from '@/lib/build';
import { overlaps, sayAt, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** 36: a time-lapse keeps its camera and its place from beginning to end. */
export const timeLapse = makeCheck(36, 'stop', 'A time-lapse has its camera and its bench to itself', (facts) => {
  const blocks = taskBlocks(facts);
  const cameras = Math.max(1, facts.document.cameras.length);
  return blocks.filter(({ task }) => task.coverage === 'time-lapse' && task.doneAt === null).flatMap((lapse) => {
    const meanwhile = blocks.filter(({ task, block }) => task !== lapse.task && block.pieces.some((piece) => overlaps(piece, lapse.block)));
    const filmed = meanwhile.filter(({ task }) => task.coverage !== 'none');
    const there = meanwhile.filter(({ block }) => block.placeId !== null && block.placeId === lapse.block.placeId);
    const place = lapse.block.placeId === null ? undefined : facts.places.get(lapse.block.placeId);
    const [firstFilmed, firstThere] = [filmed[0], there[0]];
    return [
      ...(firstFilmed === undefined || filmed.length < cameras ? [] : [{
        key: `${lapse.task.id}/camera`, about: [lapse.task, firstFilmed.task], message: `${startWith(lapse.task)} keeps a camera from ${sayAt(facts, lapse.block.start)} to ${sayAt(facts, lapse.block.end)}, and “${firstFilmed.task.name}” needs one meanwhile; there ${cameras === 1 ? 'is 1' : `are ${cameras}`}.`,
        fix: 'Move one of them, or add the second camera to the records.',
      }]),
      ...(place === undefined || firstThere === undefined || there.length < place.capacity ? [] : [{
        key: `${lapse.task.id}/place`, about: [lapse.task, firstThere.task, place], message: `${startWith(lapse.task)} keeps “${place.name}” in picture until ${sayAt(facts, lapse.block.end)}, and “${firstThere.task.name}” is there meanwhile.`,
        fix: 'Move one of them.',
      }]),
    ];
  });
});
