import { expect, test } from 'vitest';
import { isTake, recordedSpan, sayClock } from '@/lib/continuity';
import { at, sampleSeries } from '../build/sample-series';
import { cameraA, find, R25 } from './check-case';
import { take } from './sample-log';

const ZONE = 'Europe/London';
const HOUR = 25 * 3600;

function spanOf(startFrame: number, endFrame: number | null, loggedAt: ReturnType<typeof at>, clockOffset = 0) {
  const entry = take({ format: R25, startFrame, endFrame }, { at: loggedAt });
  const span = isTake(entry) ? recordedSpan(entry, { clockOffset }, ZONE) : null;
  return span === null ? null : [new Date(span.start).toISOString(), span.end === null ? null : new Date(span.end).toISOString()];
}

test('a take is recorded when its timecode says, less what the clock of its camera runs ahead', () => {
  const logged = at('2026-12-01', '18:45');
  expect(spanOf(18 * HOUR, 18 * HOUR + 250, logged)).toEqual(['2026-12-01T18:00:00.000Z', '2026-12-01T18:00:10.000Z']);
  expect(spanOf(18 * HOUR, null, logged, 4)).toEqual(['2026-12-01T17:59:56.000Z', null]);
  expect(spanOf(18 * HOUR, null, logged, -90)).toEqual(['2026-12-01T18:01:30.000Z', null]);
});

test('timecode that starts again at midnight is read on the nearest day', () => {
  expect(spanOf(24 * HOUR - 250, 250, at('2026-12-02', '00:01'))).toEqual(['2026-12-01T23:59:50.000Z', '2026-12-02T00:00:10.000Z']);
  expect(spanOf(10, 20, at('2026-12-01', '23:59'), 30)?.[0]).toBe('2026-12-01T23:59:30.400Z');
  expect(spanOf(24 * HOUR, null, at('2026-12-01', '12:00'))).toBeNull();
});

test('a difference is said in the unit that fits it', () => {
  expect([4, -119, 120, 7199, 7200, 172_800, -172_800].map(sayClock)).toEqual(['4 s ahead', '119 s behind', '2 min ahead', '120 min ahead', '2 h ahead', '2 days ahead', '2 days behind']);
});

test('a camera whose timecode is more than ten minutes from its logged take is told, one within them is not', () => {
  const document = sampleSeries({ cameras: [cameraA] });
  const logged = at('2026-12-01', '18:10');
  const entries = (minute: number) => [take({ cameraId: 'camera-a', format: R25, startFrame: 18 * HOUR + minute * 1500 - 100, endFrame: 18 * HOUR + minute * 1500 }, { at: logged })];
  expect(find(32, { document, entries: entries(0) })).toEqual([]);
  expect(find(32, { document, entries: entries(-1) })[0]?.message).toContain('11 min behind');
});
