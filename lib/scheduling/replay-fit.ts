/** The earliest place of one activity among what is placed already, by the engine's rules and with the people chosen. */
import { FAR } from './calendar-index';
import type { Model } from './model';
import { DayBoard } from './replay-board';
import { ReplayBudgets } from './replay-budgets';
import { pickRows, type Openings, type ReplayRows } from './replay-rows';
import type { ReplayStates } from './replay-states';
import { alignStart } from './timing';

interface ReplayFitInput {
  readonly model: Model;
  readonly rows: ReplayRows;
  readonly openings: readonly Openings[];
  /** 1 for resources that need no look. */
  readonly isOrderly: Uint8Array;
  readonly states: ReplayStates;
}

export class ReplayFit {
  /** Worked pieces of the place found last. */
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  /** Opening that each piece lies in. */
  readonly pieceOpening: Int32Array;
  pieceCount = 0;
  /** Needs that somebody may be in the way of. */
  private readonly rows: ReplayRows;
  private readonly holds: readonly Int32Array[];
  private readonly hasHolds: Uint8Array;
  private readonly board: DayBoard;
  private readonly states: ReplayStates;
  private readonly budgets: ReplayBudgets;
  /** From when a resource is taken for good, as far as is known; FAR: it is not. */
  private readonly closedFrom: Int32Array;
  private readonly baseShortest: Int32Array;
  private readonly horizon: number;
  private readonly model: Model;
  private readonly openings: readonly Openings[];

  constructor({ isOrderly, model, openings, rows, states }: ReplayFitInput) {
    this.model = model;
    this.openings = openings;
    this.states = states;
    this.rows = pickRows(rows, (resource) => isOrderly[resource] === 0);
    this.holds = model.holds.byActivity.map((own) => own.filter((hold) => isOrderly[model.holds.resource[hold]!] === 0));
    this.hasHolds = Uint8Array.from(this.holds, (own) => Number(own.length > 0));
    this.board = new DayBoard(model.resourceCount, model.horizon);
    const longest = Math.max(1, ...model.calendars.map((calendar) => calendar.count));
    this.pieceStart = new Int32Array(longest);
    this.pieceEnd = new Int32Array(longest);
    this.pieceOpening = new Int32Array(longest);
    this.budgets = new ReplayBudgets(model, rows, openings, this);
    this.closedFrom = new Int32Array(model.resourceCount).fill(FAR);
    this.baseShortest = model.shortest.slice();
    this.horizon = model.horizon;
  }

  clear(): void {
    this.board.clear();
    this.states.clear();
    this.budgets.clear();
    this.closedFrom.fill(FAR);
  }

  /** Nobody has the resource in [from, to). */
  block(resource: number, from: number, to: number): void {
    this.board.add(resource, from, to, this.model.capacity[resource]!);
  }

  /** Earliest start from `from` on; -1: none. Its pieces are kept. */
  findStart(activity: number, from: number): number {
    const { model } = this;
    const duration = model.duration[activity]!;
    const shortest = this.baseShortest[activity]!;
    model.shortest[activity] = shortest < duration ? shortest : duration;
    const own = model.latestEnd[activity]!;
    const latest = own < this.horizon ? own : this.horizon;
    if (duration === 0) return this.findMoment(activity, from, latest);
    if (model.isSplit[activity] === 0 || model.calendar[activity]! < 0) return this.findWhole(activity, from, latest);
    return this.findSplit(activity, from, latest);
  }

  /** Takes what the activity needs for the pieces found last. */
  place(activity: number, t: number, end: number): void {
    const { board, rows } = this;
    for (let row = rows.from[activity]!, stop = rows.from[activity + 1]!; row < stop; row += 1) {
      const resource = rows.resource[row]!;
      const amount = rows.amount[row]!;
      if (rows.isThrough[row] === 1) board.add(resource, t, end, amount);
      else for (let k = 0; k < this.pieceCount; k += 1) board.add(resource, this.pieceStart[k]!, this.pieceEnd[k]!, amount);
    }
    this.budgets.use(activity, t, end);
    this.states.occupy(activity, t, end);
  }

  /** Opens the holds that begin with the activity and closes those that end with it, after {@link place}. */
  turnHolds(activity: number, t: number, end: number, ends: Int32Array): void {
    if (this.hasHolds[activity] === 0) return;
    const { holds } = this.model;
    const own = this.holds[activity]!;
    for (let k = 0; k < own.length; k += 1) {
      const hold = own[k]!;
      const resource = holds.resource[hold]!;
      if (holds.from[hold] === activity) {
        this.closedFrom[resource] = t;
        continue;
      }
      const from = this.closedFrom[resource]!;
      if (from >= FAR) continue;
      this.closedFrom[resource] = FAR;
      const to = Math.max(end, ends[holds.from[hold]!]!);
      if (from >= to) continue;
      this.board.add(resource, from, to, FAR);
    }
  }

  /** End of the place found last. */
  endFrom(t: number): number {
    return this.pieceCount === 0 ? t : this.pieceEnd[this.pieceCount - 1]!;
  }

  /** No work: a moment that the calendar and the states allow. */
  private findMoment(activity: number, from: number, latest: number): number {
    this.pieceCount = 0;
    let t = from;
    for (;;) {
      t = alignStart(this.model, activity, t);
      if (t > latest) return -1;
      const next = this.meetOther(activity, t, t);
      if (next <= t) return t;
      t = next;
    }
  }

  /** Work in one go: inside one opening. */
  private findWhole(activity: number, from: number, latest: number): number {
    const opening = this.openings[activity]!;
    const { count, end: shuts, start: opens } = opening;
    const duration = this.model.duration[activity]!;
    this.pieceCount = 1;
    let t = from;
    let k = opening.firstAfter(t);
    while (k < count) {
      const at = t > opens[k]! ? t : opens[k]!;
      const end = at + duration;
      if (end > latest) return -1;
      if (end > shuts[k]! || !this.budgets.hasRoom(activity, k, duration)) {
        k += 1;
        continue;
      }
      this.pieceStart[0] = at;
      this.pieceEnd[0] = end;
      this.pieceOpening[0] = k;
      let next = this.meetRows(activity, at, end);
      if (next <= at && !this.budgets.isSettledByRoom(activity)) next = this.budgets.meet(activity, at, end);
      if (next <= at) next = this.meetOther(activity, at, end);
      if (next <= at) return at;
      t = next;
      while (k < count && shuts[k]! <= t) k += 1;
    }
    return -1;
  }

  /** Work that pauses where its calendar does. */
  private findSplit(activity: number, from: number, latest: number): number {
    const { model } = this;
    const opening = this.openings[activity]!;
    const { count, end: shuts, start: opens } = opening;
    const duration = model.duration[activity]!;
    const least = model.shortest[activity]! < 1 ? 1 : model.shortest[activity]!;
    let t = from;
    let k = opening.firstAfter(t);
    for (;;) {
      while (k < count && (shuts[k]! <= t || !this.budgets.hasRoomToSplit(activity, k, duration, least))) k += 1;
      if (k >= count) return -1;
      t = alignStart(model, activity, t < opens[k]! ? opens[k]! : t);
      if (t >= FAR || t + duration > latest) return -1;
      const end = this.cut(activity, t);
      if (end > latest) return -1;
      const next = this.meetSplit(activity, t, end);
      if (next <= t) return t;
      t = next;
    }
  }

  private meetSplit(activity: number, t: number, end: number): number {
    if (end - t > this.model.maxSpan[activity]! || !this.isOpen(activity)) return this.nextOpening(activity, t);
    let next = this.meetRows(activity, t, end);
    if (next <= t) next = this.budgets.meet(activity, t, end);
    return next <= t ? this.meetOther(activity, t, end) : next;
  }

  private cut(activity: number, t: number): number {
    const { model } = this;
    const calendar = model.calendars[model.calendar[activity]!]!;
    let left = model.duration[activity]!;
    let count = 0;
    for (let k = calendar.firstEndingAfter(t); k < calendar.count; k += 1) {
      const at = t > calendar.start[k]! ? t : calendar.start[k]!;
      const stop = calendar.end[k]! < at + left ? calendar.end[k]! : at + left;
      this.pieceStart[count] = at;
      this.pieceEnd[count] = stop;
      count += 1;
      left -= stop - at;
      if (left > 0) continue;
      this.pieceCount = count;
      return stop;
    }
    return FAR;
  }

  /** `t` or less when nobody is in the way; else the next start worth trying. No start in between fits. */
  private meetRows(activity: number, t: number, end: number): number {
    const { board, closedFrom, model, rows } = this;
    for (let row = rows.from[activity]!, stop = rows.from[activity + 1]!; row < stop; row += 1) {
      const resource = rows.resource[row]!;
      if (end > closedFrom[resource]! && t < end) return FAR;
      const room = model.capacity[resource]! - rows.amount[row]!;
      let next = 0;
      if (rows.isThrough[row] === 1) next = board.meet(resource, t, end, room);
      else for (let k = this.pieceCount - 1; k >= 0 && next === 0; k -= 1) next = board.meet(resource, this.pieceStart[k]!, this.pieceEnd[k]!, room);
      if (next > t) return next;
    }
    return 0;
  }

  /** States of air and surfaces; and what opens a hold needs the whole resource for good, as nobody knows yet when it closes. */
  private meetOther(activity: number, t: number, end: number): number {
    const { holds } = this.model;
    const free = this.states.meet(activity, t, end);
    if (free > t) return free;
    if (this.hasHolds[activity] === 0) return t;
    const own = this.holds[activity]!;
    for (let k = 0; k < own.length; k += 1) {
      const hold = own[k]!;
      if (holds.from[hold] !== activity) continue;
      const resource = holds.resource[hold]!;
      const next = this.closedFrom[resource]! < FAR ? FAR : this.board.lastEnd(resource);
      if (next > t) return next;
    }
    return t;
  }

  private nextOpening(activity: number, t: number): number {
    const opening = this.openings[activity]!;
    for (let k = opening.firstAfter(t); k < opening.count; k += 1) if (opening.start[k]! > t) return opening.start[k]!;
    return FAR;
  }

  /** True when each piece looked at last lies inside an opening. */
  private isOpen(activity: number): boolean {
    const opening = this.openings[activity]!;
    for (let p = 0; p < this.pieceCount; p += 1) {
      const k = opening.firstAfter(this.pieceStart[p]!);
      if (k >= opening.count || opening.start[k]! > this.pieceStart[p]! || opening.end[k]! < this.pieceEnd[p]!) return false;
      this.pieceOpening[p] = k;
    }
    return true;
  }
}
