import { FAR, type CalendarIndex } from './calendar-index';

/** Stands for the units before the first step: equal to none. */
const NONE = -FAR;

/**
 * Free units of one resource over time, as a step function: `free[k]` holds from `time[k]` to `time[k + 1]`.
 * Asked by binary search; nothing is kept a minute.
 */
export class Profile {
  /** Pairs of `time` and `free`, one after the other: a change moves one stretch of memory. */
  private steps: Int32Array;
  private size = 0;
  /** Step asked about last: most questions are about the time near it. */
  private near = 0;
  private readonly base: Int32Array;
  /** Steps that a change puts in the place of others. */
  private changed = new Int32Array(64);

  constructor(capacity: number, calendar: CalendarIndex | undefined) {
    const steps: number[] = [0, calendar === undefined ? capacity : 0];
    const add = (at: number, units: number) => {
      if (steps.at(-2) === at) steps.pop();
      else steps.push(at);
      steps.push(units);
    };
    const intervals = calendar?.count ?? 0;
    for (let k = 0; k < intervals; k += 1) {
      add(calendar!.start[k]!, capacity);
      add(calendar!.end[k]!, 0);
    }
    this.base = Int32Array.from(steps);
    this.steps = new Int32Array(steps.length + 64);
    this.clear();
  }

  /** Back to nothing taken. */
  clear(): void {
    this.size = this.base.length / 2;
    this.steps.set(this.base);
  }

  /** Index of the step in which `t` lies. */
  private stepAt(t: number): number {
    const { size, steps } = this;
    let low = this.near < size ? this.near : 0;
    let high = size;
    if (steps[2 * low]! <= t) {
      for (let width = 1; low + width < size; width *= 2) {
        if (steps[2 * (low + width)]! > t) {
          high = low + width;
          break;
        }
        low += width;
      }
    } else {
      high = low;
      low = 0;
    }
    while (high - low > 1) {
      const mid = (low + high) >> 1;
      if (steps[2 * mid]! > t) high = mid;
      else low = mid;
    }
    this.near = low;
    return low;
  }

  /**
   * End of the last stretch within [from, to) with fewer than `amount` units free, followed as long as it
   * stays so; 0 when there is none, FAR when it never ends.
   */
  conflictEnd(from: number, to: number, amount: number): number {
    if (from >= to) return 0;
    const { steps, size } = this;
    let k = this.stepAt(to - 1);
    while (steps[2 * k + 1]! >= amount) {
      if (steps[2 * k]! <= from) return 0;
      k -= 1;
    }
    k += 1;
    while (k < size && steps[2 * k + 1]! < amount) k += 1;
    return k < size ? steps[2 * k]! : FAR;
  }

  /** Takes `amount` units over [from, to); a negative amount gives them back. Equal neighbours become one step, which keeps the function short. */
  take(from: number, to: number, amount: number): void {
    if (from >= to || amount === 0) return;
    const { size, steps } = this;
    const first = this.stepAt(from);
    let last = first;
    while (last + 1 < size && steps[2 * last + 2]! < to) last += 1;
    if (this.changed.length < 2 * (last - first) + 8) this.changed = new Int32Array(4 * (last - first) + 16);
    const { changed } = this;
    let before = first === 0 ? NONE : steps[2 * first - 1]!;
    let count = 0;
    if (steps[2 * first]! < from) {
      before = steps[2 * first + 1]!;
      changed[0] = steps[2 * first]!;
      changed[1] = before;
      count = 2;
    }
    for (let k = first; k <= last; k += 1) {
      const units = steps[2 * k + 1]! - amount;
      if (units === before) continue;
      changed[count] = k === first ? from : steps[2 * k]!;
      changed[count + 1] = units;
      before = units;
      count += 2;
    }
    // What is left of the last step, or the one after it, may go on as the one before.
    const rest = last + 1 < size && steps[2 * last + 2] === to ? last + 1 : last;
    if (steps[2 * rest + 1] !== before) {
      changed[count] = to;
      changed[count + 1] = steps[2 * rest + 1]!;
      count += 2;
    }
    this.replace(first, rest + 1, count);
  }

  /** Puts `count` numbers of the changed steps where the steps `first` to `end` (not included) are. */
  private replace(first: number, end: number, count: number): void {
    const grown = count - 2 * (end - first);
    if (2 * this.size + grown > this.steps.length) {
      const longer = new Int32Array(2 * this.steps.length + count);
      longer.set(this.steps);
      this.steps = longer;
    }
    const { changed, steps } = this;
    if (grown !== 0) steps.copyWithin(2 * end + grown, 2 * end, 2 * this.size);
    for (let k = 0; k < count; k += 1) steps[2 * first + k] = changed[k]!;
    this.size += grown / 2;
  }
}
