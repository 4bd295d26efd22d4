import { startWith, STAGE_WORDS } from '@/lib/build';
import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 5: work that waits for a coat starts no sooner than the coat, at the temperature it has, is ready. */
export const cureWait = makeCheck(5, 'stop', 'Nothing starts before the coat it waits for is ready', (facts) =>
  facts.document.links.flatMap((link) => {
    const { stage } = link;
    const next = link.to.kind === 'task' ? facts.blocksOfTask.get(link.to.id)?.[0] : undefined;
    const task = facts.tasks.get(link.to.id);
    if (stage === null || next === undefined || task === undefined) return [];
    const ready = Math.max(...facts.blocks.filter(({ kind, subject }) => kind === 'cure' && subject.id === link.from.id).map(({ stages }) => stages?.[stage] ?? -Infinity));
    const first = facts.blocks.find(({ kind, subject, stages }) => kind === 'cure' && subject.id === link.from.id && stages?.[stage] === ready);
    if (first?.stages == null || next.start >= ready) return [];
    return [{
      key: link.id, about: [task, facts.tasks.get(link.from.id), link],
      message: `${startWith(task)} starts on ${sayAt(facts, next.start)}, and the coat of “${facts.tasks.get(link.from.id)?.name ?? ''}” is ${STAGE_WORDS[stage]} only on ${sayAt(facts, first.stages[stage])}.`,
      fix: 'Start later, or heat the workshop meanwhile and plan again.',
    }];
  }));
