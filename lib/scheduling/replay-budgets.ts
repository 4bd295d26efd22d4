/** Budgets of a replay, looked up by the opening that work lies in. */
import { BudgetBook } from './budget-book';
import type { Model } from './model';
import { addDoses, pickRows, type Openings, type ReplayRows } from './replay-rows';

/** Of a row with budgets, for each opening of its activity. */
interface Fill {
  /** Budget that covers the opening; -1: none does. */
  readonly budget: Int32Array;
  /** True: no opening has anything to do with another budget than the one that covers it. */
  readonly isOnly: boolean;
}

/** Worked pieces of the place looked at last. */
interface Pieces {
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  /** Opening that each piece lies in. */
  readonly pieceOpening: Int32Array;
  readonly pieceCount: number;
}

export class ReplayBudgets {
  private readonly book: BudgetBook;
  /** Rows with budgets, by account: worked minutes and doses, and those held through pauses. */
  private readonly limited: ReplayRows;
  private readonly kept: ReplayRows;
  private readonly fills: readonly Int32Array[];
  /** 1: each opening has to do with no budget but the one that covers it, so that pieces can be booked by their opening. */
  private readonly isPlain: Uint8Array;

  constructor(model: Model, rows: ReplayRows, private readonly openings: readonly Openings[], private readonly pieces: Pieces) {
    const hasBudgets = (resource: number) => model.budgets.from[resource] !== model.budgets.from[resource + 1];
    this.book = new BudgetBook(model, pieces);
    this.limited = pickRows(addDoses(model, rows), (resource, isThrough) => hasBudgets(resource) && !isThrough);
    this.kept = pickRows(rows, (resource, isThrough) => hasBudgets(resource) && isThrough);
    const fills = listFills(model, this.limited, openings);
    this.fills = fills.map(({ budget }) => budget);
    this.isPlain = Uint8Array.from(openings, (_, i) => {
      const own = fills.slice(this.limited.from[i], this.limited.from[i + 1]);
      return Number(this.kept.from[i] === this.kept.from[i + 1] && own.every(({ isOnly }) => isOnly));
    });
  }

  clear(): void {
    this.book.clear();
  }

  /** True when work inside one opening needs no more than {@link hasRoom}. */
  isSettledByRoom(activity: number): boolean {
    return this.isPlain[activity] === 1;
  }

  /** Counts the pieces looked at last. */
  use(activity: number, t: number, end: number): void {
    if (this.isPlain[activity] === 1) {
      this.bookByOpening(activity);
      return;
    }
    const { kept, limited, pieces } = this;
    for (let row = limited.from[activity]!; row < limited.from[activity + 1]!; row += 1) {
      for (let k = 0; k < pieces.pieceCount; k += 1) this.book.use(limited.resource[row]!, pieces.pieceStart[k]!, pieces.pieceEnd[k]!, limited.amount[row]!);
    }
    for (let row = kept.from[activity]!; row < kept.from[activity + 1]!; row += 1) if (t < end) this.book.use(kept.resource[row]!, t, end, kept.amount[row]!);
  }

  /** False when a budget over the whole opening has no room for it. */
  hasRoom(activity: number, opening: number, duration: number): boolean {
    const { fills, limited } = this;
    const { room } = this.book;
    for (let row = limited.from[activity]!, stop = limited.from[activity + 1]!; row < stop; row += 1) {
      const budget = fills[row]![opening]!;
      if (budget >= 0 && room[budget]! < duration * limited.amount[row]!) return false;
    }
    return true;
  }

  /** False when split work that starts in an opening finds no room there, or none for its rest in the next one. */
  hasRoomToSplit(activity: number, opening: number, duration: number, least: number): boolean {
    const { fills, limited } = this;
    const { room } = this.book;
    for (let row = limited.from[activity]!, stop = limited.from[activity + 1]!; row < stop; row += 1) {
      const fill = fills[row]!;
      const budget = fill[opening]!;
      if (budget < 0) continue;
      const amount = limited.amount[row]!;
      const left = room[budget]!;
      if (left < least * amount) return false;
      if (left < duration * amount && !this.hasRoomAfter(activity, opening, fill, duration * amount - left, amount)) return false;
    }
    return true;
  }

  /** Next start that the budgets allow, for the pieces looked at last; `t` or less when they have room. */
  meet(activity: number, t: number, end: number): number {
    if (this.isPlain[activity] === 1 && this.fitsByOpening(activity)) return 0;
    const { kept, limited } = this;
    for (let row = limited.from[activity]!; row < limited.from[activity + 1]!; row += 1) {
      const next = this.book.conflict(activity, limited.resource[row]!, limited.amount[row]!, t, -1);
      if (next > t) return next;
    }
    for (let row = kept.from[activity]!; row < kept.from[activity + 1]!; row += 1) {
      const next = this.book.conflict(activity, kept.resource[row]!, kept.amount[row]!, t, end);
      if (next > t) return next;
    }
    return 0;
  }

  /** What is over after an opening finds room in the next one, or fills that whole and goes on. */
  private hasRoomAfter(activity: number, opening: number, fill: Int32Array, over: number, amount: number): boolean {
    const { count, end: shuts, start: opens } = this.openings[activity]!;
    const next = opening + 1;
    if (next >= count) return false;
    const budget = fill[next]!;
    if (budget < 0) return true;
    const left = this.book.room[budget]!;
    // A piece in the middle fills its opening whole.
    return left >= (shuts[next]! - opens[next]!) * amount || left >= over;
  }

  private bookByOpening(activity: number): void {
    const { fills, limited, pieces } = this;
    const { room } = this.book;
    for (let row = limited.from[activity]!, stop = limited.from[activity + 1]!; row < stop; row += 1) {
      const fill = fills[row]!;
      for (let k = 0; k < pieces.pieceCount; k += 1) {
        const budget = fill[pieces.pieceOpening[k]!]!;
        if (budget >= 0) room[budget]! -= (pieces.pieceEnd[k]! - pieces.pieceStart[k]!) * limited.amount[row]!;
      }
    }
  }

  /** True when each piece finds room in the budget of its opening, and no two pieces share one. */
  private fitsByOpening(activity: number): boolean {
    const { fills, limited, pieces } = this;
    const { room } = this.book;
    for (let row = limited.from[activity]!, stop = limited.from[activity + 1]!; row < stop; row += 1) {
      const fill = fills[row]!;
      for (let k = 0, before = -1; k < pieces.pieceCount; k += 1) {
        const budget = fill[pieces.pieceOpening[k]!]!;
        if (budget < 0) continue;
        if (budget === before || room[budget]! < (pieces.pieceEnd[k]! - pieces.pieceStart[k]!) * limited.amount[row]!) return false;
        before = budget;
      }
    }
    return true;
  }
}

/** Both in order of their starts; budgets that ended before an opening are passed once. */
function fillOf({ budgets }: Model, resource: number, { count, end, start }: Openings): Fill {
  const budget = new Int32Array(count).fill(-1);
  const last = budgets.from[resource + 1]!;
  let isOnly = true;
  let first = budgets.from[resource]!;
  for (let k = 0; k < count; k += 1) {
    while (first < last && budgets.reach[first]! <= start[k]!) first += 1;
    let met = 0;
    for (let b = first; b < last && budgets.start[b]! < end[k]!; b += 1) {
      if (budgets.end[b]! <= start[k]!) continue;
      met += 1;
      if (budget[k] === -1 && budgets.start[b]! <= start[k]! && budgets.end[b]! >= end[k]!) budget[k] = b;
    }
    if (met > (budget[k] === -1 ? 0 : 1)) isOnly = false;
  }
  return { budget, isOnly };
}

/** One for each row; those with the same openings share theirs. @param rows rows whose resource has budgets, worked minutes only */
function listFills(model: Model, rows: ReplayRows, openings: readonly Openings[]): readonly Fill[] {
  const known = new Map<Openings, Map<number, Fill>>();
  const fills: Fill[] = [];
  for (let i = 0; i < model.count; i += 1) {
    const ofOpening = known.get(openings[i]!) ?? new Map<number, Fill>();
    known.set(openings[i]!, ofOpening);
    for (let row = rows.from[i]!; row < rows.from[i + 1]!; row += 1) {
      const resource = rows.resource[row]!;
      const made = ofOpening.get(resource) ?? fillOf(model, resource, openings[i]!);
      ofOpening.set(resource, made);
      fills.push(made);
    }
  }
  return fills;
}
