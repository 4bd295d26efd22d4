import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addWorkingTime, containsInterval, containsPoint, createWorkingCalendar, placeInOneGo, placeSplit, subtractWorkingTime, totalLength,
  workingMinutesBetween, type InstantInterval,
} from '@/lib/calendar';
import { instant, MS_PER_MINUTE, type Instant } from '@/lib/units';

const at = (minute: number): Instant => instant(minute * MS_PER_MINUTE);

/** Gaps and lengths in turn; a gap of none makes two sessions that touch. */
const anySessions = fc
  .array(fc.tuple(fc.nat(40), fc.integer({ min: 1, max: 50 })), { maxLength: 12 })
  .map((pairs) => {
    let clock = 0;
    return pairs.map(([gap, length]): InstantInterval => {
      const start = clock + gap;
      clock = start + length;
      return { start: at(start), end: at(clock) };
    });
  });
const anyMoment = fc.integer({ min: -20, max: 1200 }).map(at);
const anyLength = fc.nat(300);

/** Minutes that belong to a session, counted one by one. */
function countMinutes(sessions: readonly InstantInterval[], from: number, to: number): number {
  let count = 0;
  for (let moment = from; moment < to; moment += MS_PER_MINUTE) if (containsPoint(sessions, moment)) count += 1;
  return count;
}

test('working minutes are the minutes of sessions counted one by one', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, anyMoment, (sessions, a, b) => {
      const calendar = createWorkingCalendar(sessions);
      expect(workingMinutesBetween(calendar, a, b)).toBe(a <= b ? countMinutes(sessions, a, b) : 0 - countMinutes(sessions, b, a));
    }),
  );
});

test('adding and then subtracting working time returns to a start inside a session', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, anyLength, (sessions, from, length) => {
      const calendar = createWorkingCalendar(sessions);
      const end = addWorkingTime(calendar, from, length);
      fc.pre(end !== null && containsPoint(sessions, from));
      expect(end === null ? null : subtractWorkingTime(calendar, end, length)).toBe(from);
    }),
  );
});

test('from a start outside, subtracting returns to where work could begin', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, fc.integer({ min: 1, max: 300 }), (sessions, from, length) => {
      const calendar = createWorkingCalendar(sessions);
      const end = addWorkingTime(calendar, from, length);
      fc.pre(end !== null);
      const back = end === null ? null : subtractWorkingTime(calendar, end, length);
      expect(back).toBe(placeInOneGo(calendar, from, 0)?.start);
    }),
  );
});

test('added working time is exactly that long and ends as early as it can', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, fc.integer({ min: 1, max: 300 }), (sessions, from, length) => {
      const calendar = createWorkingCalendar(sessions);
      const end = addWorkingTime(calendar, from, length);
      if (end === null) {
        expect(workingMinutesBetween(calendar, from, at(5000))).toBeLessThan(length);
        return;
      }
      expect(workingMinutesBetween(calendar, from, end)).toBe(length);
      expect(workingMinutesBetween(calendar, from, instant(end - 1))).toBeLessThan(length);
    }),
  );
});

test('subtracted working time is exactly that long and starts as late as it can', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, fc.integer({ min: 1, max: 300 }), (sessions, to, length) => {
      const calendar = createWorkingCalendar(sessions);
      const start = subtractWorkingTime(calendar, to, length);
      if (start === null) {
        expect(workingMinutesBetween(calendar, at(-100), to)).toBeLessThan(length);
        return;
      }
      expect(workingMinutesBetween(calendar, start, to)).toBe(length);
      expect(workingMinutesBetween(calendar, instant(start + 1), to)).toBeLessThan(length);
    }),
  );
});

test('a later start or a longer length never ends earlier', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, fc.nat(100), anyLength, fc.nat(100), (sessions, from, wait, length, more) => {
      const calendar = createWorkingCalendar(sessions);
      const last = Number.POSITIVE_INFINITY;
      const end = addWorkingTime(calendar, from, length) ?? last;
      expect(addWorkingTime(calendar, instant(from + wait * MS_PER_MINUTE), length) ?? last).toBeGreaterThanOrEqual(end);
      expect(addWorkingTime(calendar, from, length + more) ?? last).toBeGreaterThanOrEqual(end);
    }),
  );
});

test('two lengths added one after the other are their sum', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, anyLength, anyLength, (sessions, from, first, second) => {
      const calendar = createWorkingCalendar(sessions);
      const middle = addWorkingTime(calendar, from, first);
      fc.pre(middle !== null);
      expect(middle === null ? null : addWorkingTime(calendar, middle, second)).toBe(addWorkingTime(calendar, from, first + second));
    }),
  );
});

test('work in one go lies inside a single session, in the first place where it fits', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, fc.nat(60), (sessions, notBefore, length) => {
      const placed = placeInOneGo(createWorkingCalendar(sessions), notBefore, length);
      const starts = sessions
        .map(({ start, end }) => ({ start: Math.max(start, notBefore), end }))
        .filter(({ start, end }) => start < end && end - start >= length * MS_PER_MINUTE);
      expect(placed?.start).toBe(starts[0]?.start);
      if (placed === null) return;
      expect(placed.end - placed.start).toBe(length * MS_PER_MINUTE);
      expect(containsInterval(sessions, placed)).toBe(true);
    }),
    { numRuns: 300 },
  );
});

test('split work lies inside sessions piece by piece, adds up, and leaves no usable minute between', () => {
  fc.assert(
    fc.property(anySessions, anyMoment, anyLength, (sessions, notBefore, length) => {
      const calendar = createWorkingCalendar(sessions);
      const pieces = placeSplit(calendar, notBefore, length);
      const end = addWorkingTime(calendar, notBefore, length);
      expect(pieces === null).toBe(length > 0 && end === null);
      if (pieces === null) return;
      expect(totalLength(pieces)).toBe(length * MS_PER_MINUTE);
      for (const piece of pieces) expect(containsInterval(sessions, piece)).toBe(true);
      const [first, last] = [pieces[0], pieces.at(-1)];
      if (first === undefined || last === undefined) return;
      expect(first.start).toBeGreaterThanOrEqual(notBefore);
      expect(last.end).toBe(end);
      expect(workingMinutesBetween(calendar, notBefore, last.end)).toBe(length);
    }),
    { numRuns: 300 },
  );
});
