import { LARGEST } from './calendar-index';
import type { Activity, Calendar, Resource } from './problem';

/** The rows of a problem by id. */
export interface Known {
  readonly calendars: ReadonlyMap<string, Calendar>;
  readonly resources: ReadonlyMap<string, Resource>;
  readonly activities: ReadonlyMap<string, Activity>;
}

/** A whole number from 0 that sums without overflow. */
export function isLength(value: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= LARGEST;
}

/** The same with either sign. */
export function isOffset(value: number): boolean {
  return Number.isInteger(value) && Math.abs(value) <= LARGEST;
}
