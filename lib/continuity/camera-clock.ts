/** When a take was recorded, by the time-of-day timecode of its camera put right by what its clock is off. */
import type { Camera } from '@/lib/build';
import { addDays, dateOf, startOfDay } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import type { TakeEntry } from '@/lib/takes';
import { framesPerDay, momentOfFrame } from '@/lib/takes';

const MS_PER_SECOND = 1000;

export interface RecordedSpan {
  readonly start: Instant;
  /** null: its end was not read. */
  readonly end: Instant | null;
}

/**
 * By the workshop's clock, on the day that brings it nearest to when the take was logged: timecode starts again at midnight.
 * Null without a start that can be read.
 */
export function recordedSpan({ take, at }: TakeEntry, camera: Pick<Camera, 'clockOffset'>, zone: string): RecordedSpan | null {
  const { format, startFrame, endFrame } = take;
  if (format === null || startFrame === null || startFrame < 0 || startFrame >= framesPerDay(format)) return null;
  const offset = camera.clockOffset * MS_PER_SECOND;
  const today = dateOf(at, zone);
  const midnights = [addDays(today, -1), today, addDays(today, 1)].map((date) => startOfDay(date, zone));
  const starts = midnights.map((midnight) => ({ midnight, start: momentOfFrame(startFrame, format, midnight, offset) }));
  const nearest = starts.reduce((best, one) => (Math.abs(one.start - at) < Math.abs(best.start - at) ? one : best));
  const length = endFrame === null ? null : endFrame - startFrame + (endFrame < startFrame ? framesPerDay(format) : 0);
  return { start: nearest.start, end: length === null ? null : momentOfFrame(startFrame + length, format, nearest.midnight, offset) };
}

/** @example sayClock(4) // '4 s ahead' */
export function sayClock(seconds: number): string {
  const off = Math.abs(seconds);
  const length = off < 120 ? `${Math.round(off * 10) / 10} s` : off < 7200 ? `${Math.round(off / 60)} min` : off < 171_000 ? `${Math.round(off / 360) / 10} h` : `${Math.round(off / 86_400)} days`;
  return `${length} ${seconds > 0 ? 'ahead' : 'behind'}`;
}
