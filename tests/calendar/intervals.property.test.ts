import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  containsPoint, intersectIntervals, isSortedDisjoint, mergeOverlapping, mergeOverlappingAndTouching, subtractIntervals, totalLength, unionIntervals,
} from '@/lib/calendar';

const SPACE = 30;
const anyIntervals = fc.array(
  fc.tuple(fc.nat(SPACE), fc.nat(6)).map(([start, length]) => ({ start, end: start + length })),
  { maxLength: 8 },
);
const points = Array.from({ length: SPACE + 8 }, (_, at) => at);

test('operations on intervals are the operations on the sets of their points', () => {
  fc.assert(
    fc.property(anyIntervals, anyIntervals, (first, second) => {
      const [a, b] = [mergeOverlapping(first), mergeOverlapping(second)];
      const [both, either, rest] = [intersectIntervals(a, b), unionIntervals(a, b), subtractIntervals(a, b)];
      for (const result of [a, b, both, either, rest]) expect(isSortedDisjoint(result)).toBe(true);
      for (const at of points) {
        const [inA, inB] = [first.some(({ start, end }) => start <= at && at < end), containsPoint(b, at)];
        expect(containsPoint(a, at)).toBe(inA);
        expect(containsPoint(both, at)).toBe(inA && inB);
        expect(containsPoint(either, at)).toBe(inA || inB);
        expect(containsPoint(rest, at)).toBe(inA && !inB);
      }
      expect(totalLength(both) + totalLength(either)).toBe(totalLength(a) + totalLength(b));
    }),
    { numRuns: 300 },
  );
});

test('joining what touches changes borders only', () => {
  fc.assert(
    fc.property(anyIntervals, (intervals) => {
      const [apart, joined] = [mergeOverlapping(intervals), mergeOverlappingAndTouching(intervals)];
      expect(mergeOverlappingAndTouching(apart)).toEqual(joined);
      expect(totalLength(apart)).toBe(totalLength(joined));
      expect(joined.every(({ start }, index) => index === 0 || start > (joined[index - 1]?.end ?? start))).toBe(true);
    }),
  );
});
