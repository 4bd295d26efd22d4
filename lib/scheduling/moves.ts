import type { Model } from './model';
import type { Order } from './order';
import type { Random } from './random';

interface Dates {
  readonly start: Int32Array;
  readonly end: Int32Array;
}

/**
 * Moves on a list of activities that keep its order: work that makes an episode late, or the plan long, goes further
 * to the front with what it needs first; other work goes further back with what follows it.
 */
export class Moves {
  /** Activities the last move was about. */
  readonly touched: number[] = [];
  private readonly isIn: Uint8Array;
  private readonly rest: Int32Array;
  private readonly late: Int32Array;
  private readonly position: Int32Array;

  constructor(private readonly model: Model, private readonly order: Order, private readonly random: Random) {
    this.isIn = new Uint8Array(model.count);
    this.rest = new Int32Array(model.count);
    this.late = new Int32Array(model.count);
    this.position = new Int32Array(model.count);
  }

  /** Changes `list` by one move; the dates are those it leads to as it stands. */
  apply(list: Int32Array, { end, start }: Dates): void {
    const { random } = this;
    this.begin(list);
    const displaced = random.below(2) === 0 ? this.findDisplaced(start) : -1;
    if (displaced >= 0) {
      this.push(list, displaced);
      return;
    }
    const kind = random.below(10);
    if (kind < 2) this.pull(list, this.findLate(end), true);
    else if (kind < 6) this.pull(list, this.climb(this.findLate(end)), false);
    else if (kind < 8) this.pull(list, random.below(list.length), false);
    else this.push(list, random.below(list.length));
  }

  /** Moves something late to the front, with all it needs first. */
  pullLate(list: Int32Array, end: Int32Array): void {
    this.begin(list);
    this.pull(list, this.findLate(end), true);
  }

  private begin(list: Int32Array): void {
    this.touched.length = 0;
    for (let k = 0; k < list.length; k += 1) this.position[list[k]!] = k;
  }

  /** An activity that lost its place of the accepted plan: behind the others it takes none of theirs. -1: none has. */
  private findDisplaced(start: Int32Array): number {
    const { count, previous } = this.model;
    let found = 0;
    for (let i = 0; i < count; i += 1) {
      if (previous[i]! < 0 || previous[i] === start[i]) continue;
      this.late[found] = i;
      found += 1;
    }
    return found === 0 ? -1 : this.late[this.random.below(found)]!;
  }

  /** An activity that is late, any of them alike; else the one that ends last. */
  private findLate(end: Int32Array): number {
    const { count, dueAt, dueWeight } = this.model;
    let found = 0;
    let last = 0;
    for (let i = 0; i < count; i += 1) {
      if (end[i]! > end[last]!) last = i;
      if (dueWeight[i]! <= 0 || end[i]! <= dueAt[i]!) continue;
      this.late[found] = i;
      found += 1;
    }
    if (found === 0) found = this.listShort(end);
    return found === 0 ? last : this.late[this.random.below(found)]!;
  }

  /** Fills `late` with what ends too late for quotas that are missed; returns how many. */
  private listShort(end: Int32Array): number {
    const { among, at, count, from, least } = this.model.objective.quotas;
    let found = 0;
    for (let k = 0; k < count && found < this.late.length; k += 1) {
      const before = found;
      let ended = 0;
      for (let row = from[k]!; row < from[k + 1]!; row += 1) {
        if (end[among[row]!]! <= at[k]!) ended += 1;
        else if (found < this.late.length) {
          this.late[found] = among[row]!;
          found += 1;
        }
      }
      if (ended >= least[k]!) found = before;
    }
    return found;
  }

  /** Some activity on the way back from this one. */
  private climb(activity: number): number {
    let at = activity;
    do {
      const before = this.order.before[at]!;
      if (before.length === 0) return at;
      at = before[this.random.below(before.length)]!;
    } while (this.random.below(5) > 0);
    return at;
  }

  /** How far to go: mostly near, now and then as far as there is. */
  private distance(room: number): number {
    const { random } = this;
    const scale = room >> random.below(6);
    return 1 + random.below(Math.max(1, scale));
  }

  /** Moves the activity to the front, with what it needs first; `isWhole`: all of that, else what stands in between. */
  private pull(list: Int32Array, activity: number, isWhole: boolean): void {
    const at = this.position[activity]!;
    if (at === 0) return;
    const target = at - this.distance(at);
    this.mark(activity, this.order.before, (other) => isWhole || this.position[other]! >= target);
    this.regroup(list, target, at, true);
  }

  /** Moves the activity to the back, with what follows it in between. */
  private push(list: Int32Array, activity: number): void {
    const at = this.position[activity]!;
    if (at === list.length - 1) return;
    const target = Math.min(list.length - 1, at + this.distance(list.length - 1 - at));
    this.mark(activity, this.order.after, (other) => this.position[other]! <= target);
    this.regroup(list, at, target, false);
  }

  private mark(activity: number, next: readonly Int32Array[], isWanted: (other: number) => boolean): void {
    this.isIn.fill(0);
    this.isIn[activity] = 1;
    this.touched.push(activity);
    for (let k = 0; k < this.touched.length; k += 1) {
      for (const other of next[this.touched[k]!]!) {
        if (this.isIn[other] === 1 || !isWanted(other)) continue;
        this.isIn[other] = 1;
        this.touched.push(other);
      }
    }
  }

  /** Puts the marked activities between two positions before (or after) the others there, each group in its order. */
  private regroup(list: Int32Array, from: number, to: number, isFirst: boolean): void {
    const wanted = isFirst ? 1 : 0;
    let held = 0;
    let at = from;
    for (let k = from; k <= to; k += 1) {
      const activity = list[k]!;
      if (this.isIn[activity] === wanted) {
        list[at] = activity;
        at += 1;
      } else {
        this.rest[held] = activity;
        held += 1;
      }
    }
    for (let k = 0; k < held; k += 1) list[at + k] = this.rest[k]!;
  }
}
