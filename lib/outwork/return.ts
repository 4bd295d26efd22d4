/** When a part is back from a trade, and how sure that is. */
import { dateOf, formatDay, startOfDay, addDays, weekdayOf, type Weekday } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';
import type { LearnedRatio } from './learning';
import { normalBelow, normalQuantile } from './normal';
import type { WorkingDay } from './working-days';

/** A trade's days as they bear on one job. */
export interface TradeDays {
  /** Open days in order, holidays left out. */
  readonly days: readonly WorkingDay[];
  readonly zone: string;
  /** Weekdays on which a batch is started (a bath is run on Thursdays). Empty: any. */
  readonly batchDays: readonly Weekday[];
  /** Weekdays on which finished work may be collected. Empty: any open day. */
  readonly collectionDays: readonly Weekday[];
  /** Minutes from there to the workshop. */
  readonly transport: number;
}

/** Working days from the start of the work until it is ready, low <= likely <= high. */
export interface Quote {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const isOn = (day: WorkingDay, weekdays: readonly Weekday[]): boolean => weekdays.length === 0 || weekdays.includes(weekdayOf(day.date));

function firstFrom(days: readonly WorkingDay[], from: Instant): number {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (days[middle]!.opens < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The moment the part is in the workshop again: the batch starts on its day after the day of drop-off, ready at the opening of the
 * `count`-th working day of it, collected on the next collection day, then the way home. Null when the known days run out.
 * With no batch or collection days this is `readyAfter` plus the way.
 */
export function backAfter(trade: TradeDays, droppedOff: Instant, count: number): Instant | null {
  const { days, zone } = trade;
  const nextDay = startOfDay(addDays(dateOf(droppedOff, zone), 1), zone);
  let start = firstFrom(days, nextDay);
  while (start < days.length && !isOn(days[start]!, trade.batchDays)) start += 1;
  let ready = start + Math.max(0, Math.ceil(count - 1e-9) - 1);
  while (ready < days.length && !isOn(days[ready]!, trade.collectionDays)) ready += 1;
  const day = days[ready];
  return day === undefined ? null : addMinutes(day.opens, trade.transport);
}

/** Open days after the day of drop-off up to the day it was ready, that one in it. The other way round of a quote. */
export function workingDaysTaken(days: readonly WorkingDay[], droppedOff: Instant, readyAt: Instant, zone: string): number {
  const [from, to] = [dateOf(droppedOff, zone), dateOf(readyAt, zone)];
  return days.filter(({ date }) => date > from && date <= to).length;
}

/** Share of a triangle that lies at or below a value. */
function triangleBelow({ low, likely, high }: Quote, value: number): number {
  if (value >= high) return 1;
  if (value < low) return 0;
  if (high === low) return 1;
  return value <= likely && likely > low ? (value - low) ** 2 / ((high - low) * (likely - low)) : 1 - (high - value) ** 2 / ((high - low) * (high - likely));
}

/**
 * Probability that a job takes at most so many working days. With past jobs: lognormal around likely x their ratio. With none at
 * all, the trade's own quote is all there is: a triangle from low to high.
 */
export function probabilityWithin(quote: Quote, ratio: LearnedRatio | null, days: number): number {
  if (days <= 0) return 0;
  if (ratio === null || ratio.counts.all === 0) return triangleBelow(quote, days);
  if (quote.likely <= 0) return 1;
  return normalBelow((Math.log(days / quote.likely) - ratio.mean) / ratio.deviation);
}

/** Working days that a job stays within, with a confidence of 0 to 1; whole days. @throws RangeError for 0, 1 or beyond. */
export function daysWithin(quote: Quote, ratio: LearnedRatio | null, confidence: number): number {
  if (ratio !== null && ratio.counts.all > 0) return Math.ceil(quote.likely * Math.exp(ratio.mean + ratio.deviation * normalQuantile(confidence)) - 1e-9);
  const limit = Math.max(1, Math.ceil(quote.high));
  for (let days = 1; days < limit; days += 1) if (triangleBelow(quote, days) >= confidence) return days;
  return limit;
}

/** Probability of having the part back by a moment, dropped off at another. Never rises with a later drop-off. */
export function probabilityBack(trade: TradeDays, quote: Quote, ratio: LearnedRatio | null, droppedOff: Instant, by: Instant): number {
  const isBack = (count: number): boolean => {
    const back = backAfter(trade, droppedOff, count);
    return back !== null && back <= by;
  };
  if (!isBack(1)) return 0;
  let [low, high] = [1, trade.days.length + 1];
  while (low + 1 < high) {
    const middle = (low + high) >>> 1;
    if (isBack(middle)) low = middle;
    else high = middle;
  }
  return probabilityWithin(quote, ratio, low);
}

export interface DropOff {
  readonly day: WorkingDay;
  readonly probability: number;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * The last open day to drop off and still have the part back by a moment with a confidence of 0 to 1, not before `from`.
 * Fails with `drop-off-too-late`, naming the best that is left, or `drop-off-closed` when the trade has no open day in between.
 */
export function latestDropOff(
  trade: TradeDays, quote: Quote, ratio: LearnedRatio | null, confidence: number, between: { readonly from: Instant; readonly by: Instant },
): Result<DropOff> {
  const { from, by } = between;
  const open = trade.days.filter((day) => day.shuts > from && day.opens < by);
  const first = open[0];
  if (first === undefined) {
    const message = `The trade is not open between ${formatDay(dateOf(from, trade.zone))} and ${formatDay(dateOf(by, trade.zone))}.`;
    return fail([issue('drop-off-closed', message, 'Choose a later date, or another trade.')]);
  }
  const chance = (day: WorkingDay): number => probabilityBack(trade, quote, ratio, day.opens, by);
  let [low, high] = [-1, open.length];
  while (low + 1 < high) {
    const middle = (low + high) >>> 1;
    if (chance(open[middle]!) >= confidence) low = middle;
    else high = middle;
  }
  const day = open[low];
  if (day !== undefined) return ok({ day, probability: chance(day) });
  const message = `Dropped off on ${formatDay(first.date)} it is back in time with ${percent(chance(first))}, not ${percent(confidence)}.`;
  return fail([issue('drop-off-too-late', message, 'Plan the return later, or ask for a firm date.')]);
}
