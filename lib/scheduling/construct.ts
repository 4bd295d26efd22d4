import { FAR } from './calendar-index';
import { CAUSE_HOLD, CAUSE_NONE, CAUSE_NO_PLACE, CAUSE_WAITS, CAUSE_WINDOW } from './cause';
import { ELAPSED, type Model } from './model';
import type { Order } from './order';
import { Orphans } from './orphans';
import { PLACED, Placer, UNDECIDED, UNPLACED } from './placer';
import { lateness } from './score';
import { Sequence } from './sequence';
import { earliestOverArc, latestOverArc, type Bounds } from './propagate';
import { latestStart, passArc, startForEnd } from './timing';

const TRIES_PER_ACTIVITY = 12;
const TRIES_AT_LEAST = 150;

/** A finished schedule with everything placed, and the order it was built in. */
export interface Reference {
  readonly sequence: Int32Array;
  readonly steady: Uint8Array;
  readonly start: Int32Array;
  readonly crew: Int32Array;
}

/**
 * Serial schedule generation: takes a list of activities and puts each at its earliest place that keeps every
 * rule. A window that closes (maximum lag, hold) moves the activity that opened it later and starts again from
 * there, a bounded number of times; then that activity is left out.
 */
export class Constructor {
  readonly placer: Placer;
  readonly cause: Uint8Array;
  readonly causeAt: Int32Array;
  /** Arcs into each activity, flat: rows `inFrom[i]` to `inFrom[i + 1]`. */
  private readonly inFrom: Int32Array;
  private readonly arcIn: Int32Array;
  private readonly arcFrom: Int32Array;
  private readonly floor: Int32Array;
  private readonly isBanned: Uint8Array;
  private readonly sequence: Int32Array;
  private readonly position: Int32Array;
  private readonly arranger: Sequence;
  private readonly wanted: Int32Array;
  /** Steady flag each activity was placed with. */
  private readonly isKept: Uint8Array;
  /** Positions of the sequence, from the first, whose blocks stand as they would in any schedule that begins like this. */
  private builtTo = 0;
  private readonly dueActivities: readonly number[];
  private tries = 0;
  private blame = -1;
  private readonly bannedBy = new Map<number, { readonly cause: number; readonly at: number }>();
  private readonly hasPins: boolean;

  constructor(readonly model: Model, readonly order: Order, private readonly bounds: Bounds) {
    this.placer = new Placer(model);
    this.hasPins = model.pin.some((at) => at >= 0);
    this.inFrom = new Int32Array(model.count + 1);
    model.arcsIn.forEach((list, i) => {
      this.inFrom[i + 1] = this.inFrom[i]! + list.length;
    });
    this.arcIn = Int32Array.from(model.arcsIn.flatMap((list) => [...list]));
    this.arcFrom = this.arcIn.map((arc) => model.arcs.from[arc]!);
    this.cause = new Uint8Array(model.count);
    this.causeAt = new Int32Array(model.count);
    this.floor = new Int32Array(model.count);
    this.isBanned = new Uint8Array(model.count);
    this.sequence = new Int32Array(model.count);
    this.position = new Int32Array(model.count);
    this.arranger = new Sequence(order);
    this.wanted = new Int32Array(model.count);
    this.isKept = new Uint8Array(model.count);
    this.dueActivities = [...model.dueWeight.keys()].filter((i) => model.dueWeight[i]! > 0);
  }

  /** Builds a schedule in the placer. `isSteady[i]` = 1: keep to the previous start where it fits. */
  build(list: Int32Array, isSteady: Uint8Array): void {
    this.builtTo = 0;
    this.rebuild(list, isSteady, null, null);
  }

  /**
   * As {@link build}, but keeps what is built already as far as the sequence begins alike, then takes over from `like`
   * as far as that goes, and only then searches. Gives up, and says false, when the unplaced or late work is more than in
   * `limit` already. The schedule is the one that {@link build} gives, but for the count of tries.
   */
  rebuild(list: Int32Array, isSteady: Uint8Array, like: Reference | null, limit: Float64Array | null): boolean {
    const { model, placer, sequence } = this;
    const from = this.startOver(list, isSteady);
    this.tries = TRIES_AT_LEAST + TRIES_PER_ACTIVITY * model.count;
    const first = like === null ? from : this.takeOver(from, like, isSteady);
    for (let k = first; k < model.count; k += 1) {
      const activity = sequence[k]!;
      if (placer.status[activity] !== UNDECIDED) continue;
      const back = this.decide(activity, isSteady[activity] === 1);
      if (back >= 0) {
        this.unwind(k, back);
        k = back - 1;
      } else if (limit !== null && this.isBeyond(activity, limit)) {
        this.builtTo = this.hasPins && placer.status.includes(UNPLACED) ? 0 : this.blockStart(k);
        return false;
      }
    }
    this.builtTo = model.count;
    if (placer.status.includes(UNPLACED) && (new Orphans(this).drop() || this.hasPins)) this.builtTo = 0;
    return true;
  }

  /** Brings the placer back to what the new sequence has in common with the one before; returns its length. */
  private startOver(list: Int32Array, isSteady: Uint8Array): number {
    const { isKept, model, sequence, wanted } = this;
    this.arranger.arrange(list, wanted);
    let from = 0;
    while (from < this.builtTo && wanted[from] === sequence[from] && isKept[wanted[from]!] === isSteady[wanted[from]!]) from += 1;
    from = from === model.count ? from : this.blockStart(from);
    if (from === 0) this.builtTo = 0;
    if (this.builtTo === 0) {
      this.placer.clear();
      this.cause.fill(CAUSE_NONE);
      this.bannedBy.clear();
    } else this.unwind(model.count - 1, from);
    for (let k = 0; k < model.count; k += 1) {
      const activity = wanted[k]!;
      sequence[k] = activity;
      this.position[activity] = k;
      if (k < from) continue;
      this.floor[activity] = 0;
      this.isBanned[activity] = 0;
    }
    isKept.set(isSteady);
    if (this.builtTo === 0) this.placePins();
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

  private isBeyond(activity: number, limit: Float64Array): boolean {
    const { model, placer } = this;
    if (placer.status[activity] === UNPLACED) return limit[0] === 0;
    if (limit[0]! > 0 || model.dueWeight[activity] === 0) return false;
    let late = 0;
    for (const i of this.dueActivities) if (placer.status[i] === PLACED) late += lateness(model, i, placer.end[i]!);
    return late > limit[1]!;
  }

  private unwind(from: number, to: number): void {
    const { model, placer } = this;
    for (let k = from; k >= to; k -= 1) {
      const activity = this.sequence[k]!;
      if (model.pin[activity]! >= 0) continue;
      if (placer.status[activity] === PLACED) placer.remove(activity);
      placer.status[activity] = UNDECIDED;
      this.cause[activity] = CAUSE_NONE;
      if (k > to) this.floor[activity] = 0;
    }
  }

  /** Pins first, those with a named crew before the others: everything else goes around them. */
  private placePins(): void {
    const { model, placer } = this;
    const named = (i: number) => Number(model.problem.activities[i]?.pin?.crew === undefined);
    const pins: number[] = [];
    for (let i = 0; i < model.count; i += 1) if (model.pin[i]! >= 0) pins.push(i);
    if (pins.length > 1) pins.sort((a, b) => named(a) - named(b) || model.pin[a]! - model.pin[b]! || a - b);
    for (const activity of pins) {
      const at = model.pin[activity]!;
      if (placer.fits(activity, at) && this.ownLatest(activity) >= at) placer.place(activity, at);
      else this.leaveOut(activity, CAUSE_NO_PLACE, 0);
    }
  }

  private ownLatest(activity: number): number {
    return latestStart(this.model, activity, Math.min(this.model.latestEnd[activity]!, this.model.horizon));
  }

  /** Marks an activity that is not placed as left out. */
  leaveOut(activity: number, cause: number, at: number): void {
    this.placer.status[activity] = UNPLACED;
    this.cause[activity] = cause;
    this.causeAt[activity] = at;
  }

  /** Places the activity or leaves it out. Returns a position to go back to, or -1 to go on. */
  private decide(activity: number, isSteady: boolean): number {
    const { bounds, model, placer } = this;
    if (this.isBanned[activity] === 1) return this.settleUnplaced(activity);
    const from = this.lowerBound(activity);
    if (from < 0) return this.settleUnplaced(activity);
    const own = model.calendar[activity]! < 0
      ? Math.min(model.latestEnd[activity]!, model.horizon) - model.duration[activity]!
      : this.ownLatest(activity);
    const window = this.upperBound(activity);
    const latest = Math.min(own, bounds.latest[activity]!, window);
    const t = isSteady ? this.findSteady(activity, from, latest) : placer.findStart(activity, from, latest);
    if (t >= 0) {
      placer.place(activity, t);
      return -1;
    }
    if (placer.holdBlame >= 0) return this.moveHold(activity, placer.holdBlame, placer.holdFrom);
    const anywhere = latest < own ? placer.findStart(activity, Math.max(from, latest + 1), own) : -1;
    if (anywhere < 0) {
      this.cause[activity] = CAUSE_NO_PLACE;
      return this.settleUnplaced(activity);
    }
    if (anywhere <= window) {
      // Only something placed later wants it earlier: that one will be left out.
      placer.place(activity, anywhere);
      return -1;
    }
    return this.moveWindow(activity, anywhere);
  }

  private findSteady(activity: number, from: number, latest: number): number {
    const previous = this.model.previous[activity]!;
    const { placer } = this;
    if (previous >= from && previous <= latest && placer.fits(activity, previous)) return previous;
    return placer.findStart(activity, from, latest);
  }

  /** Earliest start that lags from placed activities allow; -1 when one it needs is left out. */
  private lowerBound(activity: number): number {
    const { model, placer } = this;
    const { arcFrom, arcIn, inFrom } = this;
    const { arcs } = model;
    let from = Math.max(this.bounds.earliest[activity]!, this.floor[activity]!);
    for (let k = inFrom[activity]!; k < inFrom[activity + 1]!; k += 1) {
      const arc = arcIn[k]!;
      const first = arcFrom[k]!;
      const status = placer.status[first]!;
      if (status === UNDECIDED) continue;
      if (status === PLACED) {
        const isPlain = arcs.kind[arc] === ELAPSED && arcs.isToEnd[arc] === 0;
        const event = arcs.isFromEnd[arc] === 1 ? placer.end[first]! : placer.start[first]!;
        const bound = isPlain ? event + arcs.minutes[arc]! : earliestOverArc(model, arc, placer.start[first]!);
        if (bound > from) from = bound;
        continue;
      }
      const bound = this.boundFromLeftOut(activity, arc);
      if (bound < 0) {
        this.cause[activity] = CAUSE_WAITS;
        this.causeAt[activity] = arc;
        return -1;
      }
      if (bound > from) from = bound;
    }
    return from;
  }

  /** What is left out happens at the horizon or later: only an allowed overlap lets the next start. -1: it may not. */
  private boundFromLeftOut(activity: number, arc: number): number {
    const { model } = this;
    if (model.arcs.kind[arc] !== ELAPSED || model.arcs.minutes[arc]! >= 0) return -1;
    const bound = Math.max(0, passArc(model, arc, model.horizon));
    return model.arcs.isToEnd[arc] === 1 ? startForEnd(model, activity, bound) : bound;
  }

  /** Latest start that maximum lags to placed activities allow; `blame` is the tightest arc. */
  private upperBound(activity: number): number {
    const { model, placer } = this;
    let latest = FAR;
    this.blame = -1;
    for (const arc of this.order.backArcs[activity]!) {
      const other = model.arcs.to[arc]!;
      if (placer.status[other] !== PLACED) continue;
      const bound = latestOverArc(model, arc, placer.start[other]!);
      if (bound >= latest) continue;
      latest = bound;
      this.blame = arc;
    }
    return latest;
  }

  /** The activity could go at `at` had the other end of the blamed arc been later: moves that one. */
  private moveWindow(activity: number, at: number): number {
    const arc = this.blame;
    const { model } = this;
    const other = model.arcs.to[arc]!;
    if (model.pin[other]! >= 0) {
      this.placer.remove(other);
      this.leaveOut(other, CAUSE_WINDOW, arc);
      return this.position[activity]!;
    }
    return this.moveLater(other, earliestOverArc(model, arc, at), CAUSE_WINDOW, arc);
  }

  private moveHold(activity: number, hold: number, from: number): number {
    const first = this.model.holds.from[hold]!;
    if (this.model.pin[first]! >= 0) {
      this.leaveOut(activity, CAUSE_HOLD, hold);
      return -1;
    }
    return this.moveLater(first, from, CAUSE_HOLD, hold);
  }

  /** Goes back to the other activity to place it not before `from`, or to leave it out after too many tries. */
  private moveLater(other: number, from: number, cause: number, at: number): number {
    this.tries -= 1;
    if (from <= this.ownLatest(other) && from > this.placer.start[other]! && this.tries > 0) {
      this.floor[other] = from;
      return this.position[other]!;
    }
    return this.ban(other, cause, at);
  }

  /** Leaves the activity out; what was placed in trust of it has to go too. */
  private settleUnplaced(activity: number): number {
    const { model, placer } = this;
    const ban = this.isBanned[activity] === 1 ? this.bannedBy.get(activity) : undefined;
    if (ban !== undefined) this.leaveOut(activity, ban.cause, ban.at);
    else placer.status[activity] = UNPLACED;
    for (const arc of this.order.backArcs[activity]!) {
      const other = model.arcs.to[arc]!;
      if (placer.status[other] !== PLACED) continue;
      const event = model.arcs.isToEnd[arc] === 1 ? placer.end[other]! : placer.start[other]!;
      if (model.arcs.kind[arc] === ELAPSED && model.arcs.minutes[arc]! < 0 && event >= model.horizon + model.arcs.minutes[arc]!) continue;
      if (model.pin[other]! >= 0) continue;
      return this.ban(other, CAUSE_WINDOW, arc);
    }
    for (const hold of model.holds.byActivity[activity]!) {
      const first = model.holds.from[hold]!;
      if (first === activity || placer.status[first] !== PLACED) continue;
      if (placer.holdConflict(hold, model.horizon) === 0) placer.extendHold(hold, model.horizon);
      else if (model.pin[first]! < 0) return this.ban(first, CAUSE_HOLD, hold);
    }
    return -1;
  }

  private ban(activity: number, cause: number, at: number): number {
    this.isBanned[activity] = 1;
    this.bannedBy.set(activity, { cause, at });
    return this.position[activity]!;
  }
}
