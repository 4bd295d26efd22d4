import { FAR } from './calendar-index';
import type { Model } from './model';
import { PLACED } from './placer';
import type { Score } from './problem';

/** Objective terms in strict order. */
export const TERMS = 5;

/** Dated activities as arrays. */
export interface Dates {
  readonly status: Uint8Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Resource in each crew slot. */
  readonly crew: Int32Array;
}

/** Writes the terms of the objective into `into`. */
export function rate(model: Model, dates: Dates, into: Float64Array): void {
  let unplaced = 0;
  let tardiness = 0;
  let moved = 0;
  let makespan = 0;
  let sum = 0;
  for (let i = 0; i < model.count; i += 1) {
    const previous = model.previous[i]!;
    if (dates.status[i] !== PLACED) {
      unplaced += 1;
      // What is left out is at least as late as the horizon.
      tardiness += lateness(model, i, model.horizon);
      if (previous >= 0) moved += 1;
      continue;
    }
    const end = dates.end[i]!;
    tardiness += lateness(model, i, end);
    if (previous >= 0 && (previous !== dates.start[i] || hasOtherCrew(model, i, dates.crew))) moved += 1;
    if (end > makespan) makespan = end;
    sum += end;
  }
  into[0] = unplaced;
  into[1] = tardiness;
  into[2] = moved;
  into[3] = makespan;
  into[4] = sum;
}

/** True when the people are not those of the accepted plan, whatever their order. */
function hasOtherCrew(model: Model, activity: number, chosen: Int32Array): boolean {
  const { crew, previousCrew } = model;
  if (previousCrew.isGiven[activity] === 0) return false;
  const first = previousCrew.from[activity]!;
  const last = previousCrew.from[activity + 1]!;
  if (last - first !== crew.from[activity + 1]! - crew.from[activity]!) return true;
  for (let slot = crew.from[activity]!; slot < crew.from[activity + 1]!; slot += 1) {
    let at = first;
    while (at < last && previousCrew.resource[at] !== chosen[slot]) at += 1;
    if (at === last) return true;
  }
  return false;
}

/** Weighted minutes an activity that ends at `end` is late. */
export function lateness(model: Model, activity: number, end: number): number {
  const due = model.dueAt[activity]!;
  return due < FAR && end > due ? model.dueWeight[activity]! * (end - due) : 0;
}

/** Below 0 when `a` is better, above when `b` is, 0 when they are equal. */
export function compareTerms(a: Float64Array, b: Float64Array): number {
  for (let k = 0; k < TERMS; k += 1) {
    const difference = a[k]! - b[k]!;
    if (difference !== 0) return difference;
  }
  return 0;
}

export function toScore(terms: Float64Array): Score {
  return { unplaced: terms[0]!, tardiness: terms[1]!, moved: terms[2]!, makespan: terms[3]!, sumOfEnds: terms[4]! };
}
