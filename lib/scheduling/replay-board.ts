import { FAR } from './calendar-index';

const DAY = 1440;

/**
 * Who occupies what and when, in one list a day and row, so that a question about an evening looks at that evening only.
 * Rows are resources and, behind them, shared media. Nothing is allocated between two calls of {@link clear} once it has grown.
 */
export class ReplayBoard {
  private readonly days: number;
  private readonly head: Int32Array;
  /** Lists that are not empty, so that clearing need not go over all of them. */
  private used = new Int32Array(4096);
  private usedCount = 0;
  /** From when a row is taken for good, as far as is known; FAR: it is not. */
  private readonly closedFrom: Int32Array;
  private readonly latestEnd: Int32Array;
  private nodeOf = new Int32Array(4096);
  private nodeNext = new Int32Array(4096);
  private nodes = 0;
  private from = new Int32Array(1024);
  private to = new Int32Array(1024);
  private amount = new Int32Array(1024);
  private state = new Int32Array(1024);
  private count = 0;

  constructor(rows: number, horizon: number) {
    this.days = Math.max(1, Math.ceil(horizon / DAY));
    this.head = new Int32Array(rows * this.days).fill(-1);
    this.closedFrom = new Int32Array(rows).fill(FAR);
    this.latestEnd = new Int32Array(rows);
  }

  clear(): void {
    for (let k = 0; k < this.usedCount; k += 1) this.head[this.used[k]!] = -1;
    this.usedCount = 0;
    this.closedFrom.fill(FAR);
    this.latestEnd.fill(0);
    this.nodes = 0;
    this.count = 0;
  }

  /** Takes the whole row from a minute on until {@link reopen} says when that ended. */
  close(row: number, from: number): void {
    this.closedFrom[row] = from;
  }

  /** The row closed before was taken up to `to` only. */
  reopen(row: number, to: number): void {
    const from = this.closedFrom[row]!;
    if (from >= FAR) return;
    this.closedFrom[row] = FAR;
    if (from < to) this.add(row, from, to, FAR);
  }

  /** End of the last that is there, FAR when the row is closed. */
  lastEnd(row: number): number {
    return this.closedFrom[row]! < FAR ? FAR : this.latestEnd[row]!;
  }

  /** Occupies [from, to). */
  add(row: number, from: number, to: number, amount: number, state = 0): void {
    const at = this.count;
    if (at === this.from.length) this.growOccupations();
    this.from[at] = from;
    this.to[at] = to;
    this.amount[at] = amount;
    this.state[at] = state;
    this.count += 1;
    if (to > this.latestEnd[row]!) this.latestEnd[row] = to;
    const last = this.dayOf(to - 1);
    for (let day = this.dayOf(from); day <= last; day += 1) this.link(row * this.days + day, at);
  }

  /** 0 when at most `room` units are taken at every minute of [from, to); else the next start worth trying. */
  meet(row: number, from: number, to: number, room: number): number {
    if (from >= to) return 0;
    if (room < 0 || to > this.closedFrom[row]!) return FAR;
    const last = this.dayOf(to - 1);
    let latest = 0;
    for (let day = this.dayOf(from); day <= last; day += 1) {
      for (let node = this.head[row * this.days + day]!; node >= 0; node = this.nodeNext[node]!) {
        const other = this.nodeOf[node]!;
        const end = this.to[other]!;
        if (this.from[other]! >= to || end <= from) continue;
        if (room > 0 && this.loadAt(row, Math.max(from, this.from[other]!)) <= room) continue;
        if (room === 0) {
          if (end > latest) latest = end;
        } else return this.firstEnd(row, Math.max(from, this.from[other]!), from);
      }
    }
    return latest;
  }

  /** 0 when nobody has the medium in another state within [from, to); else the end of the last who has. */
  meetState(row: number, from: number, to: number, state: number): number {
    if (from >= to) return 0;
    const last = this.dayOf(to - 1);
    let latest = 0;
    for (let day = this.dayOf(from); day <= last; day += 1) {
      for (let node = this.head[row * this.days + day]!; node >= 0; node = this.nodeNext[node]!) {
        const other = this.nodeOf[node]!;
        if (this.state[other] === state || this.from[other]! >= to || this.to[other]! <= from) continue;
        if (this.to[other]! > latest) latest = this.to[other]!;
      }
    }
    return latest;
  }

  private dayOf(minute: number): number {
    return Math.min(this.days - 1, (Math.max(0, minute) / DAY) | 0);
  }

  /** Units taken at a minute. */
  private loadAt(row: number, minute: number): number {
    let sum = 0;
    for (let node = this.head[row * this.days + this.dayOf(minute)]!; node >= 0; node = this.nodeNext[node]!) {
      const other = this.nodeOf[node]!;
      if (this.from[other]! <= minute && minute < this.to[other]!) sum += this.amount[other]!;
    }
    return sum;
  }

  /** First end after `after` of what is there at a minute. */
  private firstEnd(row: number, minute: number, after: number): number {
    let first = FAR;
    for (let node = this.head[row * this.days + this.dayOf(minute)]!; node >= 0; node = this.nodeNext[node]!) {
      const other = this.nodeOf[node]!;
      const end = this.to[other]!;
      if (this.from[other]! <= minute && minute < end && end > after && end < first) first = end;
    }
    return first;
  }

  private link(bucket: number, occupation: number): void {
    if (this.nodes === this.nodeOf.length) {
      this.nodeOf = doubled(this.nodeOf);
      this.nodeNext = doubled(this.nodeNext);
    }
    if (this.head[bucket]! < 0) {
      if (this.usedCount === this.used.length) this.used = doubled(this.used);
      this.used[this.usedCount] = bucket;
      this.usedCount += 1;
    }
    this.nodeOf[this.nodes] = occupation;
    this.nodeNext[this.nodes] = this.head[bucket]!;
    this.head[bucket] = this.nodes;
    this.nodes += 1;
  }

  private growOccupations(): void {
    this.from = doubled(this.from);
    this.to = doubled(this.to);
    this.amount = doubled(this.amount);
    this.state = doubled(this.state);
  }
}

function doubled(values: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(values.length * 2);
  larger.set(values);
  return larger;
}
