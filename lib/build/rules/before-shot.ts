import { issue } from '@/lib/result';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A filmed step that cannot be done twice without a shot of how it was before is pointed out. */
export const checkBeforeShots: Rule = (document) =>
  document.tasks
    .filter((task) => task.irreversible && task.coverage !== 'none' && task.doneAt === null && !task.shots.some((shot) => shot.purpose === 'before'))
    .map((task) => issue('before-shot-missing', `${startWith(task)} is filmed and cannot be done a second time, but no shot shows how it was before.`,
      'Add a before-shot.', { severity: 'warn', path: ['shots'], subjects: subjectsOf(task) }));
