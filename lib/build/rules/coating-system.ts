import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const MOST_COATS = 20;

/** A coating system has layers, each of a whole number of coats that take time. */
export const checkCoatingSystems: Rule = (document) => document.coatingSystems.flatMap((system) => {
  const subjects = subjectsOf(system);
  if (system.layers.length === 0) return [issue('system-empty', `${startWith(system)} has no layer.`, 'Add the first one.', { severity: 'warn', path: ['layers'], subjects })];
  return system.layers.flatMap(({ coats, work }, index) => {
    const counts = Number.isInteger(coats) && coats >= 1 && coats <= MOST_COATS ? [] : [
      issue('system-coats', `${startWith(system)}, layer ${index + 1}: ${formatNumber(coats)} coats.`, `Type a whole number from 1 to ${MOST_COATS}.`, { path: ['layers', index, 'coats'], subjects }),
    ];
    if (work >= 0) return counts;
    return [...counts, issue('system-work', `${startWith(system)}, layer ${index + 1} takes ${formatNumber(work)} min.`, 'Type 0 min or more.', { path: ['layers', index, 'work'], subjects })];
  });
});
