import { BY_CLAUSE, grow } from './trail';
import type { Trail } from './trail';

/** Watches: clause, threshold, and a literal of the clause that is often true. */
const STRIDE = 4;
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
  private readonly watches: Int32Array[] = [];
  private readonly watched: Int32Array;

  constructor(private readonly trail: Trail) {
    const bounds = trail.value.length;
    this.watched = new Int32Array(bounds);
    const none = new Int32Array(0);
    for (let b = 0; b < bounds; b++) this.watches.push(none);
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
    const { trail, arena } = this;
    const value = trail.value;
    const list = this.watches[p]!;
    const length = this.watched[p]!;
    let kept = 0;
    let isFine = true;
    for (let k = 0; k < length; k += STRIDE) {
      const threshold = list[k + 1]!;
      const c = list[k]!;
      let blocker = list[k + 2]!;
      let blockerAt = list[k + 3]!;
      if (isFine && threshold <= now && threshold > before && value[blocker]! < blockerAt) {
        const first = c + HEAD;
        if (arena[first] === (p ^ 1)) {
          arena[first] = arena[first + 2]!;
          arena[first + 1] = arena[first + 3]!;
          arena[first + 2] = p ^ 1;
          arena[first + 3] = 1 - threshold;
        }
        blocker = arena[first]!;
        blockerAt = arena[first + 1]!;
        if (value[blocker]! < blockerAt) {
          if (this.rewatch(c)) continue;
          isFine = trail.post(blocker, blockerAt, BY_CLAUSE, c);
        }
      }
      list[kept] = c;
      list[kept + 1] = threshold;
      list[kept + 2] = blocker;
      list[kept + 3] = blockerAt;
      kept += STRIDE;
    }
    this.watched[p] = kept;
    return isFine;
  }

  /** At level 0: keeps the clauses most used and narrowest, drops what the root satisfies or falsifies. */
  reduce(keep: number): void {
    const order = Array.from({ length: this.count }, (_, slot) => slot);
    const rank = (slot: number): number => (this.spread[slot]! <= 2 ? Infinity : this.activity[slot]!);
    const ranks = Float64Array.from(order, rank);
    order.sort((a, b) => (ranks[b] === ranks[a] ? a - b : ranks[b]! > ranks[a]! ? 1 : -1));
    const chosen = order.filter((slot, k) => k < keep || this.spread[slot]! <= 2).sort((a, b) => a - b);
    const old = { arena: this.arena, at: this.at, spread: this.spread, activity: this.activity };
    this.arena = new Int32Array(old.arena.length);
    this.at = new Int32Array(old.at.length);
    this.spread = new Int32Array(old.at.length);
    this.activity = new Float64Array(old.at.length);
    this.arenaSize = 0;
    this.count = 0;
    this.watched.fill(0);
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

  /** Looks for another literal that is not false, to be watched in place 1. */
  private rewatch(c: number): boolean {
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
      this.watch(c, 1, 0);
      return true;
    }
    return false;
  }

  private watch(c: number, place: number, other: number): void {
    const arena = this.arena;
    const p = arena[c + HEAD + 2 * place]! ^ 1;
    const length = this.watched[p]!;
    let list = this.watches[p]!;
    if (length + STRIDE > list.length) {
      list = grow(list, length + STRIDE);
      this.watches[p] = list;
    }
    list[length] = c;
    list[length + 1] = 1 - arena[c + HEAD + 2 * place + 1]!;
    list[length + 2] = arena[c + HEAD + 2 * other]!;
    list[length + 3] = arena[c + HEAD + 2 * other + 1]!;
    this.watched[p] = length + STRIDE;
  }

  private makeRoom(): void {
    this.at = grow(this.at, this.count);
    this.spread = grow(this.spread, this.count);
    const activity = new Float64Array(this.at.length);
    activity.set(this.activity);
    this.activity = activity;
  }
}
