import { EnergyCheck } from '@/lib/scheduling/proof/energy';
import type { Engine } from '@/lib/scheduling/proof/engine';
import { Timetable } from '@/lib/scheduling/proof/timetable';

/** A running hash of whole numbers (FNV-1a by words). */
export class Hash {
  private state = 0x811c9dc5;

  add(...numbers: readonly number[]): this {
    for (const x of numbers) this.state = Math.imul(this.state ^ x, 0x01000193) ^ (this.state >>> 15);
    return this;
  }

  /** Adds the items that are not 0, each with its place: room behind them does not count. */
  addRow(row: ArrayLike<number>): this {
    for (let k = 0; k < row.length; k++) if (row[k] !== 0) this.add(k, row[k]!);
    return this;
  }

  toString(): string {
    return (this.state >>> 0).toString(16);
  }
}

export const hashOf = (row: ArrayLike<number>): string => String(new Hash().addRow(row));

export interface Path {
  /** Every bound raised or failed: which, to what, by what kind of reason, at which depth. */
  readonly moves: string;
  readonly decisions: number;
  readonly decided: string;
  /** Reasons kept by resources and orders. */
  readonly reasons: string;
  readonly clauses: number;
  readonly learnt: string;
  /** Literals of learnt clauses, all together. */
  readonly literals: number;
  /** What it cost: calls of the parts. */
  readonly calls: string;
}

/** Writes down what an engine does while it runs, and what its parts are asked. */
export function traceEngine(engine: Engine, run: () => void): Path {
  const { atoms, clauses, trail } = engine;
  const [moves, decided, reasons, learnt] = [new Hash(), new Hash(), new Hash(), new Hash()];
  const calls = { sweeps: 0, windows: 0, clause: 0, entries: 0, atoms: 0, bumps: 0, next: 0 };
  const counts = { decisions: 0, clauses: 0, literals: 0 };
  let isOpened = false;
  const { post, openLevel, store, entryOf } = trail;
  trail.post = (b, v, kind, data) => {
    const size = trail.size;
    const isPosted = post.call(trail, b, v, kind, data);
    if (trail.size > size || !isPosted) moves.add(b, v, kind, trail.depth, isPosted ? 1 : 0);
    if (isOpened) decided.add(b, v);
    isOpened = false;
    return isPosted;
  };
  trail.openLevel = () => {
    counts.decisions++;
    isOpened = true;
    openLevel.call(trail);
  };
  trail.store = (pairs, count) => {
    reasons.add(count, ...pairs.subarray(0, 2 * count));
    return store.call(trail, pairs, count);
  };
  trail.entryOf = (b, v) => {
    calls.entries++;
    return entryOf.call(trail, b, v);
  };
  const { add, bump, propagate } = clauses;
  clauses.add = (pairs, literals, spread) => {
    counts.clauses++;
    counts.literals += literals;
    learnt.add(literals, spread, ...pairs.subarray(0, 2 * literals));
    return add.call(clauses, pairs, literals, spread);
  };
  clauses.bump = (c) => {
    calls.bumps++;
    bump.call(clauses, c);
  };
  clauses.propagate = (p, before, now) => {
    calls.clause++;
    return propagate.call(clauses, p, before, now);
  };
  const { bump: bumpAtom, next } = atoms;
  atoms.bump = (b, v) => {
    calls.atoms++;
    bumpAtom.call(atoms, b, v);
  };
  atoms.next = () => {
    calls.next++;
    return next.call(atoms);
  };
  countTables(calls, run);
  return { ...counts, moves: String(moves), decided: String(decided), reasons: String(reasons), learnt: String(learnt), calls: Object.values(calls).join(' ') };
}

function countTables(calls: { sweeps: number; windows: number }, run: () => void): void {
  const { propagate: sweep } = Timetable.prototype;
  const { propagate: look } = EnergyCheck.prototype;
  Timetable.prototype.propagate = function propagate() {
    calls.sweeps++;
    return sweep.call(this);
  };
  EnergyCheck.prototype.propagate = function propagate() {
    calls.windows++;
    return look.call(this);
  };
  try {
    run();
  } finally {
    Timetable.prototype.propagate = sweep;
    EnergyCheck.prototype.propagate = look;
  }
}
