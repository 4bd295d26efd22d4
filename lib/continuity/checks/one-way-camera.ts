import { startWith } from '@/lib/build';
import { makeCheck } from './check';

/** 40: what can be filmed once only is filmed by two cameras. */
export const oneWayCamera = makeCheck(40, 'warn', 'What can be filmed only once is filmed by two cameras', (facts) =>
  facts.document.tasks.filter(({ irreversible, coverage }) => irreversible && coverage !== 'none').flatMap((task) => {
    const takes = facts.takesOfTask.get(task.id) ?? [];
    const used = new Set(takes.map(({ take }) => take.cameraId));
    const isFilmed = task.doneAt !== null;
    if (isFilmed ? takes.length === 0 || used.size >= 2 : facts.document.cameras.length >= 2) return [];
    return [{
      key: task.id, about: [task],
      message: isFilmed ? `${startWith(task)} could be filmed only once, and one camera took it.` : `${startWith(task)} can be filmed only once, and ${facts.document.cameras.length === 0 ? 'no camera is recorded' : 'there is one camera'}.`,
      fix: isFilmed ? 'Copy its card first, twice.' : 'Borrow a second camera, or put a phone beside it.',
    }];
  }));
