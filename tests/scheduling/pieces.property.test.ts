import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAR } from '@/lib/scheduling/calendar-index';
import { compile } from '@/lib/scheduling/compile';
import { listPieces } from '@/lib/scheduling/describe';
import type { Model } from '@/lib/scheduling/model';
import { alignStart, endOf, latestStart, startForEnd } from '@/lib/scheduling/timing';
import { activity, problem } from './simple';

const LAST = 400;

/** One piece of split work in a random calendar, some of its intervals touching or shorter than a piece. */
const models = fc.record({
  rows: fc.array(fc.record({ gap: fc.integer({ min: 0, max: 20 }), length: fc.integer({ min: 1, max: 40 }) }), { minLength: 1, maxLength: 8 }),
  duration: fc.integer({ min: 2, max: 120 }),
  shortestPiece: fc.integer({ min: 2, max: 30 }),
}).map(({ duration, rows, shortestPiece }): Model => {
  let at = 0;
  const intervals = rows.map(({ gap, length }) => {
    const start = at + gap;
    at = start + length;
    return { start, end: at };
  });
  return compile(problem([activity('a', duration, { mode: 'split', calendar: 'c', shortestPiece })], { horizon: LAST, calendars: [{ id: 'c', intervals }] }));
});

/** Minute by minute: the pieces of work begun at `start`, or null when it may not begin there. */
function workFrom(model: Model, start: number): readonly number[] | null {
  const { duration, shortestPiece } = model.problem.activities[0]!;
  const least = Math.min(duration, shortestPiece!);
  const long = model.problem.calendars[0]!.intervals.filter((interval) => interval.end - interval.start >= least);
  if (!long.some((interval) => interval.start <= start && start < interval.end)) return null;
  let left = duration;
  const lengths: number[] = [];
  for (const interval of long) {
    const length = Math.min(left, interval.end - Math.max(start, interval.start));
    if (length <= 0) continue;
    lengths.push(length);
    left -= length;
  }
  return left > 0 || lengths.some((length) => length < least) ? null : lengths;
}

const starts = Array.from({ length: LAST }, (_, t) => t);

describe('split work with a shortest piece', () => {
  it('begins at the earliest minute that makes no scrap, found minute by minute', () => {
    fc.assert(fc.property(models, fc.integer({ min: 0, max: LAST }), (model, from) => {
      const expected = starts.find((t) => t >= from && workFrom(model, t) !== null) ?? FAR;
      expect(alignStart(model, 0, from)).toBe(expected);
      if (expected < FAR) expect(listPieces(model, 0, expected, endOf(model, 0, expected)).map((piece) => piece.end - piece.start)).toEqual(workFrom(model, expected));
    }), { numRuns: 400 });
  });

  it('begins at the latest minute that ends in time, and at the earliest that ends late enough', () => {
    fc.assert(fc.property(models, fc.integer({ min: 0, max: LAST }), (model, end) => {
      const possible = starts.filter((t) => workFrom(model, t) !== null);
      expect(latestStart(model, 0, end)).toBe(possible.findLast((t) => endOf(model, 0, t) <= end) ?? -1);
      expect(startForEnd(model, 0, end)).toBe(possible.find((t) => endOf(model, 0, t) >= end) ?? FAR);
    }), { numRuns: 400 });
  });
});
