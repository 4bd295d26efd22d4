import type { CoreInstance } from './instance';
import type { Random } from './random';
import { Serial } from './serial';
import { grow } from './trail';

const FIRST_PARENTS = 60;
/** Children in a row, as a multiple of the parents, of which none displaced a longer schedule: the parents are then doubled. */
const PATIENCE = 60;
const MOST_PARENTS = 4000;

/**
 * Genetic search over activity lists: two-point crossover, few swaps, each child's schedule justified to the right and
 * back to the left, and read back as a list (double justification: Valls, Ballestin, Quintanilla 2005). Where time can
 * be turned round, parents are listed by end and a child is scheduled from the back at once, which saves it one pass of
 * three (as between the two populations of Debels and Vanhoucke 2007). A child takes its mother's place when it is no
 * worse, which keeps the parents apart from each other.
 */
export class Genetic {
  /** Makespan of the best schedule, -1 before the first. */
  best = -1;
  readonly bestStart: Int32Array;
  private readonly serial: Serial;
  private readonly n: number;
  private readonly horizon: number;
  private readonly lists: Int32Array[] = [];
  private fitness = new Int32Array(FIRST_PARENTS);
  private print = new Int32Array(FIRST_PARENTS);
  private readonly child: Int32Array;
  private readonly isIn: Uint8Array;
  private readonly tail: Int32Array;
  private readonly waiting: Int32Array;
  private readonly followers: readonly (readonly number[])[];
  private readonly isBefore: Uint8Array;
  private size = 0;
  private mother = 0;
  private idle = 0;

  constructor(instance: CoreInstance, order: Int32Array, private readonly random: Random) {
    const n = instance.durations.length;
    this.n = n;
    this.horizon = instance.horizon;
    this.serial = new Serial(instance, order);
    this.bestStart = new Int32Array(n);
    this.child = new Int32Array(n);
    this.isIn = new Uint8Array(n);
    this.tail = Int32Array.from(instance.durations);
    this.waiting = new Int32Array(n);
    this.isBefore = new Uint8Array(n * n);
    const followers: number[][] = instance.durations.map(() => []);
    for (const { from, to } of instance.relations) {
      if (this.isBefore[from * n + to] === 0) followers[from]!.push(to);
      this.isBefore[from * n + to] = 1;
    }
    this.followers = followers;
    for (let k = n - 1; k >= 0; k--) {
      const i = order[k]!;
      for (const j of followers[i]!) this.tail[i] = Math.max(this.tail[i]!, this.tail[j]! + instance.durations[i]!);
    }
  }

  /** Schedules generated so far. */
  get passes(): number {
    return this.serial.passes;
  }

  /** Makes room for so many parents: new ones are then sampled until there are. */
  enlarge(parents: number): void {
    if (parents <= this.fitness.length) return;
    this.fitness = grow(this.fitness, parents).slice(0, parents);
    this.print = grow(this.print, parents).slice(0, parents);
  }

  /** Forgets all parents; the best schedule stays known. */
  renew(): void {
    this.size = 0;
    this.idle = 0;
    this.fitness = new Int32Array(FIRST_PARENTS);
    this.print = new Int32Array(FIRST_PARENTS);
  }

  /** Makes and judges one child. */
  step(): void {
    let length: number;
    if (this.size < this.fitness.length) {
      this.sample();
      length = this.decode(this.child);
    } else {
      this.cross();
      length = this.raise(this.child, this.fitness[this.mother]!);
    }
    if (length >= 0) this.take(length);
    else if (this.size === this.fitness.length) this.wait();
  }

  /** Writes a schedule of one of the better parents to `start`; its makespan, -1 while there are no parents. */
  recall(start: Int32Array): number {
    if (this.size === 0) return -1;
    let place = this.random.below(this.size);
    for (let k = 0; k < 6; k++) {
      const other = this.random.below(this.size);
      if (this.fitness[other]! < this.fitness[place]!) place = other;
    }
    this.child.set(this.lists[place]!);
    const length = this.raise(this.child, this.fitness[place]!);
    if (length >= 0) start.set(this.serial.start);
    return length;
  }

  /** Takes a schedule found elsewhere among the parents. */
  adopt(start: Int32Array): void {
    if (this.size === 0) return;
    this.serial.start.set(start);
    this.serial.sortByStart(this.child);
    this.mother = this.random.below(this.size);
    const length = this.decode(this.child);
    if (length >= 0) this.take(length);
  }

  /** Schedules the list of a child or parent. Answers the makespan, -1 when it is above `bound`. */
  private raise(list: Int32Array, bound: number): number {
    const { serial } = this;
    if (!serial.isTurnable) return this.decode(list, bound);
    if (!serial.backward(list, Math.min(this.horizon, bound + (bound >> 2)))) return -1;
    serial.sortByStart(list);
    const length = serial.forward(list, bound);
    if (length >= 0) this.record(length);
    return length;
  }

  private decode(list: Int32Array, bound = this.horizon): number {
    const serial = this.serial;
    const first = serial.forward(list);
    if (first < 0) return -1;
    this.record(first);
    serial.sortByEnd(list);
    if (!serial.backward(list, first)) return -1;
    serial.sortByStart(list);
    const last = serial.forward(list, bound);
    if (last >= 0) this.record(last);
    return last;
  }

  private record(length: number): void {
    if (this.best >= 0 && length >= this.best) return;
    this.best = length;
    this.bestStart.set(this.serial.start);
  }

  /** A random list; what long work follows tends to come first. */
  private sample(): void {
    const { n, child, waiting, followers, tail, random } = this;
    waiting.fill(0);
    for (let i = 0; i < n; i++) for (const j of followers[i]!) waiting[j] = waiting[j]! + 1;
    let open = 0;
    for (let i = 0; i < n; i++) if (waiting[i] === 0) child[open++] = i;
    for (let k = 0; k < n; k++) {
      let best = k;
      let bestKey = -1;
      for (let p = k; p < open; p++) {
        const key = tail[child[p]!]! * (60 + random.below(80));
        if (key <= bestKey) continue;
        bestKey = key;
        best = p;
      }
      const i = child[best]!;
      child[best] = child[k]!;
      child[k] = i;
      for (const j of followers[i]!) {
        waiting[j] = waiting[j]! - 1;
        if (waiting[j] === 0) child[open++] = j;
      }
    }
  }

  private cross(): void {
    const { n, child, isIn, random } = this;
    this.mother = random.below(this.size);
    const mother = this.lists[this.mother]!;
    const father = this.lists[random.below(this.size)]!;
    const a = random.below(n);
    const b = random.below(n);
    const from = Math.min(a, b);
    const to = Math.max(a, b);
    isIn.fill(0);
    let m = 0;
    for (; m < from; m++) {
      child[m] = mother[m]!;
      isIn[child[m]!] = 1;
    }
    for (let k = 0; m < to; k++) m = this.append(father[k]!, m);
    for (let k = 0; m < n; k++) m = this.append(mother[k]!, m);
    this.swapSome();
  }

  private append(i: number, m: number): number {
    if (this.isIn[i] === 1) return m;
    this.child[m] = i;
    this.isIn[i] = 1;
    return m + 1;
  }

  private swapSome(): void {
    const { n, child, random } = this;
    for (let k = 0; k + 1 < n; k++) {
      if (random.below(100) >= 5) continue;
      const i = child[k]!;
      const j = child[k + 1]!;
      if (this.isBefore[i * n + j] === 1) continue;
      child[k] = j;
      child[k + 1] = i;
    }
  }

  private take(length: number): void {
    if (this.serial.isTurnable) this.serial.sortByEnd(this.child);
    else this.serial.sortByStart(this.child);
    let print = 0;
    for (let i = 0; i < this.n; i++) print = (Math.imul(print, 31) + this.serial.start[i]!) | 0;
    let place = this.mother;
    if (this.size < this.fitness.length) {
      place = this.size++;
      if (place === this.lists.length) this.lists.push(new Int32Array(this.n));
    } else {
      if (length > this.fitness[place]! || this.isKnown(length, print)) return this.wait();
      if (length === this.fitness[place]!) this.wait();
      else this.idle = 0;
    }
    this.lists[place]!.set(this.child);
    this.fitness[place] = length;
    this.print[place] = print;
  }

  private isKnown(length: number, print: number): boolean {
    for (let p = 0; p < this.size; p++) if (this.fitness[p] === length && this.print[p] === print) return true;
    return false;
  }

  /** A child changed nothing for the better; after too many of them new blood comes in. */
  private wait(): void {
    if (++this.idle < PATIENCE * this.size) return;
    this.idle = 0;
    if (this.size * 2 > MOST_PARENTS) return;
    this.fitness = grow(this.fitness, 2 * this.size);
    this.print = grow(this.print, 2 * this.size);
  }
}
