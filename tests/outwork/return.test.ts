import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateOf, expandWeeklyHours, formatMoment, type Weekday } from '@/lib/calendar';
import {
  backAfter, checkBatch, checkPreparations, checkReturnWindow, daysWithin, latestDropOff, learnRatio, probabilityBack, probabilityWithin, readyAfter, workingDays,
  workingDaysTaken, type LearnedRatio, type PastJob, type Quote, type TradeDays,
} from '@/lib/outwork';
import { unwrap } from '@/lib/result';
import { addMinutes, instant, type Instant } from '@/lib/units';

const LONDON = 'Europe/London';
const WEEKDAYS: readonly Weekday[] = [1, 2, 3, 4, 5];
const hours = expandWeeklyHours(WEEKDAYS.map((weekday) => ({ weekday, from: '08:00', to: '16:00' })), { from: '2026-11-30', to: '2027-02-26' }, LONDON, [{ from: '2026-12-24', to: '2027-01-03' }]);
const DAYS = workingDays(hours, LONDON);
const TRADE: TradeDays = { days: DAYS, zone: LONDON, batchDays: [], collectionDays: [], transport: 0 };
const QUOTE: Quote = { low: 3, likely: 5, high: 10 };
const at = (text: string): Instant => instant(Date.parse(`${text}Z`));
const told = (moment: Instant | null): string | null => (moment === null ? null : formatMoment(moment, LONDON));

test('without batch and collection days a job is back when it is ready', () => {
  for (const count of [0, 1, 2, 5, 30]) {
    expect(backAfter(TRADE, at('2026-12-01T10:00'), count)).toBe(readyAfter(DAYS, at('2026-12-01T10:00'), count, LONDON));
  }
  expect(backAfter(TRADE, at('2026-12-01T10:00'), 500)).toBeNull();
});

test('a bath run on Thursdays and collection on Tuesdays make four days into a fortnight, and the road comes on top', () => {
  const trade: TradeDays = { ...TRADE, batchDays: [4], collectionDays: [2], transport: 90 };
  // Dropped off on Thursday: too late for that day's bath. Next Thursday the 10th + 4 days = Tuesday the 15th.
  expect(told(backAfter(trade, at('2026-12-03T09:00'), 4))).toBe('Tue 15 Dec 09:30');
  expect(told(backAfter(trade, at('2026-12-03T09:00'), 5))).toBe('Tue 22 Dec 09:30');
  expect(told(backAfter({ ...trade, batchDays: [] }, at('2026-12-03T09:00'), 4))).toBe('Tue 15 Dec 09:30');
});

test('holidays push a return', () => {
  expect(told(backAfter(TRADE, at('2026-12-22T10:00'), 2))).toBe('Mon 4 Jan 08:00');
});

test('working days taken is the quote read backwards', () => {
  for (const count of [1, 3, 9, 20]) {
    const droppedOff = at('2026-12-08T12:00');
    expect(workingDaysTaken(DAYS, droppedOff, backAfter(TRADE, droppedOff, count)!, LONDON)).toBe(count);
  }
});

test('with no past job the quote is a triangle', () => {
  expect(probabilityWithin(QUOTE, null, 2)).toBe(0);
  expect(probabilityWithin(QUOTE, null, 5)).toBeCloseTo(2 / 7, 9);
  expect(probabilityWithin(QUOTE, null, 10)).toBe(1);
  expect(probabilityWithin({ low: 4, likely: 4, high: 4 }, null, 4)).toBe(1);
  expect(probabilityWithin({ low: 4, likely: 4, high: 4 }, null, 3)).toBe(0);
  expect(daysWithin(QUOTE, null, 0.5)).toBe(6);
  expect(daysWithin(QUOTE, learnRatio([], { tradeId: 'x', craft: 'y' }), 0.99)).toBe(10);
});

const LATE: readonly PastJob[] = [1.4, 1.6, 1.5, 1.8, 1.3].map((factor) => ({ tradeId: 'plater', craft: 'plater', quoted: 10, actual: 10 * factor }));
const ratio: LearnedRatio = learnRatio(LATE, { tradeId: 'plater', craft: 'plater' });

test('past lateness moves the probability: a quote of five days is seldom kept by a trade that is half as late again', () => {
  expect(probabilityWithin(QUOTE, ratio, 5 * ratio.factor)).toBeCloseTo(0.5, 9);
  expect(probabilityWithin(QUOTE, ratio, 5)).toBeLessThan(0.2);
  expect(daysWithin(QUOTE, ratio, 0.8)).toBeGreaterThan(7);
  expect(probabilityWithin(QUOTE, ratio, daysWithin(QUOTE, ratio, 0.8))).toBeGreaterThanOrEqual(0.8);
  expect(probabilityWithin(QUOTE, ratio, daysWithin(QUOTE, ratio, 0.8) - 1)).toBeLessThan(0.8);
});

test('probability rises with the day it is needed and falls with the day of drop-off', () => {
  fc.assert(fc.property(fc.nat(40), fc.nat(40), fc.nat(60), fc.constantFrom<LearnedRatio | null>(null, ratio), fc.constantFrom<readonly Weekday[]>([], [4]), (drop, later, need, learned, batchDays) => {
    const trade = { ...TRADE, batchDays };
    const [start, by] = [at('2026-12-01T10:00'), at('2026-12-02T10:00')];
    const chance = (dropDay: number, needDay: number) => probabilityBack(trade, QUOTE, learned, addMinutes(start, dropDay * 1440), addMinutes(by, needDay * 1440));
    expect(chance(drop, need)).toBeGreaterThanOrEqual(chance(drop + later, need));
    expect(chance(drop, need)).toBeLessThanOrEqual(chance(drop, need + later));
  }));
});

test('the drop-off date for a confidence is the last that keeps it', () => {
  const by = at('2027-01-20T18:00');
  const found = unwrap(latestDropOff(TRADE, QUOTE, ratio, 0.8, { from: at('2026-12-01T08:00'), by }));
  expect(found.probability).toBeGreaterThanOrEqual(0.8);
  const next = DAYS[DAYS.findIndex(({ date }) => date === found.day.date) + 1]!;
  expect(probabilityBack(TRADE, QUOTE, ratio, next.opens, by)).toBeLessThan(0.8);
  const safer = unwrap(latestDropOff(TRADE, QUOTE, ratio, 0.95, { from: at('2026-12-01T08:00'), by }));
  expect(safer.day.opens).toBeLessThan(found.day.opens);
});

test('too late for a confidence is told with the best there is', () => {
  const late = latestDropOff(TRADE, QUOTE, ratio, 0.8, { from: at('2026-12-01T08:00'), by: at('2026-12-07T18:00') });
  expect(late.ok ? '' : late.error[0]?.code).toBe('drop-off-too-late');
  expect(late.ok ? '' : late.error[0]?.message).toContain('Tue 1 Dec');
  const closed = latestDropOff(TRADE, QUOTE, ratio, 0.8, { from: at('2026-12-24T08:00'), by: at('2027-01-03T08:00') });
  expect(closed.ok ? '' : closed.error[0]?.code).toBe('drop-off-closed');
});

test('preparation must be done before the part leaves', () => {
  const droppedOff = at('2026-12-01T10:00');
  const steps = [
    { name: 'vent holes', doneAt: at('2026-11-30T20:00') }, { name: 'mask threads', doneAt: at('2026-12-01T12:00') }, { name: 'strip paint', doneAt: null },
  ];
  expect(checkPreparations('Frame', steps, droppedOff, LONDON).map((found) => [found.code, found.path[1]])).toEqual([['preparation-late', 1], ['preparation-missing', 2]]);
});

test('a paint window after return is kept or missed, with what is owed', () => {
  const window = { hours: 48, afterwards: 'clean and profile' };
  const treated = at('2026-12-01T10:00');
  expect(checkReturnWindow('Frame', window, treated, at('2026-12-03T10:00'), LONDON)).toMatchObject({ isMissed: false, issues: [] });
  const missed = checkReturnWindow('Frame', window, treated, at('2026-12-03T10:01'), LONDON);
  expect(missed.isMissed).toBe(true);
  expect(missed.issues[0]?.fix).toContain('clean and profile');
  expect(dateOf(missed.closesAt, LONDON)).toBe('2026-12-03');
});

test('less than the minimum batch is a warning that says how much is missing', () => {
  expect(checkBatch('Galvanizer', { amount: 100, unit: 'kg' }, 60)).toMatchObject([{ code: 'batch-too-small', severity: 'warn' }]);
  expect(checkBatch('Galvanizer', { amount: 100, unit: 'kg' }, 60)[0]?.fix).toContain('40 kg');
  expect(checkBatch('Galvanizer', { amount: 100, unit: 'kg' }, 100)).toEqual([]);
  expect(checkBatch('Galvanizer', null, 1)).toEqual([]);
});
