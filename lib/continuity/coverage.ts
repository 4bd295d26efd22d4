/** What filmed work still lacks in pictures. */
import type { Task } from '@/lib/build';
import type { Facts } from './facts';
import type { TakeEntry } from './log-entry';

/** Coverage for which a wide and a close picture are asked. */
const NEEDS_SIZES: readonly Task['coverage'][] = ['locked-off', 'moved camera', 'inserts and teaching'];

export interface Gap {
  readonly task: Task;
  /** `a wide picture`, `a close picture`, `the result`. */
  readonly missing: readonly string[];
}

function isResult(task: Task, take: TakeEntry): boolean {
  return task.shots.some((shot) => shot.id === take.shotId && shot.purpose === 'after');
}

/** Done and filmed tasks whose good takes do not cover them. Work without any take in the log is left out: it was filmed before the log was kept, or not at all. */
export function findGaps(facts: Facts): readonly Gap[] {
  return facts.document.tasks.flatMap((task) => {
    const takes = (facts.takesOfTask.get(task.id) ?? []);
    if (task.doneAt === null || !NEEDS_SIZES.includes(task.coverage) || takes.length === 0) return [];
    const good = takes.filter(({ take }) => take.verdict === 'good');
    const wantsResult = task.shots.some(({ purpose }) => purpose === 'after');
    const missing = [
      ...(good.some(({ take }) => take.size === 'wide') ? [] : ['a wide picture']),
      ...(good.some(({ take }) => take.size === 'close') ? [] : ['a close picture']),
      ...(!wantsResult || good.some((take) => isResult(task, take)) ? [] : ['the result']),
    ];
    return missing.length === 0 ? [] : [{ task, missing }];
  });
}
