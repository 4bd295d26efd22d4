import type { Model } from './model';

/** Worked pieces of the activity looked at last. */
interface Pieces {
  readonly pieceStart: Int32Array;
  readonly pieceEnd: Int32Array;
  readonly pieceCount: number;
}

/** What is used of each budget so far. */
export class BudgetBook {
  /** Index in `problem.budgets` of the last one that had no room. */
  met = -1;
  /** Unit-minutes left of each budget of the model. */
  readonly room: Int32Array;

  constructor(private readonly model: Model, private readonly pieces: Pieces) {
    this.room = Int32Array.from(model.budgets.limit);
  }

  clear(): void {
    this.room.set(this.model.budgets.limit);
  }

  /** Counts units used over [from, to); a negative amount gives them back. */
  use(resource: number, from: number, to: number, amount: number): void {
    const { budgets } = this.model;
    for (let b = this.lastBefore(resource, to); b >= budgets.from[resource]! && budgets.reach[b]! > from; b -= 1) {
      const shared = Math.min(to, budgets.end[b]!) - Math.max(from, budgets.start[b]!);
      if (shared > 0) this.room[b]! -= shared * amount;
    }
  }

  /** Next start that keeps the budgets of the resource, or 0. `through` >= 0: held from `t` to `through`. */
  conflict(resource: number, amount: number, t: number, through: number): number {
    const { budgets } = this.model;
    const first = budgets.from[resource]!;
    if (first === budgets.from[resource + 1]!) return 0;
    const end = through >= 0 ? through : this.pieces.pieceEnd[this.pieces.pieceCount - 1]!;
    for (let b = this.lastBefore(resource, end); b >= first && budgets.reach[b]! > t; b -= 1) {
      const asked = this.overlap(budgets.start[b]!, budgets.end[b]!, t, through);
      const room = this.room[b]!;
      if (asked === 0 || asked * amount <= room) continue;
      this.met = budgets.source[b]!;
      return this.leave(b, Math.max(0, Math.floor(room / amount)), t);
    }
    return 0;
  }

  /**
   * Earliest later start that could leave at most `room` minutes inside the budget. Never skips a start that fits: a later
   * start ends later, so that work ahead of the budget only grows into it, and within it goes on to its end.
   */
  private leave(budget: number, room: number, t: number): number {
    return Math.max(t + 1, this.model.budgets.end[budget]! - room);
  }

  private lastBefore(resource: number, end: number): number {
    const { budgets } = this.model;
    let low = budgets.from[resource]!;
    let high = budgets.from[resource + 1]!;
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
