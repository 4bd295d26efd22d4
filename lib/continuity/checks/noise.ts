import { startWith } from '@/lib/build';
import { overlaps, sayAt, sessionOf, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** 12: noise only where it is allowed, and no speech beside it. */
export const noise = makeCheck(12, 'stop', 'Noise is made only when it is allowed, and not while somebody speaks to camera', (facts) => {
  const blocks = taskBlocks(facts);
  const noisy = blocks.filter(({ task }) => task.isNoisy);
  const forbidden = noisy.flatMap(({ block, task }) => block.pieces.flatMap((piece) => {
    const session = sessionOf(facts, piece, null);
    if (session === undefined || session.isNoiseAllowed) return [];
    return [{ key: `${task.id}/${session.id}`, about: [task, session], message: `${startWith(task)} is noisy and planned for ${sayAt(facts, piece.start)}, when no noise is allowed.`, fix: 'Move it to a session with noise.' }];
  }));
  const spoken = blocks.filter(({ task }) => task.coverage === 'piece to camera' || task.shots.some(({ purpose }) => purpose === 'piece to camera'));
  const drowned = spoken.flatMap((speech) => noisy.filter(({ task, block }) => task !== speech.task && block.pieces.some((piece) => speech.block.pieces.some((other) => overlaps(piece, other)))).map(({ task }) => ({
    key: `${speech.task.id}+${task.id}`, about: [speech.task, task], severity: 'warn' as const,
    message: `${startWith(speech.task)} is spoken to camera on ${sayAt(facts, speech.block.start)} while “${task.name}” makes noise.`, fix: 'Speak before the noise starts.',
  })));
  return [...forbidden, ...drowned];
});
