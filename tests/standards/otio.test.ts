/** OpenTimelineIO (Academy Software Foundation), its serialised data model: schema names and required fields. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readOtio, writeOtio, type Timeline } from '@/lib/exchange';
import { MARKER_COLOURS } from '@/lib/exchange/otio';

const SCHEMAS = ['Timeline.1', 'Stack.1', 'Track.1', 'Clip.2', 'Gap.1', 'Marker.2', 'MissingReference.1', 'ExternalReference.1', 'TimeRange.1', 'RationalTime.1'];

const timeline: Timeline = {
  name: 'Takes of Tuesday', rate: { numerator: 30_000, denominator: 1001 },
  clips: [
    { name: 'Strip 1', gap: 0, start: 107_892, length: 300, media: 'file:///cards/A1/0001.mov', markers: [{ name: 'sparks', frame: 107_900, length: 1, colour: 'RED' }], notes: { verdict: 'good' } },
    { name: 'Strip 2', gap: 60, start: 108_500, length: 120, media: '', markers: [], notes: {} },
  ],
};

/** Every object in the file, from the outside in. */
function objectsOf(value: unknown): readonly Readonly<Record<string, unknown>>[] {
  if (Array.isArray(value)) return value.flatMap(objectsOf);
  if (typeof value !== 'object' || value === null) return [];
  const own = Object.fromEntries(Object.entries(value));
  return [own, ...Object.entries(own).filter(([key]) => key !== 'metadata' && key !== 'media_references').flatMap(([, inner]) => objectsOf(inner)), ...objectsOf(Object.values(Object(own['media_references'] ?? {})))];
}

describe('a written timeline', () => {
  const objects = objectsOf(JSON.parse(writeOtio(timeline)));

  test('names a schema of the standard in every object, and uses each of them', () => {
    expect(objects.filter((one) => !SCHEMAS.includes(String(one['OTIO_SCHEMA'])))).toEqual([]);
    expect(new Set(objects.map((one) => one['OTIO_SCHEMA']))).toEqual(new Set(SCHEMAS));
  });

  test.each([
    ['Timeline.1', ['name', 'metadata', 'global_start_time', 'tracks']], ['Stack.1', ['name', 'metadata', 'children', 'source_range', 'effects', 'markers']],
    ['Track.1', ['name', 'metadata', 'kind', 'children', 'source_range', 'effects', 'markers']],
    ['Clip.2', ['name', 'metadata', 'source_range', 'media_references', 'active_media_reference_key', 'effects', 'markers', 'enabled']],
    ['Gap.1', ['name', 'metadata', 'source_range', 'effects', 'markers']], ['Marker.2', ['name', 'metadata', 'color', 'marked_range']],
    ['ExternalReference.1', ['target_url', 'available_range', 'metadata']], ['MissingReference.1', ['available_range', 'metadata']],
    ['TimeRange.1', ['start_time', 'duration']], ['RationalTime.1', ['rate', 'value']],
  ])('%s has its fields', (schema, fields) => {
    for (const one of objects.filter((object) => object['OTIO_SCHEMA'] === schema)) expect(Object.keys(one)).toEqual(expect.arrayContaining(fields));
  });

  test('counts at the exact rate and keeps own data under one name of its own', () => {
    const rates = objects.filter((one) => one['OTIO_SCHEMA'] === 'RationalTime.1').map((one) => one['rate']);
    expect(new Set(rates)).toEqual(new Set([30_000 / 1001]));
    for (const one of objects) expect(Object.keys(Object(one['metadata'] ?? {})).filter((key) => key !== 'benchtake')).toEqual([]);
  });
});

describe('a round trip', () => {
  const clip = fc.record({
    name: fc.string(), gap: fc.nat(1000), start: fc.nat(5_000_000), length: fc.integer({ min: 1, max: 100_000 }), media: fc.webUrl(),
    markers: fc.array(fc.record({ name: fc.string(), frame: fc.nat(5_000_000), length: fc.nat(100), colour: fc.constantFrom(...MARKER_COLOURS) }), { maxLength: 3 }),
    notes: fc.dictionary(fc.string({ minLength: 1 }).filter((key) => key !== '__proto__'), fc.string(), { maxKeys: 3, noNullPrototype: true }),
  });

  test('of any timeline gives the same timeline', () => {
    fc.assert(fc.property(fc.record({ name: fc.string(), rate: fc.constantFrom(timeline.rate, { numerator: 25, denominator: 1 }), clips: fc.array(clip, { maxLength: 5 }) }), (one) => {
      expect(readOtio(writeOtio(one))).toEqual({ ok: true, value: one });
    }), { numRuns: 60 });
  });

  test('refuses what is no timeline and says where', () => {
    expect(readOtio('no')).toMatchObject({ ok: false, error: [{ code: 'otio-unreadable' }] });
    expect(readOtio(writeOtio(timeline).replace('Clip.2', 'Clip.9'))).toMatchObject({ ok: false });
    expect(readOtio(writeOtio(timeline).replace('"RED"', '"TEAL"')).ok).toBe(false);
  });
});
