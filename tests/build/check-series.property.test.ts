import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSeries, type SeriesDocument } from '@/lib/build';
import { sampleSeries } from './sample-series';

type Path = readonly (string | number)[];

/** Paths to every number and text of plain data. */
function leaves(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value === 'number' || typeof value === 'string') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]));
}

/** The same data with another number or text in one place. */
function replaceLeaf(value: unknown, [step, ...rest]: Path, number: number, text: string): unknown {
  if (step === undefined) return typeof value === 'number' ? number : text;
  if (Array.isArray(value)) return value.map((inner: unknown, index) => (index === step ? replaceLeaf(inner, rest, number, text) : inner));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, key === step ? replaceLeaf(inner, rest, number, text) : inner]));
}

const sample = sampleSeries();
const places = leaves(sample).filter((path) => path.at(-1) !== 'kind' && path.at(-1) !== 'sort' && path.at(-1) !== 'category');
const number = fc.oneof(fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -1, 1e300), fc.double());
const text = fc.oneof(fc.constantFrom('', ' ', '0000-00-00', '2026-13-01', '24:00', 'x'.repeat(3000)), fc.string());

describe('checkSeries on nonsense', () => {
  it('tells what is wrong and never throws, whatever numbers and texts stand in a series', () => {
    const slips = fc.array(fc.tuple(fc.constantFrom(...places), number, text), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(slips, (changes) => {
      const broken = changes.reduce<unknown>((document, [path, value, word]) => replaceLeaf(document, path, value, word), sample);
      // Same shape as the sample: only numbers became other numbers and texts other texts.
      const issues = checkSeries(broken as SeriesDocument);
      for (const { message, fix, code } of issues) {
        expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/u);
        expect(message.length).toBeLessThan(2000);
        expect(message.length * fix.length).toBeGreaterThan(0);
      }
    }), { numRuns: 400 });
  });
});
