import { startWith } from '@/lib/build';
import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 1: an irreversible task starts only once each must-have shot of before is in the can. */
export const beforeShot = makeCheck(1, 'stop', 'Every must-have shot of before is taken ahead of work that cannot be undone', (facts) =>
  facts.document.tasks.filter(({ irreversible }) => irreversible).flatMap((task) => {
    const block = facts.blocksOfTask.get(task.id)?.[0];
    const start = task.doneAt ?? block?.start ?? null;
    if (start === null) return [];
    const planned = facts.blocks.some((one) => one.kind === 'before-shot' && one.subject.id === task.id && one.end <= start);
    if (task.doneAt === null && start > facts.now && planned) return [];
    return task.shots.filter((shot) => shot.purpose === 'before' && shot.mustHave).flatMap((shot) => {
      const inTheCan = (shot.filmedAt !== null && shot.filmedAt <= start)
        || (facts.takesOfTask.get(task.id) ?? []).some((take) => take.shotId === shot.id && take.take.verdict === 'good' && take.at <= start);
      if (inTheCan) return [];
      const when = task.doneAt === null ? `is planned for ${sayAt(facts, start)}` : `was done on ${sayAt(facts, start)}`;
      return [{
        key: shot.id, about: [task], message: `${startWith(task)} cannot be undone and ${when}, and the shot “${shot.name}” has no good take from before it.`,
        fix: task.doneAt === null ? 'Film it first, or move the task.' : 'Look for the picture on the cards and log it; else tell it with a labelled re-enactment.',
      }];
    });
  }));
