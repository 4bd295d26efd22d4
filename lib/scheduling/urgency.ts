import type { Constructor } from './construct';
import type { Incumbent } from './incumbent';
import { listByKey } from './list-order';
import type { Model } from './model';
import { TERMS } from './objective';
import type { Order } from './order';
import type { Random } from './random';
import { compareTerms, lateness } from './score';

/** Rounds in a row without a better schedule after which it ends; after every few of them it starts from the best again. */
const PATIENCE = 24;
const RETURN_AFTER = 4;

interface UrgencyInput {
  readonly model: Model;
  readonly order: Order;
  readonly random: Random;
  readonly builder: Constructor;
  readonly incumbent: Incumbent;
  /** Called after each schedule; true ends it. */
  readonly isOver: () => boolean;
}

/**
 * What comes late complains and goes further to the front, with all it waits for, the more the later and the heavier it is
 * (squeaky wheel, Joslin and Clements 1999). A few full schedules undo what a priority rule cannot see: that capacity is short.
 */
export class Urgency {
  private readonly keys: Float64Array;
  private readonly bestKeys: Float64Array;
  private readonly bestEnd: Int32Array;
  private readonly delay: Float64Array;
  private readonly terms = new Float64Array(TERMS).fill(Infinity);
  private readonly heaviest: number;

  constructor(private readonly input: UrgencyInput) {
    const { model } = input;
    this.keys = new Float64Array(model.count);
    this.bestKeys = new Float64Array(model.count);
    this.bestEnd = new Int32Array(model.count);
    this.delay = new Float64Array(model.count);
    this.heaviest = model.dueWeight.reduce((most, weight) => Math.max(most, weight), 0);
  }

  /** Works on priorities in minutes, lower first, until nothing gets better; returns the best list. */
  run(priority: Float64Array, steady: Uint8Array): Int32Array {
    const { builder, incumbent, isOver, order } = this.input;
    this.keys.set(priority);
    let best = listByKey(order, this.keys);
    let list = best;
    for (let idle = 0; idle < PATIENCE;) {
      builder.build(list, steady);
      const terms = incumbent.offer(builder.decider);
      if (compareTerms(terms, this.terms) < 0) {
        this.terms.set(terms);
        this.bestKeys.set(this.keys);
        this.bestEnd.set(builder.placer.end);
        best = list;
        idle = 0;
      } else idle += 1;
      if (isOver() || this.terms[this.input.model.objective.rank.tardiness] === 0) return best;
      const isBack = idle > 0 && idle % RETURN_AFTER === 0;
      if (isBack) this.keys.set(this.bestKeys);
      this.advance(list, isBack ? this.bestEnd : builder.placer.end);
      list = listByKey(order, this.keys);
    }
    return best;
  }

  /** Moves the priorities of most late activities, and of all before them, to the front by some share of their delay. */
  private advance(list: Int32Array, end: Int32Array): void {
    const { model, order, random } = this.input;
    const { delay, keys } = this;
    for (let i = 0; i < model.count; i += 1) delay[i] = random.below(4) === 0 ? 0 : lateness(model, i, end[i]!) / this.heaviest;
    for (let k = list.length - 1; k >= 0; k -= 1) {
      const activity = list[k]!;
      for (const next of order.after[activity]!) delay[activity] = Math.max(delay[activity]!, delay[next]!);
    }
    const percent = 10 + random.below(45);
    for (let i = 0; i < model.count; i += 1) keys[i]! -= Math.round((percent * delay[i]!) / 100);
  }
}
