import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EnergyCheck } from '@/lib/scheduling/proof/energy';
import { Timetable } from '@/lib/scheduling/proof/timetable';
import { BY_DECISION, BY_STORED, Trail } from '@/lib/scheduling/proof/trail';

/** One resource and who may use it when. */
interface Case {
  readonly capacity: number;
  readonly rows: readonly { readonly duration: number; readonly demand: number; readonly least: number; readonly width: number }[];
  /** Bounds raised one after the other: which, and how far into what is left of the range. */
  readonly decisions: readonly { readonly task: number; readonly side: number; readonly part: number }[];
}

const cases: fc.Arbitrary<Case> = fc.record({
  capacity: fc.integer({ min: 2, max: 4 }),
  rows: fc.array(fc.record({ duration: fc.integer({ min: 0, max: 4 }), demand: fc.integer({ min: 0, max: 3 }), least: fc.integer({ min: 0, max: 5 }), width: fc.integer({ min: 0, max: 6 }) }), { minLength: 4, maxLength: 4 }),
  decisions: fc.array(fc.record({ task: fc.nat(3), side: fc.nat(1), part: fc.integer({ min: 1, max: 4 }) }), { maxLength: 4 }),
}).map(({ capacity, rows, decisions }) => ({ capacity, rows: rows.map((row) => ({ ...row, demand: Math.min(row.demand, capacity) })), decisions }));

const columns = ({ rows }: Case) => ({ duration: Int32Array.from(rows, (row) => row.duration), demand: Int32Array.from(rows, (row) => row.demand) });
const makeTrail = ({ rows }: Case): Trail => new Trail(Int32Array.from(rows, (row) => row.least), Int32Array.from(rows, (row) => row.least + row.width));

/** Every choice of starts within the first ranges that never takes more than there is. */
function listPlans({ capacity, rows }: Case): number[][] {
  let plans: number[][] = [[]];
  for (const { least, width } of rows) plans = plans.flatMap((plan) => Array.from({ length: width + 1 }, (_, k) => [...plan, least + k]));
  const last = Math.max(...rows.map((row) => row.least + row.width + row.duration));
  return plans.filter((plan) => {
    for (let t = 0; t < last; t++) if (rows.reduce((use, { demand, duration }, i) => use + (plan[i]! <= t && t < plan[i]! + duration ? demand : 0), 0) > capacity) return false;
    return true;
  });
}

const holds = (plan: readonly number[], b: number, v: number): boolean => (b & 1 ? -plan[b >> 1]! : plan[b >> 1]!) >= v;

const readPairs = (trail: Trail, at: number): [number, number][] => Array.from({ length: trail.stored[at]! }, (_, k) => [trail.stored[at + 1 + 2 * k]!, trail.stored[at + 2 + 2 * k]!]);

/** From now on each reason has to hold as it is given, and to leave no plan that lacks what follows from it. */
function watchReasons(trail: Trail, plans: readonly number[][]): () => void {
  const isBelieved = (pairs: readonly [number, number][]): readonly number[][] => {
    for (const [b, v] of pairs) expect(trail.value[b]).toBeGreaterThanOrEqual(v);
    return plans.filter((plan) => pairs.every(([b, v]) => holds(plan, b, v)));
  };
  const { post } = trail;
  trail.post = (b, v, kind, data) => {
    if (kind === BY_STORED && v > trail.value[b]!) for (const plan of isBelieved(readPairs(trail, data))) expect(holds(plan, b, v)).toBe(true);
    return post.call(trail, b, v, kind, data);
  };
  return () => {
    if (trail.failedBound < 0) expect(isBelieved(readPairs(trail, trail.failedData))).toEqual([]);
  };
}

/** Raises a bound on a level of its own; false when the range has no room for it. */
function decide(trail: Trail, { task, side, part }: Case['decisions'][number]): boolean {
  const b = 2 * task + side;
  const room = -trail.value[b ^ 1]! - trail.value[b]!;
  if (room === 0) return false;
  trail.openLevel();
  return trail.post(b, trail.value[b]! + Math.ceil((room * part) / 4), BY_DECISION, 0);
}

/** Earliest and latest starts that times surely taken by others leave, by looking at each time; null for too much at once. */
function sweepSimply({ capacity, rows }: Case, value: Int32Array): number[] | null {
  const least = rows.map((_, i) => value[2 * i]!);
  const latest = rows.map((_, i) => -value[2 * i + 1]!);
  const isUser = (i: number): boolean => rows[i]!.duration > 0 && rows[i]!.demand > 0;
  const useAt = (t: number, except: number): number =>
    rows.reduce((use, { demand, duration }, j) => use + (j !== except && isUser(j) && latest[j]! <= t && t < least[j]! + duration ? demand : 0), 0);
  const fits = (i: number, s: number): boolean => Array.from({ length: rows[i]!.duration }, (_, k) => useAt(s + k, i)).every((use) => use + rows[i]!.demand <= capacity);
  for (let isChanged = true; isChanged;) {
    isChanged = false;
    for (let i = 0; i < rows.length; i++) {
      if (!isUser(i)) continue;
      const before = [least[i], latest[i]];
      while (least[i]! <= latest[i]! && !fits(i, least[i]!)) least[i] = least[i]! + 1;
      while (least[i]! <= latest[i]! && !fits(i, latest[i]!)) latest[i] = latest[i]! - 1;
      if (least[i]! > latest[i]!) return null;
      if (before[0] !== least[i] || before[1] !== latest[i]) isChanged = true;
    }
  }
  for (let i = 0; i < rows.length; i++) for (let t = latest[i]!; t < least[i]! + rows[i]!.duration; t++) if (isUser(i) && useAt(t, -1) > capacity) return null;
  return rows.flatMap((_, i) => [least[i]!, 0 - latest[i]!]);
}

describe('the time-table of a resource', () => {
  it('moves starts as far as looking at each time does, again after more is decided or taken back, and gives reasons that hold', () => {
    fc.assert(fc.property(cases, (input) => {
      const { duration, demand } = columns(input);
      const trail = makeTrail(input);
      const table = new Timetable(trail, input.capacity, duration, demand);
      const checkFailure = watchReasons(trail, listPlans(input));
      const settle = (from: number): boolean => {
        for (let head = from; ;) {
          for (; head < trail.size; head++) {
            const i = trail.bound[head]! >> 1;
            if (table.tasks.includes(i)) table.touch(i, -trail.value[2 * i + 1]! < trail.value[2 * i]! + duration[i]!);
          }
          if (table.isIdle()) return true;
          if (!table.propagate()) return false;
        }
      };
      const expectSettled = (from: number): boolean => {
        const before = trail.value.slice();
        const isSettled = settle(from);
        const expected = sweepSimply(input, before);
        if (!isSettled) checkFailure();
        expect(isSettled ? Array.from(trail.value, (v) => v + 0) : null).toEqual(expected);
        return isSettled;
      };
      if (!expectSettled(trail.size)) return;
      for (const decision of input.decisions) {
        const size = trail.size;
        if (!decide(trail, decision)) continue;
        if (expectSettled(size) && decision.part > 1) continue;
        trail.backTo(trail.depth - 1);
        table.retreat();
        expect(table.isIdle()).toBe(true);
      }
    }), { numRuns: 250 });
  });

  it('finds too much at once and tells who it is, no more of them than it takes', () => {
    const trail = new Trail(Int32Array.of(2, 0, 3, 3), Int32Array.of(2, 1, 3, 9));
    const table = new Timetable(trail, 4, Int32Array.of(4, 5, 2, 1), Int32Array.of(2, 1, 3, 4));
    expect(table.tasks).toEqual(Int32Array.of(0, 1, 2, 3));
    expect(table.propagate()).toBe(false);
    // At 4 the first needs 2, the second 1, the third 3 of 4: the first and the third alone are too much.
    expect([trail.failedBound, trail.failedKind]).toEqual([-1, BY_STORED]);
    expect(readPairs(trail, trail.failedData)).toEqual([[0, 1], [1, -4], [4, 3], [5, -4]]);
  });
});

/** Activities (duration, demand, earliest, latest start) on a resource. */
const look = (capacity: number, rows: readonly (readonly [number, number, number, number])[]) => {
  const [duration, demand, least, greatest] = [0, 1, 2, 3].map((k) => Int32Array.from(rows, (row) => row[k]!)) as [Int32Array, Int32Array, Int32Array, Int32Array];
  const trail = new Trail(least, greatest);
  return { trail, isFine: new EnergyCheck(trail, Int32Array.from(rows.keys()), capacity, duration, demand).propagate() };
};

describe('windows of a resource', () => {
  it('have no room for more work than they are long', () => {
    // Three of two hours in [0, 5) on one unit: six hours of work; one of the six can be given up.
    const { isFine, trail } = look(1, [[2, 1, 0, 3], [2, 1, 0, 3], [2, 1, 0, 3]]);
    expect([isFine, trail.failedBound, trail.failedKind]).toEqual([false, -1, BY_STORED]);
    expect(readPairs(trail, trail.failedData)).toEqual([[0, 0], [1, -3], [2, 0], [3, -3], [4, 0], [5, -3]]);
    // In [0, 6) it fits, and so it does with two units.
    expect(look(1, [[2, 1, 0, 4], [2, 1, 0, 4], [2, 1, 0, 4]]).isFine).toBe(true);
    expect(look(2, [[2, 1, 0, 3], [2, 1, 0, 3], [2, 1, 0, 3]])).toMatchObject({ isFine: true, trail: { size: 6 } });
  });

  it('leave reasons as weak as the surplus allows', () => {
    // Four of two hours in [0, 5): eight hours where six are too many, so one activity is not needed at all.
    const { trail } = look(1, [[2, 1, 0, 3], [2, 1, 0, 3], [2, 1, 0, 3], [2, 1, 0, 3]]);
    expect(readPairs(trail, trail.failedData)).toEqual([[2, 0], [3, -3], [4, 0], [5, -3], [6, 0], [7, -3]]);
  });

  it('push out what they have no room for, later and, seen from the end, earlier', () => {
    // Two of two hours fill [0, 4): a third of three hours starts at 4.
    const later = look(1, [[2, 1, 0, 2], [2, 1, 0, 2], [3, 1, 0, 9]]);
    expect([later.isFine, later.trail.value[4]]).toEqual([true, 4]);
    expect(readPairs(later.trail, later.trail.data[later.trail.last[4]!]!)).toEqual([[4, -2], [0, 0], [1, -2], [2, 0], [3, -2]]);
    // Two of two hours fill [6, 10): a third of three hours ends at 6.
    const earlier = look(1, [[2, 1, 6, 8], [2, 1, 6, 8], [3, 1, 0, 7]]);
    expect([earlier.isFine, earlier.trail.value[5]]).toEqual([true, -3]);
    expect(readPairs(earlier.trail, earlier.trail.data[earlier.trail.last[5]!]!)).toEqual([[5, -9], [1, -8], [0, 6], [3, -8], [2, 6]]);
    // With an hour to spare in [0, 5) only the start has to wait: until 4, when the last hour is left for it.
    const partly = look(1, [[2, 1, 0, 3], [2, 1, 0, 3], [3, 1, 0, 9]]);
    expect(partly.trail.value[4]).toBe(4);
  });

  it('give reasons that hold, and rule out no plan', () => {
    fc.assert(fc.property(cases, (input) => {
      const { duration, demand } = columns(input);
      const trail = makeTrail(input);
      const users = Int32Array.from(input.rows.keys()).filter((i) => duration[i]! > 0 && demand[i]! > 0);
      const energy = new EnergyCheck(trail, users, input.capacity, duration, demand);
      const checkFailure = watchReasons(trail, listPlans(input));
      for (const decision of [null, ...input.decisions]) {
        if (decision && !decide(trail, decision)) continue;
        trail.failedBound = 0;
        if (energy.propagate()) continue;
        checkFailure();
        return;
      }
    }), { numRuns: 250 });
  });
});
