/** Places in the story, each met once: how far every thread is told, which evergreens are used, how many episodes that took. */
import type { LeastRest } from './parallel-packing-bound';

export interface Places {
  /** The number of the place with these `columns` values, starting at `at`; a new one when it is met for the first time. */
  readonly find: (values: Int32Array, at: number) => number;
  /** Copies the values of a place to the start of `into`. */
  readonly read: (place: number, into: Int32Array) => void;
  /** The least that the rest of the story can cost from there. */
  readonly restOf: (place: number) => number;
}

const FIRST_ROOM = 1024;
/** The table is at most half full. */
const SLACK = 2;

/** An open table of rows. */
export function makePlaces(columns: number, leastRest: LeastRest): Places {
  let room = FIRST_ROOM;
  let count = 0;
  let rows = new Int32Array(room * columns);
  let rests = new Float64Array(room);
  let table = new Int32Array(room * SLACK).fill(-1);

  const slotOf = (values: Int32Array, at: number): number => {
    let hash = 0;
    for (let column = 0; column < columns; column += 1) {
      hash = Math.imul(hash ^ values[at + column]!, 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    const mask = table.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const place = table[slot]!;
      if (place < 0) return slot;
      let column = 0;
      while (column < columns && rows[place * columns + column] === values[at + column]) column += 1;
      if (column === columns) return slot;
    }
  };

  const grow = (): void => {
    room *= 2;
    const [oldRows, oldRests] = [rows, rests];
    rows = new Int32Array(room * columns);
    rows.set(oldRows);
    rests = new Float64Array(room);
    rests.set(oldRests);
    table = new Int32Array(room * SLACK).fill(-1);
    for (let place = 0; place < count; place += 1) table[slotOf(rows, place * columns)] = place;
  };

  return {
    find: (values, at) => {
      let slot = slotOf(values, at);
      const known = table[slot]!;
      if (known >= 0) return known;
      if (count === room) {
        grow();
        slot = slotOf(values, at);
      }
      for (let column = 0; column < columns; column += 1) rows[count * columns + column] = values[at + column]!;
      rests[count] = leastRest(values, at);
      table[slot] = count;
      count += 1;
      return count - 1;
    },
    read: (place, into) => {
      for (let column = 0; column < columns; column += 1) into[column] = rows[place * columns + column]!;
    },
    restOf: (place) => rests[place]!,
  };
}
