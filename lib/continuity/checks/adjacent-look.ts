import { lookAt, sayAt, takesOfPiece } from '../facts';
import type { AiredPiece } from '../airing';
import type { Look } from '@/lib/takes';
import { makeCheck } from './check';

const WORDS = { clothes: 'clothes', equipment: 'protective equipment', light: 'light', whiteBalance: 'white balance' } as const satisfies Partial<Record<keyof Look, string>>;
const KEYS = ['clothes', 'equipment', 'light', 'whiteBalance'] as const;

const plain = (text: string): string => text.trim().toLowerCase();

/** They show one time, so that nothing may jump: neither goes back on purpose, and no two days of the story are written down. */
function isOneTime(a: AiredPiece, b: AiredPiece): boolean {
  const [day, next] = [a.segment?.storyDate ?? null, b.segment?.storyDate ?? null];
  return !a.isFlashback && !b.isFlashback && (day === null || next === null || day === next);
}

/** 18: neighbouring pieces match in clothes, protective equipment and light. */
export const adjacentLook = makeCheck(18, 'warn', 'Neighbouring pieces match in clothes, protective equipment and light', (facts) => {
  const filmed = facts.airing.map((piece) => ({ piece, takes: takesOfPiece(facts, piece) })).filter(({ takes }) => takes.length > 0);
  return filmed.flatMap(({ piece, takes }, index) => {
    const before = filmed[index - 1];
    const [first, last] = [takes[0], before?.takes.at(-1)];
    if (before === undefined || first === undefined || last === undefined || before.piece.episodeId !== piece.episodeId || !isOneTime(before.piece, piece)) return [];
    const [was, is] = [lookAt(facts, last), lookAt(facts, first)];
    if (was === null || is === null) return [];
    const differs = KEYS.filter((key) => was[key] !== '' && is[key] !== '' && plain(was[key]) !== plain(is[key]));
    if (differs.length === 0) return [];
    return [{
      key: `${before.piece.id}>${piece.id}/${differs.join('+')}`, about: [facts.tasks.get(first.taskId ?? ''), facts.tasks.get(last.taskId ?? '')],
      message: `“${before.piece.name}” (${sayAt(facts, last.at)}) and “${piece.name}” (${sayAt(facts, first.at)}) follow each other and differ in ${differs.map((key) => `${WORDS[key]}: ${was[key]}, then ${is[key]}`).join('; ')}.`,
      fix: 'Put an insert or a cutaway between them, or say that it is another day.',
    }];
  });
});
