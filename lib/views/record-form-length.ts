/** Lengths of time as people type them. */
import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '@/lib/units';

const MINUTES_PER_WEEK = 7 * MINUTES_PER_DAY;
const UNITS: Readonly<Record<string, number>> = { w: MINUTES_PER_WEEK, d: MINUTES_PER_DAY, h: MINUTES_PER_HOUR, m: 1 };
const PIECE = /^(\d+(?:[.,]\d+)?)\s*(weeks?|wks?|w|days?|d|hours?|hrs?|h|minutes?|mins?|min|m)?\s*/i;
const CLOCK = /^(\d+):([0-5]\d)(?:\s*h)?$/i;

const toNumber = (text: string): number => Number(text.replace(',', '.'));

/** Unit of a bare number after another unit: the next smaller one, `1 h 30` is an hour and thirty minutes. */
function smallerUnit(last: number | null): number {
  if (last === null || last === MINUTES_PER_HOUR) return 1;
  if (last === MINUTES_PER_DAY) return MINUTES_PER_HOUR;
  return last === MINUTES_PER_WEEK ? MINUTES_PER_DAY : 1;
}

/**
 * Minutes meant by a text, null when it is no length. A day is 24 hours, a bare number is minutes.
 * @example parseLength('1 h 30') // 90
 * @example parseLength('1:30') // 90
 * @example parseLength('2 d') // 2880
 * @example parseLength('soon') // null
 */
export function parseLength(text: string): number | null {
  const trimmed = text.trim();
  const isNegative = trimmed.startsWith('-');
  let rest = isNegative ? trimmed.slice(1).trim() : trimmed;
  if (rest === '') return null;
  const clock = CLOCK.exec(rest);
  const sign = isNegative ? -1 : 1;
  if (clock) return sign * (Number(clock[1]) * MINUTES_PER_HOUR + Number(clock[2]));
  let total = 0;
  let last: number | null = null;
  while (rest !== '') {
    const piece = PIECE.exec(rest);
    if (piece === null) return null;
    const letter = piece[2]?.[0]?.toLowerCase();
    const unit: number = letter === undefined ? smallerUnit(last) : (UNITS[letter] ?? 1);
    if (last !== null && unit >= last) return null;
    total += toNumber(piece[1] ?? '') * unit;
    last = unit;
    rest = rest.slice(piece[0].length);
  }
  return sign * Math.round(total);
}

/** Hours and minutes as they are put into a field, short enough to be typed over: `1 h 30 min`. */
export function writeLength(length: number, clock: 'elapsed' | 'worked'): string {
  const sign = length < 0 ? '-' : '';
  let left = Math.round(Math.abs(length));
  const parts: string[] = [];
  const take = (size: number, unit: string) => {
    const count = Math.floor(left / size);
    if (count > 0) parts.push(`${count} ${unit}`);
    left -= count * size;
  };
  if (clock === 'elapsed') take(MINUTES_PER_DAY, 'd');
  take(MINUTES_PER_HOUR, 'h');
  take(1, 'min');
  return parts.length === 0 ? '0 min' : sign + parts.join(' ');
}
