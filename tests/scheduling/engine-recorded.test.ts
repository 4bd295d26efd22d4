/**
 * The same seed and work give the same answer on any machine: dates, people, terms, bounds, reasons, and the way that led there.
 * Recorded by tests/bench/record-engine.ts; whether an answer is right is for the other tests to say.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileOf, recordings, type Fields } from './recorded-cases';

const read = (name: string) => JSON.parse(readFileSync(fileOf(name), 'utf8')) as Readonly<Record<string, Fields>>;

describe.each(Object.entries(recordings))('%s problems', (name, cases) => {
  const recorded = read(name);

  it('are those that were recorded', () => {
    expect(Object.keys(recorded)).toEqual(cases.map(({ id }) => id));
  });

  it.each(cases)('give the recorded answer: $id', ({ id, make }) => {
    expect(make()).toEqual(recorded[id]);
  });
});
