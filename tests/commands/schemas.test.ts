import { describe, expect, it } from 'vitest';
import { listRecords, type RecordKind } from '@/lib/build';
import { readFields } from '@/lib/commands';
import { unwrap } from '@/lib/result';
import { at, sampleSeries } from '../build/sample-series';

const setting = { zone: 'Europe/London', newId: () => 'new' };
const read = (kind: RecordKind, input: unknown) => readFields(kind, input, setting);
const problems = (kind: RecordKind, input: unknown): readonly string[] => {
  const result = read(kind, input);
  return result.ok ? [] : result.error.map(({ path, message }) => `${path.join('.')}: ${message}`);
};
const session = { name: 'Evening', start: '2026-12-01T18:30', end: '2026-12-01T21:30' };
const task = { name: 'Polish', category: 'repair', placeId: 'place-bench', effort: { low: 30, likely: 60, high: 90 } };

describe('readFields', () => {
  it.each(listRecords(sampleSeries()).map((record) => [record.kind, record.name, record] as const))('gives back the fields of the %s %s as they were', (kind, _name, record) => {
    const { id: _id, kind: _kind, revision: _revision, order: _order, ...fields } = record;
    expect(unwrap(read(kind, fields))).toEqual(fields);
  });

  it('fills in what a short form leaves out', () => {
    expect(unwrap(read('task', task))).toMatchObject({ episodeId: null, coverage: 'none', crew: [], isDusty: false, pinnedStart: null, manualReference: '' });
  });

  it('takes numbers as the text that form fields send, and an empty field as none', () => {
    expect(unwrap(read('task', { ...task, effort: { low: ' 30 ', likely: '60', high: '90.5' }, pinnedStart: '' }))).toMatchObject({ effort: { low: 30, likely: 60, high: 90.5 }, pinnedStart: null });
  });

  it('trims names and keeps every choice once', () => {
    expect(unwrap(read('person', { name: '  Kim ', skills: [' camera', 'camera'] }))).toEqual({ name: 'Kim', skills: ['camera'], hours: [], away: [] });
  });

  it('gives new states, shots and coats an id and leaves the others theirs', () => {
    expect(unwrap(read('part', { name: 'Tank', states: [{ name: 'bare' }, { id: 's2', name: 'painted' }] })))
      .toMatchObject({ states: [{ id: 'new', name: 'bare' }, { id: 's2', name: 'painted' }], whereabouts: { kind: 'store', id: null } });
  });

  it('keeps the parts in the picture of a shot, and leaves a shot that asks for none as it was', () => {
    const shot = { id: 's1', name: 'Wide', purpose: 'before', time: '10', mustHave: true, filmedAt: '' };
    const states = [{ partId: 'part-frame', stateId: 'frame-bought' }];
    const { shots } = unwrap(readFields('task', { ...task, shots: [{ ...shot, states }, { ...shot, states: [] }] }, setting));
    expect(shots).toEqual([{ ...shot, time: 10, filmedAt: null, states }, { ...shot, time: 10, filmedAt: null }]);
    expect(problems('task', { ...task, shots: [{ ...shot, states: [{ partId: 'part-frame', stateId: null }] }] })[0]).toContain('No state is chosen.');
  });

  it('reads local times in the zone of the series', () => {
    expect(unwrap(read('session', session))).toMatchObject({ start: at('2026-12-01', '18:30'), end: at('2026-12-01', '21:30') });
    expect(unwrap(readFields('session', { ...session, start: '2026-07-01T18:30' }, setting)).start).toBe(at('2026-07-01', '17:30'));
    expect(unwrap(readFields('session', session, { ...setting, zone: 'Asia/Tokyo' })).start).toBe(at('2026-12-01', '09:30'));
  });

  it('refuses a local time that the clock skips', () => {
    expect(problems('session', { ...session, start: '2027-03-28T01:30' })).toEqual(['start: Start: This is not a date and time that exists here.']);
    expect(problems('session', { ...session, start: '2027-03-28T02:00' })).toEqual([]);
  });
});

describe('messages of readFields', () => {
  it('tells the length of a name of 10,000 characters', () => {
    expect(problems('task', { ...task, name: 'x'.repeat(10_000) })).toEqual(['name: The name of the task has 10,000 characters; at most 200 fit.']);
    expect(problems('task', { ...task, name: 'x'.repeat(200) })).toEqual([]);
  });

  it('collects every problem at its field, in plain words with units', () => {
    expect(problems('task', { ...task, name: ' ', placeId: '', effort: { low: 'soon', likely: Number.NaN, high: 90 }, category: 'cooking' })).toEqual([
      'name: The task has no name.',
      'category: Category: This is not one of the choices.',
      'placeId: Place: No place is chosen.',
      'effort.low: Hands-on time: This is not a number of minutes.',
      'effort.likely: Hands-on time: This is not a number of minutes.',
    ]);
  });

  it('refuses numbers without end, fractions of people and lists without end', () => {
    expect(problems('equipment', { name: 'Jig', count: Number.POSITIVE_INFINITY })).toHaveLength(1);
    expect(problems('place', { name: 'Bench', capacity: 1.5 })).toEqual(['capacity: Tasks at once: 1.5 is not a whole number of tasks that can be used here.']);
    const lines = Array.from({ length: 201 }, (_, index) => `line ${index}`);
    expect(problems('task', { ...task, layOut: lines })).toEqual(['layOut: Things to lay out: This list has more than 200 entries.']);
    expect(problems('task', { ...task, layOut: lines.slice(1) })).toEqual([]);
  });

  it('limits notes to 5,000 characters', () => {
    expect(problems('trade', { name: 'Plater', trip: 10, contact: 'x'.repeat(5000) })).toEqual([]);
    expect(problems('trade', { name: 'Plater', trip: 10, contact: 'x'.repeat(5001) })).toEqual(['contact: Contact: This text has 5001 characters; at most 5000 fit.']);
  });

  it('refuses fields that do not exist, and what is no form at all', () => {
    expect(problems('place', { name: 'Bench', capacity: 1, revision: 7 })).toEqual([': There is no field named revision here.']);
    expect(problems('place', 'Bench')).toHaveLength(1);
    expect(problems('place', null)).toHaveLength(1);
  });

  it('suggests a zone, a date and a time', () => {
    const zone = read('series', { name: 'S', zone: 'Europe/Lodnon' });
    expect(zone.ok ? [] : zone.error.filter(({ path }) => path[0] === 'zone').map(({ fix }) => fix)).toEqual(['Write Europe/London.']);
    expect(problems('episode', { name: 'One', releaseDate: '2026-02-30' })[0]).toContain('does not exist: February 2026 has 28 days');
    expect(problems('person', { name: 'Kim', hours: [{ weekday: 8, from: '9', to: '24:00' }] })).toHaveLength(2);
  });
});
