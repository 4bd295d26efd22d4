import { Decider } from './decider';
import { LatenessBound } from './lateness-bound';
import type { Model } from './model';
import type { Order } from './order';
import { Orphans } from './orphans';
import { type Placer, UNDECIDED, UNPLACED } from './placer';
import type { Bounds } from './propagate';
import { Sequence } from './sequence';

const TRIES_PER_ACTIVITY = 12;
const TRIES_AT_LEAST = 150;

/** A finished schedule with everything placed, and the order it was built in. */
export interface Reference {
  readonly sequence: Int32Array;
  readonly steady: Uint8Array;
  readonly start: Int32Array;
  readonly crew: Int32Array;
}

/** Serial schedule generation: takes a list of activities and has each decided on in turn, the members of a block together. */
export class Constructor {
  readonly decider: Decider;
  readonly placer: Placer;
  private readonly sequence: Int32Array;
  private readonly arranger: Sequence;
  private readonly wanted: Int32Array;
  /** Steady flag each activity was placed with. */
  private readonly isKept: Uint8Array;
  /** Positions of the sequence, from the first, whose blocks stand as they would in any schedule that begins like this. */
  private builtTo = 0;
  private readonly late: LatenessBound;
  /** Whether lateness alone turns a schedule down: nothing outweighs it. */
  private readonly isLateFirst: boolean;
  private isLateCounted = false;
  private readonly hasPins: boolean;
  /** Spans of the upkeep that are left empty on purpose: nobody who counts may work in them. Pins may. */
  private readonly closed: Uint8Array;

  constructor(readonly model: Model, readonly order: Order, bounds: Bounds) {
    this.decider = new Decider(model, order, bounds);
    this.placer = this.decider.placer;
    this.closed = new Uint8Array(model.objective.upkeep.spans.count);
    this.hasPins = model.pin.some((at) => at >= 0);
    this.sequence = new Int32Array(model.count);
    this.arranger = new Sequence(order);
    this.wanted = new Int32Array(model.count);
    this.isKept = new Uint8Array(model.count);
    this.late = new LatenessBound(model, order, bounds);
    this.isLateFirst = model.objective.rank.tardiness === 1 && model.dueWeight.some((weight) => weight > 0);
  }

  /** Builds a schedule in the placer. `isSteady[i]` = 1: keep to the previous start where it fits. */
  build(list: Int32Array, isSteady: Uint8Array): void {
    this.builtTo = 0;
    this.rebuild(list, isSteady, null, null);
  }

  /** To be called when the placer was changed by others: nothing stands as it was built. */
  forget(): void {
    this.builtTo = 0;
  }

  /** Closes the marked spans of the upkeep and no others, from the next schedule on. True when that is a change. */
  close(spans: Uint8Array): boolean {
    if (spans.every((is, k) => is === this.closed[k])) return false;
    this.closed.set(spans);
    this.forget();
    return true;
  }

  private takeClosed(): void {
    const { capacity, objective, resourceCount } = this.model;
    const { isCounted, spans } = objective.upkeep;
    for (let k = 0; k < spans.count; k += 1) {
      if (this.closed[k] === 0) continue;
      for (let r = 0; r < resourceCount; r += 1) if (isCounted[r] === 1) this.placer.profiles[r]!.take(spans.start[k]!, spans.end[k]!, capacity[r]!);
    }
  }

  /**
   * As {@link build}, but keeps what is built already as far as the sequence begins alike, then takes over from `like`
   * as far as that goes, and only then searches. Gives up, and says false, when the unplaced or late work is more than in
   * `limit` already. The schedule is the one that {@link build} gives, but for the count of tries.
   */
  rebuild(list: Int32Array, isSteady: Uint8Array, like: Reference | null, limit: Float64Array | null): boolean {
    const { decider, model, placer, sequence } = this;
    const from = this.startOver(list, isSteady);
    decider.tries = TRIES_AT_LEAST + TRIES_PER_ACTIVITY * model.count;
    const first = like === null ? from : this.takeOver(from, like, isSteady);
    this.isLateCounted = false;
    for (let k = first; k < model.count; k += 1) {
      const activity = sequence[k]!;
      if (placer.status[activity] !== UNDECIDED) continue;
      const back = decider.decide(activity, isSteady[activity] === 1);
      if (back >= 0) {
        decider.unwind(sequence, k, back);
        k = back - 1;
        this.isLateCounted = false;
      } else if (limit !== null && this.isBeyond(activity, limit)) {
        this.builtTo = this.hasPins && placer.status.includes(UNPLACED) ? 0 : this.blockStart(k);
        return false;
      }
    }
    this.builtTo = model.count;
    if (placer.status.includes(UNPLACED) && (new Orphans(decider).drop() || this.hasPins)) this.builtTo = 0;
    return true;
  }

  /** Brings the placer back to what the new sequence has in common with the one before; returns its length. */
  private startOver(list: Int32Array, isSteady: Uint8Array): number {
    const { decider, isKept, model, sequence, wanted } = this;
    this.arranger.arrange(list, wanted);
    let from = 0;
    while (from < this.builtTo && wanted[from] === sequence[from] && isKept[wanted[from]!] === isSteady[wanted[from]!]) from += 1;
    from = from === model.count ? from : this.blockStart(from);
    if (from === 0) this.builtTo = 0;
    if (this.builtTo === 0) decider.clear();
    else decider.unwind(sequence, model.count - 1, from);
    for (let k = 0; k < model.count; k += 1) {
      const activity = wanted[k]!;
      sequence[k] = activity;
      if (k < from) decider.position[activity] = k;
      else decider.begin(activity, k);
    }
    isKept.set(isSteady);
    if (this.builtTo === 0) {
      decider.placePins();
      this.takeClosed();
    }
    return from;
  }

  /** Places what the reference has as its sequence begins the same way; returns the first position that has to be searched. */
  private takeOver(from: number, like: Reference, isSteady: Uint8Array): number {
    const { placer, sequence } = this;
    let to = 0;
    while (to < sequence.length && sequence[to] === like.sequence[to] && isSteady[sequence[to]!] === like.steady[sequence[to]!]) to += 1;
    to = to === sequence.length ? to : this.blockStart(to);
    for (let k = from; k < to; k += 1) {
      const activity = sequence[k]!;
      if (placer.status[activity] === UNDECIDED) placer.restore(activity, like.start[activity]!, like.crew);
    }
    return Math.max(from, to);
  }

  /** Copies the order of the schedule built last. */
  copySequence(into: Int32Array): void {
    into.set(this.sequence);
  }

  /** First position of the block that holds position `k`. Blocks stand together, so that nothing outside moves what is inside. */
  private blockStart(k: number): number {
    const { blockOf } = this.order;
    let at = k;
    while (at > 0 && blockOf[this.sequence[at - 1]!] === blockOf[this.sequence[k]!]) at -= 1;
    return at;
  }

  /** True when the schedule, the activity just decided on, is sure to be worse than the limit. */
  private isBeyond(activity: number, limit: Float64Array): boolean {
    const { late, placer } = this;
    if (placer.status[activity] === UNPLACED) return limit[0] === 0;
    if (limit[0]! > 0 || !this.isLateFirst) return false;
    if (this.isLateCounted) late.add(activity, placer.end[activity]!);
    else late.restart(placer);
    this.isLateCounted = true;
    return late.least > limit[1]!;
  }
}
