import { describe, expect, it } from 'vitest';
import { followRelation, type CoreInstance } from '@/lib/scheduling/proof';
import { orderForward } from '@/lib/scheduling/proof/forward';
import { Serial } from '@/lib/scheduling/proof/serial';
import { drawFrom, makePrecedence, makeSessions } from './made-instances';

/** One word of resources, several, long times, sessions with waits that change. */
const kinds: readonly (readonly [string, (seed: number) => CoreInstance])[] = [
  ['one word of resources', (seed) => makePrecedence({ activities: 9, resources: 2, capacity: 5 }, seed)],
  ['several words of resources', (seed) => makePrecedence({ activities: 9, resources: 4, capacity: 400 }, seed)],
  ['long times', (seed) => makePrecedence({ activities: 6, resources: 1, capacity: 3, longest: 90 }, seed)],
  ['lags shorter than the work', (seed) => {
    const made = makePrecedence({ activities: 9, resources: 2, capacity: 5 }, seed);
    return { ...made, relations: made.relations.map(({ from, to }, k) => ({ from, to, lag: Math.min(k % 4, made.durations[from]!) })) };
  }],
  ['sessions', (seed) => makeSessions(makePrecedence({ activities: 8, resources: 2, capacity: 5 }, seed), seed, 12)],
  ['sessions and several words', (seed) => makeSessions(makePrecedence({ activities: 7, resources: 3, capacity: 3000 }, seed), seed, 12)],
];

/** A random list in which relations lead forwards. */
function drawList({ durations, relations }: CoreInstance, draw: (least: number, most: number) => number): Int32Array {
  const list: number[] = [];
  while (list.length < durations.length) {
    const open = durations.map((_, i) => i).filter((i) => !list.includes(i) && relations.every(({ from, to }) => to !== i || list.includes(from)));
    list.push(open[draw(0, open.length - 1)]!);
  }
  return Int32Array.from(list);
}

/** True when i may stand at t beside those that have a place. */
function fits({ allowedStarts, capacities, demands, durations, horizon }: CoreInstance, starts: ReadonlyMap<number, number>, i: number, t: number): boolean {
  if (t < 0 || t + durations[i]! > horizon) return false;
  const ranges = allowedStarts?.[i];
  if (ranges && !ranges.some(({ first, last }) => first <= t && t <= last)) return false;
  for (let at = t; at < t + durations[i]!; at++) {
    for (const [k, capacity] of capacities.entries()) {
      let use = demands[i]![k]!;
      for (const [j, s] of starts) if (s <= at && at < s + durations[j]!) use += demands[j]![k]!;
      if (use > capacity) return false;
    }
  }
  return true;
}

/** Each activity of the list at the first time it fits; null when one has no place. */
function placeFirst(instance: CoreInstance, list: Int32Array): Map<number, number> | null {
  const starts = new Map<number, number>();
  for (const i of list) {
    let t = Math.max(0, ...instance.relations.filter(({ to }) => to === i).map((relation) => followRelation(relation, starts.get(relation.from)!)));
    while (t <= instance.horizon && !fits(instance, starts, i, t)) t++;
    if (t > instance.horizon) return null;
    starts.set(i, t);
  }
  return starts;
}

/** Each activity, from the end of the list on, at the last time it fits before `end`; null when one has no place. */
function placeLast(instance: CoreInstance, list: Int32Array, end: number): Map<number, number> | null {
  const starts = new Map<number, number>();
  for (const i of list.toReversed()) {
    let t = end - instance.durations[i]!;
    while (t >= 0 && (!fits(instance, starts, i, t) || instance.relations.some((relation) => relation.from === i && followRelation(relation, t) > starts.get(relation.to)!))) t--;
    if (t < 0) return null;
    starts.set(i, t);
  }
  return starts;
}

const toRow = (starts: ReadonlyMap<number, number> | null) => starts && Array.from({ length: starts.size }, (_, i) => starts.get(i));
const endOf = ({ durations }: CoreInstance, starts: ReadonlyMap<number, number>): number => Math.max(...[...starts].map(([i, s]) => s + durations[i]!));

describe('a list scheduled', () => {
  it.each(kinds)('puts everything at the first time that fits from the front, and at the last from the back, with %s', (_, make) => {
    const draw = drawFrom(3);
    for (let seed = 1; seed <= 14; seed++) {
      const instance = make(seed);
      const order = orderForward(instance)!;
      const serial = new Serial(instance, order);
      for (let turn = 0; turn < 4; turn++) {
        const list = drawList(instance, draw);
        const expected = placeFirst(instance, list);
        const length = serial.forward(list);
        expect(length).toBe(expected ? endOf(instance, expected) : -1);
        if (!expected) continue;
        expect(Array.from(serial.start)).toEqual(toRow(expected));
        expect([serial.forward(list, length), serial.forward(list, length - 1)]).toEqual([length, -1]);
        for (const end of [length, Math.min(instance.horizon, length + 5), length - 3]) {
          const back = placeLast(instance, list, end);
          expect(serial.backward(list, end)).toBe(back !== null);
          if (back) expect(Array.from(serial.start)).toEqual(toRow(back));
        }
      }
    }
  });

  it.each(kinds)('is sorted by starts or ends, ties as relations lead, with %s', (_, make) => {
    const draw = drawFrom(9);
    for (let seed = 1; seed <= 8; seed++) {
      const instance = make(seed);
      const { durations, relations } = instance;
      const order = orderForward(instance)!;
      const serial = new Serial(instance, order);
      const isEndToStart = relations.every((relation) => 'lag' in relation && relation.lag >= durations[relation.from]!);
      expect(serial.isTurnable).toBe(isEndToStart && !instance.allowedStarts);
      if (serial.forward(drawList(instance, draw)) < 0) continue;
      const rank = Array.from(durations, (_duration, i) => order.indexOf(i));
      const byKey = (key: (i: number) => number) => Array.from(order).toSorted((a, b) => key(a) - key(b) || rank[a]! - rank[b]!);
      const list = new Int32Array(durations.length);
      serial.sortByStart(list);
      expect(Array.from(list)).toEqual(byKey((i) => serial.start[i]!));
      serial.sortByEnd(list);
      expect(Array.from(list)).toEqual(byKey((i) => serial.start[i]! + (isEndToStart ? durations[i]! : 0)));
    }
  });

  it('counts its passes, and stops as soon as what follows cannot end in time', () => {
    const instance: CoreInstance = { durations: [3, 4, 5], capacities: [1], demands: [[1], [1], [0]], relations: [{ from: 1, to: 2, lag: 4 }], horizon: 20 };
    const serial = new Serial(instance, Int32Array.of(0, 1, 2));
    expect(serial.forward(Int32Array.of(0, 1, 2), 11)).toBe(-1);
    // The second was to start at 3, and nine hours follow from there: it was not placed any more.
    expect(Array.from(serial.start)).toEqual([0, 0, 0]);
    expect(serial.forward(Int32Array.of(0, 1, 2), 12)).toBe(12);
    expect(serial.forward(Int32Array.of(0, 1, 2), 99)).toBe(12);
    expect(serial.passes).toBe(3);
    expect(serial.backward(Int32Array.of(0, 1, 2), 12)).toBe(true);
    expect([serial.passes, ...serial.start]).toEqual([4, 9, 3, 7]);
  });

  it('fits to the last unit and up to the horizon, not beyond', () => {
    const pair: CoreInstance = { durations: [2, 2], capacities: [3], demands: [[2], [2]], relations: [], horizon: 4 };
    const list = Int32Array.of(0, 1);
    expect(new Serial(pair, list).forward(list)).toBe(4);
    expect(new Serial({ ...pair, horizon: 3 }, list).forward(list)).toBe(-1);
    expect(new Serial({ ...pair, horizon: 3, demands: [[2], [1]] }, list).forward(list)).toBe(2);
  });
});
