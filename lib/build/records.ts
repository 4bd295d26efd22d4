/** One way to the records of a series whatever their kind. */
import type { RecordKind, RecordOf, SeriesDocument, SeriesRecord } from './model';

/** Kinds that live in a list of the document: all but the series itself. */
export type ListKind = Exclude<RecordKind, 'series'>;

/** Kinds with a list and a form of their own among the records; signatures are made on the pages of safety. */
export type FormKind = Exclude<ListKind, 'statement'>;

/** A record that lives in a list. */
export type ListRecord = RecordOf<ListKind>;

/** What a person fills in: everything that the program does not keep by itself. */
export type FieldsOf<K extends RecordKind> = Omit<RecordOf<K>, 'id' | 'revision' | 'order' | 'kind'>;

/** Kinds of list records, in the order in which they can be made: what is pointed at comes first. */
export const LIST_KINDS: readonly ListKind[] = [
  'person', 'place', 'equipment', 'material', 'trade', 'part', 'episode', 'session', 'task', 'outsideJob', 'link', 'segment', 'sponsorship', 'timeLog', 'hazard', 'statement',
  'coatingSystem', 'heatingRun', 'weather', 'readings',
  'camera', 'promise',
];

/** Every kind, the series first. */
export const RECORD_KINDS: readonly RecordKind[] = ['series', ...LIST_KINDS];

const LABELS: Record<RecordKind, string> = {
  series: 'series', person: 'person', place: 'place', equipment: 'piece of equipment', part: 'part', material: 'material',
  trade: 'outside trade', outsideJob: 'outside job', task: 'task', link: 'link', session: 'session', episode: 'episode',
  segment: 'segment', timeLog: 'time log', sponsorship: 'sponsor obligation',
  hazard: 'hazard', statement: 'signed statement',
  coatingSystem: 'coating system', heatingRun: 'heating run', weather: 'weather table', readings: 'set of readings',
  camera: 'camera', promise: 'promise on camera',
};

/** The kind in plain words. @example kindLabel('outsideJob') // 'outside job' */
export function kindLabel(kind: RecordKind): string {
  return LABELS[kind];
}

/** True when `text` names a kind of record. */
export function isRecordKind(text: string): text is RecordKind {
  return Object.hasOwn(LABELS, text);
}

const READERS: { readonly [K in RecordKind]: (document: SeriesDocument) => readonly RecordOf<K>[] } = {
  series: (document) => [document.series],
  person: (document) => document.people,
  place: (document) => document.places,
  equipment: (document) => document.equipment,
  part: (document) => document.parts,
  material: (document) => document.materials,
  trade: (document) => document.trades,
  outsideJob: (document) => document.outsideJobs,
  task: (document) => document.tasks,
  link: (document) => document.links,
  session: (document) => document.sessions,
  episode: (document) => document.episodes,
  segment: (document) => document.segments,
  timeLog: (document) => document.timeLogs,
  sponsorship: (document) => document.sponsorships,
  hazard: (document) => document.hazards,
  statement: (document) => document.statements,
  coatingSystem: (document) => document.coatingSystems,
  heatingRun: (document) => document.heatingRuns,
  weather: (document) => document.weather,
  readings: (document) => document.readings,
  camera: (document) => document.cameras,
  promise: (document) => document.promises,
};

/** Records of one kind, in their order. The series itself is a list of one. */
export function listOf<K extends RecordKind>(document: SeriesDocument, kind: K): readonly RecordOf<K>[] {
  return READERS[kind](document);
}

/** The record, or undefined when the series has none of that kind and id. */
export function findRecord<K extends RecordKind>(document: SeriesDocument, kind: K, id: string): RecordOf<K> | undefined {
  return listOf(document, kind).find((record) => record.id === id);
}

/** Every record of the series, the series itself first. */
export function listRecords(document: SeriesDocument): readonly SeriesRecord[] {
  return RECORD_KINDS.flatMap((kind): readonly SeriesRecord[] => listOf(document, kind));
}

/** A test for one kind, for filters. @example records.filter(isOfKind('task')) */
function isOfKind<K extends RecordKind>(kind: K): (record: SeriesRecord) => record is RecordOf<K> {
  return (record): record is RecordOf<K> => record.kind === kind;
}

const WRITERS: { readonly [K in ListKind]: (document: SeriesDocument, list: readonly SeriesRecord[]) => SeriesDocument } = {
  person: (document, list) => ({ ...document, people: list.filter(isOfKind('person')) }),
  place: (document, list) => ({ ...document, places: list.filter(isOfKind('place')) }),
  equipment: (document, list) => ({ ...document, equipment: list.filter(isOfKind('equipment')) }),
  part: (document, list) => ({ ...document, parts: list.filter(isOfKind('part')) }),
  material: (document, list) => ({ ...document, materials: list.filter(isOfKind('material')) }),
  trade: (document, list) => ({ ...document, trades: list.filter(isOfKind('trade')) }),
  outsideJob: (document, list) => ({ ...document, outsideJobs: list.filter(isOfKind('outsideJob')) }),
  task: (document, list) => ({ ...document, tasks: list.filter(isOfKind('task')) }),
  link: (document, list) => ({ ...document, links: list.filter(isOfKind('link')) }),
  session: (document, list) => ({ ...document, sessions: list.filter(isOfKind('session')) }),
  episode: (document, list) => ({ ...document, episodes: list.filter(isOfKind('episode')) }),
  segment: (document, list) => ({ ...document, segments: list.filter(isOfKind('segment')) }),
  timeLog: (document, list) => ({ ...document, timeLogs: list.filter(isOfKind('timeLog')) }),
  sponsorship: (document, list) => ({ ...document, sponsorships: list.filter(isOfKind('sponsorship')) }),
  hazard: (document, list) => ({ ...document, hazards: list.filter(isOfKind('hazard')) }),
  statement: (document, list) => ({ ...document, statements: list.filter(isOfKind('statement')) }),
  coatingSystem: (document, list) => ({ ...document, coatingSystems: list.filter(isOfKind('coatingSystem')) }),
  heatingRun: (document, list) => ({ ...document, heatingRuns: list.filter(isOfKind('heatingRun')) }),
  weather: (document, list) => ({ ...document, weather: list.filter(isOfKind('weather')) }),
  readings: (document, list) => ({ ...document, readings: list.filter(isOfKind('readings')) }),
  camera: (document, list) => ({ ...document, cameras: list.filter(isOfKind('camera')) }),
  promise: (document, list) => ({ ...document, promises: list.filter(isOfKind('promise')) }),
};

/** By order; records with the same order keep one sequence everywhere, by id. */
function byOrder(a: SeriesRecord, b: SeriesRecord): number {
  return a.order - b.order || (a.id < b.id ? -1 : Number(a.id > b.id));
}

/** The document with a record put in place of the one with its kind and id, or added. */
export function putRecord(document: SeriesDocument, record: SeriesRecord): SeriesDocument {
  if (record.kind === 'series') return { ...document, series: record };
  const others: readonly SeriesRecord[] = listOf<ListKind>(document, record.kind).filter((other) => other.id !== record.id);
  return WRITERS[record.kind](document, [...others, record].toSorted(byOrder));
}

/** The document without a record; unchanged when there is none. */
export function dropRecord(document: SeriesDocument, kind: ListKind, id: string): SeriesDocument {
  const list: readonly SeriesRecord[] = listOf<ListKind>(document, kind);
  return WRITERS[kind](document, list.filter((record) => record.id !== id));
}
