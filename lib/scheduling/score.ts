import { FAR } from './calendar-index';
import type { Model } from './model';
import { TERMS } from './objective';
import { PLACED } from './placer';
import type { Score } from './problem';

/** Dated activities as arrays. */
export interface Dates {
  readonly status: Uint8Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Resource in each crew slot. */
  readonly crew: Int32Array;
}

/** Writes the terms of the objective into `into`, in their order. */
export function rate(model: Model, dates: Dates, into: Float64Array): void {
  const { rank } = model.objective;
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
  into[rank.tardiness] = tardiness;
  into[rank.shortages] = countShortages(model, dates);
  into[rank.moved] = moved;
  into[rank.makespan] = makespan;
  into[rank.cost] = costOf(model, dates);
  into[TERMS - 1] = sum;
}

/** Quotas that are missed. */
function countShortages(model: Model, dates: Dates): number {
  const { among, at, count, from, least } = model.objective.quotas;
  let missed = 0;
  for (let k = 0; k < count; k += 1) {
    let ended = 0;
    for (let row = from[k]!; row < from[k + 1]!; row += 1) {
      const i = among[row]!;
      if (dates.status[i] === PLACED && dates.end[i]! <= at[k]!) ended += 1;
    }
    if (ended < least[k]!) missed += 1;
  }
  return missed;
}

/** Cost of the spans in which a counted resource works. */
function costOf(model: Model, dates: Dates): number {
  const { cost, isCounted, isPaid } = model.objective.upkeep;
  if (cost.length === 0) return 0;
  isPaid.fill(0);
  for (let i = 0; i < model.count; i += 1) {
    if (dates.status[i] !== PLACED || model.duration[i] === 0 || !usesCounted(model, i, dates.crew, isCounted)) continue;
    markPaid(model, i, dates.start[i]!, dates.end[i]!);
  }
  let sum = 0;
  for (let k = 0; k < cost.length; k += 1) if (isPaid[k] === 1) sum += cost[k]!;
  return sum;
}

function usesCounted(model: Model, i: number, chosen: Int32Array, isCounted: Uint8Array): boolean {
  const { crew, demands } = model;
  for (let row = demands.from[i]!; row < demands.from[i + 1]!; row += 1) if (isCounted[demands.resource[row]!] === 1) return true;
  for (let slot = crew.from[i]!; slot < crew.from[i + 1]!; slot += 1) if (isCounted[chosen[slot]!] === 1) return true;
  return false;
}

/** Marks the spans that the pieces of [start, end) reach into. */
function markPaid(model: Model, i: number, start: number, end: number): void {
  const { upkeep } = model.objective;
  const calendar = model.isSplit[i] === 1 ? model.calendars[model.calendar[i]!] : undefined;
  if (calendar === undefined) {
    markStretch(upkeep, start, end);
    return;
  }
  for (let k = calendar.firstEndingAfter(start); k < calendar.count && calendar.start[k]! < end; k += 1) {
    markStretch(upkeep, Math.max(start, calendar.start[k]!), Math.min(end, calendar.end[k]!));
  }
}

function markStretch({ isPaid, spans }: Model['objective']['upkeep'], from: number, to: number): void {
  for (let k = spans.firstEndingAfter(from); k < spans.count && spans.start[k]! < to; k += 1) isPaid[k] = 1;
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

export function toScore(model: Model, terms: Float64Array): Score {
  const { rank } = model.objective;
  return {
    unplaced: terms[0]!, tardiness: terms[rank.tardiness]!, shortages: terms[rank.shortages]!, moved: terms[rank.moved]!,
    makespan: terms[rank.makespan]!, cost: terms[rank.cost]!, sumOfEnds: terms[TERMS - 1]!,
  };
}
