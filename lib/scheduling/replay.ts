import { BudgetBook } from './budget-book';
import { FAR } from './calendar-index';
import { compile } from './compile';
import { listByKey } from './list-order';
import { ELAPSED, TABLE, type Model } from './model';
import { arrange, type Order } from './order';
import type { Problem } from './problem';
import { earliestOverArc } from './propagate';
import { ReplayBoard } from './replay-board';
import { listOpenings, listRows, withFixedCrew, type Openings, type Policy, type ReplayRows } from './replay-rows';
import { alignStart, passArc, stateEnd } from './timing';

const WAITING = 0;
const PLACED = 1;

export type { Policy } from './replay-rows';

/**
 * Rebuilds the dates of a plan again and again under other lengths: the serial scheme over the plan's order, each activity at
 * its earliest place that keeps the engine's rules, with the plan's people. Nobody looks ahead: a closing window moves nothing
 * back, it is missed and counted. What opens a window starts no earlier than planned.
 * Change `duration`, `release`, `tail` and the lags between runs, then call {@link run}; no call allocates.
 */
export class Replay {
  /** Worked minutes of each activity in the next run. */
  readonly duration: Int32Array;
  /** Earliest start of each activity in the next run. */
  readonly release: Int32Array;
  /** Minutes that each state of an activity lasts after it. Rows of activity i: `tailFrom[i]` to `tailFrom[i + 1]`. */
  readonly tail: Int32Array;
  readonly tailFrom: Int32Array;
  /** Dates of the last run. What got no place has the horizon as its end. */
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** 1: has a place. */
  readonly isPlaced: Uint8Array;
  /** Windows that closed before their second event in the last run. */
  missedWindows = 0;
  readonly horizon: number;
  readonly count: number;
  /** Activity and resource names in the order of the arrays. */
  readonly names: readonly string[];
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  pieceCount = 0;
  private readonly model: Model;
  private readonly order: Order;
  private readonly rows: ReplayRows;
  private readonly openings: readonly Openings[];
  /** Budget that covers each opening of each row; -1: none or several. */
  private readonly fills: readonly (Int32Array | null)[];
  private readonly board: ReplayBoard;
  private readonly budgets: BudgetBook;
  private readonly list: Int32Array;
  private readonly waiting: Int32Array;
  private readonly floor: Int32Array;
  private readonly base: { readonly duration: Int32Array; readonly release: Int32Array; readonly tail: Int32Array; readonly minutes: Int32Array; readonly tables: readonly (Int32Array | null)[]; readonly shortest: Int32Array };
  private readonly tables: (Int32Array | null)[];
  /** Arc of each lag's minimum; -1: it has none. */
  private readonly arcOfLag: Int32Array;
  private readonly blocked: Int32Array;
  private blockedCount = 0;

  /** @param problem a validated problem without contradictions */
  constructor(problem: Problem, policy: Policy) {
    const model = compile(withFixedCrew(problem, policy));
    this.tables = [...model.arcs.tables];
    this.model = { ...model, arcs: { ...model.arcs, tables: this.tables } };
    this.order = arrange(model);
    this.rows = listRows(model);
    this.openings = listOpenings(model, this.rows);
    this.fills = listFills(model, this.rows, this.openings);
    this.horizon = model.horizon;
    this.count = model.count;
    this.names = problem.activities.map((activity) => activity.id);
    this.duration = model.duration;
    this.release = model.release;
    this.tail = model.states.tail;
    this.tailFrom = model.states.from;
    this.base = { duration: model.duration.slice(), release: model.release.slice(), tail: model.states.tail.slice(), minutes: model.arcs.minutes.slice(), tables: model.arcs.tables, shortest: model.shortest.slice() };
    this.start = new Int32Array(model.count);
    this.end = new Int32Array(model.count);
    this.isPlaced = new Uint8Array(model.count);
    const longest = Math.max(1, ...model.calendars.map((calendar) => calendar.count));
    this.pieceStart = new Int32Array(longest);
    this.pieceEnd = new Int32Array(longest);
    this.board = new ReplayBoard(model.resourceCount + model.states.mediumCount, model.horizon);
    this.budgets = new BudgetBook(model, this);
    this.blocked = new Int32Array(3 * 4096);
    this.waiting = new Int32Array(model.count);
    const planned = new Map(policy.map((placement) => [placement.activity, placement.start]));
    this.list = listByKey(this.order, Float64Array.from(this.names, (name) => planned.get(name) ?? FAR));
    this.floor = new Int32Array(model.count);
    for (let arc = 0; arc < model.arcs.count; arc += 1) {
      const opener = model.arcs.to[arc]!;
      if (model.arcs.isMax[arc] === 1) this.floor[opener] = Math.max(0, planned.get(this.names[opener]!) ?? 0);
    }
    this.arcOfLag = listLagArcs(problem, model);
  }

  /** Everything back to what the problem says. */
  reset(): void {
    this.duration.set(this.base.duration);
    this.release.set(this.base.release);
    this.tail.set(this.base.tail);
    this.model.arcs.minutes.set(this.base.minutes);
    for (let arc = 0; arc < this.tables.length; arc += 1) this.tables[arc] = this.base.tables[arc]!;
    this.blockedCount = 0;
  }

  /** Another length of a lag of the problem; `table` for one whose length is a table. Minutes below 0 are kept as they are. */
  setLag(lag: number, minutes: number, table: Int32Array | null = null): void {
    const arc = this.arcOfLag[lag]!;
    if (arc < 0) return;
    if (table !== null) this.tables[arc] = table;
    else if (this.model.arcs.kind[arc] !== TABLE) this.model.arcs.minutes[arc] = minutes;
  }

  /** Minutes of an elapsed or working lag as the problem has them; the step of a table. */
  lagMinutes(lag: number): number {
    const arc = this.arcOfLag[lag]!;
    return arc < 0 ? 0 : this.base.minutes[arc]!;
  }

  /** Nobody has the resource in [from, to) of the next run. */
  block(resource: number, from: number, to: number): void {
    if ((this.blockedCount + 1) * 3 > this.blocked.length) return;
    const at = this.blockedCount * 3;
    this.blocked[at] = resource;
    this.blocked[at + 1] = from;
    this.blocked[at + 2] = to;
    this.blockedCount += 1;
  }

  /** Rebuilds all dates. */
  run(): void {
    const { board, model } = this;
    board.clear();
    this.budgets.clear();
    this.isPlaced.fill(WAITING);
    this.start.fill(this.horizon);
    this.end.fill(this.horizon);
    this.missedWindows = 0;
    for (let k = 0; k < this.blockedCount; k += 1) {
      const resource = this.blocked[k * 3]!;
      board.add(resource, this.blocked[k * 3 + 1]!, this.blocked[k * 3 + 2]!, model.capacity[resource]!);
    }
    let left = this.list;
    let size = this.count;
    for (let isMoving = true; isMoving && size > 0;) {
      let kept = 0;
      for (let k = 0; k < size; k += 1) {
        const activity = left[k]!;
        if (this.isPlaced[activity] === PLACED || this.tryPlace(activity)) continue;
        this.waiting[kept] = activity;
        kept += 1;
      }
      isMoving = kept < size;
      size = kept;
      left = this.waiting;
    }
  }

  /** The longest duration up to `most` that gets a place when nothing else is there. */
  longestDuration(activity: number, most: number): number {
    const base = this.base.duration[activity]!;
    this.board.clear();
    this.budgets.clear();
    const fits = (minutes: number): boolean => {
      this.duration[activity] = minutes;
      return this.findStart(activity, this.release[activity]!) >= 0;
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

  private tryPlace(activity: number): boolean {
    const from = this.lowerBound(activity);
    if (from < 0) return false;
    const { model } = this;
    const duration = this.duration[activity]!;
    const shortest = this.base.shortest[activity]!;
    model.shortest[activity] = shortest < duration ? shortest : duration;
    const t = this.findStart(activity, from);
    if (t < 0) return false;
    this.place(activity, t, this.cut(activity, t));
    this.countMissed(activity);
    return true;
  }

  /** Earliest start that what is placed allows; -1: something it needs has no place yet. */
  private lowerBound(activity: number): number {
    const { arcs } = this.model;
    let from = Math.max(this.release[activity]!, this.floor[activity]!);
    const list = this.model.arcsIn[activity]!;
    for (let k = 0; k < list.length; k += 1) {
      const arc = list[k]!;
      const first = arcs.from[arc]!;
      if (this.isPlaced[first] === WAITING) {
        if (this.order.isOrder[arc] === 1) return -1;
        continue;
      }
      let bound: number;
      if (arcs.isToEnd[arc] === 0) {
        const event = arcs.isFromEnd[arc] === 1 ? this.end[first]! : this.start[first]!;
        bound = arcs.kind[arc] === ELAPSED ? event + arcs.minutes[arc]! : passArc(this.model, arc, event);
      } else bound = earliestOverArc(this.model, arc, this.start[first]!);
      if (bound > from) from = bound;
    }
    return from;
  }

  private findStart(activity: number, from: number): number {
    const duration = this.duration[activity]!;
    const latest = Math.min(this.model.latestEnd[activity]!, this.horizon);
    if (duration > 0 && (this.model.isSplit[activity] === 0 || this.model.calendar[activity]! < 0)) return this.findWhole(activity, from, latest);
    const { end: shuts, start: opens } = this.openings[activity]!;
    const least = this.model.shortest[activity]! < 1 ? Math.min(1, duration) : this.model.shortest[activity]!;
    let t = from;
    let k = duration > 0 ? firstAfter(shuts, t) : 0;
    for (;;) {
      if (duration > 0) {
        while (k < opens.length && (shuts[k]! <= t || !this.hasRoomToSplit(activity, k, duration, least))) k += 1;
        if (k >= opens.length) return -1;
        if (t < opens[k]!) t = opens[k]!;
      }
      t = alignStart(this.model, activity, t);
      if (t >= FAR || t + duration > latest) return -1;
      const end = this.cut(activity, t);
      if (end > latest) return -1;
      const next = this.conflict(activity, t, end, duration > 0);
      if (next <= t) return t;
      t = next;
    }
  }

  /** Work in one go: inside one opening. */
  private findWhole(activity: number, from: number, latest: number): number {
    const { end: shuts, start: opens } = this.openings[activity]!;
    const duration = this.duration[activity]!;
    let t = from;
    let k = firstAfter(shuts, t);
    while (k < opens.length) {
      const at = t > opens[k]! ? t : opens[k]!;
      if (at + duration > latest) return -1;
      if (at + duration > shuts[k]! || !this.hasRoom(activity, k, duration)) {
        k += 1;
        continue;
      }
      this.pieceStart[0] = at;
      this.pieceEnd[0] = at + duration;
      this.pieceCount = 1;
      const next = this.conflict(activity, at, at + duration, false);
      if (next <= at) return at;
      t = next;
      while (k < opens.length && shuts[k]! <= t) k += 1;
    }
    return -1;
  }

  /** False when a budget over the whole opening has no room for it. */
  private hasRoom(activity: number, opening: number, duration: number): boolean {
    const { rows } = this;
    for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) {
      const fill = this.fills[row];
      if (fill === null || fill === undefined) continue;
      const budget = fill[opening]!;
      if (budget >= 0 && this.budgets.roomOf(budget) < duration * rows.amount[row]!) return false;
    }
    return true;
  }

  /** False when split work that starts in an opening finds no room there, or none for its rest in the next one. */
  private hasRoomToSplit(activity: number, opening: number, duration: number, least: number): boolean {
    const { rows } = this;
    const { end: shuts, start: opens } = this.openings[activity]!;
    for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) {
      const fill = this.fills[row];
      if (fill === null || fill === undefined || fill[opening]! < 0) continue;
      const amount = rows.amount[row]!;
      const room = this.budgets.roomOf(fill[opening]!);
      if (room < least * amount) return false;
      if (room >= duration * amount) continue;
      const next = opening + 1;
      if (next >= opens.length) return false;
      if (fill[next]! < 0) continue;
      const nextRoom = this.budgets.roomOf(fill[next]!);
      // A piece in the middle fills its opening whole.
      if (nextRoom < (shuts[next]! - opens[next]!) * amount && room + nextRoom < duration * amount) return false;
    }
    return true;
  }

  private cut(activity: number, t: number): number {
    const { model } = this;
    const duration = this.duration[activity]!;
    this.pieceCount = 0;
    if (duration === 0) return t;
    const index = model.calendar[activity]!;
    if (index < 0 || model.isSplit[activity] === 0) {
      this.pieceStart[0] = t;
      this.pieceEnd[0] = t + duration;
      this.pieceCount = 1;
      return t + duration;
    }
    const calendar = model.calendars[index]!;
    let left = duration;
    for (let k = calendar.firstEndingAfter(t); k < calendar.count; k += 1) {
      const at = Math.max(t, calendar.start[k]!);
      const stop = Math.min(calendar.end[k]!, at + left);
      this.pieceStart[this.pieceCount] = at;
      this.pieceEnd[this.pieceCount] = stop;
      this.pieceCount += 1;
      left -= stop - at;
      if (left === 0) return stop;
    }
    return FAR;
  }

  /** `t` or less when the pieces looked at last fit; else the next start worth trying. No start in between fits. */
  private conflict(activity: number, t: number, end: number, isSplit: boolean): number {
    const { board, model, rows } = this;
    if (isSplit && end - t > model.maxSpan[activity]!) return this.nextOpening(activity, t);
    if (isSplit && !this.isOpen(activity)) return this.nextOpening(activity, t);
    for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      const amount = rows.amount[row]!;
      const room = model.capacity[resource]! - amount;
      const isThrough = rows.isThrough[row] === 1;
      let next = 0;
      if (isThrough) next = board.meet(resource, t, end, room);
      else for (let k = this.pieceCount - 1; k >= 0 && next === 0; k -= 1) next = board.meet(resource, this.pieceStart[k]!, this.pieceEnd[k]!, room);
      if (next > t) return next;
      if (this.pieceCount === 0 || model.budgets.from[resource] === model.budgets.from[resource + 1]) continue;
      next = this.budgets.conflict(resource, amount, t, isThrough ? end : -1);
      if (next > t) return next;
    }
    const { states } = model;
    for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) {
      const next = board.meetState(model.resourceCount + states.medium[row]!, t, stateEnd(states, row, end), states.state[row]!);
      if (next > t) return next;
    }
    return this.holdConflict(activity, t);
  }

  /** What opens a hold needs the whole resource for good, as nobody knows yet when it closes. */
  private holdConflict(activity: number, t: number): number {
    const { holds } = this.model;
    const own = holds.byActivity[activity]!;
    for (let k = 0; k < own.length; k += 1) {
      const hold = own[k]!;
      if (holds.from[hold] !== activity) continue;
      const next = this.board.lastEnd(holds.resource[hold]!);
      if (next > t) return next;
    }
    return t;
  }

  private nextOpening(activity: number, t: number): number {
    const { start: opens } = this.openings[activity]!;
    for (let k = firstAfter(this.openings[activity]!.end, t); k < opens.length; k += 1) if (opens[k]! > t) return opens[k]!;
    return FAR;
  }

  /** True when each piece looked at last lies inside an opening. */
  private isOpen(activity: number): boolean {
    const { end: shuts, start: opens } = this.openings[activity]!;
    for (let p = 0; p < this.pieceCount; p += 1) {
      const k = firstAfter(shuts, this.pieceStart[p]!);
      if (k >= opens.length || opens[k]! > this.pieceStart[p]! || shuts[k]! < this.pieceEnd[p]!) return false;
    }
    return true;
  }

  private place(activity: number, t: number, end: number): void {
    const { board, model, rows } = this;
    this.start[activity] = t;
    this.end[activity] = end;
    this.isPlaced[activity] = PLACED;
    for (let row = rows.from[activity]!; row < rows.from[activity + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      const amount = rows.amount[row]!;
      if (rows.isThrough[row] === 1) this.take(resource, t, end, amount);
      else for (let k = 0; k < this.pieceCount; k += 1) this.take(resource, this.pieceStart[k]!, this.pieceEnd[k]!, amount);
    }
    const { holds, states } = model;
    for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) {
      const lastsTo = stateEnd(states, row, end);
      if (lastsTo > t) board.add(model.resourceCount + states.medium[row]!, t, lastsTo, 1, states.state[row]!);
    }
    const own = holds.byActivity[activity]!;
    for (let k = 0; k < own.length; k += 1) {
      const hold = own[k]!;
      if (holds.from[hold] === activity) board.close(holds.resource[hold]!, t);
      else board.reopen(holds.resource[hold]!, Math.max(end, this.end[holds.from[hold]!]!));
    }
  }

  private take(resource: number, from: number, to: number, amount: number): void {
    if (from >= to) return;
    this.board.add(resource, from, to, amount);
    this.budgets.use(resource, from, to, amount);
  }

  private countMissed(activity: number): void {
    const { arcs } = this.model;
    const out = this.model.arcsOut[activity]!;
    for (let k = 0; k < out.length; k += 1) {
      const arc = out[k]!;
      if (arcs.isMax[arc] === 0) continue;
      const opener = arcs.to[arc]!;
      const event = arcs.isFromEnd[arc] === 1 ? this.end[activity]! : this.start[activity]!;
      const opened = arcs.isToEnd[arc] === 1 ? this.end[opener]! : this.start[opener]!;
      if (this.isPlaced[opener] === PLACED && opened < event + arcs.minutes[arc]!) this.missedWindows += 1;
    }
  }

  /**
   * The activity that the start of another waited for in the last run: the latest of its predecessors' moments and of the ends of
   * those who share a resource with it. -1: only for a session.
   */
  binding(activity: number, sharers: readonly Int32Array[]): number {
    const { arcs } = this.model;
    let latest = -1;
    let found = -1;
    const list = this.model.arcsIn[activity]!;
    for (let k = 0; k < list.length; k += 1) {
      const arc = list[k]!;
      const first = arcs.from[arc]!;
      if (this.isPlaced[first] === WAITING || arcs.isMax[arc] === 1 || arcs.isToEnd[arc] === 1) continue;
      const bound = passArc(this.model, arc, arcs.isFromEnd[arc] === 1 ? this.end[first]! : this.start[first]!);
      if (bound <= latest) continue;
      latest = bound;
      found = first;
    }
    const at = this.start[activity]!;
    const mates = sharers[activity]!;
    for (let k = 0; k < mates.length; k += 1) {
      const end = this.end[mates[k]!]!;
      if (end <= latest || end > at || this.isPlaced[mates[k]!] === WAITING) continue;
      latest = end;
      found = mates[k]!;
    }
    return latest <= this.release[activity]! ? -1 : found;
  }

  /** Activities that share a resource of one unit (a person, a part) with each activity. */
  listSharers(): readonly Int32Array[] {
    const users: number[][] = Array.from({ length: this.model.resourceCount }, () => []);
    const { rows } = this;
    const resourcesOf = (i: number) => [...rows.resource.subarray(rows.from[i]!, rows.from[i + 1]!)].filter((r) => this.model.capacity[r] === 1);
    for (let i = 0; i < this.count; i += 1) for (const resource of resourcesOf(i)) users[resource]!.push(i);
    return Array.from({ length: this.count }, (_, i) => Int32Array.from(new Set(resourcesOf(i).flatMap((resource) => users[resource]!).filter((other) => other !== i))));
  }
}

/** Index of the first end after `t`. */
function firstAfter(ends: Int32Array, t: number): number {
  let low = 0;
  let high = ends.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! > t) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** For each row the one budget of its resource that covers the whole opening; null: the resource has no budgets. */
function listFills(model: Model, rows: ReplayRows, openings: readonly Openings[]): readonly (Int32Array | null)[] {
  const known = new Map<Openings, Map<number, Int32Array>>();
  const { budgets } = model;
  const fills: (Int32Array | null)[] = [];
  for (let i = 0; i < model.count; i += 1) {
    const opening = openings[i]!;
    const ofOpening = known.get(opening) ?? new Map<number, Int32Array>();
    known.set(opening, ofOpening);
    for (let row = rows.from[i]!; row < rows.from[i + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      const first = budgets.from[resource]!;
      const last = budgets.from[resource + 1]!;
      if (first === last || rows.isThrough[row] === 1) {
        fills.push(null);
        continue;
      }
      const made = ofOpening.get(resource) ?? Int32Array.from(opening.start, (start, k) => {
        for (let b = first; b < last; b += 1) if (budgets.start[b]! <= start && budgets.end[b]! >= opening.end[k]!) return b;
        return -1;
      });
      ofOpening.set(resource, made);
      fills.push(made);
    }
  }
  return fills;
}

function listLagArcs(problem: Problem, model: Model): Int32Array {
  const found = new Int32Array(problem.lags.length).fill(-1);
  for (let arc = 0; arc < model.arcs.count; arc += 1) if (model.arcs.lag[arc]! >= 0 && model.arcs.isMax[arc] === 0) found[model.arcs.lag[arc]!] = arc;
  return found;
}
