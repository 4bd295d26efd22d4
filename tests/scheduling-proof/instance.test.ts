import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { followRelation, type CoreInstance, type Piece } from '@/lib/scheduling/proof';
import { assertInstance, curveOfStarts, evaluateCurve, leastReaching } from '@/lib/scheduling/proof/instance';

const HUGE = 2 ** 29;
const plain = { durations: [2, 3], capacities: [1, 4], demands: [[1, 0], [0, 2]], relations: [], horizon: 10 } satisfies CoreInstance;
const flat = (from: number, value: number): Piece => ({ from, value, slope: 0 });
const rising = (from: number, value: number): Piece => ({ from, value, slope: 1 });

describe('data for the core', () => {
  it.each<readonly [string, Partial<CoreInstance>, string]>([
    ['a broken horizon', { horizon: 9.5 }, 'The horizon 9.5 is not a whole number below 2^29.'],
    ['a horizon too far', { horizon: HUGE }, `The horizon ${HUGE} is not a whole number below 2^29.`],
    ['a broken capacity', { capacities: [1, 0.5] }, 'Capacity 0.5 is not a whole number >= 0.'],
    ['a capacity below 0', { capacities: [-1, 4] }, 'Capacity -1 is not a whole number >= 0.'],
    ['a row of demands too few', { demands: [[1, 0]] }, '2 durations but 1 rows of demands.'],
    ['a broken duration', { durations: [2, 1.5] }, 'Duration of activity 1 is 1.5.'],
    ['a duration below 0', { durations: [-1, 3] }, 'Duration of activity 0 is -1.'],
    ['a demand too many', { demands: [[1, 0, 3], [0, 2]] }, 'Activity 0 names 3 resources of 2.'],
    ['a broken demand', { demands: [[1, 0], [0, 0.5]] }, 'Demands of activity 1 are 0, 0.5.'],
    ['a demand below 0', { demands: [[1, -2], [0, 2]] }, 'Demands of activity 0 are 1, -2.'],
    ['a relation from nowhere', { relations: [{ from: 7, to: 0, lag: 1 }] }, 'A relation leads from 7 to 0 among 2 activities.'],
    ['a relation to nowhere', { relations: [{ from: 0, to: 2, lag: 1 }] }, 'A relation leads from 0 to 2 among 2 activities.'],
    ['a broken lag', { relations: [{ from: 0, to: 1, lag: 0.5 }] }, 'The relation from 0 to 1 is not a whole lag or a rising curve.'],
    ['a lag too far back', { relations: [{ from: 1, to: 0, lag: -HUGE }] }, 'The relation from 1 to 0 is not a whole lag or a rising curve.'],
    ['a curve of nothing', { relations: [{ from: 0, to: 1, pieces: [] }] }, 'is not a whole lag or a rising curve'],
    ['pieces out of order', { relations: [{ from: 0, to: 1, pieces: [flat(0, 1), flat(4, 3), flat(4, 5)] }] }, 'is not a whole lag or a rising curve'],
    ['a curve that steps down', { relations: [{ from: 0, to: 1, pieces: [flat(0, 3), flat(4, 2)] }] }, 'is not a whole lag or a rising curve'],
    ['a curve that falls short of a slope', { relations: [{ from: 0, to: 1, pieces: [rising(0, 5), flat(4, 7)] }] }, 'is not a whole lag or a rising curve'],
  ])('are refused with %s', (_, more, message) => {
    expect(() => assertInstance({ ...plain, ...more })).toThrow(message);
  });

  it.each<readonly [string, Partial<CoreInstance>]>([
    ['nothing unusual', {}],
    ['a horizon just near enough', { horizon: HUGE - 1 }],
    ['nothing of a resource, and no time', { capacities: [0, 4], durations: [0, 3] }],
    ['a lag just near enough', { relations: [{ from: 1, to: 0, lag: 1 - HUGE }] }],
    ['a curve that goes on where a slope ends, or steps up', { relations: [{ from: 0, to: 1, pieces: [rising(0, 5), flat(4, 8), flat(6, 8), rising(7, 9)] }] }],
  ])('are taken with %s', (_, more) => {
    expect(() => assertInstance({ ...plain, ...more })).not.toThrow();
  });
});

describe('a curve', () => {
  const pieces = [flat(0, 3), rising(4, 6), flat(8, 12)];

  it('stands, rises and steps from piece to piece', () => {
    expect([-5, 0, 3, 4, 5, 7, 8, 99].map((v) => evaluateCurve(pieces, v))).toEqual([3, 3, 3, 6, 7, 9, 12, 12]);
    expect(evaluateCurve([rising(2, 5)], 0)).toBe(5);
    expect(followRelation({ from: 0, to: 1, pieces }, 5)).toBe(7);
    expect(followRelation({ from: 0, to: 1, lag: -2 }, 5)).toBe(3);
  });

  it('is read backwards to the least start that reaches a value, one past the end when none does', () => {
    const asked = Array.from({ length: 16 }, (_, w) => leastReaching(pieces, w, 0, 10));
    expect(asked).toEqual([0, 0, 0, 0, 4, 4, 4, 5, 6, 7, 8, 8, 8, 11, 11, 11]);
    expect(leastReaching(pieces, 3, 6, 10)).toBe(6);
    fc.assert(fc.property(fc.array(fc.record({ gap: fc.integer({ min: 1, max: 4 }), rise: fc.integer({ min: 0, max: 3 }), slope: fc.constantFrom(0 as const, 1 as const) }), { minLength: 1, maxLength: 5 }), fc.integer({ min: 0, max: 20 }), (rows, w) => {
      let [from, value] = [0, 0];
      const curve = rows.map(({ gap, rise, slope }): Piece => {
        const piece = { from, value: value + rise, slope };
        [from, value] = [from + gap, value + rise + slope * (gap - 1)];
        return piece;
      });
      const found = Array.from({ length: 25 }, (_, v) => v).find((v) => evaluateCurve(curve, v) >= w) ?? 25;
      expect(leastReaching(curve, w, 0, 24)).toBe(found);
    }), { numRuns: 40 });
  });

  it('leads from a start to the next that is allowed, and after the last one out of the horizon', () => {
    expect(curveOfStarts([{ first: 2, last: 4 }, { first: 7, last: 7 }], 10)).toEqual([flat(0, 2), rising(2, 2), flat(5, 7), rising(7, 7), flat(8, 11)]);
    expect(curveOfStarts([{ first: 0, last: 3 }], 10)).toEqual([rising(0, 0), flat(4, 11)]);
    expect(curveOfStarts([{ first: -3, last: 1 }, { first: 2, last: 5 }], 10)).toEqual([rising(-3, -3), rising(2, 2), flat(6, 11)]);
    expect(curveOfStarts([{ first: 12, last: 15 }], 10)).toEqual([flat(0, 12), rising(12, 12), flat(16, 17)]);
    expect(curveOfStarts([], 10)).toEqual([flat(0, 11)]);
  });
});
