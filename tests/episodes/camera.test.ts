import { expect, test } from 'vitest';
import { cameraNeed, checkKit, gigabytesPerHour, oneWayRisk, shootingRatio, timeLapse } from '@/lib/episodes';
import type { CameraKit } from '@/lib/build';
import { unwrap } from '@/lib/result';

const KIT: CameraKit = { cameras: 2, bitRate: 100, cards: [64, 64], batteries: 4, batteryMinutes: 90, fillLimit: 0.9 };

test('100 Mb/s fill 45 GB an hour', () => {
  expect(gigabytesPerHour(100)).toBeCloseTo(45, 10);
});

test('two cameras for an hour take 90 GB of 115.2 GB, two batteries, and no warning', () => {
  expect(cameraNeed(KIT, 60)).toMatchObject({ gigabytes: 90, space: 115.2, batteries: 2, issues: [] });
});

test('cards full to the limit hold, a minute more stops; a fifth battery warns', () => {
  const limit = (115.2 / 90) * 60;
  expect(cameraNeed(KIT, limit - 0.01).issues).toEqual([]);
  expect(cameraNeed(KIT, limit + 0.01).issues.map(({ code, severity }) => [code, severity])).toEqual([['card-space', 'stop']]);
  expect(cameraNeed({ ...KIT, cards: [1000] }, 180).issues).toEqual([]);
  expect(cameraNeed({ ...KIT, cards: [1000] }, 181).issues.map(({ code, severity }) => [code, severity])).toEqual([['batteries', 'warn']]);
});

test('on mains no battery is used', () => {
  expect(cameraNeed({ ...KIT, batteries: 0, cards: [1000] }, 600)).toMatchObject({ batteries: 0, issues: [] });
});

test('negative card sizes, bit rates and batteries are refused together', () => {
  const bad = checkKit({ ...KIT, cards: [64, -32], bitRate: 0, batteries: -1 });
  expect(bad.ok ? [] : bad.error.map(({ code }) => code)).toEqual(['bit-rate', 'card-size', 'battery']);
  expect(bad.ok ? '' : bad.error[1]!.message).toBe('Card 2 holds -32 GB; a card holds more than 0 GB.');
  expect(checkKit(KIT).ok).toBe(true);
});

// Worked by hand: duration / (clip · frames a second).
test.each([[120, 10, 25, 28.8, 28], [240, 12, 25, 48, 48], [1440, 20, 30, 144, 144]])(
  'a wait of %d min for a clip of %d s at %d frames a second: %d s between frames, set %d', (wait, clip, rate, exact, set) => {
    const lapse = unwrap(timeLapse(wait, clip, rate));
    expect(lapse.exactInterval).toBeCloseTo(exact, 10);
    expect(lapse.interval).toBe(set);
    expect(lapse.clip).toBeGreaterThanOrEqual(clip);
  },
);

test('a wait too short for a clip, and lengths that make no sense, are refused', () => {
  expect(timeLapse(1, 10, 25).ok).toBe(false);
  expect(timeLapse(-5, 10, 25).ok).toBe(false);
  expect(timeLapse(60, 0, 25).ok).toBe(false);
});

test('five hours recorded for a quarter of an hour on screen are 20 to 1; nothing on screen has no ratio', () => {
  expect(shootingRatio(300, 15)).toBe(20);
  expect(shootingRatio(300, 0)).toBeNull();
});

test('one camera loses a one-way shot once in twenty, two once in about 140; several shots add up', () => {
  expect(oneWayRisk(1, 1).shot).toBe(0.05);
  expect(oneWayRisk(1, 2).shot).toBeCloseTo(0.1 * 0.05 + 0.045 ** 2, 12);
  expect(oneWayRisk(3, 1).any).toBeCloseTo(1 - 0.95 ** 3, 12);
  expect(oneWayRisk(0, 1).any).toBe(0);
  expect(() => oneWayRisk(1, 0)).toThrow(RangeError);
});
