import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A place holds at least one task. */
export const checkPlaceCapacities: Rule = (document) =>
  document.places
    .filter(({ capacity }) => !(Number.isInteger(capacity) && capacity >= 1))
    .map((place) => issue('place-capacity', `${startWith(place)} holds ${formatNumber(place.capacity)} tasks at once; it must be a whole number from 1.`,
      'Type 1 or more.', { path: ['capacity'], subjects: subjectsOf(place) }));
