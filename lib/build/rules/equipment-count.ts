import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** There is at least one of each piece of equipment. */
export const checkEquipmentCounts: Rule = (document) =>
  document.equipment
    .filter(({ count }) => !(Number.isInteger(count) && count >= 1))
    .map((record) => issue('equipment-count', `${startWith(record)} is there ${formatNumber(record.count)} times; it must be a whole number from 1.`,
      'Type 1 or more.', { path: ['count'], subjects: subjectsOf(record) }));
