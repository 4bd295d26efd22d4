/** Who has what and when while dates are rebuilt. Nothing is allocated once the lists have grown. */
import { FAR } from './calendar-index';

const DAY = 1440;
/** Numbers a node: from, to, units, next node of the day. */
const WIDTH = 4;

/**
 * Who has how many of each resource, in one list a day and row, so that a question about an evening looks at that evening only. The lists
 * of a day lie side by side: an activity asks for several resources at the same time.
 */
export class DayBoard {
  private readonly days: number;
  private readonly head: Int32Array;
  /** Lists that are not empty, so that clearing need not go over all of them. */
  private used = new Int32Array(1024);
  private usedCount = 0;
  private readonly latestEnd: Int32Array;
  private nodes = new Int32Array(WIDTH * 4096);
  private next = 0;

  constructor(private readonly rows: number, horizon: number) {
    this.days = Math.max(1, Math.ceil(horizon / DAY));
    this.head = new Int32Array(rows * this.days).fill(-1);
    this.latestEnd = new Int32Array(rows);
  }

  clear(): void {
    for (let k = 0; k < this.usedCount; k += 1) this.head[this.used[k]!] = -1;
    this.usedCount = 0;
    this.latestEnd.fill(0);
    this.next = 0;
  }

  /** End of the last that is there. */
  lastEnd(row: number): number {
    return this.latestEnd[row]!;
  }

  /** Occupies so many units in [from, to). */
  add(row: number, from: number, to: number, amount: number): void {
    if (from >= to) return;
    if (to > this.latestEnd[row]!) this.latestEnd[row] = to;
    const first = this.dayOf(from);
    const last = this.dayOf(to - 1);
    for (let day = first; day <= last; day += 1) this.link(day * this.rows + row, from, to, amount);
  }

  /** 0 when at most `room` units are taken at every minute of [from, to); else the next start worth trying. */
  meet(row: number, from: number, to: number, room: number): number {
    if (from >= to) return 0;
    if (room < 0) return FAR;
    if (this.latestEnd[row]! <= from) return 0;
    const first = this.dayOf(from);
    const last = to <= (first + 1) * DAY ? first : this.dayOf(to - 1);
    return room === 0 ? this.meetAny(row, from, to, first, last) : this.meetTooMany(row, from, to, room, first, last);
  }

  /** Latest end of what is there at all. */
  private meetAny(row: number, from: number, to: number, first: number, last: number): number {
    const { head, nodes, rows } = this;
    let latest = 0;
    for (let day = first; day <= last; day += 1) {
      for (let node = head[day * rows + row]!; node >= 0; node = nodes[node + 3]!) {
        const end = nodes[node + 1]!;
        if (end > from && end > latest && nodes[node]! < to) latest = end;
      }
    }
    return latest;
  }

  private meetTooMany(row: number, from: number, to: number, room: number, first: number, last: number): number {
    const { head, nodes, rows } = this;
    for (let day = first; day <= last; day += 1) {
      for (let node = head[day * rows + row]!; node >= 0; node = nodes[node + 3]!) {
        const start = nodes[node]!;
        if (start >= to || nodes[node + 1]! <= from) continue;
        const minute = start > from ? start : from;
        if (this.loadAt(row, minute) > room) return this.firstEnd(row, minute, from);
      }
    }
    return 0;
  }

  private dayOf(minute: number): number {
    const day = (minute / DAY) | 0;
    return day < this.days ? day : this.days - 1;
  }

  private link(list: number, from: number, to: number, amount: number): void {
    if (this.next === this.nodes.length) this.nodes = doubled(this.nodes);
    const { next: node, nodes } = this;
    const head = this.head[list]!;
    if (head < 0) {
      if (this.usedCount === this.used.length) this.used = doubled(this.used);
      this.used[this.usedCount] = list;
      this.usedCount += 1;
    }
    nodes[node] = from;
    nodes[node + 1] = to;
    nodes[node + 2] = amount;
    nodes[node + 3] = head;
    this.head[list] = node;
    this.next = node + WIDTH;
  }

  /** Units taken at a minute. */
  private loadAt(row: number, minute: number): number {
    const { nodes } = this;
    let sum = 0;
    for (let node = this.head[this.dayOf(minute) * this.rows + row]!; node >= 0; node = nodes[node + 3]!) {
      if (nodes[node]! <= minute && minute < nodes[node + 1]!) sum += nodes[node + 2]!;
    }
    return sum;
  }

  /** First end after `after` of what is there at a minute. */
  private firstEnd(row: number, minute: number, after: number): number {
    const { nodes } = this;
    let first = FAR;
    for (let node = this.head[this.dayOf(minute) * this.rows + row]!; node >= 0; node = nodes[node + 3]!) {
      const end = nodes[node + 1]!;
      if (nodes[node]! <= minute && minute < end && end > after && end < first) first = end;
    }
    return first;
  }
}

/** Media that some have in one state and some in another. */
export class MediumBoard {
  /** Intervals of each medium in the order they came. */
  private readonly from: Int32Array[];
  private readonly to: Int32Array[];
  private readonly state: Int32Array[];
  private readonly count: Int32Array;
  /** The last end of all, its state, and the last end of the other states: most questions end here. */
  private readonly topEnd: Int32Array;
  private readonly topState: Int32Array;
  private readonly otherEnd: Int32Array;

  constructor(rows: number) {
    const lists = () => Array.from({ length: rows }, () => new Int32Array(8));
    this.from = lists();
    this.to = lists();
    this.state = lists();
    this.count = new Int32Array(rows);
    this.topEnd = new Int32Array(rows);
    this.topState = new Int32Array(rows);
    this.otherEnd = new Int32Array(rows);
  }

  clear(): void {
    this.count.fill(0);
    this.topEnd.fill(0);
    this.topState.fill(-1);
    this.otherEnd.fill(0);
  }

  /** Has the medium in a state within [from, to). */
  add(row: number, from: number, to: number, state: number): void {
    const at = this.count[row]!;
    if (at === this.from[row]!.length) for (const lists of [this.from, this.to, this.state]) lists[row] = doubled(lists[row]!);
    this.from[row]![at] = from;
    this.to[row]![at] = to;
    this.state[row]![at] = state;
    this.count[row] = at + 1;
    const isTop = state === this.topState[row];
    if (to > this.topEnd[row]!) {
      if (!isTop) this.otherEnd[row] = this.topEnd[row]!;
      this.topEnd[row] = to;
      this.topState[row] = state;
    } else if (!isTop && to > this.otherEnd[row]!) this.otherEnd[row] = to;
  }

  /** True when nobody has the medium in another state at `from` or later, which most questions end with. */
  isFreeFrom(row: number, from: number, state: number): boolean {
    return from >= (state === this.topState[row] ? this.otherEnd[row]! : this.topEnd[row]!);
  }

  /** 0 when nobody has the medium in another state within [from, to); else the end of the last who has. */
  meet(row: number, from: number, to: number, state: number): number {
    if (from >= to || this.isFreeFrom(row, from, state)) return 0;
    const starts = this.from[row]!;
    const ends = this.to[row]!;
    const states = this.state[row]!;
    let latest = 0;
    for (let k = this.count[row]! - 1; k >= 0; k -= 1) {
      if (ends[k]! > from && ends[k]! > latest && starts[k]! < to && states[k] !== state) latest = ends[k]!;
    }
    return latest;
  }
}

function doubled(values: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(values.length * 2);
  larger.set(values);
  return larger;
}
