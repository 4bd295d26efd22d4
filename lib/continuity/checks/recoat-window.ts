import { startWith } from '@/lib/build';
import { sayAt, taskBlocks } from '../facts';
import { makeCheck } from './check';

/** 6: a coat laid after the window of the one below has closed needs abrading in between. */
export const recoatWindow = makeCheck(6, 'warn', 'A coat over an older one comes within its window, or after abrading', (facts) => {
  const blocks = taskBlocks(facts);
  return facts.blocks.filter(({ kind }) => kind === 'cure').flatMap((cure) => {
    const until = cure.stages?.recoatUntil ?? null;
    if (until === null) return [];
    const later = blocks.filter(({ block }) => block.start >= cure.start && block.subject.id !== cure.subject.id && block.partIds.some((id) => cure.partIds.includes(id)));
    const next = later.find(({ task }) => task.coats.length > 0);
    if (next === undefined || next.block.start <= until) return [];
    const isAbraded = later.some(({ task, block }) => block.start < next.block.start && (task.category === 'clean' || task.category === 'strip'));
    if (isAbraded) return [];
    return [{
      key: `${cure.id}/${next.task.id}`, about: [next.task, facts.tasks.get(cure.subject.id)],
      message: `${startWith(next.task)} lays its coat on ${sayAt(facts, next.block.start)}, after the window of the one below closed on ${sayAt(facts, until)}.`,
      fix: 'Add a task that abrades it first, or move it into the window.',
    }];
  });
});
