import { BudgetBook } from './budget-book';
import { CrewChoice } from './crew-choice';
import { FAR } from './calendar-index';
import { HoldBook } from './hold-book';
import type { Model } from './model';
import { Profile } from './profile';
import { StateBoard } from './state-board';
import { PLACED, UNDECIDED, UNPLACED } from './status';
import { alignStart } from './timing';

export { PLACED, UNDECIDED, UNPLACED };

/** What pushed a start on, told to a listener: `index` is a resource, medium, budget or hold of the model. */
export type Obstacle = 'resource' | 'crew' | 'state' | 'budget' | 'hold' | 'span';

export interface ObstacleListener {
  pushed(obstacle: Obstacle, index: number, from: number, to: number): void;
}

/** A partial schedule: what is placed, what it takes, and where the next activity fits. */
export class Placer {
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly status: Uint8Array;
  /** Resource in each crew slot of the placed activities. */
  readonly crew: Int32Array;
  /** Worked minutes given to each resource as crew so far. */
  readonly load: Float64Array;
  readonly profiles: readonly Profile[];
  readonly holds: HoldBook;
  listener: ObstacleListener | null = null;
  /** Pieces of the activity looked at last. */
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  pieceCount = 0;
  /** Latest start of the search that goes on. */
  private latest = 0;
  private readonly choice: CrewChoice;
  private readonly budgets: BudgetBook;
  private readonly board: StateBoard;
  private readonly hasBudgets: boolean;
  private readonly hasDoses: boolean;
  private readonly hasStates: boolean;
  private readonly hasHolds: boolean;

  constructor(readonly model: Model) {
    const longest = Math.max(1, ...model.calendars.map((calendar) => calendar.count));
    this.start = new Int32Array(model.count);
    this.end = new Int32Array(model.count);
    this.status = new Uint8Array(model.count);
    this.crew = new Int32Array(model.crew.from[model.count]!).fill(-1);
    this.load = new Float64Array(model.resourceCount);
    this.profiles = Array.from(model.capacity, (capacity, r) => new Profile(capacity, model.calendars[model.resourceCalendar[r]!]));
    this.budgets = new BudgetBook(model, this);
    this.holds = new HoldBook(model, this);
    this.pieceStart = new Int32Array(longest);
    this.pieceEnd = new Int32Array(longest);
    this.board = new StateBoard(model);
    this.choice = new CrewChoice(this);
    this.hasBudgets = model.budgets.limit.length > 0;
    this.hasDoses = model.doses.kindCount > 0;
    this.hasStates = model.states.mediumCount > 0;
    this.hasHolds = model.holds.count > 0;
  }

  clear(): void {
    this.status.fill(UNDECIDED);
    this.load.fill(0);
    this.budgets.clear();
    this.holds.clear();
    for (const profile of this.profiles) profile.clear();
    this.board.clear();
  }

  /** Earliest start in [from, latest] that fits all that is placed; -1 when there is none. */
  findStart(activity: number, from: number, latest: number): number {
    this.holds.blame = -1;
    this.latest = latest;
    this.choice.begin();
    let t = alignStart(this.model, activity, from);
    while (t <= latest && t < FAR) {
      const next = this.nextTry(activity, t);
      if (next <= t) return t;
      t = alignStart(this.model, activity, next);
    }
    return -1;
  }

  /** True when the activity may start exactly at `t`. */
  fits(activity: number, t: number): boolean {
    this.holds.blame = -1;
    this.latest = t;
    this.choice.begin();
    return alignStart(this.model, activity, t) === t && this.nextTry(activity, t) <= t;
  }

  /** Places the activity at a start that {@link findStart} or {@link fits} has just found. */
  place(activity: number, t: number): void {
    const end = this.cut(activity, t);
    this.start[activity] = t;
    this.end[activity] = end;
    this.status[activity] = PLACED;
    const { crew } = this.model;
    for (let slot = crew.from[activity]!, k = 0; slot < crew.from[activity + 1]!; slot += 1, k += 1) {
      this.crew[slot] = this.choice.pick[k]!;
    }
    this.occupy(activity, 1);
  }

  /** Puts an activity where a finished schedule has it, crew slots included, without asking whether it fits. */
  restore(activity: number, t: number, crew: ArrayLike<number>): void {
    this.end[activity] = this.cut(activity, t);
    this.start[activity] = t;
    this.status[activity] = PLACED;
    const { from } = this.model.crew;
    for (let slot = from[activity]!; slot < from[activity + 1]!; slot += 1) this.crew[slot] = crew[slot]!;
    this.occupy(activity, 1);
  }

  /** Takes the activity out again; its status becomes undecided. */
  remove(activity: number): void {
    this.cut(activity, this.start[activity]!);
    this.occupy(activity, -1);
    this.status[activity] = UNDECIDED;
  }

  /** Fills the pieces of the activity started at `t` and returns its end. */
  private cut(activity: number, t: number): number {
    const { model } = this;
    const duration = model.duration[activity]!;
    this.pieceCount = 0;
    if (duration === 0) return t;
    const index = model.calendar[activity]!;
    if (index < 0 || model.isSplit[activity] === 0) {
      this.pieceStart[0] = t;
      this.pieceEnd[0] = t + duration;
      this.pieceCount = 1;
      return t + duration;
    }
    const calendar = model.calendars[index]!;
    let left = duration;
    let at = t;
    for (let k = calendar.firstEndingAfter(t); k < calendar.count; k += 1) {
      at = Math.max(t, calendar.start[k]!);
      const stop = Math.min(calendar.end[k]!, at + left);
      this.pieceStart[this.pieceCount] = at;
      this.pieceEnd[this.pieceCount] = stop;
      this.pieceCount += 1;
      left -= stop - at;
      if (left === 0) return stop;
    }
    return FAR;
  }

  private tell(obstacle: Obstacle, index: number, from: number, to: number): number {
    if (this.listener !== null) this.listener.pushed(obstacle, index, from, to);
    return to;
  }

  /** `t` (or less) when the activity fits at `t`; else the next moment worth trying. No start in between fits. */
  private nextTry(activity: number, t: number): number {
    const { model } = this;
    const end = this.cut(activity, t);
    if (end >= FAR) return FAR;
    if (end - t > model.maxSpan[activity]!) return this.tell('span', activity, t, this.nextInterval(activity, t));
    const { demands } = model;
    for (let row = demands.from[activity]!; row < demands.from[activity + 1]!; row += 1) {
      const resource = demands.resource[row]!;
      const amount = demands.amount[row]!;
      const next = demands.isThrough[row] === 1
        ? this.profiles[resource]!.conflictEnd(t, end, amount)
        : this.workConflict(resource, amount);
      if (next > 0) return this.tell('resource', resource, t, next);
      if (!this.hasBudgets) continue;
      const spent = this.budgets.conflict(activity, resource, amount, t, demands.isThrough[row] === 1 ? end : -1);
      if (spent > t) return this.tell('budget', this.budgets.met, t, spent);
    }
    if (this.hasStates) {
      const state = this.board.conflict(activity, t, end);
      if (state > t) return this.tell('state', this.board.medium, t, state);
    }
    if (this.hasHolds) {
      const held = this.holds.conflictAt(activity, t, end);
      if (held > t) return this.tell('hold', this.holds.met, t, held);
    }
    if (model.crew.from[activity] === model.crew.from[activity + 1]) return t;
    this.budgets.met = -1;
    const crew = this.choice.choose(activity, t);
    if (crew <= t) return t;
    if (this.budgets.met >= 0) this.tell('budget', this.budgets.met, t, crew);
    return this.tell('crew', activity, t, crew);
  }

  private nextInterval(activity: number, t: number): number {
    const calendar = this.model.calendars[this.model.calendar[activity]!];
    if (calendar === undefined) return FAR;
    const next = calendar.firstEndingAfter(t) + 1;
    return next < calendar.count ? calendar.start[next]! : FAR;
  }

  /** As {@link Profile.conflictEnd} over the pieces looked at last. */
  private workConflict(resource: number, amount: number): number {
    const profile = this.profiles[resource]!;
    for (let k = this.pieceCount - 1; k >= 0; k -= 1) {
      const next = profile.conflictEnd(this.pieceStart[k]!, this.pieceEnd[k]!, amount);
      if (next > 0) return next;
    }
    return 0;
  }

  /**
   * 0 when the person has so many units free for the pieces looked at last; else a later start, before which they have not.
   * Goes on alone to one that suits the person, or past the latest; with a listener only to the next try, which is told.
   */
  waitFor(activity: number, person: number, units: number, t: number): number {
    if (this.listener === null && !this.hasDoses && this.pieceCount > 0) return this.waitAlone(activity, person, units, t);
    let at = t;
    for (let end = 0; end < FAR && at <= this.latest;) {
      const next = this.personConflict(activity, person, units, at);
      if (next <= at) break;
      if (this.listener !== null) return next;
      at = alignStart(this.model, activity, next);
      end = at < FAR ? this.cut(activity, at) : FAR;
    }
    if (at === t) return 0;
    this.cut(activity, t);
    return at;
  }

  /**
   * As {@link waitFor}, without a listener: the budgets first, which mostly rule out what is left of a session at once, and
   * work in one piece without cutting it.
   */
  private waitAlone(activity: number, person: number, units: number, t: number): number {
    const { latest, model } = this;
    const profile = this.profiles[person]!;
    const duration = model.duration[activity]!;
    const calendar = model.isSplit[activity] === 1 ? model.calendars[model.calendar[activity]!] : undefined;
    const least = calendar === undefined ? duration : Math.max(1, model.shortest[activity]!);
    let isWhole = this.pieceCount === 1;
    this.budgets.seek(person, t);
    let at = t;
    while (at <= latest) {
      let next = 0;
      if (isWhole) {
        if (this.hasBudgets) next = this.budgets.conflictInOne(person, units, at, at + duration, least, calendar);
        if (next === 0) next = profile.conflictEnd(at, at + duration, units);
      } else {
        if (this.cut(activity, at) >= FAR) return FAR;
        if (this.hasBudgets) next = this.budgets.conflict(activity, person, units, at, -1);
        if (next === 0) next = this.workConflict(person, units);
      }
      if (next <= at) break;
      at = alignStart(model, activity, next);
      if (at >= FAR) return FAR;
      isWhole = calendar === undefined || at + duration <= calendar.end[calendar.firstEndingAfter(at)]!;
    }
    if (at === t) return 0;
    if (calendar !== undefined) this.cut(activity, t);
    return at;
  }

  /** Next start that a person may be there for the pieces looked at last, by what they do already, budgets and doses; or 0. */
  private personConflict(activity: number, person: number, units: number, t: number): number {
    const busy = this.workConflict(person, units);
    if (busy > 0) return busy;
    const spent = this.hasBudgets ? this.budgets.conflict(activity, person, units, t, -1) : 0;
    return spent > 0 || !this.hasDoses ? spent : this.budgets.doseConflict(activity, person, t);
  }

  /** Takes units for work, which counts in the budgets (a hold does not). */
  private use(resource: number, from: number, to: number, amount: number): void {
    this.profiles[resource]!.take(from, to, amount);
    if (this.hasBudgets) this.budgets.use(resource, from, to, amount);
  }

  /** Takes (sign 1) or gives back (sign -1) all that the placed activity uses. */
  private occupy(activity: number, sign: number): void {
    const { crew, demands, duration } = this.model;
    const from = this.start[activity]!;
    for (let row = demands.from[activity]!; row < demands.from[activity + 1]!; row += 1) {
      const amount = sign * demands.amount[row]!;
      if (demands.isThrough[row] === 1) this.use(demands.resource[row]!, from, this.end[activity]!, amount);
      else this.useWork(demands.resource[row]!, amount);
    }
    for (let slot = crew.from[activity]!; slot < crew.from[activity + 1]!; slot += 1) {
      this.useWork(this.crew[slot]!, sign);
      if (this.hasDoses) this.budgets.useDoses(activity, this.crew[slot]!, sign);
      this.load[this.crew[slot]!]! += sign * duration[activity]!;
    }
    if (this.hasStates) this.board.occupy(activity, from, this.end[activity]!, sign);
    if (this.hasHolds) this.holds.occupy(activity, sign);
  }

  private useWork(resource: number, amount: number): void {
    for (let k = 0; k < this.pieceCount; k += 1) this.use(resource, this.pieceStart[k]!, this.pieceEnd[k]!, amount);
  }

}
