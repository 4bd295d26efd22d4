/** Times as a clock on the wall shows them, to the minute. */
import { fail, issue, ok, type Result } from '@/lib/result';
import { MINUTES_PER_DAY, MINUTES_PER_HOUR } from '@/lib/units';
import { quoteText } from './quoted-text';

/** `18:30`, 24-hour wall time; `24:00` may end a day. */
export type WallTime = string;

const SHAPE = /^([01]\d|2[0-3]):([0-5]\d)$/;
const END_OF_DAY = '24:00';

/**
 * Reads a time of day. `24:00` passes only as an end. Spaces around it are ignored.
 * Fails with `time-shape` or `time-end-of-day`.
 * @example parseWallTime('18:30') // { ok: true, value: '18:30' }
 * @example parseWallTime('24:00', 'end') // { ok: true, value: '24:00' }
 */
export function parseWallTime(text: string, as: 'start' | 'end' = 'start'): Result<WallTime> {
  const time = text.trim();
  if (SHAPE.test(time)) return ok(time);
  if (time === END_OF_DAY) {
    if (as === 'end') return ok(time);
    return fail([issue('time-end-of-day', '24:00 ends a day and cannot start anything.', 'Write 00:00 on the next day.')]);
  }
  return fail([issue('time-shape', `${quoteText(text)} is not a time of day.`, 'Write hours and minutes like 18:30, from 00:00 to 23:59.')]);
}

/**
 * Minutes on the wall since 00:00, 0 to 1440.
 * @throws RangeError when the text is no wall time.
 * @example minuteOfDay('18:30') // 1110
 */
export function minuteOfDay(time: WallTime): number {
  if (time === END_OF_DAY) return MINUTES_PER_DAY;
  if (!SHAPE.test(time)) throw new RangeError(`${quoteText(time)} is no wall time`);
  return Number(time.slice(0, 2)) * MINUTES_PER_HOUR + Number(time.slice(3));
}

/**
 * The other way round.
 * @throws RangeError outside 0 to 1440 or when not whole.
 * @example wallTimeOfMinute(1110) // '18:30'
 */
export function wallTimeOfMinute(minute: number): WallTime {
  if (!Number.isInteger(minute) || minute < 0 || minute > MINUTES_PER_DAY) {
    throw new RangeError(`Minute ${minute} is no minute of a day`);
  }
  const hour = String(Math.floor(minute / MINUTES_PER_HOUR)).padStart(2, '0');
  return `${hour}:${String(minute % MINUTES_PER_HOUR).padStart(2, '0')}`;
}
