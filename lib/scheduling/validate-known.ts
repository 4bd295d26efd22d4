import { LARGEST } from './calendar-index';
import type { Activity, Calendar, Minutes, Resource } from './problem';

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

/** One plain walk: tables have tens of thousands of entries. */
function walkTable(ready: Minutes, step: number): number {
  let before = 0;
  for (let k = 0; k < ready.length; k += 1) {
    const minute = ready[k]!;
    if (!isLength(minute) || minute < before || minute < k * step) return k;
    before = minute;
  }
  return -1;
}

const checkedTables = new WeakMap<Minutes, Map<number, number>>();

/** The first entry of a table that is no minute, comes before the one before it, or before k * `step`; -1 when all is well. Many lags share a table. */
export function findWrongEntry(ready: Minutes, step: number): number {
  const ofTable = checkedTables.get(ready) ?? new Map<number, number>();
  checkedTables.set(ready, ofTable);
  // What is right for steps is right without.
  const isRight = step === 0 && [...ofTable.values()].includes(-1);
  const wrong = ofTable.get(step) ?? (isRight ? -1 : walkTable(ready, step));
  ofTable.set(step, wrong);
  return wrong;
}
