import { BY_STORED } from './trail';
import type { Trail } from './trail';

/**
 * Time-table edge-finding on one resource (Vilim 2011; explanations after Schutt, Feydt, Stuckey 2013): in a window
 * [a, b) the work that must happen there may not exceed capacity x length, and who would exceed it starts later.
 * Windows are found by whole activities plus sure parts; what is then claimed and explained is counted afresh by how
 * much of each activity every start puts into the window, and literals are weakened by the surplus.
 *
 * `side` 0 looks along time and pushes earliest starts; side 1 sees time reversed (start' = -end) and pushes latest.
 */
export class EnergyCheck {
  private readonly byEarliest: Int32Array;
  private readonly byEnd: Int32Array;
  private readonly earliest: Int32Array;
  private readonly latestEnd: Int32Array;
  private readonly open: Int32Array;
  private readonly sureBefore: Int32Array;
  private readonly sureBeforeEnd: Int32Array;
  private readonly overlap: Int32Array;
  private readonly reasons: Int32Array;
  private side = 0;
  private readonly eventAt: Int32Array;
  private readonly eventUse: Int32Array;

  constructor(
    private readonly trail: Trail,
    private readonly tasks: Int32Array,
    private readonly capacity: number,
    private readonly duration: Int32Array,
    private readonly demand: Int32Array,
  ) {
    const n = duration.length;
    this.byEarliest = tasks.slice();
    this.byEnd = tasks.slice();
    this.earliest = new Int32Array(n);
    this.latestEnd = new Int32Array(n);
    this.open = new Int32Array(n);
    this.sureBefore = new Int32Array(n);
    this.sureBeforeEnd = new Int32Array(n);
    this.overlap = new Int32Array(n);
    this.reasons = new Int32Array(4 * n + 8);
    this.eventAt = new Int32Array(2 * tasks.length + 1);
    this.eventUse = new Int32Array(2 * tasks.length + 1);
  }

  /** False on a conflict. */
  propagate(): boolean {
    for (this.side = 0; this.side < 2; this.side++) {
      this.prepare();
      if (!this.scan()) return false;
    }
    return true;
  }

  /** Reads bounds as this side sees them, sorts, and adds up the sure parts before every end of a window. */
  private prepare(): void {
    const { tasks, duration, demand, earliest, latestEnd, open, byEarliest, byEnd } = this;
    const value = this.trail.value;
    for (let k = 0; k < tasks.length; k++) {
      const i = tasks[k]!;
      const least = value[2 * i]!;
      const greatest = -value[2 * i + 1]!;
      const d = duration[i]!;
      earliest[i] = this.side === 0 ? least : -greatest - d;
      latestEnd[i] = this.side === 0 ? greatest + d : -least;
      const sure = Math.max(0, least + d - greatest);
      open[i] = demand[i]! * (d - sure);
    }
    sortBy(byEarliest, earliest);
    sortBy(byEnd, latestEnd);
    this.sumSure();
  }

  /** `sureBefore[i]`: energy of sure parts before the earliest start of i; `sureBeforeEnd[i]`: before its latest end. */
  private sumSure(): void {
    const { byEarliest, byEnd, earliest, latestEnd, duration, demand, eventAt, eventUse } = this;
    const n = byEarliest.length;
    let events = 0;
    for (let k = 0; k < n; k++) {
      const i = byEarliest[k]!;
      const from = latestEnd[i]! - duration[i]!;
      const to = earliest[i]! + duration[i]!;
      if (from >= to) continue;
      events = insertEvent(eventAt, eventUse, events, from, demand[i]!);
      events = insertEvent(eventAt, eventUse, events, to, -demand[i]!);
    }
    addUpTo(byEarliest, earliest, this.sureBefore, eventAt, eventUse, events);
    addUpTo(byEnd, latestEnd, this.sureBeforeEnd, eventAt, eventUse, events);
  }

  private scan(): boolean {
    const { byEarliest, byEnd, earliest, latestEnd, open, sureBefore, sureBeforeEnd, demand, capacity } = this;
    const n = byEnd.length;
    for (let e = n - 1; e >= 0; e--) {
      const last = byEnd[e]!;
      const b = latestEnd[last]!;
      if (e < n - 1 && latestEnd[byEnd[e + 1]!] === b) continue;
      let work = 0;
      let rival = -1;
      let rivalWork = 0;
      for (let k = n - 1; k >= 0; k--) {
        const i = byEarliest[k]!;
        const a = earliest[i]!;
        if (a >= b) continue;
        if (latestEnd[i]! <= b) work += open[i]!;
        else {
          const inside = Math.min(open[i]!, demand[i]! * (b - a));
          if (inside > rivalWork) {
            rival = i;
            rivalWork = inside;
          }
        }
        const left = capacity * (b - a) - (sureBeforeEnd[last]! - sureBefore[i]!) - work;
        if (left < 0) {
          this.fail(a, b);
          return false;
        }
        if (left < rivalWork && !this.push(rival, a, b, left)) return false;
      }
    }
    return true;
  }

  /** How much of the window [a, b) activity i covers wherever it starts. */
  private measure(a: number, b: number, except: number): number {
    const { tasks, duration, demand, overlap, side } = this;
    const value = this.trail.value;
    let total = 0;
    for (let k = 0; k < tasks.length; k++) {
      const i = tasks[k]!;
      const d = duration[i]!;
      const least = side === 0 ? value[2 * i]! : value[2 * i + 1]! - d;
      const greatest = side === 0 ? -value[2 * i + 1]! : -value[2 * i]! - d;
      const inside = i === except ? 0 : Math.max(0, Math.min(d, b - a, least + d - a, b - greatest));
      overlap[i] = inside;
      total += demand[i]! * inside;
    }
    return total;
  }

  /** Writes literals for the measured overlaps, given up as far as the surplus allows. */
  private explain(a: number, b: number, surplus: number, own: number): number {
    const { tasks, duration, demand, overlap, reasons } = this;
    let spare = surplus;
    let count = own;
    for (let k = 0; k < tasks.length; k++) {
      const i = tasks[k]!;
      if (overlap[i] === 0) continue;
      const given = Math.min(overlap[i]!, Math.floor(spare / demand[i]!));
      spare -= given * demand[i]!;
      const inside = overlap[i]! - given;
      if (inside === 0) continue;
      this.writeAtLeast(reasons, count, i, a + inside - duration[i]!);
      this.writeAtMost(reasons, count + 1, i, b - inside);
      count += 2;
    }
    return count;
  }

  /** start' of i >= v, as a literal. */
  private writeAtLeast(pairs: Int32Array, at: number, i: number, v: number): void {
    pairs[2 * at] = 2 * i + this.side;
    pairs[2 * at + 1] = this.side === 0 ? v : v + this.duration[i]!;
  }

  /** start' of i <= v, as a literal. */
  private writeAtMost(pairs: Int32Array, at: number, i: number, v: number): void {
    pairs[2 * at] = 2 * i + 1 - this.side;
    pairs[2 * at + 1] = this.side === 0 ? -v : -v - this.duration[i]!;
  }

  private fail(a: number, b: number): void {
    const surplus = this.measure(a, b, -1) - this.capacity * (b - a) - 1;
    const count = this.explain(a, b, surplus, 0);
    this.trail.failedBound = -1;
    this.trail.failedKind = BY_STORED;
    this.trail.failedData = this.trail.store(this.reasons, count);
  }

  /** Moves i out of the window as far as the others leave it no room there. False on a conflict. */
  private push(i: number, a: number, b: number, left: number): boolean {
    const { trail, capacity, demand, duration, earliest, latestEnd } = this;
    const d = duration[i]!;
    const r = demand[i]!;
    const sure = Math.max(0, Math.min(b, earliest[i]! + d) - Math.max(a, latestEnd[i]! - d));
    const now = this.side === 0 ? trail.value[2 * i]! : trail.value[2 * i + 1]! - d;
    if (b - Math.floor((left + sure * r) / r) <= now) return true;
    const others = this.measure(a, b, i);
    const most = Math.floor((capacity * (b - a) - others) / r);
    const pushed = b - most;
    if (most < 0 || pushed <= now || d <= most || b - a <= most || earliest[i]! + d - a <= most) return true;
    this.writeAtLeast(this.reasons, 0, i, a + most + 1 - d);
    const count = this.explain(a, b, others + r * (most + 1) - capacity * (b - a) - 1, 1);
    return trail.post(2 * i + this.side, this.side === 0 ? pushed : pushed + d, BY_STORED, trail.store(this.reasons, count));
  }
}

/** Insertion sort by key: the order hardly changes between calls. */
function sortBy(order: Int32Array, key: Int32Array): void {
  for (let k = 1; k < order.length; k++) {
    const i = order[k]!;
    let place = k;
    while (place > 0 && key[order[place - 1]!]! > key[i]!) {
      order[place] = order[place - 1]!;
      place--;
    }
    order[place] = i;
  }
}

function insertEvent(at: Int32Array, use: Int32Array, count: number, time: number, change: number): number {
  let place = count;
  while (place > 0 && at[place - 1]! > time) {
    at[place] = at[place - 1]!;
    use[place] = use[place - 1]!;
    place--;
  }
  at[place] = time;
  use[place] = change;
  return count + 1;
}

/** The energy of the profile before each key, keys rising along `order`. */
function addUpTo(order: Int32Array, key: Int32Array, sums: Int32Array, at: Int32Array, change: Int32Array, events: number): void {
  let energy = 0;
  let use = 0;
  let e = 0;
  let now = events > 0 ? at[0]! : 0;
  for (let k = 0; k < order.length; k++) {
    const t = key[order[k]!]!;
    while (e < events && at[e]! <= t) {
      energy += use * (at[e]! - now);
      now = at[e]!;
      use += change[e++]!;
    }
    sums[order[k]!] = energy + (t > now ? use * (t - now) : 0);
  }
}
