/** How dates, times and lengths are written on pages and in the terminal. English, the same on every machine. */
import { MINUTES_PER_DAY, MINUTES_PER_HOUR, type Instant } from '@/lib/units';
import { weekdayOf, type CivilDate } from './civil';
import { wallOf } from './zone';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
const HOURS_PER_DAY = MINUTES_PER_DAY / MINUTES_PER_HOUR;

/** @example formatDay('2026-12-01') // 'Tue 1 Dec' */
export function formatDay(date: CivilDate): string {
  return `${WEEKDAYS[weekdayOf(date) - 1]} ${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;
}

/** @example formatClock(instant(Date.parse('2026-12-01T18:30Z')), 'Europe/London') // '18:30' */
export function formatClock(at: Instant, zone: string): string {
  return wallOf(at, zone).time;
}

/** @example formatMoment(instant(Date.parse('2026-12-01T18:30Z')), 'Europe/London') // 'Tue 1 Dec 18:30' */
export function formatMoment(at: Instant, zone: string): string {
  const { date, time } = wallOf(at, zone);
  return `${formatDay(date)} ${time}`;
}

function joinUnits(large: number, largeUnit: string, small: number, smallUnit: string): string {
  const parts = [large > 0 ? `${large} ${largeUnit}` : '', small > 0 ? `${small} ${smallUnit}` : ''];
  return parts.filter((part) => part !== '').join(' ');
}

/** @throws RangeError when not finite. */
function splitSign(length: number): { readonly sign: string; readonly whole: number } {
  if (!Number.isFinite(length)) throw new RangeError(`A length must be finite, got ${length}`);
  const whole = Math.round(Math.abs(length));
  return { sign: length < 0 ? '-' : '', whole };
}

/**
 * Elapsed minutes in words, to the minute below a day and to the hour from a day on. A day is 24 hours.
 * @throws RangeError when not finite.
 * @example formatLength(80) // '1 h 20 min'
 * @example formatLength(4560) // '3 d 4 h'
 */
export function formatLength(length: number): string {
  const { sign, whole } = splitSign(length);
  if (whole < MINUTES_PER_DAY) return formatWorkLength(length);
  const hours = Math.round(whole / MINUTES_PER_HOUR);
  return sign + joinUnits(Math.floor(hours / HOURS_PER_DAY), 'd', hours % HOURS_PER_DAY, 'h');
}

/**
 * Worked minutes in words: never in days, since nobody works 24 hours of one.
 * @throws RangeError when not finite.
 * @example formatWorkLength(1815) // '30 h 15 min'
 */
export function formatWorkLength(length: number): string {
  const { sign, whole } = splitSign(length);
  if (whole === 0) return '0 min';
  return sign + joinUnits(Math.floor(whole / MINUTES_PER_HOUR), 'h', whole % MINUTES_PER_HOUR, 'min');
}
