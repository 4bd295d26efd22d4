/** An outside trade's working days: when work dropped off now is ready. */
import { addDays, dateOf, expandWeeklyHours, startOfDay, type CivilDate, type InstantInterval } from '@/lib/calendar';
import type { Trade } from '@/lib/build';
import type { Instant } from '@/lib/units';
import { rememberByTrade } from './trade-memory';

/** A day on which the trade is open: when it opens first and shuts last. */
export interface WorkingDay {
  readonly date: CivilDate;
  readonly opens: Instant;
  readonly shuts: Instant;
}

const hoursOf = rememberByTrade<readonly InstantInterval[]>(16);

/** The trade's opening hours between two dates, both in it, closed dates left out. */
export function openingHours(trade: Trade, from: CivilDate, to: CivilDate, zone: string): readonly InstantInterval[] {
  return hoursOf(trade, `${from} ${to} ${zone}`, () => expandWeeklyHours(trade.openHours, { from, to }, zone, trade.closed));
}

/** One entry a day that has opening hours, in order. */
export function workingDays(hours: readonly InstantInterval[], zone: string): WorkingDay[] {
  const days: WorkingDay[] = [];
  for (const { start, end } of hours) {
    const date = dateOf(start, zone);
    const last = days.at(-1);
    if (last?.date === date) days[days.length - 1] = { ...last, shuts: end };
    else days.push({ date, opens: start, shuts: end });
  }
  return days;
}

/**
 * When work left at `droppedOff` is ready: the opening of the `count`-th working day after the day of drop-off.
 * The day of drop-off is not counted, however early; nought days means the next opening. Null when the list runs out.
 * @example readyAfter(days, tuesday10h, 5, zone) // the opening on Tuesday of the week after
 */
export function readyAfter(days: readonly WorkingDay[], droppedOff: Instant, count: number, zone: string): Instant | null {
  const nextDay = startOfDay(addDays(dateOf(droppedOff, zone), 1), zone);
  const first = firstOpeningFrom(days, nextDay);
  return days[first + Math.max(0, Math.ceil(count) - 1)]?.opens ?? null;
}

function firstOpeningFrom(days: readonly WorkingDay[], from: Instant): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (days[middle]!.opens < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
