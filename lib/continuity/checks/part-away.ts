import { startWith, type Part } from '@/lib/build';
import { overlaps, sayAt, type Facts } from '../facts';
import { whereaboutsAt } from '../state-line';
import { makeCheck } from './check';

function tradeName(facts: Facts, id: string | null): string {
  return facts.document.trades.find((trade) => trade.id === id)?.name ?? 'a trade';
}

function partsOf(facts: Facts, ids: readonly string[]): readonly Part[] {
  return ids.flatMap((id) => facts.parts.get(id) ?? []);
}

/** 3: nothing is filmed or worked on while it is at an outside trade. */
export const partAway = makeCheck(3, 'stop', 'No part is filmed or worked on while it is away', (facts) => {
  const filmed = facts.takes.flatMap((take) => {
    const task = take.taskId === null ? undefined : facts.tasks.get(take.taskId);
    return partsOf(facts, task?.parts.map(({ partId }) => partId) ?? []).flatMap((part) => {
      const line = facts.lineOf.get(part.id);
      const where = line === undefined ? null : whereaboutsAt(line, take.at, 'observed');
      if (where?.whereabouts?.kind !== 'trade') return [];
      return [{
        key: `${take.id}/${part.id}`, about: [task, part],
        message: `${startWith(part)} was away at ${tradeName(facts, where.whereabouts.id)} when take ${take.take.number} was logged on ${sayAt(facts, take.at)}.`,
        fix: 'Correct the drop-off or collection, or the part that the take shows.',
      }];
    });
  });
  const away = facts.blocks.filter(({ kind }) => kind === 'away');
  const planned = facts.blocks.filter(({ kind }) => kind === 'task' || kind === 'before-shot' || kind === 'late-work').flatMap((block) =>
    away.filter((gone) => overlaps(gone, block)).flatMap((gone) => partsOf(facts, block.partIds.filter((id) => gone.partIds.includes(id))).map((part) => ({
      key: `${block.id}/${part.id}`, about: [facts.tasks.get(block.subject.id), part],
      message: `“${block.title}” on ${sayAt(facts, block.start)} needs the part “${part.name}”, which is away until ${sayAt(facts, gone.end)}.`,
      fix: 'Plan again, or move the collection.',
    }))));
  return [...filmed, ...planned];
});
