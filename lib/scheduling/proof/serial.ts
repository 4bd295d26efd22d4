import { listArcs, listCurves, measureRest, type Arcs } from './arcs';
import { packFields } from './fields';
import { curveOfStarts, evaluateCurve, isLag, leastReaching } from './instance';
import type { CoreInstance, Piece } from './instance';

/**
 * Serial schedule generation for relations that only ever push later (see `orderForward`): each activity of a list as
 * early as it fits, or from the end as late as it fits. Free units of all resources at a time lie side by side in a
 * few words, each field under a guard bit that stays set while the demand fits.
 */
export class Serial {
  readonly start: Int32Array;
  /** Activities so that relations lead forwards only. */
  readonly order: Int32Array;
  /** Passes made. */
  passes = 0;
  private readonly n: number;
  private readonly duration: Int32Array;
  private readonly into: Arcs;
  private readonly out: Arcs;
  private readonly curves: readonly (readonly Piece[])[];
  private readonly starts: (readonly Piece[] | null)[];
  private readonly words: number;
  private readonly guard: Int32Array;
  private readonly full: Int32Array;
  private readonly need: Int32Array;
  private readonly free: Int32Array;
  private readonly limit: number;
  /** Times before this may be occupied. */
  private top: number;
  /** Every relation leads from an end to a start: ends sort as well as starts do. */
  private readonly isEndToStart: boolean;
  /** Schedules from the front and from the back mean the same whenever they begin. */
  readonly isTurnable: boolean;
  /** What must at least pass from the start of an activity to the end of all. */
  private readonly rest: Int32Array;
  private readonly keys: Float64Array;
  private readonly count: Int32Array;

  constructor(instance: CoreInstance, order: Int32Array) {
    const n = instance.durations.length;
    this.n = n;
    this.order = order;
    this.start = new Int32Array(n);
    this.duration = Int32Array.from(instance.durations);
    this.curves = listCurves(instance);
    this.into = listArcs(instance, this.curves, true);
    this.out = listArcs(instance, this.curves, false);
    this.starts = Array.from({ length: n }, (_, i) => {
      const ranges = instance.allowedStarts?.[i];
      return ranges ? curveOfStarts(ranges, instance.horizon) : null;
    });
    const fields = packFields(instance);
    this.words = fields.words;
    this.guard = fields.guard;
    this.full = fields.full;
    this.need = fields.need;
    this.limit = instance.horizon;
    this.top = instance.horizon + 1;
    this.isEndToStart = instance.relations.every((r) => isLag(r) && r.lag >= instance.durations[r.from]!);
    this.isTurnable = this.isEndToStart && this.starts.every((allowed) => allowed === null);
    this.free = new Int32Array((this.limit + 1) * this.words);
    this.keys = new Float64Array(n);
    this.count = new Int32Array(this.limit + 2);
    this.rest = measureRest(order, this.out, this.duration);
  }

  /** Schedules the list from the front. Answers the makespan, -1 as soon as it is sure to pass `bound` or the horizon. */
  forward(list: Int32Array, bound = this.limit): number {
    const { n, start, duration, into, limit, rest } = this;
    const most = Math.min(bound, limit);
    this.passes++;
    this.clear();
    let makespan = 0;
    for (let k = 0; k < n; k++) {
      const i = list[k]!;
      let at = 0;
      for (let a = into.head[i]!, end = into.head[i + 1]!; a < end; a++) {
        const c = into.curve[a]!;
        const ready = c < 0 ? start[into.other[a]!]! + into.lag[a]! : evaluateCurve(this.curves[c]!, start[into.other[a]!]!);
        if (ready > at) at = ready;
      }
      at = this.starts[i] === null ? this.fitForward(i, at) : this.fitAllowed(i, at);
      if (at < 0 || at + rest[i]! > most) return -1;
      const end = at + duration[i]!;
      this.occupy(i, at);
      start[i] = at;
      if (end > makespan) makespan = end;
    }
    return makespan;
  }

  /** Schedules the list from the back, all to end by `makespan`. False when something would start before 0. */
  backward(list: Int32Array, makespan: number): boolean {
    const { n, start, duration, out } = this;
    this.passes++;
    this.clear();
    for (let k = n - 1; k >= 0; k--) {
      const i = list[k]!;
      let at = makespan - duration[i]!;
      for (let a = out.head[i]!, end = out.head[i + 1]!; a < end; a++) {
        const c = out.curve[a]!;
        const due = start[out.other[a]!]!;
        const by = c < 0 ? due - out.lag[a]! : leastReaching(this.curves[c]!, due + 1, 0, this.limit) - 1;
        if (by < at) at = by;
      }
      at = this.starts[i] === null ? this.fitBackward(i, at) : this.fitAllowedBackward(i, at);
      if (at < 0) return false;
      this.occupy(i, at);
      start[i] = at;
    }
    return true;
  }

  /** Sorts `list` by start (ties keep relations forwards). */
  sortByStart(list: Int32Array): void {
    this.sortBy(list, 0);
  }

  /** Sorts `list` by end where relations allow it, else by start. */
  sortByEnd(list: Int32Array): void {
    this.sortBy(list, this.isEndToStart ? 1 : 0);
  }

  private sortBy(list: Int32Array, share: number): void {
    const { n, start, duration, order, keys, count } = this;
    let top = 0;
    for (let k = 0; k < n; k++) top = Math.max(top, start[order[k]!]! + share * duration[order[k]!]!);
    if (top > 16 * n + 64) {
      for (let k = 0; k < n; k++) keys[k] = (start[order[k]!]! + share * duration[order[k]!]!) * n + k;
      keys.sort();
      for (let k = 0; k < n; k++) list[k] = order[keys[k]! % n]!;
      return;
    }
    for (let t = 0; t <= top + 1; t++) count[t] = 0;
    for (let i = 0; i < n; i++) {
      const t = start[i]! + share * duration[i]! + 1;
      count[t] = count[t]! + 1;
    }
    for (let t = 1; t <= top; t++) count[t] = count[t]! + count[t - 1]!;
    for (let k = 0; k < n; k++) {
      const i = order[k]!;
      const t = start[i]! + share * duration[i]!;
      list[count[t]!] = i;
      count[t] = count[t]! + 1;
    }
  }

  private clear(): void {
    const top = this.top;
    this.top = 0;
    if (this.words === 1) {
      this.free.fill(this.full[0]!, 0, top);
      return;
    }
    for (let t = 0, k = 0; t < top; t++) for (let w = 0; w < this.words; w++) this.free[k++] = this.full[w]!;
  }

  private occupy(i: number, at: number): void {
    const { free, need, words } = this;
    if (at + this.duration[i]! > this.top) this.top = at + this.duration[i]!;
    const from = at * words;
    const to = (at + this.duration[i]!) * words;
    if (words === 1) {
      const packed = need[i]!;
      if (packed !== 0) for (let k = from; k < to; k++) free[k] = free[k]! - packed;
      return;
    }
    for (let k = from, w = 0; k < to; k++) {
      free[k] = free[k]! - need[i * words + w]!;
      if (++w === words) w = 0;
    }
  }

  /**
   * The least start >= at where the demand fits throughout, -1 without. Looked at from the far end of the stretch, so
   * that a full time unit moves the start past all before it and no unit is looked at twice.
   */
  private fitForward(i: number, at: number): number {
    const { free, limit } = this;
    const length = this.duration[i]!;
    if (this.words !== 1) return this.fitWords(i, at);
    const packed = this.need[i]!;
    if (packed === 0) return at;
    const guard = this.guard[0]!;
    let known = at;
    let end = at + length;
    for (let t = end - 1; t >= known; t--) {
      if (((free[t]! - packed) & guard) === guard) continue;
      if (end > limit) return -1;
      known = end;
      end = t + 1 + length;
      t = end;
    }
    return end > limit ? -1 : end - length;
  }

  private fitWords(i: number, at: number): number {
    const { limit } = this;
    const length = this.duration[i]!;
    let start = at;
    for (let t = at; t < start + length; t++) {
      if (t >= limit) return -1;
      if (!this.hasRoom(i, t)) start = t + 1;
    }
    return start;
  }

  /** The greatest start <= at where the demand fits throughout, -1 without. */
  private fitBackward(i: number, at: number): number {
    const { free } = this;
    const length = this.duration[i]!;
    let start = at;
    if (this.words === 1) {
      const packed = this.need[i]!;
      const guard = this.guard[0]!;
      if (packed === 0) return at;
      let known = start + length;
      for (let t = start; t < known; t++) {
        if (start < 0) return -1;
        if (((free[t]! - packed) & guard) === guard) continue;
        known = start;
        start = t - length;
        t = start - 1;
      }
      return start;
    }
    for (let t = at + length - 1; t >= start; t--) {
      if (t < 0) return -1;
      if (!this.hasRoom(i, t)) start = t - length;
    }
    return start;
  }

  private fitAllowed(i: number, from: number): number {
    const allowed = this.starts[i]!;
    let at = from;
    for (;;) {
      const open = evaluateCurve(allowed, at);
      at = this.fitForward(i, open);
      if (at < 0 || at === open) return at;
    }
  }

  private fitAllowedBackward(i: number, from: number): number {
    const allowed = this.starts[i]!;
    let at = from;
    for (;;) {
      const open = leastReaching(allowed, at + 1, 0, this.limit) - 1;
      if (open < 0) return -1;
      at = this.fitBackward(i, open);
      if (at < 0 || at === open) return at;
    }
  }

  private hasRoom(i: number, t: number): boolean {
    for (let w = 0; w < this.words; w++) {
      const guard = this.guard[w]!;
      if (((this.free[t * this.words + w]! - this.need[i * this.words + w]!) & guard) !== guard) return false;
    }
    return true;
  }
}
