import { startWith } from '@/lib/build';
import { addMinutes } from '@/lib/units';
import { overlaps, sayAt, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** Minutes that dust takes to settle; 30 to 60 is common practice. */
const SETTLE = 45;

/** 8: no dust in the air that a wet coat shares, from before it is laid until it is touch dry. */
export const dustInAir = makeCheck(8, 'stop', 'No dust is made in the air of a wet coat', (facts) => {
  const blocks = taskBlocks(facts);
  const zoneOf = (placeId: string | null): string | undefined => (placeId === null ? undefined : facts.places.get(placeId)?.airZone);
  const dusty = blocks.filter(({ task }) => task.isDusty);
  return facts.blocks.filter(({ kind }) => kind === 'cure').flatMap((cure) => {
    const painted = blocks.find(({ task }) => task.id === cure.subject.id);
    if (painted === undefined || cure.stages === null) return [];
    const wet = { start: painted.block.start, end: cure.stages.touchDry };
    return dusty.filter(({ block, task }) => task !== painted.task && zoneOf(block.placeId) !== undefined && zoneOf(block.placeId) === zoneOf(painted.block.placeId)
      && block.pieces.some((piece) => overlaps({ start: piece.start, end: addMinutes(piece.end, SETTLE) }, wet))).map(({ block, task }) => ({
      key: `${task.id}/${cure.id}`, about: [task, painted.task],
      message: `${startWith(task)} makes dust on ${sayAt(facts, block.start)} in the air of “${painted.task.name}”, which is wet from ${sayAt(facts, wet.start)} to ${sayAt(facts, wet.end)}; dust takes ${SETTLE} min to settle.`,
      fix: 'Move one of them, or work in other air.',
    }));
  });
});
