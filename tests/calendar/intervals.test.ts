import { expect, test } from 'vitest';
import {
  containsInterval, containsPoint, findFirstEndingAfter, intersectIntervals, isSortedDisjoint, mergeOverlapping, mergeOverlappingAndTouching,
  subtractIntervals, totalLength, unionIntervals, type Interval,
} from '@/lib/calendar';

/** `list(0, 2, 4, 6)` is [0, 2) and [4, 6). */
function list(...ends: number[]): Interval[] {
  return ends.flatMap((start, index) => (index % 2 === 0 ? [{ start, end: ends[index + 1] ?? start }] : []));
}

test('touching intervals are disjoint, overlapping, empty and unsorted ones are not', () => {
  expect(isSortedDisjoint([])).toBe(true);
  expect(isSortedDisjoint(list(0, 2, 2, 4))).toBe(true);
  expect(isSortedDisjoint(list(0, 3, 2, 4))).toBe(false);
  expect(isSortedDisjoint(list(0, 0))).toBe(false);
  expect(isSortedDisjoint(list(4, 6, 0, 2))).toBe(false);
  expect(isSortedDisjoint(list(Number.NaN, 2))).toBe(false);
});

test('merging joins overlaps and, only where asked, what touches', () => {
  const mixed = list(4, 6, 0, 2, 2, 3, 5, 9, 7, 7);
  expect(mergeOverlapping(mixed)).toEqual(list(0, 2, 2, 3, 4, 9));
  expect(mergeOverlappingAndTouching(mixed)).toEqual(list(0, 3, 4, 9));
  expect(mergeOverlapping(list(0, 10, 10, 20, 5, 15))).toEqual(list(0, 20));
  expect(mergeOverlapping(list(0, 10, 2, 3))).toEqual(list(0, 10));
  expect(mergeOverlapping([])).toEqual([]);
});

test('merging leaves its input alone', () => {
  const input = list(4, 6, 0, 2);
  mergeOverlappingAndTouching(input);
  expect(input).toEqual(list(4, 6, 0, 2));
});

test('an interval that ends before it starts throws', () => {
  expect(() => mergeOverlapping(list(2, 1))).toThrow(RangeError);
  expect(() => mergeOverlapping(list(2, Number.NaN))).toThrow(RangeError);
});

test('an intersection keeps what both have and the borders of both', () => {
  expect(intersectIntervals(list(0, 5, 8, 10), list(3, 9))).toEqual(list(3, 5, 8, 9));
  expect(intersectIntervals(list(0, 2), list(2, 4))).toEqual([]);
  expect(intersectIntervals(list(0, 2, 2, 4), list(0, 4))).toEqual(list(0, 2, 2, 4));
  expect(intersectIntervals(list(0, 2), [])).toEqual([]);
});

test('a union joins what touches', () => {
  expect(unionIntervals(list(0, 2), list(2, 4, 6, 8))).toEqual(list(0, 4, 6, 8));
  expect(unionIntervals([], list(0, 2))).toEqual(list(0, 2));
});

test('a difference keeps what the second does not take', () => {
  expect(subtractIntervals(list(0, 10), list(2, 3, 5, 6))).toEqual(list(0, 2, 3, 5, 6, 10));
  expect(subtractIntervals(list(0, 4, 4, 8), list(3, 5))).toEqual(list(0, 3, 5, 8));
  expect(subtractIntervals(list(0, 2, 2, 4), list(6, 7))).toEqual(list(0, 2, 2, 4));
  expect(subtractIntervals(list(2, 4), list(0, 2, 4, 6))).toEqual(list(2, 4));
  expect(subtractIntervals(list(2, 4, 5, 6), list(0, 9))).toEqual([]);
  expect(subtractIntervals(list(2, 4), [])).toEqual(list(2, 4));
});

test('lists that are not sorted and disjoint throw', () => {
  for (const join of [intersectIntervals, unionIntervals, subtractIntervals]) {
    expect(() => join(list(0, 3, 2, 4), [])).toThrow(RangeError);
    expect(() => join([], list(4, 5, 0, 1))).toThrow(RangeError);
  }
});

test('a start is inside, an end is not', () => {
  const intervals = list(0, 2, 4, 6);
  expect([-1, 0, 1, 2, 3, 4, 5, 6].map((at) => containsPoint(intervals, at))).toEqual([false, true, true, false, false, true, true, false]);
  expect([-1, 0, 2, 4, 6].map((at) => findFirstEndingAfter(intervals, at))).toEqual([0, 0, 1, 1, 2]);
  expect(containsPoint([], 0)).toBe(false);
});

test('an interval over a border is inside neither', () => {
  const intervals = list(0, 2, 2, 4);
  expect(containsInterval(intervals, { start: 0, end: 2 })).toBe(true);
  expect(containsInterval(intervals, { start: 1, end: 3 })).toBe(false);
  expect(containsInterval(intervals, { start: 3, end: 5 })).toBe(false);
  expect(containsInterval(intervals, { start: 2, end: 4 })).toBe(true);
});

test('lengths add up', () => {
  expect(totalLength(list(0, 2, 5, 6))).toBe(3);
  expect(totalLength([])).toBe(0);
});
