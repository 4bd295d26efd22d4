/** The form of one record, ready to be drawn. */
import { findRecord, type RecordKind, type SeriesDocument, type SeriesRecord } from '@/lib/build';
import { dateOf, instantOf } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import { listChoices, listPartStates } from './record-form-choices';
import { draftFields } from './record-form-draft';
import type { ChoiceSource, FieldSpec, RecordFormView } from './record-form-model';
import { listFields, listSections } from './record-form-specs';

const EVENING = { from: '18:30', to: '21:30' } as const;
const WORKSHOP_HOURS = { from: '08:00', to: '17:00' } as const;
const WORKDAYS = [1, 2, 3, 4, 5] as const;

/** What a new record starts with; the fields left out start empty. */
function startingValues(document: SeriesDocument, kind: RecordKind, now: Instant): Readonly<Record<string, unknown>> {
  const { zone } = document.series;
  const today = dateOf(now, zone);
  switch (kind) {
    case 'place':
      return { capacity: 1, airZone: document.places[0]?.airZone ?? 'workshop' };
    case 'part':
      return { states: [{ name: '' }], whereabouts: { kind: 'store', id: null } };
    case 'material':
      return { sort: 'paint', referenceTemperature: 20, minimumTemperature: 5, doublingPer: 10 };
    case 'trade':
      return { openHours: WORKDAYS.map((weekday) => ({ weekday, ...WORKSHOP_HOURS })) };
    case 'equipment':
      return { count: 1 };
    case 'session':
      return {
        start: instantOf(today, EVENING.from, zone), end: instantOf(today, EVENING.to, zone),
        placeIds: document.places.map(({ id }) => id), crewIds: document.people.map(({ id }) => id),
        isRecording: true, isNoiseAllowed: true,
      };
    case 'episode':
      return { status: 'planned' };
    case 'task':
      return { category: 'other', placeId: document.places[0]?.id, crew: [{ skill: null, count: 1 }], coverage: 'none' };
    case 'outsideJob':
      return { tradeId: document.trades[0]?.id, crew: 1 };
    case 'link':
      return { clock: 'elapsed', minWait: 0 };
    case 'person':
    case 'series':
      return {};
  }
}

/** Kinds that must be there before a form makes sense, with what to say when they are not. */
function findMissing(document: SeriesDocument, kind: RecordKind): RecordFormView['missing'] {
  const missing: { kind: RecordKind; text: string }[] = [];
  if ((kind === 'task' || kind === 'session') && document.places.length === 0) {
    missing.push({ kind: 'place', text: `A ${kind} needs a place, and there is none yet.` });
  }
  if (kind === 'session' && document.people.length === 0) {
    missing.push({ kind: 'person', text: 'A session needs somebody who is in, and nobody is recorded yet.' });
  }
  if (kind === 'outsideJob' && document.trades.length === 0) {
    missing.push({ kind: 'trade', text: 'An outside job needs a trade, and there is none yet.' });
  }
  if (kind === 'link' && document.tasks.length + document.outsideJobs.length < 2) {
    missing.push({ kind: 'task', text: 'A link needs two tasks or outside jobs, and there are not two yet.' });
  }
  return missing;
}

function sourcesOf(fields: readonly FieldSpec[]): readonly ChoiceSource[] {
  return fields.flatMap((field): readonly ChoiceSource[] => {
    if (field.type === 'group' || field.type === 'list') return sourcesOf(field.fields);
    if (field.type === 'choices') return [field.options];
    if (field.type === 'choice') return typeof field.options === 'string' ? [field.options] : [];
    return (field.type === 'text' || field.type === 'lines') && field.suggest ? [field.suggest] : [];
  });
}

function describeForm(document: SeriesDocument, kind: RecordKind, values: unknown, record: SeriesRecord | null): RecordFormView {
  const fields = listFields(kind);
  const sources = new Set(sourcesOf(fields));
  const choices = Object.entries(listChoices(document)).filter(([source]) => [...sources].some((wanted) => wanted === source));
  const usesParts = sources.has('parts');
  return {
    seriesId: document.series.id,
    kind,
    id: record?.id ?? null,
    revision: record?.revision ?? 0,
    name: record?.name ?? '',
    zone: document.series.zone,
    sections: listSections(kind),
    draft: draftFields(fields, values, document.series.zone),
    choices: Object.fromEntries(choices),
    partStates: usesParts ? listPartStates(document) : {},
    missing: record === null ? findMissing(document, kind) : [],
  };
}

/** The form of a record that is there, null when there is none with this id. */
export function viewRecordForm(document: SeriesDocument, kind: RecordKind, id: string): RecordFormView | null {
  const record: SeriesRecord | undefined = kind === 'series' ? document.series : findRecord(document, kind, id);
  return record === undefined ? null : describeForm(document, kind, record, record);
}

/** The form of a new record, with sensible values in it. */
export function viewNewRecordForm(document: SeriesDocument, kind: RecordKind, now: Instant): RecordFormView {
  return describeForm(document, kind, startingValues(document, kind, now), null);
}
