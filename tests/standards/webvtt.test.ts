/** WebVTT (W3C) and the BBC subtitle guidelines: 160 to 180 words a minute, 0.3 s a word, 37 characters, 2 lines. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkReading } from '@/lib/estimate';
import { readWebVtt, writeWebVtt } from '@/lib/exchange';
import { unwrap } from '@/lib/result';
import { breakLines, captionSeconds } from '@/lib/safety';

describe('WebVTT', () => {
  test('starts with WEBVTT and an empty line, writes hours only where there are some, a dot and three digits', () => {
    expect(writeWebVtt([{ start: 1, end: 2.5, text: 'Gloves & <mask> --> on' }, { start: 3600, end: 3661.25, text: 'Stop' }])).toEqual({
      ok: true, value: 'WEBVTT\n\n1\n00:01.000 --> 00:02.500\nGloves &amp; &lt;mask&gt; --&gt; on\n\n2\n01:00:00.000 --> 01:01:01.250\nStop\n',
    });
  });

  test.each([
    ['ends at its start', [{ start: 1, end: 1, text: 'a' }], 'cue-length'], ['starts before zero', [{ start: -1, end: 1, text: 'a' }], 'cue-start'],
    ['starts before the one ahead', [{ start: 2, end: 3, text: 'a' }, { start: 1, end: 3, text: 'b' }], 'cue-order'], ['has no text', [{ start: 0, end: 1, text: ' ' }], 'cue-empty'],
  ])('refuses a cue that %s', (_what, cues, code) => {
    expect(writeWebVtt(cues)).toMatchObject({ ok: false, error: [{ code }] });
  });

  test('two cues may start together', () => {
    expect(writeWebVtt([{ start: 1, end: 2, text: 'a' }, { start: 1, end: 3, text: 'b' }]).ok).toBe(true);
  });

  test.each([
    ['no head', '00:01.000 --> 00:02.000\na'], ['another head', 'WEBVTTX\n\n00:01.000 --> 00:02.000\na'], ['no empty line after the head', 'WEBVTT\n00:01.000 --> 00:02.000\na'],
    ['a comma in the time', 'WEBVTT\n\n00:01,000 --> 00:02.000\na'], ['two digits after the dot', 'WEBVTT\n\n00:01.00 --> 00:02.00\na'],
    ['60 seconds', 'WEBVTT\n\n00:60.000 --> 01:02.000\na'], ['an end before the start', 'WEBVTT\n\n00:03.000 --> 00:02.000\na'], ['no arrow', 'WEBVTT\n\nhello'],
  ])('a file with %s is refused', (_what, text) => expect(readWebVtt(text).ok).toBe(false));

  test('notes, styles, settings, a mark of order and lines of Windows are read past', () => {
    const text = '\uFEFFWEBVTT - workshop\r\n\r\nNOTE a\r\nb\r\n\r\nSTYLE\r\n::cue {}\r\n\r\nfirst\r\n01:00:01.000 --> 01:00:02.000 line:0\r\nTwo\r\nlines\r\n';
    expect(readWebVtt(text)).toEqual({ ok: true, value: [{ start: 3601, end: 3602, text: 'Two\nlines' }] });
  });

  test('a round trip gives the same cues', () => {
    const line = fc.string({ minLength: 1 }).map((text) => text.replaceAll(/[\r\n\u2028\u2029]/g, ' ').trim()).filter((text) => text !== '');
    const cues = fc.array(fc.record({ start: fc.nat(90_000_000), length: fc.integer({ min: 1, max: 100_000 }), lines: fc.array(line, { minLength: 1, maxLength: 2 }) }), { maxLength: 6 })
      .map((list) => list.toSorted((a, b) => a.start - b.start).map(({ start, length, lines }) => ({ start: start / 1000, end: (start + length) / 1000, text: lines.join('\n') })));
    fc.assert(fc.property(cues, (list) => {
      expect(unwrap(readWebVtt(unwrap(writeWebVtt(list))))).toEqual(list);
    }), { numRuns: 150 });
  });
});

describe('reading speed', () => {
  // Common practice, worked examples of the reference.
  test('a caution of 43 characters and 7 words stands 3.87 s', () => {
    const text = 'abcdefg abcdefg abcdefg abcde abcd abcd abc';
    expect([text.length, text.split(' ').length]).toEqual([43, 7]);
    expect(captionSeconds(text)).toBeCloseTo(3.87, 2);
  });

  test('a caution of 51 characters and 8 words stands 4.40 s, and none stands under 3 s', () => {
    const text = 'abcdefg abcdefg abcdefg abcde abcd abcd abcd abcdef'.padEnd(51, 'x');
    expect(text.split(' ')).toHaveLength(8);
    expect(captionSeconds(text)).toBeCloseTo(4.4, 2);
    expect(captionSeconds('Hot')).toBe(3);
  });

  test('180 words a minute can be read, more cannot', () => {
    const words = 'a b c d e f g h i';
    expect(checkReading(words, 3)).toEqual([]);
    expect(checkReading(words, 2.99).map(({ code }) => code)).toEqual(['caption-fast']);
    expect(checkReading(words, 2.6).map(({ code }) => code)).toEqual(['caption-fast', 'caption-short']);
  });

  test('a line has 37 characters at most, a caption two lines', () => {
    expect(checkReading('x'.repeat(37), 30)).toEqual([]);
    expect(checkReading(`${'x'.repeat(38)}\na\nb`, 30).map(({ code }) => code)).toEqual(['caption-lines', 'caption-line-length']);
    expect(breakLines(`${'a'.repeat(18)} ${'b'.repeat(18)} c`)).toEqual([`${'a'.repeat(18)} ${'b'.repeat(18)}`, 'c']);
  });
});
