import { issue } from '@/lib/result';
import { quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A step that cannot be done twice, done before its must-have before-shot was filmed, is pointed out: the shot is lost. */
export const checkMissedBeforeShots: Rule = (document) =>
  document.tasks.flatMap((task) =>
    task.shots
      .filter((shot) => task.irreversible && task.doneAt !== null && shot.mustHave && shot.purpose === 'before' && shot.filmedAt === null)
      .map((shot) => issue('before-shot-missed', `${startWith(task)} is done and cannot be undone, but its before-shot ${quoteName(shot.name)} is not marked as filmed.`,
        'Mark the shot as filmed, or tell its story with a re-enactment that is labelled as one.', { severity: 'warn', path: ['shots'], subjects: subjectsOf(task) })));

/** A filmed step that cannot be done twice without a shot of how it was before is pointed out. */
export const checkBeforeShots: Rule = (document) =>
  document.tasks
    .filter((task) => task.irreversible && task.coverage !== 'none' && task.doneAt === null && !task.shots.some((shot) => shot.purpose === 'before'))
    .map((task) => issue('before-shot-missing', `${startWith(task)} is filmed and cannot be done a second time, but no shot shows how it was before.`,
      'Add a before-shot.', { severity: 'warn', path: ['shots'], subjects: subjectsOf(task) }));
