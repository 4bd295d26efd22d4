/** The form of one record, ready to be drawn. */
import {
  DEFAULT_CURE, DEFAULT_PROCESS, DEFAULT_TERMS, DEFAULT_WORKSHOP, findRecord, withDefaults, type FormKind, type RecordKind, type SeriesDocument, type SeriesRecord, type TradeTerms,
} from '@/lib/build';
import { addDays, dateOf, instantOf } from '@/lib/calendar';
import { USUAL_KIT, USUAL_MINIMUM, USUAL_TITLES } from '@/lib/episodes';
import { COMMON_PRACTICE } from '@/lib/estimate';
import { LIBRARY } from '@/lib/safety';
import type { Instant } from '@/lib/units';
import { listChoices, listPartStates, listZoneChoices } from './record-form-choices';
import { draftFields } from './record-form-draft';
import { formValues, hazardValues } from './record-form-fields-hazard';
import type { ChoiceSource, Draft, DraftObject, FieldSpec, RecordFormView } from './record-form-model';
import { listFields, listSections } from './record-form-specs';

const EVENING = { from: '18:30', to: '21:30' } as const;
const WORKSHOP_HOURS = { from: '08:00', to: '17:00' } as const;
const WORKDAYS = [1, 2, 3, 4, 5] as const;

/** A new trade keeps the holidays of the one before it. */
function startingTerms({ trades }: SeriesDocument): TradeTerms {
  const { country, region } = trades.at(-1)?.terms ?? DEFAULT_TERMS;
  return { ...DEFAULT_TERMS, country, region };
}

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
      return { sort: 'paint', referenceTemperature: 20, minimumTemperature: 5, doublingPer: 10, cure: DEFAULT_CURE };
    case 'trade':
      return { openHours: WORKDAYS.map((weekday) => ({ weekday, ...WORKSHOP_HOURS })), terms: startingTerms(document) };
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
      return { category: 'other', hazards: { toolShare: 1 }, placeId: document.places[0]?.id, crew: [{ skill: null, count: 1 }], coverage: 'none' };
    case 'outsideJob':
      return { tradeId: document.trades[0]?.id, crew: 1, process: DEFAULT_PROCESS };
    case 'link':
      return { clock: 'elapsed', minWait: 0 };
    case 'segment':
      return { role: 'work', length: 3, hook: 0, hang: 0, ending: 'free' };
    case 'timeLog':
      return { name: 'Time spent', taskId: document.tasks.find((task) => task.doneAt === null)?.id, activity: 'hands-on', start: now };
    case 'sponsorship':
      return { part: 'anywhere', minimumSeconds: 30, disclosureText: 'Paid promotion' };
    case 'coatingSystem':
      return { layers: [{ materialId: document.materials[0]?.id, coats: 1, work: 60, between: 'recoat', isAbradedBefore: false }], abrading: 60 };
    case 'heatingRun':
      return {
        airZone: document.places[0]?.airZone ?? '', start: instantOf(today, EVENING.to, zone), end: instantOf(addDays(today, 1), WORKSHOP_HOURS.from, zone), setPoint: 15,
      };
    case 'weather':
      return { days: [{ date: today }] };
    case 'camera':
      return { rate: document.series.frameRate, clockOffset: 0 };
    case 'promise':
      return { closure: 'open' };
    case 'hazard':
      return { severity: 'II', trigger: [[]], controls: [{ level: 'eliminate' }], sources: [{ status: 'read', reviewed: today }] };
    case 'person':
    case 'readings':
    case 'series':
    case 'statement':
      return {};
  }
}

/** Kinds that must be there before a form makes sense, with what to say when they are not. */
export function findMissing(document: SeriesDocument, kind: RecordKind): RecordFormView['missing'] {
  const missing: { kind: FormKind; text: string }[] = [];
  if ((kind === 'task' || kind === 'session') && document.places.length === 0) {
    missing.push({ kind: 'place', text: `A ${kind} needs a place, and there is none yet.` });
  }
  if (kind === 'session' && document.people.length === 0) {
    missing.push({ kind: 'person', text: 'A session needs somebody who is in, and nobody is recorded yet.' });
  }
  if (kind === 'outsideJob' && document.trades.length === 0) {
    missing.push({ kind: 'trade', text: 'An outside job needs a trade, and there is none yet.' });
  }
  if (kind === 'coatingSystem' && document.materials.length === 0) {
    missing.push({ kind: 'material', text: 'A coating system needs materials, and there is none yet.' });
  }
  if (kind === 'link' && document.tasks.length + document.outsideJobs.length < 2) {
    missing.push({ kind: 'task', text: 'A link needs two tasks or outside jobs, and there are not two yet.' });
  }
  return missing;
}

function sourcesOf(fields: readonly FieldSpec[]): readonly ChoiceSource[] {
  return fields.flatMap((field): readonly ChoiceSource[] => {
    if (field.type === 'group' || field.type === 'list') return sourcesOf(field.fields);
    if (field.type === 'choices' || field.type === 'choice') return typeof field.options === 'string' ? [field.options] : [];
    return (field.type === 'text' || field.type === 'lines') && field.suggest ? [field.suggest] : [];
  });
}

/** Only what the fields ask for: it all travels to the browser. */
export function offerChoices(document: SeriesDocument, fields: readonly FieldSpec[]): Pick<RecordFormView, 'choices' | 'partStates'> {
  const sources: ReadonlySet<string> = new Set(sourcesOf(fields));
  return {
    choices: Object.fromEntries(Object.entries(listChoices(document)).filter(([source]) => sources.has(source))),
    partStates: sources.has('parts') ? listPartStates(document) : {},
  };
}

function describeForm(document: SeriesDocument, kind: RecordKind, values: unknown, record: SeriesRecord | null): RecordFormView {
  const fields = listFields(kind);
  return {
    seriesId: document.series.id,
    kind,
    id: record?.id ?? null,
    revision: record?.revision ?? 0,
    name: record?.name ?? '',
    zone: document.series.zone,
    sections: listSections(kind),
    draft: draftFields(fields, values, document.series.zone),
    ...offerChoices(document, fields),
    missing: record === null ? findMissing(document, kind) : [],
  };
}

/** The form of a record that is there, null when there is none with this id. */
export function viewRecordForm(document: SeriesDocument, kind: RecordKind, id: string): RecordFormView | null {
  const record: SeriesRecord | undefined = findRecord(document, kind, id);
  return record === undefined ? null : describeForm(document, kind, formValues(withDefaults(record)), record);
}

/** What a new series starts with: an episode a week, a week to edit it, 30 % of every session left free. */
const STARTING_SERIES = {
  cadenceDays: 7, leadDays: 7, fillLimit: 0.7, workshopTemperature: 12, workshop: DEFAULT_WORKSHOP,
  runtime: { min: 10, target: 15, max: 20 }, frameRate: { numerator: 25, denominator: 1 },
  titles: USUAL_TITLES, bankMinimum: USUAL_MINIMUM, frozenDays: 0, filming: { ...COMMON_PRACTICE.times, own: [] }, camera: USUAL_KIT,
} as const;

/** The form of a new series; `zone` is where the machine stands. */
export function viewNewSeriesForm(zone: string): RecordFormView {
  return {
    seriesId: '', kind: 'series', id: null, revision: 0, name: '', zone, sections: listSections('series'),
    draft: draftFields(listFields('series'), { ...STARTING_SERIES, zone }, zone),
    choices: { zones: listZoneChoices() }, partStates: {}, missing: [],
  };
}

/** What happened to a record does not happen to its copy. */
const HAPPENED = { doneAt: null, pinnedStart: null, droppedOffAt: null, promisedFor: null, collectedAt: null } as const;

/** A preparation done and a process over belong to the job that was copied. */
function forgetProcess(record: SeriesRecord): SeriesRecord {
  if (record.kind !== 'outsideJob' || record.process === undefined) return record;
  const preparations = record.process.preparations.map(({ name }) => ({ name, doneAt: null }));
  return { ...record, process: { ...record.process, preparations, treatedAt: null, readyAt: null } };
}

function forgetFilming(record: SeriesRecord): SeriesRecord {
  return record.kind === 'task' ? { ...record, shots: record.shots.map((shot) => ({ ...shot, filmedAt: null })) } : record;
}

function dropId(item: Draft): Draft {
  return typeof item === 'object' && !Array.isArray(item) ? { ...item, id: '' } : item;
}

/** Lines of a copy are lines of their own and get new ids. */
function dropLineIds(fields: readonly FieldSpec[], draft: DraftObject): DraftObject {
  const lists = new Set(fields.filter((field) => field.type === 'list' && field.hasIds).map(({ name }) => name));
  return Object.fromEntries(Object.entries(draft).map(([name, value]) => [name, lists.has(name) && Array.isArray(value) ? value.map(dropId) : value]));
}

/** A new record with the values of another one, to be changed before it is saved; null when there is none of that id. */
export function viewCopyForm(document: SeriesDocument, kind: RecordKind, id: string): RecordFormView | null {
  if (kind === 'hazard') return viewHazardCopy(document, id);
  const record: SeriesRecord | undefined = findRecord(document, kind, id);
  if (record === undefined) return null;
  const form = describeForm(document, kind, { ...forgetProcess(forgetFilming(withDefaults(record))), ...HAPPENED }, null);
  return { ...form, draft: dropLineIds(listFields(kind), form.draft) };
}

/**
 * A hazard to be made to fit where people live. One of the library is stood in for, and its lines keep their ids,
 * so that signatures stay with it.
 */
function viewHazardCopy(document: SeriesDocument, id: string): RecordFormView | null {
  const ready = LIBRARY.find((hazard) => hazard.id === id);
  const own = findRecord(document, 'hazard', id);
  const source = own ?? (ready === undefined ? undefined : { ...ready, replaces: ready.id });
  return source === undefined ? null : { ...describeForm(document, 'hazard', hazardValues(source), null), name: source.name };
}

/** The form of a new record, with sensible values in it. */
export function viewNewRecordForm(document: SeriesDocument, kind: RecordKind, now: Instant): RecordFormView {
  return describeForm(document, kind, startingValues(document, kind, now), null);
}
