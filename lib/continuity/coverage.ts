/** What filmed work still lacks in pictures. */
import type { Task } from '@/lib/build';
import type { Facts } from './facts';
import type { TakeEntry } from '@/lib/takes';
import { once } from './once';

/** Coverage for which a wide and a close picture are asked. */
const NEEDS_SIZES: readonly Task['coverage'][] = ['locked-off', 'moved camera', 'inserts and teaching'];

export interface Gap {
  readonly task: Task;
  /** `a wide picture`, `a close picture`, `the result`. */
  readonly missing: readonly string[];
}

/** Of a shot of after, or taken once the work was done. */
function isResult(task: Task, take: TakeEntry): boolean {
  return task.shots.some((shot) => shot.id === take.shotId && shot.purpose === 'after') || (task.doneAt !== null && take.at >= task.doneAt);
}

/** Tasks whose result the story shows. */
function shownAsResults({ document }: Facts): ReadonlySet<string> {
  return new Set(document.segments.filter((segment) => segment.isResult).flatMap(({ taskIds }) => taskIds));
}

/** What a pickup films, in words; its task and shot are called by them. @example sayPicture('a wide picture', strip) // 'a wide picture of “Strip”' */
export function sayPicture(what: string, task: Pick<Task, 'name'>): string {
  return `${what} of “${task.name}”`;
}

/** Pictures that were filmed later, by their words. */
export const filmedLater = once((facts: Facts): ReadonlySet<string> => new Set(facts.document.tasks.flatMap((task) => {
  const good = (facts.takesOfTask.get(task.id) ?? []).filter(({ take }) => take.verdict === 'good');
  return task.shots.filter(({ id, purpose }) => purpose === 'pickup' && good.some(({ shotId }) => shotId === id || shotId === null)).map(({ name }) => name);
})));

/** Done and filmed tasks whose good takes do not cover them. Work that was done before the first take in the log is left out: the log was not kept yet. */
export function findGaps(facts: Facts): readonly Gap[] {
  const results = shownAsResults(facts);
  const kept = facts.takes[0]?.at ?? Infinity;
  return facts.document.tasks.flatMap((task) => {
    const takes = (facts.takesOfTask.get(task.id) ?? []);
    if (task.doneAt === null || !NEEDS_SIZES.includes(task.coverage) || (takes.length === 0 && task.doneAt < kept)) return [];
    const good = takes.filter(({ take }) => take.verdict === 'good');
    const wantsResult = results.has(task.id) || task.shots.some(({ purpose }) => purpose === 'after');
    const missing = [
      ...(good.some(({ take }) => take.size === 'wide') ? [] : ['a wide picture']),
      ...(good.some(({ take }) => take.size === 'close') ? [] : ['a close picture']),
      ...(!wantsResult || good.some((take) => isResult(task, take)) ? [] : ['the result']),
    ].filter((what) => !filmedLater(facts).has(sayPicture(what, task)));
    return missing.length === 0 ? [] : [{ task, missing }];
  });
}
