import { issue } from '@/lib/result';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Drying times without a source are pointed out. */
export const checkMaterialSources: Rule = (document) =>
  document.materials
    .filter((material) => material.source.trim() === '')
    .map((material) => issue('material-without-source', `${startWith(material)} has drying times without a source.`,
      'Name the data sheet that they come from.', { severity: 'warn', path: ['source'], subjects: subjectsOf(material) }));
