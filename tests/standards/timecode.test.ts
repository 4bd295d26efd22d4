/** SMPTE ST 12-1 (read through secondary sources): labels and frames, against an independent program where that one is right. */
import Timecode from 'smpte-timecode';
import { describe, expect, test } from 'vitest';
import { fieldsOfFrame, FRAME_RATES, frameOfFields, framesPerDay, nominalRate, readTimecode, sayFormat, writeTimecode, type TimecodeFormat } from '@/lib/continuity';

const format = (numerator: number, denominator: number, isDropFrame = false): TimecodeFormat => ({ rate: { numerator, denominator }, isDropFrame });
const DF30 = format(30_000, 1001, true);
const NDF30 = format(30_000, 1001);
const DF60 = format(60_000, 1001, true);

const TABLE: readonly (readonly [TimecodeFormat, number, string])[] = [
  [DF30, 0, '00:00:00;00'], [DF30, 1799, '00:00:59;29'], [DF30, 1800, '00:01:00;02'], [DF30, 3597, '00:01:59;29'], [DF30, 3598, '00:02:00;02'],
  [DF30, 10_790, '00:06:00;02'], [DF30, 17_981, '00:09:59;29'], [DF30, 17_982, '00:10:00;00'], [DF30, 107_892, '01:00:00;00'],
  [DF30, 1_084_319, '10:03:00;05'], [DF30, 2_589_407, '23:59:59;29'],
  [NDF30, 1800, '00:01:00:00'], [NDF30, 17_982, '00:09:59:12'], [NDF30, 107_892, '00:59:56:12'],
  [DF60, 3599, '00:00:59;59'], [DF60, 3600, '00:01:00;04'], [DF60, 35_964, '00:10:00;00'], [DF60, 215_784, '01:00:00;00'],
  [format(24, 1), 86_400, '01:00:00:00'], [format(25, 1), 90_000, '01:00:00:00'], [format(30, 1), 108_000, '01:00:00:00'],
  [format(50, 1), 180_000, '01:00:00:00'], [format(60, 1), 216_000, '01:00:00:00'],
];

const ALL_FORMATS: readonly TimecodeFormat[] = [...FRAME_RATES.map((rate) => ({ rate, isDropFrame: false })), DF30, DF60];

describe('SMPTE ST 12-1', () => {
  test.each(TABLE.map(([how, frame, label]) => [sayFormat(how), frame, label, how] as const))('%s: frame %i is %s', (_name, frame, label, how) => {
    expect(writeTimecode(frame, how)).toBe(label);
    expect(readTimecode(label, how)).toEqual({ ok: true, value: frame });
  });

  test.each(ALL_FORMATS.map((how) => [sayFormat(how), how] as const))('every frame of a day at %s has a label of its own that leads back to it', (_name, how) => {
    const day = framesPerDay(how);
    const nominal = nominalRate(how.rate);
    let [wrong, last] = [0, -1];
    for (let frame = 0; frame < day; frame += 1) {
      const fields = fieldsOfFrame(frame, how);
      const place = ((fields.hours * 60 + fields.minutes) * 60 + fields.seconds) * 100 + fields.frames;
      if (frameOfFields(fields, how) !== frame || place <= last || fields.seconds > 59 || fields.frames >= nominal) wrong += 1;
      last = place;
    }
    expect(wrong).toBe(0);
    for (let frame = day % 389; frame < day; frame += 389) {
      const back = readTimecode(writeTimecode(frame, how), how);
      if (!back.ok || back.value !== frame) wrong += 1;
    }
    expect(wrong).toBe(0);
    expect(writeTimecode(day - 1, how).slice(0, 8)).toBe('23:59:59');
  });

  test.each(['00:01:00;00', '00:01:00;01', '00:59:00;01', '24:00:00;00', '00:00:60;00', '00:60:00;00', '00:00:00;30', '0:00:00;00', '', '00:00:00;0', '-1:00:00;00', '00:00:01:00'])(
    'the label “%s” is refused at 29.97 drop-frame', (label) => {
      expect(readTimecode(label, DF30).ok).toBe(false);
    });

  test.each([format(24_000, 1001, true), format(25, 1, true), format(30, 1, true), format(60, 1, true)].map((how) => [sayFormat(how), how] as const))(
    'there is no %s', (_name, how) => {
      expect(readTimecode('00:00:00;00', how)).toMatchObject({ ok: false, error: [{ code: 'drop-frame-impossible' }] });
      expect(() => writeTimecode(0, how)).toThrow(RangeError);
    });

  test('a semicolon at 25 frames, a frame before the first and one after the last are refused', () => {
    expect(readTimecode('01:00:00;00', format(25, 1))).toMatchObject({ ok: false, error: [{ code: 'timecode-mark' }] });
    expect(() => writeTimecode(-1, format(25, 1))).toThrow(RangeError);
    expect(() => writeTimecode(2_160_000, format(25, 1))).toThrow(RangeError);
    expect(readTimecode('00:00:00:60', format(60, 1)).ok).toBe(false);
    expect(readTimecode('00:00:00:59', format(60, 1))).toEqual({ ok: true, value: 59 });
  });
});

/** smpte-timecode 1.3.6 knows these rates; what it accepts wrongly (drop-frame at 23.976, frame -1, “;” at 25) is not asked of it. */
describe('against an independent program', () => {
  test.each([[format(24_000, 1001), 23.976], [format(24, 1), 24], [format(25, 1), 25], [NDF30, 29.97], [DF30, 29.97], [format(30, 1), 30], [format(50, 1), 50], [DF60, 59.94], [format(60, 1), 60]] as const)(
    'labels agree every 997 frames of a day (%o, %d)', (how, rate) => {
      const different: string[] = [];
      for (let frame = 0; frame < framesPerDay(how); frame += 997) {
        const theirs = new Timecode(frame, rate, how.isDropFrame).toString();
        const ours = writeTimecode(frame, how);
        if (theirs !== ours) different.push(`${frame}: ${ours} and ${theirs}`);
      }
      expect(different).toEqual([]);
    });
});
