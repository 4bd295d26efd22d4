import { describe, expect, it } from 'vitest';
import { changeRecord, LIST_KINDS, listOf, RECORD_KINDS, type RecordKind, type SeriesDocument, type SeriesRecord } from '@/lib/build';
import { readFields } from '@/lib/commands';
import { readRecordForm, readRepeatForm, viewCopyForm, viewNewest, viewNewRecordForm, viewNewSeriesForm, viewRecordForm, viewRepeatForm } from '@/lib/views';
import { LIBRARY } from '@/lib/safety';
import { instant } from '@/lib/units';
import { unwrap } from '@/lib/result';
import { coldSeries } from '../build/cold-series';
import { at, filmedSeries, sampleSeries } from '../build/sample-series';

const SETTING = { zone: 'Europe/London', newId: () => 'new' };
/** Statements are signed on the pages of safety, not in a form of this sort. */
const hasForm = (kind: RecordKind): boolean => kind !== 'statement';
const NOW = instant(Date.parse('2026-12-01T09:00Z'));

const STORY: SeriesDocument = {
  ...coldSeries(),
  cameras: filmedSeries().cameras,
  promises: filmedSeries().promises,
  segments: [{
    kind: 'segment', id: 'segment-1', revision: 1, order: 0, name: 'Paint off', episodeId: null, role: 'trouble', length: 2.5, isResult: true, hook: 0.55, hang: 0.3,
    thread: 'Frame', isEvergreen: true, isFlashback: true, storyDate: '2026-12-01', ending: 'never ends it', taskIds: ['task-strip'],
  }],
  timeLogs: [{
    kind: 'timeLog', id: 'log-1', revision: 1, order: 0, name: 'Strip', taskId: 'task-strip', activity: 'filming', start: at('2026-12-01', '18:30'), end: null, wasInterrupted: true,
  }],
  sponsorships: [{
    kind: 'sponsorship', id: 'owed-1', revision: 1, order: 0, name: 'Discs', sponsor: 'Abrasives', what: 'In use.', exclusiveIn: 'abrasives', episodeId: 'episode-1',
    part: 'last third', dueDate: '2026-12-20', minimumSeconds: 45, spotStart: 61.5, spotEnd: 110, disclosureText: 'Paid promotion', spokenAt: null, shownFrom: null,
    shownUntil: null, needsApproval: true, approvedOn: null,
  }],
  people: coldSeries().people.map((person) => ({ ...person, consent: { givenOn: '2026-11-01', until: null, where: 'blue folder' } })),
  episodes: coldSeries().episodes.map((episode) => ({ ...episode, checks: { captions: { file: 'cut-2.vtt', readOn: null }, flashes: { perSecond: 2, remedy: '', countedOn: '2026-12-01' } } })),
  hazards: LIBRARY.map(({ origin: _origin, ...hazard }, order) => ({ kind: 'hazard', revision: 1, order, ...hazard, replaces: hazard.id })),
};

function formOf(record: SeriesRecord) {
  const view = viewRecordForm(STORY, record.kind, record.id);
  if (view === null) throw new Error(`no form for ${record.kind} ${record.id}`);
  return view;
}

describe('The record form', () => {
  it.each(RECORD_KINDS.filter(hasForm))('gives back every %s unchanged when nothing is typed', (kind) => {
    const document = STORY;
    const records: readonly SeriesRecord[] = listOf(document, kind);
    expect(records.length).toBeGreaterThan(0);
    for (const record of records) {
      const { id: _id, kind: _kind, revision: _revision, order: _order, ...fields } = record;
      const read = unwrap(readFields(kind, { ...fields, ...unwrap(readRecordForm(kind, formOf(record).draft)) }, SETTING));
      expect(read).toEqual(fields);
    }
  });

  it.each(LIST_KINDS.filter(hasForm))('starts a new %s with values that are read without an issue once the empty ones are typed', (kind) => {
    const view = viewNewRecordForm(sampleSeries(), kind, NOW);
    const codes = (() => {
      const read = readRecordForm(kind, view.draft);
      return read.ok ? [] : read.error.map(({ code }) => code);
    })();
    expect(codes.filter((code) => !code.endsWith('-missing') && code !== 'date-shape')).toEqual([]);
  });

  it('starts a new series with values that the schema takes once it has a name', () => {
    const { draft } = viewNewSeriesForm('Europe/London');
    const read = unwrap(readFields('series', unwrap(readRecordForm('series', { ...draft, name: 'Tea trolley' })), SETTING));
    expect(read).toMatchObject({ name: 'Tea trolley', zone: 'Europe/London', cadenceDays: 7, fillLimit: 0.7 });
  });

  it('names the field and a fix for every text that cannot be read', () => {
    const { draft } = viewRecordForm(sampleSeries(), 'task', sampleSeries().tasks[0]?.id ?? '') ?? { draft: {} };
    const read = readRecordForm('task', {
      ...draft, effort: { low: 'soon', likely: '', high: '1 h' }, pinnedStart: { date: '2026-13-01', time: '25:00' },
    });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.error.map(({ path }) => path)).toEqual([['effort', 'low'], ['effort', 'likely'], ['pinnedStart'], ['pinnedStart']]);
    for (const found of read.error) {
      expect(found.message).not.toBe('');
      expect(found.fix).not.toBe('');
    }
  });

  it('keeps a moment that nobody touched, even the second of two with the same time on the clock', () => {
    const second = instant(Date.parse('2026-10-25T01:30Z'));
    const [session] = sampleSeries().sessions;
    if (session === undefined) throw new Error('the sample has sessions');
    const document = sampleSeries({ sessions: [{ ...session, start: second, end: at('2026-10-25', '04:00') }] });
    const view = viewRecordForm(document, 'session', session.id);
    expect(unwrap(readRecordForm('session', view?.draft))).toMatchObject({ start: second });
    expect(unwrap(readRecordForm('session', { ...view?.draft, start: { date: '2026-10-25', time: '1:30' } }))).toMatchObject({ start: '2026-10-25T01:30' });
  });

  it('copies a record without the ids of its lines and without what happened to it', () => {
    const [part] = sampleSeries().parts;
    const copy = viewCopyForm(sampleSeries(), 'part', part?.id ?? '');
    expect(copy?.id).toBeNull();
    expect(unwrap(readRecordForm('part', copy?.draft))).toMatchObject({ states: (part?.states ?? []).map(({ name }) => ({ name })) });
    expect(JSON.stringify(copy?.draft)).not.toContain(part?.states[0]?.id ?? 'no state');
  });

  it('says what has to be there first instead of a form that cannot be filled in', () => {
    const empty = sampleSeries({ places: [], people: [], trades: [], tasks: [], outsideJobs: [], links: [], sessions: [] });
    expect(viewNewRecordForm(empty, 'session', NOW).missing.map(({ kind }) => kind)).toEqual(['place', 'person']);
    expect(viewNewRecordForm(empty, 'outsideJob', NOW).missing.map(({ kind }) => kind)).toEqual(['trade']);
    expect(viewNewRecordForm(empty, 'link', NOW).missing.map(({ kind }) => kind)).toEqual(['task']);
  });

  it('tells the newest values in words after somebody else has saved', () => {
    const document = sampleSeries();
    const [place] = document.places;
    if (place === undefined) throw new Error('the sample has places');
    const changed = unwrap(changeRecord(document, 'place', place.id, place.revision, { capacity: 5 })).document;
    const newest = viewNewest(changed, 'place', place.id);
    expect(newest?.view.revision).toBe(place.revision + 1);
    expect(newest?.words['capacity']).toBe('5 tasks');
    expect(viewNewest(changed, 'place', 'gone')).toBeNull();
  });
});

describe('The form of weekly sessions', () => {
  it('reads weekdays as numbers and forgives a time without a colon', () => {
    const { draft } = viewRepeatForm(sampleSeries(), NOW);
    const input = unwrap(readRepeatForm({ ...draft, name: 'Tuesday evening', weekdays: ['2', '4'], from: '1830' }));
    expect(input).toMatchObject({ name: 'Tuesday evening', weekdays: [2, 4], from: '18:30', to: '21:30', startOn: '2026-12-01', weeks: 12 });
  });
});
