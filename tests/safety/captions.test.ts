import { describe, expect, it } from 'vitest';
import { breakLines, LIBRARY, writeCaptions, type Cue } from '@/lib/safety';
import { unwrap } from '@/lib/result';

const cue = (start: number, end: number | null, text: string): Cue => ({ id: `c${start}`, start, end, text });

describe('cautions as captions', () => {
  it('come in order of time, stand as long as they take to read, and break into lines of 37 characters', () => {
    const file = unwrap(writeCaptions([cue(3725.5, null, 'Old linings may hold asbestos. Wet it, never blow it.'), cue(12, 18, 'Ears on before the tool starts.')]));
    expect(file.text).toBe('WEBVTT\n\ncaution-1\n00:12.000 --> 00:18.000\nEars on before the tool starts.\n\ncaution-2\n01:02:05.500 --> 01:02:10.250\nOld linings may hold asbestos. Wet\nit, never blow it.\n');
    expect(file.warnings).toEqual([]);
    for (const { caution } of LIBRARY) for (const line of breakLines(caution.screen)) expect(line.length).toBeLessThanOrEqual(37);
  });

  it('escape what a WebVTT payload may not hold', () => {
    expect(unwrap(writeCaptions([cue(0, 10, 'A & B <c> --> d')])).text).toContain('A &amp; B &lt;c&gt; --&gt; d');
  });

  it('are refused without a time or with an end before the start, and doubted when too short to read', () => {
    const bad = writeCaptions([cue(Number.NaN, null, 'x'), cue(-1, null, 'x'), cue(5, 5, 'x')]);
    expect(bad.ok ? [] : bad.error.map(({ code }) => code)).toEqual(['cue-without-time', 'cue-without-time', 'cue-ends-early']);
    expect(unwrap(writeCaptions([cue(0, 2.9, 'Stop')])).warnings.map(({ code }) => code)).toEqual(['cue-too-short']);
    expect(unwrap(writeCaptions([cue(0, 3, 'Stop')])).warnings).toEqual([]);
  });
});
