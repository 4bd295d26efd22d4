/** Timecode after SMPTE ST 12-1. A frame count and a rational rate are what is kept; the label is a view of them. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';

/** Frames a second as a fraction: 25/1, 30000/1001. */
export interface FrameRate {
  readonly numerator: number;
  readonly denominator: number;
}

/** How frames are counted and labelled. Drop-frame leaves labels out, never frames; it exists at 29.97 and 59.94 only. */
export interface TimecodeFormat {
  readonly rate: FrameRate;
  readonly isDropFrame: boolean;
}

/** The rates that cameras of this kind record. */
export const FRAME_RATES: readonly FrameRate[] = [
  { numerator: 24_000, denominator: 1001 }, { numerator: 24, denominator: 1 }, { numerator: 25, denominator: 1 },
  { numerator: 30_000, denominator: 1001 }, { numerator: 30, denominator: 1 }, { numerator: 48_000, denominator: 1001 },
  { numerator: 48, denominator: 1 }, { numerator: 50, denominator: 1 }, { numerator: 60_000, denominator: 1001 },
  { numerator: 60, denominator: 1 },
];

const SECONDS_PER_DAY = 86_400;
const MS_PER_SECOND = 1000;

/** Frames counted in a second of the label: 30 at 29.97. */
export function nominalRate({ numerator, denominator }: FrameRate): number {
  return Math.round(numerator / denominator);
}

/** @example sayRate({ numerator: 30000, denominator: 1001 }) // '29.97' */
export function sayRate({ numerator, denominator }: FrameRate): string {
  const rate = numerator / denominator;
  return Number.isInteger(rate) ? String(rate) : rate.toFixed(nominalRate({ numerator, denominator }) % 24 === 0 ? 3 : 2);
}

/** @example sayFormat({ rate: { numerator: 30000, denominator: 1001 }, isDropFrame: true }) // '29.97 drop-frame' */
export function sayFormat({ rate, isDropFrame }: TimecodeFormat): string {
  return `${sayRate(rate)}${isDropFrame ? ' drop-frame' : ''}`;
}

/** True where labels may be left out: 30000/1001 and 60000/1001. */
function canDropFrames({ numerator, denominator }: FrameRate): boolean {
  return denominator === 1001 && (numerator === 30_000 || numerator === 60_000);
}

const isKnownRate = ({ numerator, denominator }: FrameRate): boolean =>
  FRAME_RATES.some((known) => known.numerator === numerator && known.denominator === denominator);

const isFormat = ({ rate, isDropFrame }: TimecodeFormat): boolean => isKnownRate(rate) && (!isDropFrame || canDropFrames(rate));

/** What is wrong with a format: an unknown rate, or drop-frame where there is none. */
export function checkFormat({ rate, isDropFrame }: TimecodeFormat): readonly Issue[] {
  if (!isKnownRate(rate)) {
    return [issue('frame-rate-unknown', `No camera here records ${rate.numerator}/${rate.denominator} frames a second.`,
      `Choose one of ${FRAME_RATES.map(sayRate).join(', ')}.`, { path: ['rate'] })];
  }
  if (!isDropFrame || canDropFrames(rate)) return [];
  return [issue('drop-frame-impossible', `There is no drop-frame timecode at ${sayRate(rate)} frames a second; it exists at 29.97 and 59.94 only.`,
    'Take drop-frame out, or correct the rate.', { path: ['isDropFrame'] })];
}

/** Labels left out at the start of each minute but every tenth: 2 at 29.97, 4 at 59.94. */
function droppedPerMinute({ rate, isDropFrame }: TimecodeFormat): number {
  return isDropFrame && canDropFrames(rate) ? nominalRate(rate) / 15 : 0;
}

/** How a format counts, worked out once. */
interface Counting {
  readonly nominal: number;
  readonly dropped: number;
  readonly perMinute: number;
  readonly perTen: number;
  readonly perDay: number;
}

const countings = new WeakMap<TimecodeFormat, Counting>();

/** @throws RangeError for a format that does not exist */
function countingOf(format: TimecodeFormat): Counting {
  const known = countings.get(format);
  if (known !== undefined) return known;
  if (!isFormat(format)) throw new RangeError(`No such timecode: ${sayFormat(format)}`);
  const [nominal, dropped] = [nominalRate(format.rate), droppedPerMinute(format)];
  const made = { nominal, dropped, perMinute: 60 * nominal - dropped, perTen: 600 * nominal - 9 * dropped, perDay: framesPerDay(format) };
  countings.set(format, made);
  return made;
}

/** Labels in 24 hours; a frame count is less than this. @example framesPerDay({ rate: rate25, isDropFrame: false }) // 2160000 */
export function framesPerDay(format: TimecodeFormat): number {
  return nominalRate(format.rate) * SECONDS_PER_DAY - droppedPerMinute(format) * (24 * 60 - 24 * 6);
}

/** The four numbers of a label. */
export interface TimecodeFields {
  readonly hours: number;
  readonly minutes: number;
  readonly seconds: number;
  readonly frames: number;
}

const LABEL = /^(\d{2}):(\d{2}):(\d{2})([:;.])(\d{2})$/u;

function readFields(label: string, format: TimecodeFormat): Result<TimecodeFields> {
  const [, hh = '', mm = '', ss = '', mark = '', ff = ''] = LABEL.exec(label.trim()) ?? [];
  if (mark === '') {
    return fail([issue('timecode-unreadable', `“${label.slice(0, 40)}” is not a timecode.`, `Write it as hours, minutes, seconds and frames: 01:02:03${format.isDropFrame ? ';' : ':'}04.`)]);
  }
  if ((mark !== ':') !== format.isDropFrame) {
    const [what, right] = mark === ':' ? ['without', ';'] : ['with', ':'];
    return fail([issue('timecode-mark', `“${label.trim()}” is written ${what} the sign of drop-frame, and the camera counts ${sayFormat(format)}.`, `Write “${right}” before the frames, or correct the camera's format.`)]);
  }
  return ok({ hours: Number(hh), minutes: Number(mm), seconds: Number(ss), frames: Number(ff) });
}

function checkFields(label: string, fields: TimecodeFields, format: TimecodeFormat): readonly Issue[] {
  const nominal = nominalRate(format.rate);
  const limits: readonly (readonly [number, number, string])[] = [
    [fields.hours, 24, 'hours'], [fields.minutes, 60, 'minutes'], [fields.seconds, 60, 'seconds'], [fields.frames, nominal, 'frames'],
  ];
  const over = limits.filter(([value, limit]) => value >= limit).map(([value, limit, unit]) =>
    issue('timecode-out-of-range', `“${label.trim()}” has ${value} ${unit}; at ${sayFormat(format)} they go to ${limit - 1}.`, 'Read the label again.'));
  if (over.length > 0) return over;
  const dropped = droppedPerMinute(format);
  if (fields.frames >= dropped || fields.seconds !== 0 || fields.minutes % 10 === 0) return [];
  return [issue('timecode-dropped', `“${label.trim()}” does not exist: at ${sayFormat(format)} the frames 00 to 0${dropped - 1} are left out at the start of each minute that is not a tenth one.`,
    'Read the label again, or correct the camera’s format.')];
}

/**
 * Frame count of a label since 00:00:00:00 (SMPTE ST 12-1).
 * Fails with `frame-rate-unknown`, `drop-frame-impossible`, `timecode-unreadable`, `timecode-mark`, `timecode-out-of-range` or `timecode-dropped`.
 * @example readTimecode('00:01:00;02', { rate: { numerator: 30000, denominator: 1001 }, isDropFrame: true }) // ok(1800)
 */
export function readTimecode(label: string, format: TimecodeFormat): Result<number> {
  const wrong = checkFormat(format);
  if (wrong.length > 0) return fail(wrong);
  const fields = readFields(label, format);
  if (!fields.ok) return fields;
  const bad = checkFields(label, fields.value, format);
  if (bad.length > 0) return fail(bad);
  return ok(frameOfFields(fields.value, format));
}

/** The frame that four numbers name; they must be a label that exists. @throws RangeError for a format that does not exist. @example frameOfFields({ hours: 1, minutes: 0, seconds: 0, frames: 0 }, format25) // 90000 */
export function frameOfFields({ hours, minutes, seconds, frames }: TimecodeFields, format: TimecodeFormat): number {
  const minuteCount = 60 * hours + minutes;
  const { nominal, dropped } = countingOf(format);
  return nominal * (60 * minuteCount + seconds) + frames - dropped * (minuteCount - Math.floor(minuteCount / 10));
}

/** The numbers of the label of a frame. @throws RangeError for a frame outside a day or a format that does not exist. */
export function fieldsOfFrame(frame: number, format: TimecodeFormat): TimecodeFields {
  const { nominal, dropped, perTen, perMinute, perDay } = countingOf(format);
  if (!Number.isInteger(frame) || frame < 0 || frame >= perDay) throw new RangeError(`Frame ${frame} is not within a day at ${sayFormat(format)}`);
  const tens = Math.floor(frame / perTen);
  const rest = frame - tens * perTen;
  const label = frame + 9 * dropped * tens + (dropped > 0 && rest >= dropped ? dropped * Math.floor((rest - dropped) / perMinute) : 0);
  const seconds = Math.floor(label / nominal);
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  return { hours, minutes: minutes - 60 * hours, seconds: seconds - 60 * minutes, frames: label - nominal * seconds };
}

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * The label of a frame.
 * @throws RangeError for a frame outside a day or a format that does not exist.
 * @example writeTimecode(1800, { rate: { numerator: 30000, denominator: 1001 }, isDropFrame: true }) // '00:01:00;02'
 */
export function writeTimecode(frame: number, format: TimecodeFormat): string {
  const { hours, minutes, seconds, frames } = fieldsOfFrame(frame, format);
  return `${two(hours)}:${two(minutes)}:${two(seconds)}${format.isDropFrame ? ';' : ':'}${two(frames)}`;
}

/** Real length of a number of frames, seconds. @example secondsOfFrames(30000, rate2997) // 1001 */
function secondsOfFrames(frames: number, { numerator, denominator }: FrameRate): number {
  return (frames * denominator) / numerator;
}

/** The frame that is on at a moment of real time, counted from frame 0. */
export function framesOfSeconds(seconds: number, { numerator, denominator }: FrameRate): number {
  return Math.floor((seconds * numerator) / denominator + 1e-9);
}

/** How far a camera's clock runs ahead of the workshop's, milliseconds; negative when it is behind. */
export type ClockOffset = number;

/**
 * The moment at which a frame of time-of-day timecode was recorded: real time since the camera's midnight, less what its clock runs ahead.
 * @param midnight start of the day on the camera's clock, as an instant of the workshop's
 */
export function momentOfFrame(frame: number, format: TimecodeFormat, midnight: Instant, offset: ClockOffset): Instant {
  return instant(Math.round(midnight + secondsOfFrames(frame, format.rate) * MS_PER_SECOND - offset));
}

/** The frame a camera counts at a moment; it starts again at 0 after a day. The other way round of {@link momentOfFrame}. */
export function frameAtMoment(at: Instant, format: TimecodeFormat, midnight: Instant, offset: ClockOffset): number {
  const frame = framesOfSeconds((at - midnight + offset) / MS_PER_SECOND, format.rate);
  const day = framesPerDay(format);
  return ((frame % day) + day) % day;
}
