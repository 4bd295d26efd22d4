/** Tables of waits for a replay, close together in memory: only what lies in openings is read again and again. */
import type { Openings } from './replay-rows';

/** Entries a block; a power of two. */
const BLOCK_BITS = 3;
const BLOCK = 1 << BLOCK_BITS;
const REST = BLOCK - 1;
/** Stands for "look it up in the whole table". */
const ELSEWHERE = 0xffff;
export const PER_MILLE = 1000;

/** So many thousandths of some minutes, to the nearest minute. */
export const stretch = (minutes: number, perMille: number): number => (perMille === PER_MILLE ? minutes : Math.round((minutes * perMille) / PER_MILLE));

/** A step table of {@link LagLength} with the entries that openings touch laid together: the same answers from a fraction of the memory. */
export class WaitTable {
  private readonly waits: Uint16Array;

  /** @param slots see {@link markSlots}, for the same step */
  constructor(private readonly step: number, private readonly ready: Int32Array, private readonly slots: Int32Array) {
    const used = slots.reduce((most, slot) => Math.max(most, slot), -1) + 1;
    this.waits = new Uint16Array(used << BLOCK_BITS).fill(ELSEWHERE);
    for (let block = 0; block < slots.length; block += 1) {
      const slot = slots[block]!;
      if (slot < 0) continue;
      const last = Math.min(BLOCK, ready.length - (block << BLOCK_BITS));
      for (let rest = 0; rest < last; rest += 1) {
        const k = (block << BLOCK_BITS) | rest;
        this.waits[(slot << BLOCK_BITS) | rest] = Math.min(ELSEWHERE, ready[k]! - k * step);
      }
    }
  }

  /** Ready moment of an event at `t`, the wait `perMille` thousandths of the table's; -1: past the end of the table. */
  read(t: number, perMille: number): number {
    const { ready, slots, step, waits } = this;
    const k = Math.ceil(t / step);
    const block = k >> BLOCK_BITS;
    const slot = block < slots.length ? slots[block]! : -1;
    let wait = slot < 0 ? ELSEWHERE : waits[(slot << BLOCK_BITS) | (k & REST)]!;
    if (wait === ELSEWHERE) {
      if (k >= ready.length) return -1;
      wait = ready[k]! - k * step;
    }
    return k * step + stretch(wait, perMille);
  }
}

/** Place of each block of a table of this step among those that some opening touches; -1: none does. */
function markSlots(step: number, horizon: number, openings: Iterable<Openings>): Int32Array {
  const slots = new Int32Array((Math.ceil(horizon / step) >> BLOCK_BITS) + 1).fill(-1);
  for (const { count, end, start } of openings) {
    for (let k = 0; k < count; k += 1) {
      const last = Math.min(slots.length - 1, Math.ceil(end[k]! / step) >> BLOCK_BITS);
      for (let block = Math.ceil(start[k]! / step) >> BLOCK_BITS; block <= last; block += 1) slots[block] = 0;
    }
  }
  let used = 0;
  for (let block = 0; block < slots.length; block += 1) {
    if (slots[block] !== 0) continue;
    slots[block] = used;
    used += 1;
  }
  return slots;
}

/** Makes each table once. @param openings those of the activities whose ends the tables are asked for */
export function tableMaker(horizon: number, openings: Iterable<Openings>): (step: number, ready: Int32Array) => WaitTable {
  const slots = new Map<number, Int32Array>();
  const made = new Map<Int32Array, WaitTable>();
  return (step, ready) => {
    const own = slots.get(step) ?? markSlots(step, horizon, openings);
    slots.set(step, own);
    const table = made.get(ready) ?? new WaitTable(step, ready, own);
    made.set(ready, table);
    return table;
  };
}
