/** Spans, weeks and small counts in words, for the plan pages. */
import { addDays, dateOf, formatClock, formatLength, formatMoment, type CivilDate } from '@/lib/calendar';
import { minutesBetween, type Instant } from '@/lib/units';

const MONTHS = [
  'January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December',
];

/** @example formatRange(a, b, zone) // 'Tue 1 Dec 18:30–20:10' */
export function formatRange(start: Instant, end: Instant, zone: string): string {
  const isOneDay = dateOf(start, zone) === dateOf(end, zone);
  return `${formatMoment(start, zone)}–${isOneDay ? formatClock(end, zone) : formatMoment(end, zone)}`;
}

/** @example formatClockRange(a, b, zone) // '18:30–20:10' */
export function formatClockRange(start: Instant, end: Instant, zone: string): string {
  return `${formatClock(start, zone)}–${formatClock(end, zone)}`;
}

const readDate = (date: CivilDate) => ({ day: Number(date.slice(8)), month: MONTHS[Number(date.slice(5, 7)) - 1], year: date.slice(0, 4) });

/** @example formatWeekLabel('2026-11-30') // '30 November to 6 December 2026' */
export function formatWeekLabel(monday: CivilDate): string {
  const sunday = addDays(monday, 6);
  const [from, to] = [readDate(monday), readDate(sunday)];
  const first = from.year !== to.year ? `${from.day} ${from.month} ${from.year}` : from.month === to.month ? `${from.day}` : `${from.day} ${from.month}`;
  return `${first} to ${to.day} ${to.month} ${to.year}`;
}

/** How far a moment lies ahead or behind: `in 3 h 20 min`, `2 d 4 h ago`, `now`. */
export function formatDistance(from: Instant, to: Instant): string {
  const length = Math.round(minutesBetween(from, to));
  if (length === 0) return 'now';
  return length > 0 ? `in ${formatLength(length)}` : `${formatLength(-length)} ago`;
}

/** `1 task`, `3 tasks`. */
export function formatCount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Letters for a narrow block: first of each word before any bracket, two at most. @example formatInitials('Ada Roe (maker)') // 'AR' */
export function formatInitials(name: string): string {
  const words = name.replace(/\(.*$/u, '').match(/[\p{L}\p{N}]+/gu) ?? [name];
  return words.map((word) => word.slice(0, 1).toUpperCase()).join('').slice(0, 2);
}

/** As at the start of a sentence. @example capitalise('episodes in hand') // 'Episodes in hand' */
export function capitalise(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
