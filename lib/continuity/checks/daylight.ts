import { startWith } from '@/lib/build';
import { sayAt, sessionOf, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** 13: work that needs daylight has it. */
export const daylight = makeCheck(13, 'warn', 'Work that needs daylight has it', (facts) =>
  taskBlocks(facts).filter(({ task }) => task.conditions.needsDaylight).flatMap(({ block, task }) => block.pieces.flatMap((piece) => {
    const session = sessionOf(facts, piece, null);
    if (session === undefined || session.hasDaylight) return [];
    return [{ key: `${task.id}/${session.id}`, about: [task, session], message: `${startWith(task)} needs daylight, and “${session.name}” on ${sayAt(facts, piece.start)} has none.`, fix: 'Move it to a session with daylight.' }];
  })));
