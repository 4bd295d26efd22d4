import { FAR } from './calendar-index';
import { CAUSE_HOLD, CAUSE_WAITS, CAUSE_WINDOW } from './cause';
import type { Model } from './model';
import { collectObstacles, factOfArc, sortFacts, type Obstruction } from './obstacles';
import { PLACED, Placer } from './placer';
import type { Fact, Interval, Placement, Schedule, Unplaced } from './problem';
import { earliestOverArc, type Bounds } from './propagate';
import { toScore } from './score';
import { latestStart } from './timing';

/** A finished schedule in the model's arrays. */
export interface Outcome {
  readonly status: Uint8Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly crew: Int32Array;
  readonly cause: Uint8Array;
  readonly causeAt: Int32Array;
  readonly terms: Float64Array;
}

/** Worked pieces of an activity, in order. */
export function listPieces(model: Model, activity: number, start: number, end: number): readonly Interval[] {
  if (model.duration[activity] === 0) return [];
  const calendar = model.calendars[model.calendar[activity]!];
  if (calendar === undefined || model.isSplit[activity] === 0) return [{ start, end }];
  const pieces: Interval[] = [];
  for (let k = calendar.firstEndingAfter(start); k < calendar.count && calendar.start[k]! < end; k += 1) {
    pieces.push({ start: Math.max(start, calendar.start[k]!), end: Math.min(end, calendar.end[k]!) });
  }
  return pieces;
}

function toPlacement(model: Model, outcome: Outcome, i: number): Placement {
  const start = outcome.start[i]!;
  const end = outcome.end[i]!;
  const { crew, problem } = model;
  const chosen = Array.from(outcome.crew.subarray(crew.from[i]!, crew.from[i + 1]!), (r) => problem.resources[r]!.id);
  return { activity: problem.activities[i]!.id, start, end, pieces: listPieces(model, i, start, end), crew: chosen };
}

/** Puts the placed activities of an outcome into a fresh placer, all but the one left out. */
export function replay(model: Model, outcome: Outcome, without: number): Placer {
  const placer = new Placer(model);
  for (let i = 0; i < model.count; i += 1) {
    if (i !== without && outcome.status[i] === PLACED) placer.restore(i, outcome.start[i]!, outcome.crew);
  }
  return placer;
}

function temporalStart(model: Model, bounds: Bounds, outcome: Outcome, i: number): number {
  let from = bounds.earliest[i]!;
  for (const arc of model.arcsIn[i]!) {
    const first = model.arcs.from[arc]!;
    if (outcome.status[first] === PLACED) from = Math.max(from, earliestOverArc(model, arc, outcome.start[first]!));
  }
  return from;
}

function explainUnplaced(model: Model, bounds: Bounds, outcome: Outcome, i: number): Unplaced {
  const activity = model.problem.activities[i]!;
  const waiting = new Set<string>();
  const facts: Fact[] = [];
  const cause = outcome.cause[i]!;
  if (cause === CAUSE_WAITS || cause === CAUSE_WINDOW) facts.push(factOfArc(model, outcome.causeAt[i]!));
  if (cause === CAUSE_HOLD) facts.push({ kind: 'hold', hold: model.problem.holds![model.holds.source[outcome.causeAt[i]!]!]!.id, activity: activity.id });
  for (const arc of model.arcsIn[i]!) {
    const first = model.arcs.from[arc]!;
    if (outcome.status[first] === PLACED || model.arcs.isMax[arc] === 1) continue;
    waiting.add(model.problem.activities[first]!.id);
  }
  if (waiting.size === 0) {
    const found: Obstruction[] = [];
    const from = temporalStart(model, bounds, outcome, i);
    const latest = latestStart(model, i, Math.min(model.latestEnd[i]!, model.horizon));
    if (from <= latest) found.push(...collectObstacles(model, replay(model, outcome, i), i, from, latest));
    facts.push(...sortFacts(found));
    if (model.pin[i]! >= 0) facts.push({ kind: 'pin', activity: activity.id });
    if (model.latestEnd[i]! < FAR) facts.push({ kind: 'latest-end', activity: activity.id });
    if (from > latest) facts.push(...traceFacts(model, bounds, i), ...factsOfLateStart(model, outcome, i, from));
  }
  facts.push({ kind: 'horizon' });
  const seen = new Set<string>();
  const because = facts.filter((fact) => {
    const key = JSON.stringify(fact);
    return seen.has(key) ? false : seen.add(key);
  });
  return { activity: activity.id, because, waitsFor: [...waiting] };
}

/** Lags that push the earliest start past the horizon whatever the resources, from the activity back. */
function traceFacts(model: Model, bounds: Bounds, i: number): readonly Fact[] {
  const facts: Fact[] = [];
  const seen = new Set<number>();
  for (let at = i; bounds.earliest[at]! >= FAR && bounds.earliestBy[at]! >= 0 && !seen.has(at);) {
    seen.add(at);
    facts.push(factOfArc(model, bounds.earliestBy[at]!));
    at = model.arcs.from[bounds.earliestBy[at]!]!;
  }
  return facts;
}

/** What alone already pushes the start past the horizon: lags from placed work, the release, the calendar, the duration. */
function factsOfLateStart(model: Model, outcome: Outcome, i: number, from: number): readonly Fact[] {
  const facts: Fact[] = [];
  const activity = model.problem.activities[i]!;
  for (const arc of model.arcsIn[i]!) {
    const first = model.arcs.from[arc]!;
    if (outcome.status[first] === PLACED && earliestOverArc(model, arc, outcome.start[first]!) >= from) facts.push(factOfArc(model, arc));
  }
  if (activity.release !== undefined && activity.release > 0) facts.push({ kind: 'release', activity: activity.id });
  if (activity.calendar !== undefined) facts.push({ kind: 'calendar', activity: activity.id });
  facts.push({ kind: 'duration', activity: activity.id });
  return facts;
}

/** Raises an outcome to the friendly model. */
export function describe(model: Model, bounds: Bounds, outcome: Outcome): Schedule {
  const placements: Placement[] = [];
  const unplaced: Unplaced[] = [];
  for (let i = 0; i < model.count; i += 1) {
    if (outcome.status[i] === PLACED) placements.push(toPlacement(model, outcome, i));
    else unplaced.push(explainUnplaced(model, bounds, outcome, i));
  }
  return { placements, unplaced, score: toScore(model, outcome.terms) };
}
