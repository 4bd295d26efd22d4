import { grow } from './trail';
import type { Trail } from './trail';

const LIMIT = 1e100;
const DECAY = 1 / 0.95;

/**
 * The literals met in conflicts, made when first met, by how active they were: "start of x >= t".
 * A heap hands out the most active one that is still open.
 */
export class Atoms {
  count = 0;
  variable = new Int32Array(1024);
  threshold = new Int32Array(1024);
  private activity = new Float64Array(1024);
  private slots = new Int32Array(4096).fill(-1);
  private heap = new Int32Array(1024);
  private place = new Int32Array(1024);
  private heapSize = 0;
  /** Atoms taken out as decided, chained by the level that decided them. */
  private firstOut = new Int32Array(64).fill(-1);
  private nextOut = new Int32Array(1024);
  private step = 1;

  constructor(private readonly trail: Trail) {}

  /** Makes the literal (b, v) more active. */
  bump(b: number, v: number): void {
    const a = this.find(b >> 1, b & 1 ? 1 - v : v);
    const activity = this.activity[a]! + this.step;
    this.activity[a] = activity;
    if (activity > LIMIT) {
      for (let k = 0; k < this.count; k++) this.activity[k] = this.activity[k]! / LIMIT;
      this.step /= LIMIT;
    }
    if (this.place[a]! >= 0) this.rise(this.place[a]!);
  }

  decay(): void {
    this.step *= DECAY;
  }

  /** The most active open atom, -1 when all are decided. */
  next(): number {
    const value = this.trail.value;
    while (this.heapSize > 0) {
      const a = this.heap[0]!;
      const x = this.variable[a]!;
      const t = this.threshold[a]!;
      if (value[2 * x]! < t && -value[2 * x + 1]! >= t) return a;
      this.takeTop();
      const isTrue = value[2 * x]! >= t;
      this.setAside(a, this.trail.level[isTrue ? this.trail.entryOf(2 * x, t) : this.trail.entryOf(2 * x + 1, 1 - t)]!);
    }
    return -1;
  }

  /** Levels above `depth`, up to `top`, are gone: what they decided is open again. */
  reopen(depth: number, top: number): void {
    for (let level = depth + 1; level <= top && level < this.firstOut.length; level++) {
      for (let a = this.firstOut[level]!; a >= 0; a = this.nextOut[a]!) this.insert(a);
      this.firstOut[level] = -1;
    }
  }

  private setAside(a: number, level: number): void {
    while (level >= this.firstOut.length) {
      const more = grow(this.firstOut, level + 1);
      more.fill(-1, this.firstOut.length);
      this.firstOut = more;
    }
    this.nextOut[a] = this.firstOut[level]!;
    this.firstOut[level] = a;
  }

  private find(x: number, t: number): number {
    const mask = this.slots.length - 1;
    let h = (Math.imul(x, 0x9e3779b1) ^ Math.imul(t, 0x85ebca6b)) >>> 0;
    h = (h ^ (h >>> 15)) & mask;
    for (let a = this.slots[h]!; a >= 0; a = this.slots[h]!) {
      if (this.variable[a] === x && this.threshold[a] === t) return a;
      h = (h + 1) & mask;
    }
    const a = this.count++;
    if (a === this.variable.length) this.makeRoom();
    this.variable[a] = x;
    this.threshold[a] = t;
    this.activity[a] = 0;
    this.slots[h] = a;
    this.insert(a);
    if (this.count * 2 > this.slots.length) this.rehash();
    return a;
  }

  private rehash(): void {
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    const mask = this.slots.length - 1;
    for (let a = 0; a < this.count; a++) {
      let h = (Math.imul(this.variable[a]!, 0x9e3779b1) ^ Math.imul(this.threshold[a]!, 0x85ebca6b)) >>> 0;
      h = (h ^ (h >>> 15)) & mask;
      while (this.slots[h]! >= 0) h = (h + 1) & mask;
      this.slots[h] = a;
    }
  }

  private insert(a: number): void {
    this.heap[this.heapSize] = a;
    this.place[a] = this.heapSize;
    this.rise(this.heapSize++);
  }

  private takeTop(): void {
    const { heap, place } = this;
    place[heap[0]!] = -1;
    this.heapSize--;
    if (this.heapSize === 0) return;
    heap[0] = heap[this.heapSize]!;
    place[heap[0]!] = 0;
    this.sink(0);
  }

  private rise(from: number): void {
    const { heap, place, activity } = this;
    const a = heap[from]!;
    const key = activity[a]!;
    let k = from;
    while (k > 0) {
      const parent = (k - 1) >> 1;
      if (activity[heap[parent]!]! >= key) break;
      heap[k] = heap[parent]!;
      place[heap[k]!] = k;
      k = parent;
    }
    heap[k] = a;
    place[a] = k;
  }

  private sink(from: number): void {
    const { heap, place, activity } = this;
    const a = heap[from]!;
    const key = activity[a]!;
    let k = from;
    for (;;) {
      let child = 2 * k + 1;
      if (child >= this.heapSize) break;
      if (child + 1 < this.heapSize && activity[heap[child + 1]!]! > activity[heap[child]!]!) child++;
      if (activity[heap[child]!]! <= key) break;
      heap[k] = heap[child]!;
      place[heap[k]!] = k;
      k = child;
    }
    heap[k] = a;
    place[a] = k;
  }

  private makeRoom(): void {
    this.variable = grow(this.variable, this.count);
    this.threshold = grow(this.threshold, this.count);
    this.heap = grow(this.heap, this.count);
    this.place = grow(this.place, this.count);
    this.nextOut = grow(this.nextOut, this.count);
    const activity = new Float64Array(this.variable.length);
    activity.set(this.activity);
    this.activity = activity;
  }
}
