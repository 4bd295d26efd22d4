import { FAR, type CalendarIndex } from './calendar-index';
import type { Model } from './model';

/** Worked pieces of the activity looked at last. */
interface Pieces {
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  readonly pieceCount: number;
}

/** True when no two budgets of the resource overlap, and each interval of its calendar lies inside one. */
function isFenced({ budgets, calendars, resourceCalendar }: Model, resource: number): boolean {
  const calendar = calendars[resourceCalendar[resource]!];
  if (calendar === undefined) return false;
  let k = 0;
  for (let b = budgets.from[resource]!; b < budgets.from[resource + 1]!; b += 1) {
    if (b > budgets.from[resource]! && budgets.reach[b - 1]! > budgets.start[b]!) return false;
    while (k < calendar.count && calendar.start[k]! >= budgets.start[b]! && calendar.end[k]! <= budgets.end[b]!) k += 1;
  }
  return k === calendar.count;
}

/** What is used of each budget so far. */
export class BudgetBook {
  /** Index in `problem.budgets` of the last one that had no room. */
  met = -1;
  private near = 0;
  /** Unit-minutes left of each budget of the model. */
  readonly room: Float64Array;

  /** 1 for resources that are only there within budgets, one at a time: a piece of work lies inside one of them. */
  private readonly isFenced: Uint8Array;

  constructor(private readonly model: Model, private readonly pieces: Pieces) {
    this.room = Float64Array.from(model.budgets.limit);
    this.isFenced = Uint8Array.from({ length: model.resourceCount }, (_, r) => Number(isFenced(model, r)));
  }

  clear(): void {
    this.room.set(this.model.budgets.limit);
  }

  /** Counts units used over [from, to) of an account; a negative amount gives them back. */
  use(account: number, from: number, to: number, amount: number): void {
    const { budgets } = this.model;
    for (let b = this.lastBefore(account, to); b >= budgets.from[account]! && budgets.reach[b]! > from; b -= 1) {
      const shared = Math.min(to, budgets.end[b]!) - Math.max(from, budgets.start[b]!);
      if (shared > 0) this.room[b]! -= shared * amount;
    }
  }

  /** Counts (sign 1) or gives back (sign -1) what the pieces looked at last do to somebody on them. */
  useDoses(activity: number, person: number, sign: number): void {
    const { doses } = this.model;
    for (let row = doses.from[activity]!; row < doses.from[activity + 1]!; row += 1) {
      const account = doses.account[person * doses.kindCount + doses.kind[row]!]!;
      if (account < 0) continue;
      for (let k = 0; k < this.pieces.pieceCount; k += 1) this.use(account, this.pieces.pieceStart[k]!, this.pieces.pieceEnd[k]!, sign * doses.perMinute[row]!);
    }
  }

  /** Next start at which somebody may take the doses of the pieces looked at last, or 0. */
  doseConflict(activity: number, person: number, t: number): number {
    const { doses } = this.model;
    for (let row = doses.from[activity]!; row < doses.from[activity + 1]!; row += 1) {
      const account = doses.account[person * doses.kindCount + doses.kind[row]!]!;
      const next = account < 0 ? 0 : this.conflict(activity, account, doses.perMinute[row]!, t, -1);
      if (next > 0) return next;
    }
    return 0;
  }

  /** Next start of the activity that keeps the budgets of an account, or 0. `through` >= 0: held from `t` to `through`. */
  conflict(activity: number, account: number, amount: number, t: number, through: number): number {
    if (this.pieces.pieceCount === 0) return 0;
    const { budgets } = this.model;
    const first = budgets.from[account]!;
    if (first === budgets.from[account + 1]!) return 0;
    const end = through >= 0 ? through : this.pieces.pieceEnd[this.pieces.pieceCount - 1]!;
    for (let b = this.lastBefore(account, end); b >= first && budgets.reach[b]! > t; b -= 1) {
      const asked = this.overlap(budgets.start[b]!, budgets.end[b]!, t, through);
      const room = this.room[b]!;
      if (asked === 0 || asked * amount <= room) continue;
      this.met = budgets.source[b]!;
      return this.leave(activity, b, Math.max(0, Math.floor(room / amount)), t, through);
    }
    return 0;
  }

  /**
   * Earliest later start that could leave at most `room` minutes inside the budget. Never skips a start that fits: a later
   * start ends later, so that work ahead of the budget only grows into it, and within it goes on to its end, in the minutes
   * of its calendar where it pauses.
   */
  private leave(activity: number, budget: number, room: number, t: number, through: number): number {
    const { budgets, calendar, calendars, isSplit } = this.model;
    const end = budgets.end[budget]!;
    const own = through < 0 && isSplit[activity] === 1 ? calendars[calendar[activity]!] : undefined;
    return Math.max(t + 1, own === undefined ? end - room : own.timeAtWork(own.workedBefore(end) - room));
  }

  /** Where {@link conflictInOne} goes on from: starts asked about after this are no earlier. */
  seek(account: number, t: number): void {
    this.near = this.lastBefore(account, t);
  }

  /**
   * As {@link conflict} for the account that was sought last and work in one piece on [t, end). `calendar` is that of split
   * work, which may pause; `least` the minutes of its shortest piece, or of all of it.
   */
  conflictInOne(account: number, amount: number, t: number, end: number, least: number, calendar: CalendarIndex | undefined): number {
    const { budgets } = this.model;
    const first = budgets.from[account]!;
    const last = budgets.from[account + 1]!;
    let b = this.near;
    while (b + 1 < last && budgets.start[b + 1]! < end) b += 1;
    this.near = b;
    for (; b >= first && budgets.reach[b]! > t; b -= 1) {
      const until = budgets.end[b]!;
      const asked = Math.min(end, until) - Math.max(t, budgets.start[b]!);
      const room = this.room[b]!;
      if (asked <= 0 || asked * amount <= room) continue;
      this.met = budgets.source[b]!;
      const left = Math.max(0, Math.floor(room / amount));
      if (this.isFenced[account] === 1 && left < least) {
        // Nothing fits across its border either: on to the next one with enough left.
        for (b += 1; b < last && this.room[b]! < least * amount;) b += 1;
        return b < last ? budgets.start[b]! : FAR;
      }
      return Math.max(t + 1, calendar === undefined ? until - left : calendar.timeAtWork(calendar.workedBefore(until) - left));
    }
    return 0;
  }

  private lastBefore(account: number, end: number): number {
    const { budgets } = this.model;
    let low = budgets.from[account]!;
    let high = budgets.from[account + 1]!;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (budgets.start[mid]! >= end) high = mid;
      else low = mid + 1;
    }
    return low - 1;
  }

  private overlap(from: number, to: number, t: number, through: number): number {
    if (through >= 0) return Math.max(0, Math.min(to, through) - Math.max(from, t));
    let sum = 0;
    for (let k = 0; k < this.pieces.pieceCount; k += 1) {
      sum += Math.max(0, Math.min(to, this.pieces.pieceEnd[k]!) - Math.max(from, this.pieces.pieceStart[k]!));
    }
    return sum;
  }
}
