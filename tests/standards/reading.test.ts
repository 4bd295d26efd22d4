import { expect, test } from 'vitest';
import { fitsSubtitle, leastReadingSeconds, READING, SPEECH_RATE } from '@/lib/estimate';

// BBC Subtitle Guidelines: 160-180 words a minute, at least 0.3 s a word, 37 fixed-width characters a line, two lines.
test('the BBC reading speed, 160 to 180 words a minute, gives a word between 0.333 and 0.375 s, never under 0.3 s', () => {
  expect(60 / READING.fastest).toBeCloseTo(0.333, 3);
  expect(60 / READING.slowest).toBeCloseTo(0.375, 3);
  expect(leastReadingSeconds(10)).toBeCloseTo(3, 10);
  expect(leastReadingSeconds(1)).toBeLessThan(60 / READING.fastest);
});

test('a subtitle is two lines of 37 characters, broken between words', () => {
  expect(fitsSubtitle('a'.repeat(37))).toBe(true);
  expect(fitsSubtitle('a'.repeat(38))).toBe(false);
  expect(fitsSubtitle(`${'a'.repeat(37)} ${'b'.repeat(37)}`)).toBe(true);
  expect(fitsSubtitle(`${'a'.repeat(37)} ${'b'.repeat(36)} c`)).toBe(false);
  expect(fitsSubtitle(`${'a'.repeat(37)} ${'b'.repeat(35)} c`)).toBe(true);
});

// Speech in audiobooks and instruction, 140-160 words a minute (National Center for Voice and Speech and audiobook guides, from memory).
test('speech is counted at 150 words a minute, the middle of 140 to 160', () => {
  expect(SPEECH_RATE).toBe((140 + 160) / 2);
  expect(450 / SPEECH_RATE).toBe(3);
});
