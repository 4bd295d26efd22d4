/** Timecode of evidence: is it a label that a camera of this series can write? SMPTE ST 12-1 (secondary source). */
import type { Series } from '@/lib/build';
import { fail, issue, ok, type Result } from '@/lib/result';

const LABEL = /^(\d{2}):([0-5]\d):([0-5]\d)([:;])(\d{2})$/;

/**
 * Checks a label against a frame rate: `:` counts every frame, `;` drops labels at 29.97 and 59.94.
 * Fails with `timecode-wrong`.
 * @example readTimecode('00:12:04:11', { numerator: 25, denominator: 1 })
 */
export function readTimecode(text: string, rate: Series['frameRate']): Result<string> {
  const label = text.trim();
  const match = LABEL.exec(label);
  const nominal = Math.round(rate.numerator / rate.denominator);
  const wrong = (why: string): Result<string> =>
    fail([issue('timecode-wrong', `“${label.slice(0, 40)}” is no timecode of this series: ${why}.`, 'Write hours:minutes:seconds:frames as on the recorder, such as 00:12:04:11.', { path: ['timecode'] })]);
  if (match === null) return wrong('it is not of the form 00:12:04:11');
  const [, hours = '', minutes = '', seconds = '', mark = '', frames = ''] = match;
  if (Number(hours) > 23) return wrong('a day has 24 hours');
  if (Number(frames) >= nominal) return wrong(`there are ${nominal} frames in a second`);
  if (mark === ':') return ok(label);
  if (rate.denominator !== 1001 || (nominal !== 30 && nominal !== 60)) return wrong('“;” belongs to 29.97 and 59.94 frames a second');
  const isDropped = seconds === '00' && Number(frames) < nominal / 15 && Number(minutes) % 10 !== 0;
  return isDropped ? wrong('drop-frame counting leaves this label out') : ok(label);
}

/** Seconds of a label from 00:00:00:00. Fails with `timecode-wrong`. @example timecodeSeconds('00:01:00;02', 30000/1001) // 60.06 */
export function timecodeSeconds(text: string, rate: Series['frameRate']): Result<number> {
  const label = readTimecode(text, rate);
  if (!label.ok) return label;
  const [hours = 0, minutes = 0, seconds = 0, frames = 0] = label.value.split(/[:;]/).map(Number);
  const nominal = Math.round(rate.numerator / rate.denominator);
  const whole = hours * 60 + minutes;
  const dropped = label.value.includes(';') ? (nominal / 15) * (whole - Math.floor(whole / 10)) : 0;
  return ok(((nominal * (whole * 60 + seconds) + frames - dropped) * rate.denominator) / rate.numerator);
}
