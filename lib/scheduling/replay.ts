import { FAR } from './calendar-index';
import { compile } from './compile';
import { listByKey } from './list-order';
import type { Model } from './model';
import { arrange } from './order';
import type { Problem } from './problem';
import { LEFT_OUT, PLACED, ReplayArcs } from './replay-arcs';
import { findOrderly } from './replay-chains';
import { ReplayFit } from './replay-fit';
import { listOpenings, listRows, withFixedCrew, type Policy, type ReplayRows } from './replay-rows';
import { ReplayStates } from './replay-states';
import { tableMaker } from './replay-tables';

const MOST_BLOCKS = 4096;

export type { Policy } from './replay-rows';

/**
 * Rebuilds the dates of a plan again and again under other lengths: the serial scheme over the plan's order, each activity at
 * its earliest place that keeps the engine's rules, with the plan's people. Nobody looks ahead: a closing window moves nothing
 * back, it is missed and counted. What opens a window starts no earlier than planned.
 * Change `duration`, `release`, `isLeftOut`, the lags and the states between runs, then call {@link run}; no call allocates.
 */
export class Replay {
  /** Worked minutes of each activity in the next run. */
  readonly duration: Int32Array;
  /** Earliest start of each activity in the next run. */
  readonly release: Int32Array;
  /** Dates of the last run. What got no place has the horizon as its end. */
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** 1: has a place; 2: was left out. */
  readonly isPlaced: Uint8Array;
  /** 1: not worked in the next run, as if it were not in the problem. */
  readonly isLeftOut: Uint8Array;
  /** Activity whose end stands for both dates of one that is left out, so that windows count from it; -1: none. */
  readonly standIn: Int32Array;
  /** Windows that closed before their second event in the last run. */
  missedWindows = 0;
  readonly horizon: number;
  readonly count: number;
  /** Activity names in the order of the arrays. */
  readonly names: readonly string[];
  private readonly rows: ReplayRows;
  private readonly arcs: ReplayArcs;
  private readonly states: ReplayStates;
  private readonly fit: ReplayFit;
  private readonly list: Int32Array;
  private readonly waiting: Int32Array;
  private readonly users: readonly Int32Array[];
  private readonly floor: Int32Array;
  private readonly base: { readonly duration: Int32Array; readonly release: Int32Array };
  private readonly blocked = new Int32Array(3 * MOST_BLOCKS);
  private blockedCount = 0;

  /**
   * @param problem a validated problem without contradictions
   * @param mayBlock resources that {@link block} may name
   */
  constructor(problem: Problem, policy: Policy, mayBlock: readonly string[] = problem.resources.map(({ id }) => id)) {
    const model = compile(withFixedCrew(problem, policy));
    const order = arrange(model);
    this.rows = listRows(model);
    this.horizon = model.horizon;
    this.count = model.count;
    this.names = problem.activities.map((activity) => activity.id);
    this.duration = model.duration;
    this.release = model.release;
    this.base = { duration: model.duration.slice(), release: model.release.slice() };
    this.start = new Int32Array(model.count);
    this.end = new Int32Array(model.count);
    this.isPlaced = new Uint8Array(model.count);
    this.isLeftOut = new Uint8Array(model.count);
    this.standIn = new Int32Array(model.count).fill(-1);
    this.waiting = new Int32Array(model.count);
    const planned = new Map(policy.map((placement) => [placement.activity, placement.start]));
    this.list = listByKey(order, Float64Array.from(this.names, (name) => planned.get(name) ?? FAR));
    this.users = listUsers(model, this.rows, this.list);
    const openings = listOpenings(model, this.rows);
    const makeTable = tableMaker(model.horizon, new Set(listTimed(model).map((activity) => openings[activity]!)));
    this.arcs = new ReplayArcs(problem, model, order, makeTable);
    const blockable = new Set(mayBlock);
    const isOrderly = findOrderly(model, order, this.list, this.rows, Uint8Array.from(problem.resources, ({ id }) => Number(blockable.has(id))));
    this.states = new ReplayStates(model, makeTable);
    this.fit = new ReplayFit({ model, rows: this.rows, openings, isOrderly, states: this.states });
    this.floor = new Int32Array(model.count);
    for (let arc = 0; arc < model.arcs.count; arc += 1) {
      const opener = model.arcs.to[arc]!;
      if (model.arcs.isMax[arc] === 1) this.floor[opener] = Math.max(0, planned.get(this.names[opener]!) ?? 0);
    }
  }

  /** Everything back to what the problem says. */
  reset(): void {
    this.duration.set(this.base.duration);
    this.release.set(this.base.release);
    this.isLeftOut.fill(0);
    this.states.reset();
    this.arcs.reset();
    this.blockedCount = 0;
  }

  /** Another length of a lag of the problem: minutes, or a table for one whose length is a table. Never shorter than 0, unless it is so in the problem. */
  setLag(lag: number, length: number | Int32Array): void {
    this.arcs.setLag(lag, length);
  }

  /** The lag lasts so many thousandths of what the problem says, rounded to a minute; working lags in working minutes. */
  stretchLag(lag: number, perMille: number): void {
    this.arcs.stretchLag(lag, perMille);
  }

  /** The states that an activity leaves behind last so many thousandths of what the problem says. */
  stretchStates(activity: number, perMille: number): void {
    this.states.stretch(activity, perMille);
  }

  /** Nobody has the resource in [from, to) of the next run. Intervals of one resource lie apart. */
  block(resource: number, from: number, to: number): void {
    if (this.blockedCount === MOST_BLOCKS) return;
    const at = this.blockedCount * 3;
    this.blocked[at] = resource;
    this.blocked[at + 1] = from;
    this.blocked[at + 2] = to;
    this.blockedCount += 1;
  }

  /** Rebuilds all dates. */
  run(): void {
    const { fit } = this;
    fit.clear();
    this.isPlaced.fill(0);
    this.start.fill(this.horizon);
    this.end.fill(this.horizon);
    this.missedWindows = 0;
    for (let k = 0; k < this.blockedCount; k += 1) fit.block(this.blocked[k * 3]!, this.blocked[k * 3 + 1]!, this.blocked[k * 3 + 2]!);
    let left = this.list;
    let size = this.count;
    for (let isMoving = true; isMoving && size > 0;) {
      let kept = 0;
      for (let k = 0; k < size; k += 1) {
        const activity = left[k]!;
        if (this.isLeftOut[activity] === 1) this.leaveOut(activity);
        else if (!this.tryPlace(activity)) {
          this.waiting[kept] = activity;
          kept += 1;
        }
      }
      isMoving = kept < size;
      size = kept;
      left = this.waiting;
    }
  }

  /** The longest duration up to `most` that gets a place when nothing else is there. */
  longestDuration(activity: number, most: number): number {
    const base = this.base.duration[activity]!;
    this.fit.clear();
    const fits = (minutes: number): boolean => {
      this.duration[activity] = minutes;
      return this.fit.findStart(activity, this.release[activity]!) >= 0;
    };
    let [low, high] = [base, most + 1];
    while (low + 1 < high) {
      const middle = (low + high) >> 1;
      if (fits(middle)) low = middle;
      else high = middle;
    }
    this.duration[activity] = base;
    return low;
  }

  private leaveOut(activity: number): void {
    const other = this.standIn[activity]!;
    const end = other < 0 ? 0 : this.end[other]!;
    this.isPlaced[activity] = LEFT_OUT;
    this.start[activity] = end;
    this.end[activity] = end;
  }

  private tryPlace(activity: number): boolean {
    const { fit } = this;
    const floor = this.release[activity]! > this.floor[activity]! ? this.release[activity]! : this.floor[activity]!;
    const from = this.arcs.lowerBound(activity, floor, this.duration[activity]!, this);
    if (from < 0) return false;
    const t = fit.findStart(activity, from);
    if (t < 0) return false;
    const end = fit.endFrom(t);
    this.start[activity] = t;
    this.end[activity] = end;
    this.isPlaced[activity] = PLACED;
    fit.place(activity, t, end);
    fit.turnHolds(activity, t, end, this.end);
    this.missedWindows += this.arcs.countMissed(activity, this);
    return true;
  }

  /**
   * The activity that the start of another waited for in the last run: the latest of its predecessors' moments and of the ends of
   * those before it in the plan's order who share a resource of one unit with it (a person, a part). -1: only for a session.
   */
  binding(activity: number): number {
    const { rows } = this;
    let found = this.arcs.lastBound(activity, this);
    let latest = this.arcs.lastMoment;
    const at = this.start[activity]!;
    for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) {
      const mates = this.users[rows.resource[row]!]!;
      for (let k = 0; k < mates.length && mates[k] !== activity; k += 1) {
        const end = this.end[mates[k]!]!;
        if (end <= latest || end > at || this.isPlaced[mates[k]!] !== PLACED) continue;
        latest = end;
        found = mates[k]!;
      }
    }
    return latest <= this.release[activity]! ? -1 : found;
  }
}

/** Users of each resource of one unit in the order of the list; none of the others. */
function listUsers({ capacity, resourceCount }: Model, rows: ReplayRows, list: Int32Array): readonly Int32Array[] {
  const users: number[][] = Array.from({ length: resourceCount }, () => []);
  for (const activity of list) for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) if (capacity[rows.resource[row]!] === 1) users[rows.resource[row]!]!.push(activity);
  return users.map((own) => Int32Array.from(own));
}

/** Activities whose end is looked up in tables: of a lag, or of a state. */
function listTimed({ arcs, count, states }: Model): number[] {
  const isTimed = new Uint8Array(count);
  for (let arc = 0; arc < arcs.count; arc += 1) if (arcs.tables[arc] !== null) isTimed[arcs.from[arc]!] = 1;
  for (let i = 0; i < count; i += 1) for (let row = states.from[i]!; row < states.from[i + 1]!; row += 1) if (states.until[row] !== null) isTimed[i] = 1;
  return [...isTimed.keys()].filter((i) => isTimed[i] === 1);
}
