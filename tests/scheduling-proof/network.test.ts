import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CoreInstance } from '@/lib/scheduling/proof';
import { closeRelations, listRivals } from '@/lib/scheduling/proof/closure';
import { packFields } from '@/lib/scheduling/proof/fields';
import { listArcs, listCurves, measureRest } from '@/lib/scheduling/proof/arcs';
import { orderForward } from '@/lib/scheduling/proof/forward';
import { buildNetwork, followEdge, listOpenPairs, sourceNeeded } from '@/lib/scheduling/proof/network';
import { Random } from '@/lib/scheduling/proof/random';
import { listPlans } from './brute-force';
import { withCurves, withMaximumLags } from './small-instances';

const APART = -(2 ** 28);
const alone = (durations: readonly number[], more: Partial<CoreInstance> = {}): CoreInstance =>
  ({ durations, capacities: [1], demands: durations.map(() => [1]), relations: [], horizon: 20, ...more });

const closeRows = (instance: CoreInstance) => {
  const closure = closeRelations(instance)!;
  return { cycleAt: closure.cycleAt, distance: Array.from({ length: closure.n }, (_, i) => Array.from(closure.distance.subarray(i * closure.n, (i + 1) * closure.n))) };
};

describe('the longest paths', () => {
  it('add up lags, the longer of two that lead the same way', () => {
    const relations = [{ from: 0, to: 1, lag: 2 }, { from: 0, to: 1, lag: 1 }, { from: 1, to: 2, lag: 4 }, { from: 0, to: 2, lag: 5 }, { from: 2, to: 0, lag: -9 }];
    expect(closeRows(alone([0, 0, 0], { relations }))).toEqual({ cycleAt: -1, distance: [[0, 2, 6], [-5, 0, 4], [-9, -7, 0]] });
  });

  it('know of no path where none leads, and leave curves alone', () => {
    expect(closeRows(alone([0, 0], { relations: [{ from: 0, to: 1, pieces: [{ from: 0, value: 5, slope: 1 }] }] }))).toEqual({ cycleAt: -1, distance: [[0, APART], [APART, 0]] });
  });

  it('name who would start after itself', () => {
    expect(closeRows(alone([0, 0, 0], { relations: [{ from: 1, to: 2, lag: 4 }, { from: 2, to: 1, lag: -3 }] })).cycleAt).toBe(1);
    expect(closeRows(alone([0, 0, 0], { relations: [{ from: 1, to: 2, lag: 4 }, { from: 2, to: 1, lag: -4 }] })).cycleAt).toBe(-1);
    expect(closeRows(alone([1], { relations: [{ from: 0, to: 0, lag: 1 }] })).cycleAt).toBe(0);
  });

  it('order two that cannot be together once one of them cannot be first', () => {
    // The second may begin two hours before the first, but needs three of the only unit: it goes second.
    expect(closeRows(alone([2, 3], { relations: [{ from: 0, to: 1, lag: -2 }] })).distance).toEqual([[0, 2], [APART, 0]]);
    expect(closeRows(alone([2, 3], { relations: [{ from: 0, to: 1, lag: -3 }] })).distance).toEqual([[0, -3], [APART, 0]]);
    expect(closeRows(alone([3, 2], { relations: [{ from: 1, to: 0, lag: -2 }] })).distance).toEqual([[0, APART], [2, 0]]);
    // Already as far apart as it takes.
    expect(closeRows(alone([2, 3], { relations: [{ from: 0, to: 1, lag: 2 }] })).distance).toEqual([[0, 2], [APART, 0]]);
    // With two units both may go on at once.
    expect(closeRows(alone([2, 3], { capacities: [2], relations: [{ from: 0, to: 1, lag: -2 }] })).distance).toEqual([[0, -2], [APART, 0]]);
  });

  it('pass an order on to whoever hangs on it, until nothing changes', () => {
    // 0 goes before 1, so 2 comes at least three after 0, and 3 at most five before 2: it cannot end before 1 begins.
    const relations = [{ from: 0, to: 1, lag: -2 }, { from: 1, to: 2, lag: 1 }, { from: 4, to: 0, lag: 1 }, { from: 2, to: 3, lag: -5 }];
    const { distance } = closeRows({ durations: [2, 3, 0, 5, 0], capacities: [1], demands: [[1], [1], [0], [1], [0]], relations, horizon: 40 });
    expect(distance[0]).toEqual([0, 2, 3, 5, APART]);
    expect(distance[4]).toEqual([1, 3, 4, 6, 0]);
    // An order found last makes the first one certain: pairs are looked at again.
    const chained = [{ from: 0, to: 1, lag: -4 }, { from: 2, to: 1, lag: -5 }, { from: 0, to: 2, lag: -1 }];
    expect(closeRows({ durations: [4, 4, 2], capacities: [1, 1], demands: [[1, 1], [1, 0], [0, 1]], relations: chained, horizon: 40 }).distance).toEqual([[0, 4, 4], [APART, 0, APART], [APART, -5, 0]]);
  });

  it('stay within numbers, and are left out for large instances', () => {
    const relations = [{ from: 0, to: 1, lag: 2 ** 28 - 1 }, { from: 1, to: 2, lag: 2 ** 28 - 1 }, { from: 2, to: 3, lag: 5 }];
    expect(closeRows(alone([0, 0, 0, 0], { relations })).distance[0]).toEqual([0, 2 ** 28 - 1, 2 ** 28, 2 ** 28]);
    expect(closeRelations(alone(Array.from({ length: 261 }, () => 0)))).toBeNull();
    expect(closeRelations(alone(Array.from({ length: 260 }, () => 0)))?.n).toBe(260);
  });

  it('hold in every plan', () => {
    fc.assert(fc.property(withMaximumLags, (instance) => {
      const short = { ...instance, horizon: 6 };
      const plans = listPlans(short);
      const { n, distance, cycleAt } = closeRelations(short)!;
      if (cycleAt >= 0) expect(plans).toEqual([]);
      else for (const plan of plans) for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) expect(plan[j]! - plan[i]!).toBeGreaterThanOrEqual(distance[i * n + j]!);
    }), { numRuns: 12 });
  });

  it('list the rivals: who together need more than there is, for some time', () => {
    expect(listRivals({ durations: [1, 2, 3, 0, 1], capacities: [4, 2], demands: [[2, 0], [3, 0], [2, 1], [4, 2], [1, 2]], relations: [], horizon: 9 })).toEqual([0, 1, 1, 2, 2, 4]);
  });
});

describe('the network of bounds', () => {
  it('has both directions of a lag, the end of all, curves, and orders of open pairs', () => {
    const pieces = [{ from: 0, value: 4, slope: 1 as const }];
    const instance: CoreInstance = {
      durations: [2, 3, 1], capacities: [1], demands: [[1], [1], [0]], horizon: 12,
      relations: [{ from: 0, to: 2, lag: 2 }, { from: 1, to: 2, pieces }], allowedStarts: [null, [{ first: 1, last: 3 }], null],
    };
    const network = buildNetwork(instance, closeRelations(instance));
    expect(network).toMatchObject({ activities: 3, makespan: 3, orders: 4, variables: 5, orderEdges: 10, orderFirst: Int32Array.of(0), orderSecond: Int32Array.of(1) });
    expect([Array.from(network.least), Array.from(network.greatest)]).toEqual([[0, 0, 0, 0, 0], [10, 9, 11, 12, 1]]);
    const edges = Array.from(network.edgeFrom, (from, e) => [from, network.edgeTo[e], network.edgeLag[e], network.edgeCurve[e], network.edgeIf[e]]);
    expect(edges).toEqual([
      [0, 4, 2, -1, -1], [5, 1, 2, -1, -1], [2, 4, 0, 0, -1], [5, 3, 0, 1, -1],
      // The first ends before the third begins, so the third tells of its end.
      [2, 6, 3, -1, -1], [7, 3, 3, -1, -1], [4, 6, 1, -1, -1], [7, 5, 1, -1, -1],
      [2, 2, 0, 2, -1], [3, 3, 0, 3, -1],
      [0, 2, 2, -1, 8], [3, 1, 2, -1, 8], [2, 0, 3, -1, 9], [1, 3, 3, -1, 9],
    ]);
    expect(network.curves).toEqual([pieces, [{ from: 0, value: 1, slope: 0 }, { from: 1, value: 1, slope: 1 }, { from: 4, value: 13, slope: 0 }]]);
    expect(Array.from(network.head)).toEqual([0, 2, 3, 7, 9, 10, 12, 12, 14, 14, 14]);
    for (let p = 0; p < 2 * network.variables; p++) {
      for (let k = network.head[p]!; k < network.head[p + 1]!; k++) expect(network.edgeFrom[network.leaving[k]!]).toBe(p);
    }
    expect(Array.from(network.leaving).toSorted((a, b) => a - b)).toEqual(edges.map((_, e) => e));
  });

  it('has a lag for rivals whose order is known, and no order to decide', () => {
    const instance = alone([2, 3, 4], { relations: [{ from: 0, to: 1, lag: -2 }, { from: 2, to: 0, lag: 9 }] });
    const closure = closeRelations(instance);
    expect(listOpenPairs(instance, closure)).toEqual([]);
    expect(listOpenPairs(instance, null)).toEqual([0, 1, 0, 2, 1, 2]);
    const { edgeFrom, edgeTo, edgeLag } = buildNetwork(instance, closure);
    const edges = Array.from(edgeFrom, (from, e) => [from, edgeTo[e], edgeLag[e]]);
    // The end of all waits for 0 and 1; 2 is followed by 0, which begins after it has ended.
    expect(edges.filter(([from, to]) => from! % 2 === 0 && to === 6)).toEqual([[0, 6, 2], [2, 6, 3]]);
    expect(edges).toContainEqual([0, 2, 2]);
    expect(edges).toContainEqual([4, 2, 4]);
    expect(edges).toContainEqual([4, 0, 4]);
    expect(edges).not.toContainEqual([2, 0, 3]);
  });

  it('watches every end where lags lead in a circle', () => {
    const instance = alone([1, 1], { relations: [{ from: 0, to: 1, lag: 2 }, { from: 1, to: 0, lag: 2 }] });
    const { edgeTo } = buildNetwork(instance, closeRelations(instance), []);
    expect(Array.from(edgeTo).filter((to) => to === 4)).toHaveLength(2);
  });

  it('follows an edge and finds the least that its source needs, whatever its kind and direction', () => {
    fc.assert(fc.property(withCurves, fc.nat(11), fc.nat(3), (instance, place, less) => {
      const network = buildNetwork(instance, null);
      for (let edge = 0; edge < network.edgeFrom.length; edge++) {
        const isBack = (network.edgeFrom[edge]! & 1) === 1;
        const range = Array.from({ length: instance.horizon + 1 }, (_, k) => (isBack ? k - instance.horizon : k));
        // Nobody asks for more than the edge has given, nor for what holds anyway.
        const w = followEdge(network, edge, range[place]!) - less;
        if (w <= range[0]!) continue;
        const needed = sourceNeeded(network, edge, w);
        expect(range.filter((v) => v >= needed)).toEqual(range.filter((v) => followEdge(network, edge, v) >= w));
      }
    }), { numRuns: 60 });
  });
});

const listOrder = (relations: CoreInstance['relations'], durations = [1, 1, 1]) => {
  const found = orderForward(alone(durations, { relations, horizon: 10 }));
  return found && Array.from(found);
};

describe('an order in which relations lead forwards', () => {
  it('lists who waits for nobody first', () => {
    expect(listOrder([])).toEqual([0, 1, 2]);
    expect(listOrder([{ from: 2, to: 0, lag: 0 }, { from: 1, to: 0, lag: 3 }])).toEqual([1, 2, 0]);
    expect(listOrder([{ from: 2, to: 1, lag: 1 }, { from: 1, to: 0, lag: 3 }])).toEqual([2, 1, 0]);
  });

  it('is none with a lag back, a circle, or a curve that leads back', () => {
    expect(listOrder([{ from: 0, to: 1, lag: -1 }])).toBeNull();
    expect(listOrder([{ from: 0, to: 1, lag: 1 }, { from: 1, to: 0, lag: 0 }])).toBeNull();
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 0, slope: 1 }] }])).toEqual([0, 2, 1]);
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 1, value: 0, slope: 1 }] }])).toBeNull();
    // A step has to stand at or above the last start it counts for.
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 4, slope: 0 }, { from: 5, value: 5, slope: 1 }] }])).toEqual([0, 2, 1]);
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 3, slope: 0 }, { from: 5, value: 5, slope: 1 }] }])).toBeNull();
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 10, slope: 0 }] }])).toEqual([0, 2, 1]);
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 9, slope: 0 }] }])).toBeNull();
    expect(listOrder([{ from: 0, to: 1, pieces: [{ from: 0, value: 10, slope: 0 }, { from: 15, value: 15, slope: 1 }] }])).toEqual([0, 2, 1]);
  });
});

describe('arcs in rows', () => {
  const pieces = [{ from: 0, value: 1, slope: 1 as const }];
  const instance = alone([2, 3, 4], { relations: [{ from: 0, to: 2, lag: 5 }, { from: 1, to: 2, pieces }, { from: 0, to: 1, lag: 2 }, { from: 0, to: 2, pieces }] });
  const curves = listCurves(instance);

  it('stand by who they lead to, or from, each curve once', () => {
    expect(curves).toEqual([pieces]);
    expect(listArcs(instance, curves, true)).toEqual({ head: Int32Array.of(0, 0, 1, 4), other: Int32Array.of(0, 0, 1, 0), lag: Int32Array.of(2, 5, 0, 0), curve: Int32Array.of(-1, -1, 0, 0) });
    expect(listArcs(instance, curves, false)).toEqual({ head: Int32Array.of(0, 3, 4, 4), other: Int32Array.of(2, 1, 2, 2), lag: Int32Array.of(5, 2, 0, 0), curve: Int32Array.of(-1, -1, 0, 0) });
  });

  it('tell how long it takes at least from each start to the end of all', () => {
    const out = listArcs(instance, curves, false);
    expect(Array.from(measureRest(Int32Array.of(0, 1, 2), out, Int32Array.of(2, 3, 4)))).toEqual([9, 4, 4]);
    expect(Array.from(measureRest(Int32Array.of(0, 1, 2), out, Int32Array.of(2, 30, 4)))).toEqual([32, 30, 4]);
  });
});

describe('resources side by side in words', () => {
  it('have a field each, wide enough for what is free and a guard bit', () => {
    const { words, guard, full, need } = packFields({ durations: [1, 1], capacities: [5, 8], demands: [[2, 8], [5, 0]], relations: [], horizon: 3 });
    // 5 takes 3 bits and a guard: 1101 in bits 0 to 3; 8 takes 4 and a guard: 11000 in bits 4 to 8.
    expect([words, [...guard], [...full], [...need]]).toEqual([1, [0b100001000], [0b110001101], [0b010000010, 0b101]]);
  });

  it('go on in the next word where one is full', () => {
    const capacities = [2 ** 20, 2 ** 8, 1];
    const { words, guard, full, need } = packFields({ durations: [1], capacities, demands: [[3, 2, 1]], relations: [], horizon: 3 });
    // 22 bits, then 10 that no longer fit in 31, and 2 beside these.
    expect(words).toBe(2);
    expect([...guard]).toEqual([2 ** 21, 2 ** 9 + 2 ** 11]);
    expect([...full]).toEqual([2 ** 21 + 2 ** 20, 2 ** 9 + 2 ** 8 + 2 ** 11 + 2 ** 10]);
    expect([...need]).toEqual([3, 2 + 2 ** 10]);
    // 21 and 10 bits fill a word to the last.
    expect(packFields({ durations: [], capacities: [2 ** 19, 2 ** 8], demands: [], relations: [], horizon: 3 }).words).toBe(1);
  });
});

/** Xorshift by 13, 17 and 5 on 32 bits, from the fifth step on. */
const shiftBits = (seed: number): number[] => {
  let x = BigInt.asIntN(32, (BigInt(seed) * 0x9e3779b1n) ^ 0x85ebca6bn) || 0x2545f491n;
  return Array.from({ length: 9 }, () => {
    x = BigInt.asIntN(32, x ^ (x << 13n));
    x = BigInt.asIntN(32, x ^ (BigInt.asUintN(32, x) >> 17n));
    x = BigInt.asIntN(32, x ^ (x << 5n));
    return Number(BigInt.asUintN(32, x) >> 1n);
  }).slice(4);
};

const drawBits = (seed: number): number[] => {
  const random = new Random(seed);
  return Array.from({ length: 5 }, () => random.bits());
};

describe('the stream of random numbers', () => {
  it('is the same for a seed everywhere', () => {
    for (const seed of [1, 0, -7, 123_456_789]) expect(drawBits(seed)).toEqual(shiftBits(seed));
  });

  it('does not stand still for the one seed that would make it', () => {
    // Bit by bit: the seed whose product with the factor is the mask, so that nothing is left to begin from.
    let seed = 0n;
    for (let bit = 1n; bit < 2n ** 32n; bit *= 2n) if (((seed * 0x9e3779b1n) & bit) !== (0x85ebca6bn & bit)) seed += bit;
    const still = Number(BigInt.asIntN(32, seed));
    expect(Math.imul(still, 0x9e3779b1) ^ 0x85ebca6b).toBe(0);
    expect(drawBits(still)).toEqual(shiftBits(still));
    expect(new Set(drawBits(still)).size).toBe(5);
  });

  it('gives numbers below a limit, each about as often', () => {
    const random = new Random(4);
    const counts = [0, 0, 0];
    for (let k = 0; k < 3000; k++) {
      const drawn = random.below(3);
      counts[drawn] = counts[drawn]! + 1;
    }
    expect(counts).toHaveLength(3);
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(200);
  });
});
