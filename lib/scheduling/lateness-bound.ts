import { FAR } from './calendar-index';
import { findLeastLength, findLeastWaits } from './least-waits';
import { listByKey } from './list-order';
import type { Model } from './model';
import type { Order } from './order';
import type { Bounds } from './propagate';
import { lateness } from './score';
import { PLACED } from './status';
import { endOf } from './timing';

/** What of a partial schedule the bound stands on. */
interface Placed {
  readonly status: Uint8Array;
  readonly end: Int32Array;
}

/**
 * Least weighted lateness of all schedules that a partial one can still become with everything in it: what is placed is so
 * far from the end of each dated activity that follows it, by the lags and durations between them.
 */
export class LatenessBound {
  /** Weighted minutes late at least; see {@link restart}. */
  least = 0;
  private readonly dated: Int32Array;
  /** Rows of activity i, `from[i]` to `from[i + 1]`: a dated activity that it is or comes before, and the least minutes from end to end. */
  private readonly from: Int32Array;
  private readonly of: Int32Array;
  private readonly tail: Int32Array;
  /** Earliest end of each dated activity, with nothing placed and as things stand. */
  private readonly base: Int32Array;
  private readonly earliest: Int32Array;

  constructor(private readonly model: Model, order: Order, bounds: Bounds) {
    const { count } = model;
    this.dated = Int32Array.from([...model.dueWeight.keys()].filter((i) => model.dueWeight[i]! > 0));
    this.base = this.dated.map((i) => Math.min(model.horizon, endOf(model, i, bounds.earliest[i]!)));
    this.earliest = this.base.slice();
    const rows: { readonly of: number; readonly tail: number }[][] = Array.from({ length: count }, () => []);
    if (this.dated.length > 0) this.fillRows(order, rows);
    this.from = new Int32Array(count + 1);
    rows.forEach((own, i) => {
      this.from[i + 1] = this.from[i]! + own.length;
    });
    this.of = Int32Array.from(rows.flat(), ({ of }) => of);
    this.tail = Int32Array.from(rows.flat(), ({ tail }) => tail);
  }

  private fillRows(order: Order, rows: { readonly of: number; readonly tail: number }[][]): void {
    const { model } = this;
    const { arcs, arcsOut, count } = model;
    const waits = findLeastWaits(model);
    const list = listByKey(order, new Float64Array(count)).toReversed();
    const tails = new Float64Array(count);
    this.dated.forEach((dated, of) => {
      tails.fill(-Infinity);
      tails[dated] = 0;
      for (const i of list) {
        for (const arc of arcsOut[i]!) {
          if (order.isOrder[arc] === 1) tails[i] = Math.max(tails[i]!, findLeastLength(model, waits, arc) + tails[arcs.to[arc]!]!);
        }
        if (tails[i]! > -Infinity) rows[i]!.push({ of, tail: Math.min(FAR, tails[i]!) });
      }
    });
  }

  /** Begins with what is placed now. */
  restart(placed: Placed): void {
    this.earliest.set(this.base);
    this.least = 0;
    for (let k = 0; k < this.dated.length; k += 1) this.least += lateness(this.model, this.dated[k]!, this.base[k]!);
    for (let i = 0; i < this.model.count; i += 1) if (placed.status[i] === PLACED) this.add(i, placed.end[i]!);
  }

  /** Counts an activity that was just placed. */
  add(activity: number, end: number): void {
    const { dated, earliest, model } = this;
    for (let row = this.from[activity]!; row < this.from[activity + 1]!; row += 1) {
      const k = this.of[row]!;
      const at = end + this.tail[row]!;
      if (at <= earliest[k]!) continue;
      this.least += lateness(model, dated[k]!, at) - lateness(model, dated[k]!, earliest[k]!);
      earliest[k] = at;
    }
  }
}
