import { FAR } from './calendar-index';
import { CAUSE_HOLD, CAUSE_NONE, CAUSE_NO_PLACE, CAUSE_WAITS, CAUSE_WINDOW } from './cause';
import { ELAPSED, type Model } from './model';
import type { Order } from './order';
import { PLACED, Placer, UNDECIDED, UNPLACED } from './placer';
import { earliestOverArc, latestOverArc, type Bounds } from './propagate';
import { latestStart, passArc, startForEnd } from './timing';

/** Answer of {@link Decider.insert} when the activity does not fit. */
const STUCK = -2;

/**
 * Decides on one activity after the other, in the order of their positions: its earliest place that keeps every rule, or
 * none. A window that closes (maximum lag, hold) sends back to the activity that opened it, a bounded number of times;
 * then that activity is left out.
 */
export class Decider {
  readonly placer: Placer;
  readonly cause: Uint8Array;
  readonly causeAt: Int32Array;
  /** Where each activity stands in the sequence worked through. */
  readonly position: Int32Array;
  /** How often an activity may still be sent back to. */
  tries = 0;
  /** Arcs into each activity, flat: rows `inFrom[i]` to `inFrom[i + 1]`. */
  private readonly inFrom: Int32Array;
  private readonly arcIn: Int32Array;
  private readonly arcFrom: Int32Array;
  /** Earliest start that going back has set. */
  private readonly floor: Int32Array;
  private readonly isBanned: Uint8Array;
  private readonly bannedBy = new Map<number, { readonly cause: number; readonly at: number }>();
  /** Maximum lag that allows the least, of the activity looked at last; -1: none. */
  private blame = -1;

  constructor(readonly model: Model, readonly order: Order, private readonly bounds: Bounds) {
    this.placer = new Placer(model);
    this.inFrom = new Int32Array(model.count + 1);
    model.arcsIn.forEach((list, i) => {
      this.inFrom[i + 1] = this.inFrom[i]! + list.length;
    });
    this.arcIn = Int32Array.from(model.arcsIn.flatMap((list) => [...list]));
    this.arcFrom = this.arcIn.map((arc) => model.arcs.from[arc]!);
    this.cause = new Uint8Array(model.count);
    this.causeAt = new Int32Array(model.count);
    this.position = new Int32Array(model.count);
    this.floor = new Int32Array(model.count);
    this.isBanned = new Uint8Array(model.count);
  }

  /** Forgets all that was placed and found out. */
  clear(): void {
    this.placer.clear();
    this.cause.fill(CAUSE_NONE);
    this.bannedBy.clear();
  }

  /** Gives the activity its position, as if nothing was known about it. */
  begin(activity: number, position: number): void {
    this.position[activity] = position;
    this.floor[activity] = 0;
    this.isBanned[activity] = 0;
  }

  /** Makes the activities from position `to` to `from` undecided again; what was found out about the first of them stays. */
  unwind(sequence: Int32Array, from: number, to: number): void {
    const { model, placer } = this;
    for (let k = from; k >= to; k -= 1) {
      const activity = sequence[k]!;
      if (model.pin[activity]! >= 0) continue;
      if (placer.status[activity] === PLACED) placer.remove(activity);
      placer.status[activity] = UNDECIDED;
      this.cause[activity] = CAUSE_NONE;
      if (k > to) this.floor[activity] = 0;
    }
  }

  /** Pins first, those with a named crew before the others: everything else goes around them. */
  placePins(): void {
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
  decide(activity: number, isSteady: boolean): number {
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
    if (placer.holds.blame >= 0) return this.moveHold(activity, placer.holds.blame, placer.holds.blameFrom);
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

  /**
   * As {@link decide}, among work that stands and stays: the activity starts at `ceiling` at the latest and nothing is left
   * out. {@link STUCK}: it does not fit.
   */
  insert(activity: number, isSteady: boolean, ceiling: number): number {
    const { bounds, model, placer } = this;
    if (this.isBanned[activity] === 1) return STUCK;
    const from = this.lowerBound(activity);
    if (from < 0) return STUCK;
    const own = Math.min(this.ownLatest(activity), bounds.latest[activity]!, ceiling);
    const window = this.upperBound(activity);
    const latest = Math.min(own, window);
    const t = isSteady ? this.findSteady(activity, from, latest) : placer.findStart(activity, from, latest);
    if (t >= 0) {
      placer.place(activity, t);
      return -1;
    }
    if (placer.holds.blame >= 0) return model.pin[model.holds.from[placer.holds.blame]!]! >= 0 ? STUCK : this.moveHold(activity, placer.holds.blame, placer.holds.blameFrom);
    if (window >= own || model.pin[model.arcs.to[this.blame]!]! >= 0) return STUCK;
    const anywhere = placer.findStart(activity, Math.max(from, latest + 1), own);
    return anywhere < 0 ? STUCK : this.moveWindow(activity, anywhere);
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
        // What leads to a start needs no look at the calendar: the search for a place begins with one.
        const event = arcs.isFromEnd[arc] === 1 ? placer.end[first]! : placer.start[first]!;
        const bound = arcs.isToEnd[arc] === 1 ? earliestOverArc(model, arc, placer.start[first]!)
          : arcs.kind[arc] === ELAPSED ? event + arcs.minutes[arc]! : passArc(model, arc, event);
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
      if (placer.holds.conflict(hold, model.horizon) === 0) placer.holds.extend(hold, model.horizon);
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
