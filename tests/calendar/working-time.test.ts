import { expect, test } from 'vitest';
import {
  addWorkingTime, createWorkingCalendar, placeInOneGo, placeSplit, subtractWorkingTime, workingMinutesBetween, type InstantInterval,
  type WorkingCalendar,
} from '@/lib/calendar';
import { instant, MS_PER_MINUTE, type Instant } from '@/lib/units';

const at = (minute: number): Instant => instant(minute * MS_PER_MINUTE);
const span = (start: number, end: number): InstantInterval => ({ start: at(start), end: at(end) });
const calendarOf = (...spans: readonly (readonly [number, number])[]): WorkingCalendar =>
  createWorkingCalendar(spans.map(([start, end]) => span(start, end)));

/** Minutes 100 to 160, 200 to 230, and from there without a gap to 330. */
const three = calendarOf([100, 160], [200, 230], [230, 330]);
const none = calendarOf();

test('sessions that overlap, are empty or unsorted throw', () => {
  expect(() => calendarOf([0, 10], [9, 20])).toThrow(RangeError);
  expect(() => calendarOf([0, 0])).toThrow(RangeError);
  expect(() => calendarOf([20, 30], [0, 10])).toThrow(RangeError);
});

test('a negative or endless length throws', () => {
  for (const work of [addWorkingTime, subtractWorkingTime, placeInOneGo, placeSplit]) {
    expect(() => work(three, at(0), -1)).toThrow(RangeError);
    expect(() => work(three, at(0), Number.POSITIVE_INFINITY)).toThrow(RangeError);
  }
});

test.each([
  [0, 0, 0],
  [0, 1, 101],
  [100, 60, 160],
  [100, 61, 201],
  [130, 30, 160],
  [159, 1, 160],
  [160, 1, 201],
  [180, 30, 230],
  [180, 31, 231],
  [100, 190, 330],
  [400, 0, 400],
])('from minute %i, %i working minutes end at minute %i', (from, length, end) => {
  expect(addWorkingTime(three, at(from), length)).toBe(at(end));
});

test('working time runs out after the last session', () => {
  expect(addWorkingTime(three, at(100), 191)).toBeNull();
  expect(addWorkingTime(three, at(330), 1)).toBeNull();
  expect(addWorkingTime(none, at(0), 1)).toBeNull();
  expect(addWorkingTime(none, at(5), 0)).toBe(at(5));
});

test.each([
  [330, 0, 330],
  [400, 1, 329],
  [330, 100, 230],
  [330, 101, 229],
  [330, 130, 200],
  [330, 131, 159],
  [200, 60, 100],
  [160, 60, 100],
  [161, 1, 159],
  [201, 1, 200],
])('until minute %i, %i working minutes start at minute %i', (to, length, start) => {
  expect(subtractWorkingTime(three, at(to), length)).toBe(at(start));
});

test('working time runs out before the first session', () => {
  expect(subtractWorkingTime(three, at(330), 190)).toBe(at(100));
  expect(subtractWorkingTime(three, at(330), 191)).toBeNull();
  expect(subtractWorkingTime(three, at(100), 1)).toBeNull();
  expect(subtractWorkingTime(none, at(0), 1)).toBeNull();
});

test('only minutes inside sessions are counted', () => {
  expect(workingMinutesBetween(three, at(0), at(1000))).toBe(190);
  expect(workingMinutesBetween(three, at(160), at(200))).toBe(0);
  expect(workingMinutesBetween(three, at(159), at(201))).toBe(2);
  expect(workingMinutesBetween(three, at(201), at(159))).toBe(-2);
  expect(workingMinutesBetween(none, at(0), at(1000))).toBe(0);
});

test.each([
  [0, 60, 100, 160],
  [100, 60, 100, 160],
  [101, 60, 230, 290],
  [100, 61, 230, 291],
  [0, 100, 230, 330],
  [200, 30, 200, 230],
  [201, 30, 230, 260],
  [150, 10, 150, 160],
  [150, 11, 200, 211],
  [0, 0, 100, 100],
  [160, 0, 200, 200],
])('from minute %i, %i minutes in one go lie from %i to %i', (notBefore, length, start, end) => {
  expect(placeInOneGo(three, at(notBefore), length)).toEqual(span(start, end));
});

test('work in one go never crosses from one session into a touching one', () => {
  expect(placeInOneGo(three, at(0), 101)).toBeNull();
  expect(placeInOneGo(three, at(231), 100)).toBeNull();
  expect(placeInOneGo(three, at(330), 1)).toBeNull();
  expect(placeInOneGo(none, at(0), 1)).toBeNull();
});

test('split work fills sessions in order, with a border where two touch', () => {
  expect(placeSplit(three, at(0), 60)).toEqual([span(100, 160)]);
  expect(placeSplit(three, at(0), 61)).toEqual([span(100, 160), span(200, 201)]);
  expect(placeSplit(three, at(150), 50)).toEqual([span(150, 160), span(200, 230), span(230, 240)]);
  expect(placeSplit(three, at(160), 130)).toEqual([span(200, 230), span(230, 330)]);
  expect(placeSplit(three, at(160), 131)).toBeNull();
  expect(placeSplit(three, at(160), 0)).toEqual([]);
  expect(placeSplit(none, at(0), 1)).toBeNull();
});
