/** States of air and surfaces in a replay: who has them, how long they last, and when another may begin. */
import type { Model } from './model';
import { MediumBoard } from './replay-board';
import { PER_MILLE, stretch, type WaitTable } from './replay-tables';

export class ReplayStates {
  private readonly states: Model['states'];
  /** State rows of each activity where somebody has the medium in another state: `from[i]` to `from[i + 1]`. */
  private readonly rows: Int32Array;
  private readonly from: Int32Array;
  private readonly board: MediumBoard;
  /** Tables of the moments that states last to, by row; and how many thousandths of what they say count for each activity. */
  private readonly until: readonly (WaitTable | null)[];
  private readonly perMille: Int32Array;

  constructor(model: Model, makeTable: (step: number, ready: Int32Array) => WaitTable) {
    this.states = model.states;
    const rows = listContested(model);
    this.rows = Int32Array.from(rows.flatMap((own) => [...own]));
    this.from = new Int32Array(model.count + 1);
    rows.forEach((own, i) => {
      this.from[i + 1] = this.from[i]! + own.length;
    });
    this.board = new MediumBoard(model.states.mediumCount);
    this.until = model.states.until.map((table) => (table === null ? null : makeTable(table.step, table.ready)));
    this.perMille = new Int32Array(model.count).fill(PER_MILLE);
  }

  /** Nobody has any. */
  clear(): void {
    this.board.clear();
  }

  /** What an activity leaves behind lasts so many thousandths of what the problem says. */
  stretch(activity: number, perMille: number): void {
    this.perMille[activity] = perMille;
  }

  /** All as the problem has them. */
  reset(): void {
    this.perMille.fill(PER_MILLE);
  }

  /** The activity works in [t, end). */
  occupy(activity: number, t: number, end: number): void {
    const { board, from, rows, states } = this;
    for (let k = from[activity]!, stop = from[activity + 1]!; k < stop; k += 1) {
      const row = rows[k]!;
      const lastsTo = this.endOf(activity, row, end);
      if (lastsTo > t) board.add(states.medium[row]!, t, lastsTo, states.state[row]!);
    }
  }

  /** 0 when nobody has a medium in another state while the activity does, from `t`; else a later start worth trying. */
  meet(activity: number, t: number, end: number): number {
    const { board, from, rows, states } = this;
    for (let k = from[activity]!, stop = from[activity + 1]!; k < stop; k += 1) {
      const row = rows[k]!;
      const medium = states.medium[row]!;
      const state = states.state[row]!;
      if (board.isFreeFrom(medium, t, state)) continue;
      const next = board.meet(medium, t, this.endOf(activity, row, end), state);
      if (next > t) return next;
    }
    return 0;
  }

  /** Moment that a state of an activity lasts to, its tail and table included, when the activity ends at `end`. */
  private endOf(activity: number, row: number, end: number): number {
    const perMille = this.perMille[activity]!;
    const plain = end + stretch(this.states.tail[row]!, perMille);
    const table = this.until[row]!;
    if (table === null) return plain;
    const ready = table.read(end, perMille);
    return ready > plain ? ready : plain;
  }
}

/** State rows of each activity whose medium somebody has in another state. */
function listContested({ count, states }: Model): readonly Int32Array[] {
  const known = new Map<number, Set<number>>();
  states.medium.forEach((medium, row) => {
    known.set(medium, (known.get(medium) ?? new Set()).add(states.state[row]!));
  });
  return Array.from({ length: count }, (_, i) => Int32Array.from({ length: states.from[i + 1]! - states.from[i]! }, (_unused, k) => states.from[i]! + k)
    .filter((row) => known.get(states.medium[row]!)!.size > 1));
}
