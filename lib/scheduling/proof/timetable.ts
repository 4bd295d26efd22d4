import { EnergyCheck } from './energy';
import { BY_STORED } from './trail';
import type { Trail } from './trail';

/** Whole windows are looked at every time only while one look in so many tells something. */
const SELDOM = 4;

/**
 * One renewable resource propagated by its time-table: the profile of the parts of activities that no start can
 * avoid. Each push is explained at one point of time t: those who surely cover t leave too little.
 */
export class Timetable {
  readonly tasks: Int32Array;
  private readonly byLatest: Int32Array;
  private readonly byEarliest: Int32Array;
  private readonly segmentAt: Int32Array;
  private readonly segmentUse: Int32Array;
  private peak = 0;
  private segments = 0;
  private isStale = true;
  /** Tasks whose bounds rose since the last sweep. */
  private readonly isTouched: Uint8Array;
  private readonly touched: Int32Array;
  private touches = 0;
  private hasGrown = true;
  /** Where the profile may have grown since the last sweep: whoever lies elsewhere need not be looked at. */
  private grownFrom = -Infinity;
  private grownTo = Infinity;
  private readonly reasons: Int32Array;
  private readonly energy: EnergyCheck;
  private isEnergyDue = true;
  private energyTurns = 0;
  private energyCalls = 0;
  private energyHits = 0;

  constructor(
    private readonly trail: Trail,
    readonly capacity: number,
    private readonly duration: Int32Array,
    readonly demand: Int32Array,
  ) {
    const tasks: number[] = [];
    for (let i = 0; i < demand.length; i++) {
      if (demand[i]! > 0 && duration[i]! > 0) tasks.push(i);
    }
    this.tasks = Int32Array.from(tasks);
    this.byLatest = Int32Array.from(tasks);
    this.byEarliest = Int32Array.from(tasks);
    this.segmentAt = new Int32Array(2 * tasks.length + 2);
    this.segmentUse = new Int32Array(2 * tasks.length + 2);
    this.isTouched = new Uint8Array(demand.length);
    this.touched = new Int32Array(demand.length);
    this.reasons = new Int32Array(4 * demand.length + 8);
    this.energy = new EnergyCheck(trail, this.tasks, capacity, duration, demand);
  }

  /** The bounds of a task rose; `isSure` when some time is now covered by every start. */
  touch(i: number, isSure: boolean): void {
    this.isEnergyDue = true;
    if (this.isTouched[i] === 0) {
      this.isTouched[i] = 1;
      this.touched[this.touches++] = i;
    }
    if (!isSure) return;
    const value = this.trail.value;
    this.hasGrown = true;
    this.isStale = true;
    this.grownFrom = Math.min(this.grownFrom, -value[2 * i + 1]!);
    this.grownTo = Math.max(this.grownTo, value[2 * i]! + this.duration[i]!);
  }

  /** Bounds were taken back: the profile is to be built again; what rose since no longer counts. */
  retreat(): void {
    this.isEnergyDue = false;
    this.isStale = true;
    this.forget();
  }

  /** Looks at whole windows once all else is settled. False on a conflict. */
  checkEnergy(): boolean {
    if (!this.isEnergyDue) return true;
    this.isEnergyDue = false;
    this.energyTurns++;
    const isRare = this.energyHits * SELDOM < this.energyCalls && this.energyCalls > 100;
    if (isRare && this.trail.depth > 1 && this.energyTurns % 16 !== 0) return true;
    const size = this.trail.size;
    const isFine = this.energy.propagate();
    this.energyCalls++;
    if (!isFine || this.trail.size > size) this.energyHits++;
    return isFine;
  }

  isIdle(): boolean {
    return !this.hasGrown && this.touches === 0;
  }

  /** Propagates what was touched. False on a conflict. */
  propagate(): boolean {
    const { duration, grownFrom, grownTo, isTouched, tasks } = this;
    if (this.isStale && !this.build()) return false;
    const value = this.trail.value;
    const list = this.hasGrown ? tasks : this.touched;
    const count = this.hasGrown ? tasks.length : this.touches;
    for (let k = 0; k < count; k++) {
      const i = list[k]!;
      const isDue = isTouched[i] === 1;
      const earliest = value[2 * i]!;
      if ((isDue || (earliest < grownTo && earliest + duration[i]! > grownFrom)) && !this.pushEarliest(i)) return false;
      const latest = -value[2 * i + 1]!;
      if ((isDue || (latest < grownTo && latest + duration[i]! > grownFrom)) && !this.pushLatest(i)) return false;
    }
    this.forget();
    return true;
  }

  /** What rose is looked at, or no longer counts. */
  private forget(): void {
    this.hasGrown = false;
    this.grownFrom = Infinity;
    this.grownTo = -Infinity;
    for (let k = 0; k < this.touches; k++) this.isTouched[this.touched[k]!] = 0;
    this.touches = 0;
  }

  /** The profile from the sure parts; a conflict where it exceeds the capacity. */
  private build(): boolean {
    const { byLatest, byEarliest, segmentAt, segmentUse, duration, demand } = this;
    const value = this.trail.value;
    const n = byLatest.length;
    sortByKey(byLatest, n, value, duration, true);
    sortByKey(byEarliest, n, value, duration, false);
    let a = 0;
    let b = 0;
    let use = 0;
    let m = 0;
    this.peak = 0;
    for (;;) {
      while (a < n && !hasPart(value, duration, byLatest[a]!)) a++;
      while (b < n && !hasPart(value, duration, byEarliest[b]!)) b++;
      if (b === n) break;
      const end = value[2 * byEarliest[b]!]! + duration[byEarliest[b]!]!;
      const start = a < n ? -value[2 * byLatest[a]! + 1]! : end + 1;
      const at = start < end ? start : end;
      if (start < end) use += demand[byLatest[a++]!]!;
      else use -= demand[byEarliest[b++]!]!;
      if (m === 0 || segmentAt[m - 1]! !== at) segmentAt[m++] = at;
      segmentUse[m - 1] = use;
      if (use > this.peak) this.peak = use;
    }
    this.segments = m;
    this.isStale = false;
    for (let s = 0; s < m && this.peak > this.capacity; s++) {
      if (segmentUse[s]! <= this.capacity) continue;
      const middle = segmentAt[s]! + ((segmentAt[s + 1]! - segmentAt[s]!) >> 1);
      this.failAt(middle);
      return false;
    }
    return true;
  }

  private failAt(t: number): void {
    const count = this.explainAt(t, -1, 0, 0);
    const trail = this.trail;
    trail.failedBound = -1;
    trail.failedKind = BY_STORED;
    trail.failedData = trail.store(this.reasons, count);
  }

  /** Writes who covers t, as few as leave less than `demand` for i; `own` pairs stand there already. */
  private explainAt(t: number, i: number, need: number, own: number): number {
    const { byLatest, duration, demand, reasons } = this;
    const value = this.trail.value;
    let use = need;
    let end = byLatest.length;
    for (let k = 0; k < byLatest.length; k++) {
      const j = byLatest[k]!;
      if (-value[2 * j + 1]! > t) {
        end = k;
        break;
      }
      if (j !== i && value[2 * j]! + duration[j]! > t) use += demand[j]!;
    }
    let spare = use - this.capacity - 1;
    let count = own;
    for (let k = 0; k < end; k++) {
      const j = byLatest[k]!;
      if (j === i || value[2 * j]! + duration[j]! <= t) continue;
      if (demand[j]! <= spare) {
        spare -= demand[j]!;
        continue;
      }
      reasons[2 * count] = 2 * j;
      reasons[2 * count + 1] = t + 1 - duration[j]!;
      reasons[2 * count + 2] = 2 * j + 1;
      reasons[2 * count + 3] = -t;
      count += 2;
    }
    return count;
  }

  /** Moves the earliest start of i out of segments that leave too little. */
  private pushEarliest(i: number): boolean {
    const { segmentAt, segmentUse, trail } = this;
    const value = trail.value;
    const length = this.duration[i]!;
    const room = this.capacity - this.demand[i]!;
    let earliest = value[2 * i]!;
    if (this.peak <= room) return true;
    let s = this.firstSegmentAfter(earliest);
    while (s < this.segments) {
      const latest = -value[2 * i + 1]!;
      const from = segmentAt[s]!;
      if (from >= earliest + length || from >= latest) break;
      if (segmentUse[s]! > room) {
        const t = Math.min(segmentAt[s + 1]!, earliest + length) - 1;
        this.reasons[0] = 2 * i;
        this.reasons[1] = t + 1 - length;
        const count = this.explainAt(t, i, this.demand[i]!, 1);
        if (!trail.post(2 * i, t + 1, BY_STORED, trail.store(this.reasons, count))) return false;
        earliest = t + 1;
        if (earliest < segmentAt[s + 1]!) continue;
      }
      s++;
    }
    return true;
  }

  /** Moves the latest start of i before segments that leave too little. */
  private pushLatest(i: number): boolean {
    const { segmentAt, segmentUse, trail } = this;
    const value = trail.value;
    const length = this.duration[i]!;
    const room = this.capacity - this.demand[i]!;
    let latest = -value[2 * i + 1]!;
    if (this.peak <= room) return true;
    let s = this.firstSegmentAfter(latest + length - 1);
    if (s === this.segments - 1 || segmentAt[s]! > latest + length - 1) s--;
    while (s >= 0 && s < this.segments - 1) {
      const earliestEnd = value[2 * i]! + length;
      const to = segmentAt[s + 1]!;
      if (to <= latest || to <= earliestEnd) break;
      if (segmentUse[s]! > room) {
        const t = Math.max(segmentAt[s]!, latest);
        this.reasons[0] = 2 * i + 1;
        this.reasons[1] = -t;
        const count = this.explainAt(t, i, this.demand[i]!, 1);
        if (!trail.post(2 * i + 1, length - t, BY_STORED, trail.store(this.reasons, count))) return false;
        latest = t - length;
        if (latest >= segmentAt[s]!) continue;
      }
      s--;
    }
    return true;
  }

  /** The segment around t, or the first one after it. */
  private firstSegmentAfter(t: number): number {
    let low = 0;
    let high = this.segments - 1;
    if (high < 0) return 0;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.segmentAt[middle + 1]! > t) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

/** True when every start of i covers some time. */
function hasPart(value: Int32Array, duration: Int32Array, i: number): boolean {
  return -value[2 * i + 1]! < value[2 * i]! + duration[i]!;
}

/** Insertion sort: the order hardly changes between calls. */
function sortByKey(order: Int32Array, n: number, value: Int32Array, duration: Int32Array, isLatestStart: boolean): void {
  for (let k = 1; k < n; k++) {
    const i = order[k]!;
    const key = isLatestStart ? -value[2 * i + 1]! : value[2 * i]! + duration[i]!;
    let place = k;
    while (place > 0) {
      const j = order[place - 1]!;
      const other = isLatestStart ? -value[2 * j + 1]! : value[2 * j]! + duration[j]!;
      if (other <= key) break;
      order[place] = j;
      place--;
    }
    order[place] = i;
  }
}
