/** The lags of a replay: how early what is placed lets an activity start, and which windows it missed. */
import { FAR } from './calendar-index';
import { ELAPSED, TABLE, type Model } from './model';
import type { Order } from './order';
import type { Problem } from './problem';
import { PER_MILLE, stretch, type WaitTable } from './replay-tables';
import { alignStart, passArc, startForEnd } from './timing';

/** No place yet, has one, is left out of this run. */
const WAITING = 0;
export const PLACED = 1;
export const LEFT_OUT = 2;

/** Dates so far. */
export interface Dates {
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** {@link WAITING}, {@link PLACED} or {@link LEFT_OUT}. */
  readonly isPlaced: Uint8Array;
}

export class ReplayArcs {
  /** Moment of the predecessor asked about last; -1: none. */
  lastMoment = -1;
  private readonly model: Model;
  private readonly tables: (Int32Array | null)[];
  private readonly baseMinutes: Int32Array;
  private readonly baseTables: readonly (Int32Array | null)[];
  /** The problem's table of each arc, and how many thousandths of it count. */
  private readonly waits: readonly (WaitTable | null)[];
  private readonly perMille: Int32Array;
  /** Lags into each activity, one after the other: rows of activity i are `from[i]` to `from[i + 1]`. */
  private readonly from: Int32Array;
  private readonly arc: Int32Array;
  private readonly first: Int32Array;
  /** 0: from the start, 1: from the end, 2: to the end of the activity. */
  private readonly kind: Uint8Array;
  private readonly isOrder: Uint8Array;
  /** Maximum lags out of each activity, and 1 where there are any. */
  private readonly closing: readonly Int32Array[];
  private readonly hasClosing: Uint8Array;
  /** Arc of each lag's minimum; -1: it has none. */
  private readonly arcOfLag: Int32Array;
  /** Arcs with another length than the problem's. */
  private readonly changed: Int32Array;
  private readonly isChanged: Uint8Array;
  private changedCount = 0;

  constructor(problem: Problem, model: Model, order: Order, makeTable: (step: number, ready: Int32Array) => WaitTable) {
    const { arcs } = model;
    this.changed = new Int32Array(arcs.count);
    this.isChanged = new Uint8Array(arcs.count);
    this.baseTables = arcs.tables;
    this.waits = arcs.tables.map((ready, arc) => (ready === null ? null : makeTable(arcs.minutes[arc]!, ready)));
    this.perMille = new Int32Array(arcs.count).fill(PER_MILLE);
    this.tables = [...arcs.tables];
    this.model = { ...model, arcs: { ...arcs, tables: this.tables } };
    this.baseMinutes = arcs.minutes.slice();
    const flat = model.arcsIn.flatMap((list) => [...list]);
    this.arc = Int32Array.from(flat);
    this.from = new Int32Array(model.count + 1);
    model.arcsIn.forEach((list, i) => {
      this.from[i + 1] = this.from[i]! + list.length;
    });
    this.first = Int32Array.from(flat, (arc) => arcs.from[arc]!);
    this.kind = Uint8Array.from(flat, (arc) => (arcs.isToEnd[arc] === 1 ? 2 : arcs.isFromEnd[arc]!));
    this.isOrder = Uint8Array.from(flat, (arc) => order.isOrder[arc]!);
    this.closing = model.arcsOut.map((list) => list.filter((arc) => arcs.isMax[arc] === 1));
    this.hasClosing = Uint8Array.from(this.closing, (own) => Number(own.length > 0));
    this.arcOfLag = new Int32Array(problem.lags.length).fill(-1);
    for (let arc = 0; arc < arcs.count; arc += 1) if (arcs.lag[arc]! >= 0 && arcs.isMax[arc] === 0) this.arcOfLag[arcs.lag[arc]!] = arc;
  }

  /** All lags as the problem has them: those that were changed go back. */
  reset(): void {
    for (let k = 0; k < this.changedCount; k += 1) {
      const arc = this.changed[k]!;
      this.model.arcs.minutes[arc] = this.baseMinutes[arc]!;
      this.tables[arc] = this.baseTables[arc]!;
      this.perMille[arc] = PER_MILLE;
      this.isChanged[arc] = 0;
    }
    this.changedCount = 0;
  }

  /** Another length of a lag of the problem: minutes, or a table for one whose length is a table. */
  setLag(lag: number, length: number | Int32Array): void {
    const arc = this.change(lag);
    if (arc < 0) return;
    if (typeof length !== 'number') this.tables[arc] = length;
    else if (this.model.arcs.kind[arc] !== TABLE) this.model.arcs.minutes[arc] = length;
  }

  /** The lag lasts so many thousandths of what the problem says. */
  stretchLag(lag: number, perMille: number): void {
    const arc = this.change(lag);
    if (arc < 0) return;
    this.perMille[arc] = perMille;
    if (this.model.arcs.kind[arc] !== TABLE) this.model.arcs.minutes[arc] = stretch(this.baseMinutes[arc]!, perMille);
  }

  /** Arc of a lag that is about to change; -1: it has none. */
  private change(lag: number): number {
    const arc = this.arcOfLag[lag]!;
    if (arc >= 0 && this.isChanged[arc] === 0) {
      this.isChanged[arc] = 1;
      this.changed[this.changedCount] = arc;
      this.changedCount += 1;
    }
    return arc;
  }

  /** Earliest start from `floor` on that what is placed allows; -1: something it needs has no place yet. */
  lowerBound(activity: number, floor: number, duration: number, { end, isPlaced, start }: Dates): number {
    const { minutes, kind: lengths } = this.model.arcs;
    let from = floor;
    for (let row = this.from[activity]!; row < this.from[activity + 1]!; row += 1) {
      const first = this.first[row]!;
      if (isPlaced[first] !== PLACED) {
        if (isPlaced[first] === WAITING && this.isOrder[row] === 1) return -1;
        continue;
      }
      const arc = this.arc[row]!;
      const kind = this.kind[row]!;
      let bound: number;
      if (kind < 2) {
        const event = kind === 1 ? end[first]! : start[first]!;
        bound = lengths[arc] === ELAPSED ? event + minutes[arc]! : this.pass(arc, event);
      } else bound = this.boundOfEnd(arc, first, from + duration, start, end);
      if (bound > from) from = bound;
    }
    return from;
  }

  /** Windows that the activity is too late for, counted when it gets its place. */
  countMissed(activity: number, { end, isPlaced, start }: Dates): number {
    if (this.hasClosing[activity] === 0) return 0;
    const { arcs } = this.model;
    const own = this.closing[activity]!;
    let missed = 0;
    for (let k = 0; k < own.length; k += 1) {
      const arc = own[k]!;
      const opener = arcs.to[arc]!;
      const event = arcs.isFromEnd[arc] === 1 ? end[activity]! : start[activity]!;
      const opened = arcs.isToEnd[arc] === 1 ? end[opener]! : start[opener]!;
      if (isPlaced[opener] !== WAITING && opened < event + arcs.minutes[arc]!) missed += 1;
    }
    return missed;
  }

  /** The predecessor whose moment came last; -1: none. The moment is in {@link lastMoment}. */
  lastBound(activity: number, { end, isPlaced, start }: Dates): number {
    const { arcs } = this.model;
    let found = -1;
    this.lastMoment = -1;
    for (let row = this.from[activity]!; row < this.from[activity + 1]!; row += 1) {
      const arc = this.arc[row]!;
      const first = this.first[row]!;
      if (isPlaced[first] !== PLACED || arcs.isMax[arc] === 1 || this.kind[row] === 2) continue;
      const bound = this.pass(arc, this.kind[row] === 1 ? end[first]! : start[first]!);
      if (bound <= this.lastMoment) continue;
      this.lastMoment = bound;
      found = first;
    }
    return found;
  }

  private pass(arc: number, event: number): number {
    const own = this.waits[arc]!;
    if (own === null || event >= FAR || this.tables[arc] !== this.baseTables[arc]) return passArc(this.model, arc, event);
    const ready = own.read(event, this.perMille[arc]!);
    return ready < 0 ? FAR : ready;
  }

  /** Earliest start by a lag to the end. When the earliest end there can be is late enough, the lag bounds nothing. */
  private boundOfEnd(arc: number, first: number, earliestEnd: number, start: Int32Array, end: Int32Array): number {
    const { arcs } = this.model;
    const bound = this.pass(arc, arcs.isFromEnd[arc] === 1 ? end[first]! : start[first]!);
    if (bound <= earliestEnd && bound < FAR) return 0;
    const second = arcs.to[arc]!;
    return bound <= 0 ? alignStart(this.model, second, 0) : startForEnd(this.model, second, bound);
  }
}
