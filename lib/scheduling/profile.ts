import { FAR, type CalendarIndex } from './calendar-index';

/**
 * Free units of one resource over time, as a step function: `free[k]` holds from `time[k]` to `time[k + 1]`.
 * Asked by binary search; nothing is kept a minute.
 */
export class Profile {
  private time: Int32Array;
  private free: Int32Array;
  private size = 0;
  private readonly baseTime: Int32Array;
  private readonly baseFree: Int32Array;

  constructor(capacity: number, calendar: CalendarIndex | undefined) {
    const times: number[] = [0];
    const frees: number[] = [calendar === undefined ? capacity : 0];
    const add = (at: number, units: number) => {
      if (times.at(-1) === at) {
        frees[frees.length - 1] = units;
        return;
      }
      times.push(at);
      frees.push(units);
    };
    const intervals = calendar?.count ?? 0;
    for (let k = 0; k < intervals; k += 1) {
      add(calendar!.start[k]!, capacity);
      add(calendar!.end[k]!, 0);
    }
    this.baseTime = Int32Array.from(times);
    this.baseFree = Int32Array.from(frees);
    this.time = new Int32Array(times.length + 32);
    this.free = new Int32Array(times.length + 32);
    this.clear();
  }

  /** Back to nothing taken. */
  clear(): void {
    this.size = this.baseTime.length;
    this.time.set(this.baseTime);
    this.free.set(this.baseFree);
  }

  /** Index of the step in which `t` lies. */
  private stepAt(t: number): number {
    const { time } = this;
    let low = 0;
    let high = this.size;
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (time[mid]! > t) high = mid;
      else low = mid;
    }
    return low;
  }

  /**
   * End of the last stretch within [from, to) with fewer than `amount` units free, followed as long as it
   * stays so; 0 when there is none, FAR when it never ends.
   */
  conflictEnd(from: number, to: number, amount: number): number {
    if (from >= to) return 0;
    const { free, time, size } = this;
    let k = this.stepAt(to - 1);
    while (free[k]! >= amount) {
      if (time[k]! <= from) return 0;
      k -= 1;
    }
    k += 1;
    while (k < size && free[k]! < amount) k += 1;
    return k < size ? time[k]! : FAR;
  }

  /** Takes `amount` units over [from, to); a negative amount gives them back. */
  take(from: number, to: number, amount: number): void {
    if (from >= to || amount === 0) return;
    const first = this.split(from);
    const last = this.split(to);
    const { free } = this;
    for (let k = first; k < last; k += 1) free[k]! -= amount;
    // Keep the function short: equal neighbours become one step again.
    this.join(last);
    this.join(first);
  }

  private split(at: number): number {
    const k = this.stepAt(at);
    if (this.time[k] === at) return k;
    if (this.size + 1 >= this.time.length) this.grow();
    const next = k + 1;
    this.time.copyWithin(next + 1, next, this.size);
    this.free.copyWithin(next + 1, next, this.size);
    this.time[next] = at;
    this.free[next] = this.free[k]!;
    this.size += 1;
    return next;
  }

  private join(k: number): void {
    if (k === 0 || k >= this.size || this.free[k] !== this.free[k - 1]) return;
    this.time.copyWithin(k, k + 1, this.size);
    this.free.copyWithin(k, k + 1, this.size);
    this.size -= 1;
  }

  private grow(): void {
    const time = new Int32Array(this.time.length * 2);
    const free = new Int32Array(this.free.length * 2);
    time.set(this.time);
    free.set(this.free);
    this.time = time;
    this.free = free;
  }
}
