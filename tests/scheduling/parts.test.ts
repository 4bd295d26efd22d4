/** The engine's parts against answers found minute by minute or worked out by hand. */
import { describe, expect, it } from 'vitest';
import { CalendarIndex, FAR } from '@/lib/scheduling/calendar-index';
import { listByKey, Sorter } from '@/lib/scheduling/list-order';
import type { Order } from '@/lib/scheduling/order';
import type { Interval } from '@/lib/scheduling';
import { Profile } from '@/lib/scheduling/profile';
import { Random } from '@/lib/scheduling/random';
import { Dice } from '../bench/series';

function makeIntervals(dice: Dice, most: number, longest: number): Interval[] {
  let at = dice.whole(0, longest);
  return Array.from({ length: dice.whole(0, most) }, () => {
    const start = at;
    at = start + dice.whole(1, longest);
    const interval = { start, end: at };
    at += dice.is(0.3) ? 0 : dice.whole(1, longest);
    return interval;
  });
}

const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k + 1);

describe('the units free of a resource', () => {
  it.each(seeds(12))('are those counted minute by minute, whatever is taken and given back: seed %i', (seed) => {
    const dice = new Dice(seed);
    const horizon = 120;
    const calendar = dice.is(0.5) ? makeIntervals(dice, 8, 14) : null;
    const profile = new Profile(3, calendar === null ? undefined : new CalendarIndex(calendar));
    const isOpen = Array.from({ length: horizon }, (_, t) => calendar === null || calendar.some(({ end, start }) => start <= t && t < end));
    let free: readonly number[] = isOpen.map((is) => (is ? 3 : 0));
    const endOfConflict = (from: number, to: number, amount: number): number => {
      let last = to - 1;
      while (last >= from && free[last]! >= amount) last -= 1;
      if (last < from) return 0;
      while (last < horizon && free[last]! < amount) last += 1;
      return last < horizon ? last : calendar === null ? horizon : FAR;
    };
    const taken: (readonly [number, number, number])[] = [];
    for (let step = 0; step < 70; step += 1) {
      const back = taken.length > 3 && dice.is(0.4) ? taken.splice(dice.whole(0, taken.length - 1), 1)[0]! : null;
      const from = dice.whole(0, horizon - 20);
      const own = back ?? ([from, from + dice.whole(0, 19), dice.whole(0, 2)] as const);
      const amount = back === null ? own[2] : -own[2];
      if (back === null) taken.push(own);
      profile.take(own[0], own[1], amount);
      free = free.map((units, t) => (own[0] <= t && t < own[1] ? units - amount : units));
      for (let question = 0; question < 6; question += 1) {
        const first = dice.whole(0, horizon - 1);
        const last = Math.min(horizon, first + dice.whole(0, 30));
        const units = dice.whole(-1, 4);
        const expected = endOfConflict(first, last, units);
        // After the last minute looked at, an open resource is as free as it ever was.
        expect([first, last, units, profile.conflictEnd(first, last, units)]).toEqual([first, last, units, calendar === null && expected === horizon && units > 3 ? FAR : expected]);
      }
    }
    profile.clear();
    expect(seeds(horizon - 1).map((t) => profile.conflictEnd(t, t + 1, 3) === 0)).toEqual(isOpen.slice(1));
  });

  it('join again where nothing differs, so that a year of work leaves few steps', () => {
    const profile = new Profile(2, undefined);
    for (let k = 0; k < 500; k += 1) profile.take(10 * k, 10 * k + 10, 1);
    expect(profile.conflictEnd(0, 5000, 2)).toBe(5000);
    for (let k = 499; k >= 0; k -= 1) profile.take(10 * k, 10 * k + 10, -1);
    expect(profile.conflictEnd(0, 5000, 2)).toBe(0);
    for (let k = 0; k < 400; k += 1) profile.take(20 * k, 20 * k + 10, 1);
    expect([profile.conflictEnd(0, 8000, 2), profile.conflictEnd(10, 20, 2), profile.conflictEnd(5, 20, 2), profile.conflictEnd(7000, 7991, 2)]).toEqual([7990, 0, 10, 7990]);
  });
});

describe('a calendar', () => {
  it.each(seeds(10))('says what a count of its minutes says: seed %i', (seed) => {
    const dice = new Dice(100 + seed);
    const intervals = makeIntervals(dice, 10, dice.pick([5, 40, 900]));
    const calendar = new CalendarIndex(intervals);
    const end = (intervals.at(-1)?.end ?? 0) + 3;
    const isOpen = Uint8Array.from({ length: end }, (_, t) => Number(intervals.some((interval) => interval.start <= t && t < interval.end)));
    const worked = new Int32Array(end + 1);
    isOpen.forEach((is, t) => {
      worked[t + 1] = worked[t]! + is;
    });
    const at = (t: number) => [
      calendar.firstEndingAfter(t), calendar.lastStartingBy(t), calendar.workedBefore(t),
    ];
    const count = (isWanted: (interval: Interval) => boolean) => intervals.filter(isWanted).length;
    const borders = intervals.flatMap((interval) => [interval.start - 1, interval.start, interval.end - 1, interval.end]);
    for (const t of [-1, 0, 1439, 1440, 1441, 2879, 2880, ...borders, ...seeds(20).map(() => dice.whole(0, end))]) {
      expect([t, ...at(t)]).toEqual([t, count((interval) => interval.end <= Math.max(t, -1)), count(({ start }) => start <= t) - 1, worked[Math.max(0, Math.min(t, end))]]);
    }
    const total = worked[end]!;
    for (const work of [0, 1, total - 1, total, total + 1, ...seeds(20).map(() => dice.whole(0, total))]) {
      const earliest = work <= 0 ? 0 : work > total ? FAR : worked.findIndex((minutes) => minutes >= work);
      const latest = work < 0 ? null : work >= total ? FAR : worked.findLastIndex((minutes, t) => minutes <= work && isOpen[t] === 1);
      expect([work, calendar.timeAtWork(work), work < 0 ? null : calendar.lastTimeAtWork(work)]).toEqual([work, earliest, latest]);
    }
    expect([calendar.total, calendar.count]).toEqual([total, intervals.length]);
  });
});

/** Activities that follow lower numbers only, a few of them. */
function makeOrder(dice: Dice, count: number): Order {
  const before = Array.from({ length: count }, (_, i) => Int32Array.from(seeds(i).map((k) => k - 1).filter(() => dice.is(0.15))));
  const after = before.map((_, i) => Int32Array.from(seeds(count).map((k) => k - 1).filter((k) => before[k]!.includes(i))));
  return { before, after, isOrder: new Uint8Array(0), backArcs: [], blockOf: new Int32Array(count), blockCount: 1, blocksBefore: [], hasBlocks: false };
}

/** The least key of those that may come next, again and again. */
function pickOneByOne(order: Order, keys: ArrayLike<number>): number[] {
  const left = new Set(order.before.keys());
  const list: number[] = [];
  while (left.size > 0) {
    const next = [...left].filter((i) => order.before[i]!.every((first) => !left.has(first))).toSorted((a, b) => keys[a]! - keys[b]! || a - b)[0]!;
    left.delete(next);
    list.push(next);
  }
  return list;
}

describe('a list by keys', () => {
  it.each(seeds(8))('takes the least key of those whose turn it is: seed %i', (seed) => {
    const dice = new Dice(200 + seed);
    const order = makeOrder(dice, dice.whole(1, 30));
    const sorter = new Sorter(order);
    const list = new Int32Array(order.before.length);
    for (let round = 0; round < 4; round += 1) {
      const keys = Float64Array.from(order.before, () => dice.whole(-9, 9));
      expect([...listByKey(order, keys)]).toEqual(pickOneByOne(order, keys));
      sorter.sort(keys, list);
      // Where a key stands against the order, the sorter does the same.
      const isFollowed = order.before.every((own, i) => [...own].every((first) => keys[first]! < keys[i]!));
      if (!isFollowed) expect(list.every((i, k) => order.before[i]!.every((first) => list.indexOf(first) < k))).toBe(true);
      const starts = Float64Array.from(order.before, (_, i) => 3 * i + dice.whole(0, 2));
      sorter.sort(starts, list);
      expect([...list]).toEqual([...order.before.keys()]);
    }
  });

  it('sorts alike keys in an order that holds, and goes by the order alone where a key stands against it', () => {
    const order: Order = { ...makeOrder(new Dice(1), 0), before: [[1], [], [0]].map((own) => Int32Array.from(own)), after: [[2], [0], []].map((own) => Int32Array.from(own)) };
    const list = new Int32Array(3);
    const sorter = new Sorter(order);
    const sorted = (...keys: readonly number[]) => {
      sorter.sort(Float64Array.from(keys), list);
      return [...list];
    };
    expect([sorted(0, 0, 0), sorted(5, 1, 9), sorted(1, 5, 9), sorted(9, 1, 5)]).toEqual([[1, 0, 2], [1, 0, 2], [1, 0, 2], [1, 0, 2]]);
    expect(() => listByKey({ ...order, before: [[1], [0], []].map((own) => Int32Array.from(own)) }, [0, 0, 0])).toThrow('in a circle');
  });
});

const numbers = (seed: number) => {
  const random = new Random(seed);
  return [random.next(), random.next(), random.below(1), random.below(10), random.below(1000), random.next()];
};

describe('random numbers', () => {
  it('are the same on any machine', () => {
    expect([0, 1, 2, -1].map(numbers)).toEqual([[1217222361, 2828466610, 0, 2, 943, 963199192], [2783883594, 188669321, 0, 2, 756, 4236571269], [1443269073, 1621205935, 0, 1, 862, 2033928128], [1363101706, 3220494005, 0, 1, 211, 875879166]]);
  });
});
