import { BY_CLAUSE, grow } from './trail';
import type { Trail } from './trail';

/** A watch: clause, threshold, a literal of the clause that is often true, and the next watch in the bucket. */
const STRIDE = 5;
const MOST_BUCKETS = 512;
/** A clause: literal count, its number among the clauses, then pairs (bound, value). */
const HEAD = 2;
const ACTIVITY_LIMIT = 1e30;
const ACTIVITY_DECAY = 1 / 0.999;

/**
 * Learnt clauses over bound literals, propagated through two watched literals each. A clause whose literal
 * has been propagated holds it in place 0.
 */
export class ClauseBase {
  arena = new Int32Array(1 << 14);
  count = 0;
  private arenaSize = 0;
  private at = new Int32Array(256);
  private spread = new Int32Array(256);
  private activity = new Float64Array(256);
  private step = 1;
  /** Watches of bound p lie in buckets by threshold, so that a rise visits only what it may concern. */
  private watches = new Int32Array(1 << 14);
  private watchesSize = 0;
  private readonly bucketHead: Int32Array;
  private readonly bucketBase: Int32Array;
  private readonly bucketFloor: Int32Array;
  private readonly bucketShift: Uint8Array;

  constructor(private readonly trail: Trail) {
    const bounds = trail.value.length;
    this.bucketBase = new Int32Array(bounds + 1);
    this.bucketFloor = trail.value.slice();
    this.bucketShift = new Uint8Array(bounds);
    for (let p = 0; p < bounds; p++) {
      const width = Math.max(0, -trail.value[p ^ 1]! - trail.value[p]!);
      let shift = 0;
      while (width >> shift >= MOST_BUCKETS) shift++;
      this.bucketShift[p] = shift;
      this.bucketBase[p + 1] = this.bucketBase[p]! + (width >> shift) + 1;
    }
    this.bucketHead = new Int32Array(this.bucketBase[bounds]!).fill(-1);
  }

  /** Adds a clause of two literals or more, to be watched in places 0 and 1; answers where it lies. */
  add(pairs: Int32Array, literals: number, spread: number): number {
    const c = this.arenaSize;
    const size = HEAD + 2 * literals;
    if (c + size > this.arena.length) this.arena = grow(this.arena, c + size);
    const slot = this.count++;
    if (slot === this.at.length) this.makeRoom();
    this.arena[c] = literals;
    this.arena[c + 1] = slot;
    for (let k = 0; k < 2 * literals; k++) this.arena[c + HEAD + k] = pairs[k]!;
    this.arenaSize = c + size;
    this.at[slot] = c;
    this.spread[slot] = spread;
    this.activity[slot] = this.step;
    this.watch(c, 0, 1);
    this.watch(c, 1, 0);
    return c;
  }

  /** Counts a clause as useful. */
  bump(c: number): void {
    const slot = this.arena[c + 1]!;
    const activity = this.activity[slot]! + this.step;
    this.activity[slot] = activity;
    if (activity > ACTIVITY_LIMIT) {
      for (let k = 0; k < this.count; k++) this.activity[k] = this.activity[k]! / ACTIVITY_LIMIT;
      this.step /= ACTIVITY_LIMIT;
    }
  }

  decay(): void {
    this.step *= ACTIVITY_DECAY;
  }

  /**
   * Bound p rose from `before` to `now`: what the clauses make of it. False on a conflict.
   * Long, as the watch scheme is one loop and calls in it would cost.
   */
  propagate(p: number, before: number, now: number): boolean {
    const { trail, arena, watches, bucketHead } = this;
    const value = trail.value;
    const shift = this.bucketShift[p]!;
    const floor = this.bucketFloor[p]!;
    const base = this.bucketBase[p]!;
    for (let bucket = base + ((before + 1 - floor) >> shift), end = base + ((now - floor) >> shift); bucket <= end; bucket++) {
      let previous = -1;
      let node = bucketHead[bucket]!;
      while (node >= 0) {
        const next = watches[node + 4]!;
        const threshold = watches[node + 1]!;
        if (threshold <= now && threshold > before && value[watches[node + 2]!]! < watches[node + 3]!) {
          const c = watches[node]!;
          const first = c + HEAD;
          if (arena[first] === (p ^ 1)) {
            arena[first] = arena[first + 2]!;
            arena[first + 1] = arena[first + 3]!;
            arena[first + 2] = p ^ 1;
            arena[first + 3] = 1 - threshold;
          }
          const b = arena[first]!;
          const v = arena[first + 1]!;
          watches[node + 2] = b;
          watches[node + 3] = v;
          if (value[b]! < v) {
            if (this.rewatch(c, node)) {
              if (previous < 0) bucketHead[bucket] = next;
              else watches[previous + 4] = next;
              node = next;
              continue;
            }
            if (!trail.post(b, v, BY_CLAUSE, c)) return false;
          }
        }
        previous = node;
        node = next;
      }
    }
    return true;
  }

  /** At level 0: keeps the clauses most used and narrowest, drops what the root satisfies or falsifies. */
  reduce(keep: number): void {
    const order = Array.from({ length: this.count }, (_, slot) => slot);
    const rank = (slot: number): number => (this.spread[slot]! <= 2 ? Infinity : this.activity[slot]!);
    const ranks = Float64Array.from(order, rank);
    order.sort((a, b) => (ranks[b] === ranks[a] ? a - b : ranks[b]! > ranks[a]! ? 1 : -1));
    const chosen = order.filter((slot, k) => k < keep || this.spread[slot]! <= 2).toSorted((a, b) => a - b);
    const old = { arena: this.arena, at: this.at, spread: this.spread, activity: this.activity };
    this.arena = new Int32Array(old.arena.length);
    this.at = new Int32Array(old.at.length);
    this.spread = new Int32Array(old.at.length);
    this.activity = new Float64Array(old.at.length);
    this.arenaSize = 0;
    this.count = 0;
    this.bucketHead.fill(-1);
    this.watchesSize = 0;
    const pairs = new Int32Array(2 * this.trail.value.length);
    for (const slot of chosen) {
      const literals = this.copyOpen(old.arena, old.at[slot]!, pairs);
      if (literals < 2) continue;
      this.add(pairs, literals, old.spread[slot]!);
      this.activity[this.count - 1] = old.activity[slot]!;
    }
  }

  /** The literals the root leaves open; 0 when one is true. A clause left with one is already propagated. */
  private copyOpen(arena: Int32Array, c: number, pairs: Int32Array): number {
    const value = this.trail.value;
    let literals = 0;
    for (let k = c + HEAD, end = c + HEAD + 2 * arena[c]!; k < end; k += 2) {
      const b = arena[k]!;
      const v = arena[k + 1]!;
      if (value[b]! >= v) return 0;
      if (value[b ^ 1]! >= 1 - v) continue;
      pairs[2 * literals] = b;
      pairs[2 * literals + 1] = v;
      literals++;
    }
    return literals;
  }

  /** Looks for another literal that is not false, to be watched in place 1, and moves the watch there. */
  private rewatch(c: number, node: number): boolean {
    const arena = this.arena;
    const value = this.trail.value;
    const second = c + HEAD + 2;
    for (let k = second + 2, end = c + HEAD + 2 * arena[c]!; k < end; k += 2) {
      const b = arena[k]!;
      const v = arena[k + 1]!;
      if (value[b ^ 1]! >= 1 - v) continue;
      arena[k] = arena[second]!;
      arena[k + 1] = arena[second + 1]!;
      arena[second] = b;
      arena[second + 1] = v;
      this.link(node, b ^ 1, 1 - v);
      return true;
    }
    return false;
  }

  private watch(c: number, place: number, other: number): void {
    const arena = this.arena;
    const node = this.watchesSize;
    if (node + STRIDE > this.watches.length) this.watches = grow(this.watches, node + STRIDE);
    this.watchesSize = node + STRIDE;
    const watches = this.watches;
    watches[node] = c;
    watches[node + 2] = arena[c + HEAD + 2 * other]!;
    watches[node + 3] = arena[c + HEAD + 2 * other + 1]!;
    this.link(node, arena[c + HEAD + 2 * place]! ^ 1, 1 - arena[c + HEAD + 2 * place + 1]!);
  }

  /** Puts a watch where a rise of bound p to the threshold meets it. */
  private link(node: number, p: number, threshold: number): void {
    const base = this.bucketBase[p]!;
    const last = this.bucketBase[p + 1]! - 1;
    const bucket = Math.min(last, base + Math.max(0, (threshold - this.bucketFloor[p]!) >> this.bucketShift[p]!));
    this.watches[node + 1] = threshold;
    this.watches[node + 4] = this.bucketHead[bucket]!;
    this.bucketHead[bucket] = node;
  }

  private makeRoom(): void {
    this.at = grow(this.at, this.count);
    this.spread = grow(this.spread, this.count);
    const activity = new Float64Array(this.at.length);
    activity.set(this.activity);
    this.activity = activity;
  }
}
