/** The time column of a logger: many spellings, one moment. */
import { instantOf, isCivilDate, wallOf, type CivilDate } from '@/lib/calendar';
import { addMinutes, instant, type Instant } from '@/lib/units';

export type DateOrder = 'day first' | 'month first';

interface Digits {
  readonly first: number;
  readonly second: number;
  readonly third: number;
  readonly isYearFirst: boolean;
}

export interface WallReading {
  readonly date: CivilDate;
  readonly minute: number;
  readonly second: number;
  /** Minutes ahead of UTC, when the text says so. */
  readonly offset: number | null;
}

const DATE = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$/;
const TIME = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?$/i;
const ZONE = /\s*(z|utc|gmt|[+-]\d{2}:?\d{2})$/i;

function readDigits(text: string): Digits | null {
  const match = DATE.exec(text);
  if (!match) return null;
  const [first, second, third] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (match[1]!.length === 4 && match[3]!.length <= 2) return { first, second, third, isYearFirst: true };
  if (match[1]!.length <= 2 && (match[3]!.length === 4 || match[3]!.length === 2)) return { first, second, third, isYearFirst: false };
  return null;
}

const dateText = (text: string): string => text.trim().split(/[T\s]+/)[0] ?? '';

/**
 * Whether 03/04 is a day or a month first, from a column of dates; null when every row could be both, or rows disagree.
 * Dates that start with the year do not matter.
 */
export function findDateOrder(texts: readonly string[]): { readonly order: DateOrder | null; readonly isNeeded: boolean } {
  let [isNeeded, isDayFirst, isMonthFirst] = [false, false, false];
  for (const text of texts) {
    const digits = readDigits(dateText(text));
    if (digits === null || digits.isYearFirst) continue;
    isNeeded = true;
    if (digits.first > 12) isDayFirst = true;
    if (digits.second > 12) isMonthFirst = true;
  }
  const order = isDayFirst === isMonthFirst ? null : isDayFirst ? 'day first' : 'month first';
  return { order, isNeeded };
}

function readDate(text: string, order: DateOrder): CivilDate | null {
  const digits = readDigits(text);
  if (digits === null) return null;
  const { first, second, third, isYearFirst } = digits;
  const late = third < 100 ? 2000 + third : third;
  const [year, month, day] = isYearFirst ? [first, second, third] : order === 'day first' ? [late, second, first] : [late, first, second];
  const date = [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-');
  return isCivilDate(date) ? date : null;
}

function readOffset(text: string): number {
  if (/^[a-z]/i.test(text)) return 0;
  const digits = text.replace(':', '');
  return (digits.startsWith('-') ? -1 : 1) * (Number(digits.slice(1, 3)) * 60 + Number(digits.slice(3, 5)));
}

/** A date and a time in one text, or null. @example readWallTime('03/04/2026 7:15 PM', 'day first') // 2026-04-03, minute 1155 */
export function readWallTime(text: string, order: DateOrder): WallReading | null {
  const trimmed = text.trim();
  const zone = /\d:\d{2}/.test(trimmed) ? ZONE.exec(trimmed) : null;
  const plain = zone === null ? trimmed : trimmed.slice(0, zone.index);
  const [first = '', ...rest] = plain.split(/[T\s]+/);
  const date = readDate(first.replace(/,$/, ''), order);
  const match = TIME.exec(rest.length === 0 ? '00:00' : rest.join(' '));
  if (date === null || match === null) return null;
  const [hour, minute, second] = [Number(match[1]), Number(match[2]), Number(match[3] ?? 0)];
  const half = match[4]?.[0]?.toLowerCase();
  if (minute > 59 || second > 59 || hour > 23 || (half !== undefined && (hour < 1 || hour > 12))) return null;
  const wholeHour = half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  return { date, minute: wholeHour * 60 + minute, second, offset: zone === null ? null : readOffset(zone[1]!) };
}

/**
 * The moment a wall clock in a zone meant. A time that comes twice in autumn is the second one when the row before it is
 * not earlier than the first.
 */
export function momentOfReading(wall: WallReading, zone: string, before: Instant | null): Instant {
  const midnightUtc = Date.parse(`${wall.date}T00:00:00Z`);
  const seconds = wall.second * 1000;
  if (wall.offset !== null) return instant(midnightUtc + (wall.minute - wall.offset) * 60_000 + seconds);
  const time = `${String(Math.floor(wall.minute / 60)).padStart(2, '0')}:${String(wall.minute % 60).padStart(2, '0')}`;
  const first = instant(instantOf(wall.date, time, zone) + seconds);
  if (before === null || before < first) return first;
  const second = addMinutes(first, 60);
  const shown = wallOf(second, zone);
  return shown.date === wall.date && shown.time === time ? second : first;
}
