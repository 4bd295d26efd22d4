/** The room of records: an index of kinds and a list for each. */
import { checkSeries, listOf, type FormKind, type ListRecord, type RecordKind, type SeriesDocument } from '@/lib/build';
import type { Issue } from '@/lib/result';
import { listFacts } from './records-facts';
import { KIND_WORDS, wordsOfKind, type KindWords } from './records-kinds';

export interface KindCount {
  readonly kind: FormKind;
  readonly plural: string;
  readonly purpose: string;
  readonly count: number;
  readonly stops: number;
  readonly warnings: number;
}

export interface RecordsIndexView {
  readonly kinds: readonly KindCount[];
  readonly total: number;
  /** The first kind in the order of filling that has no record and is needed for a plan. */
  readonly next: KindWords | null;
  /** Issues of the series itself, or of no record in particular. */
  readonly issues: readonly Issue[];
}

export interface RecordRow {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  readonly facts: readonly string[];
  /** What is wrong with it. */
  readonly issues: readonly Issue[];
}

export interface RecordListView {
  readonly words: KindWords;
  readonly rows: readonly RecordRow[];
}

/** Without these there is nothing to plan. */
const NEEDED: readonly FormKind[] = ['place', 'person', 'session', 'episode', 'task'];

/** The record an issue is about is its first subject. */
function isAbout(found: Issue, kind: string, id: string): boolean {
  const [about] = found.subjects;
  return about?.kind === kind && about.id === id;
}

/** Everything that is wrong with a series. */
export function checkDocument(document: SeriesDocument): readonly Issue[] {
  return checkSeries(document);
}

/** Those that are about one record: the record at fault is the first subject. */
export function issuesAbout(issues: readonly Issue[], kind: RecordKind, id: string): readonly Issue[] {
  return issues.filter((found) => isAbout(found, kind, id));
}

/** Counts of every kind with what is wrong in it. `issues` are those of the whole series. */
export function viewRecordsIndex(document: SeriesDocument, issues: readonly Issue[]): RecordsIndexView {
  const kinds = KIND_WORDS.map(({ kind, plural, purpose }) => {
    const own = issues.filter((found) => found.subjects[0]?.kind === kind);
    const stops = own.filter((found) => found.severity === 'stop').length;
    return { kind, plural, purpose, count: listOf(document, kind).length, stops, warnings: own.length - stops };
  });
  const next = KIND_WORDS.find(({ kind }) => NEEDED.includes(kind) && listOf(document, kind).length === 0) ?? null;
  return {
    kinds,
    total: kinds.reduce((sum, { count }) => sum + count, 0),
    next,
    issues: issues.filter((found) => !KIND_WORDS.some(({ kind }) => kind === found.subjects[0]?.kind)),
  };
}

function listByTime(document: SeriesDocument, kind: FormKind): readonly ListRecord[] {
  if (kind === 'session') return document.sessions.toSorted((a, b) => a.start - b.start);
  if (kind === 'heatingRun') return document.heatingRuns.toSorted((a, b) => a.start - b.start);
  if (kind === 'readings') return document.readings.toSorted((a, b) => a.from - b.from);
  return listOf<FormKind>(document, kind);
}

/** All records of a kind in their order; those that lie in time, in order of time. */
export function viewRecordList(document: SeriesDocument, kind: FormKind, issues: readonly Issue[]): RecordListView {
  const records = listByTime(document, kind);
  return {
    words: wordsOfKind(kind),
    rows: records.map((record) => ({
      id: record.id,
      revision: record.revision,
      name: record.name,
      facts: listFacts(record, document),
      issues: issuesAbout(issues, kind, record.id),
    })),
  };
}
