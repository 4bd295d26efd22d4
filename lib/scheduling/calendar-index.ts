import type { Interval, Minute } from './problem';

/** Stands for "never": far beyond any horizon, small enough to add two of them in 32 bits. */
export const FAR = 1_000_000_000;
/** Largest minute or length accepted, so that sums stay below {@link FAR}. */
export const LARGEST = 100_000_000;

const DAY = 1440;

/** A calendar as sorted arrays, asked by the day or by binary search. All answers are whole minutes; {@link FAR} is never, -1 is none. */
export class CalendarIndex {
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Worked minutes before each interval. */
  readonly before: Int32Array;
  readonly total: number;
  readonly count: number;
  /** First interval that ends after the first minute of each day, up to the day of the last end. */
  private readonly firstOfDay: Int32Array;

  constructor(intervals: readonly Interval[]) {
    this.count = intervals.length;
    this.start = Int32Array.from(intervals, (i) => i.start);
    this.end = Int32Array.from(intervals, (i) => i.end);
    this.before = new Int32Array(this.count);
    let sum = 0;
    for (let k = 0; k < this.count; k += 1) {
      this.before[k] = sum;
      sum += this.end[k]! - this.start[k]!;
    }
    this.total = sum;
    const last = this.count === 0 ? 0 : this.end[this.count - 1]!;
    this.firstOfDay = new Int32Array(((last / DAY) | 0) + 2).fill(this.count);
    for (let day = 0, k = 0; day * DAY < last; day += 1) {
      while (this.end[k]! <= day * DAY) k += 1;
      this.firstOfDay[day] = k;
    }
  }

  /** Index of the first interval that ends after `t`; `count` when there is none. */
  firstEndingAfter(t: Minute): number {
    if (t < 0) return 0;
    const day = (t / DAY) | 0;
    if (day >= this.firstOfDay.length - 1) return this.count;
    // Within the day of `t`: no further than what the next day begins with.
    let low = this.firstOfDay[day]!;
    let high = this.firstOfDay[day + 1]!;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (this.end[mid]! > t) high = mid;
      else low = mid + 1;
    }
    return low;
  }

  /** Index of the last interval that starts at or before `t`; -1 when there is none. */
  lastStartingBy(t: Minute): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (this.start[mid]! > t) high = mid;
      else low = mid + 1;
    }
    return low - 1;
  }

  /** Minutes of the calendar before `t`. */
  workedBefore(t: Minute): number {
    const k = this.lastStartingBy(t);
    if (k < 0) return 0;
    return this.before[k]! + Math.min(t, this.end[k]!) - this.start[k]!;
  }

  /** Earliest minute by which `work` minutes of the calendar have passed. */
  timeAtWork(work: number): Minute {
    if (work <= 0) return 0;
    if (work > this.total) return FAR;
    const k = this.intervalAtWork(work - 1);
    return this.start[k]! + work - this.before[k]!;
  }

  /** Latest minute before which at most `work` minutes have passed, inside an interval; `work` >= 0. */
  lastTimeAtWork(work: number): Minute {
    if (work >= this.total) return FAR;
    const k = this.intervalAtWork(work);
    return this.start[k]! + work - this.before[k]!;
  }

  /** Index of the interval in which worked minute number `work` (from 0) lies. */
  private intervalAtWork(work: number): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (this.before[mid]! > work) high = mid;
      else low = mid + 1;
    }
    return low - 1;
  }
}
