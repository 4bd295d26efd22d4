import { issue } from '@/lib/result';
import type { Category } from '../model';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const COATED: readonly Category[] = ['paint', 'filler'];

/** Paint and filler tasks say which coats they lay: without them there is nothing to wait for. */
export const checkCoats: Rule = (document) =>
  document.tasks
    .filter((task) => COATED.includes(task.category) && task.coats.length === 0)
    .map((task) => issue('missing-coats', `${startWith(task)} is ${task.category} work but lays no coat, so its drying time is missing.`,
      'Add the material of each coat, or choose another category.', { path: ['coats'], subjects: subjectsOf(task) }));
