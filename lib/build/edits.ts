/** Creating, changing and reordering records. Each returns the next document and the change that leads there. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { changeEdit, createEdit, makeEdited } from './apply-edits';
import type { Edited } from './edit';
import { changedFields, fieldLabel } from './fields';
import type { RecordKind, RecordOf, SeriesDocument, SeriesRecord } from './model';
import { findRecord, kindLabel, listOf, type FieldsOf, type ListKind, type ListRecord } from './records';
import { quoteName, startWith, subjectsOf } from './words';

const LONGEST_NAME_IN_LABEL = 60;

/** A record in the label of a change. @example labelOf(task) // 'task Strip the frame' */
export function labelOf(record: SeriesRecord): string {
  const name = record.name.length > LONGEST_NAME_IN_LABEL ? `${record.name.slice(0, LONGEST_NAME_IN_LABEL)}…` : record.name;
  return `${kindLabel(record.kind)} ${name}`;
}

/** The record, or why it cannot be written: it is gone (`record-missing`) or has moved on (`stale-record`). */
export function findForWrite<K extends RecordKind>(document: SeriesDocument, kind: K, id: string, revision: number): Result<RecordOf<K>> {
  const record = findRecord(document, kind, id);
  if (record === undefined) {
    return fail([issue('record-missing', `This ${kindLabel(kind)} is no longer in the series.`, 'Load the page again.', { subjects: [{ kind, id, name: '' }] })]);
  }
  if (record.revision === revision) return ok(record);
  return fail([issue('stale-record', `${startWith(record)} has been changed since you opened it: it is at revision ${record.revision}, yours is ${revision}.`,
    'Load the page again and repeat your change.', { subjects: subjectsOf(record) })]);
}

/** Order of a record put at the end of its list. */
function nextOrder(document: SeriesDocument, kind: ListKind): number {
  return listOf<ListKind>(document, kind).reduce((next, record) => Math.max(next, record.order + 1), 0);
}

function refuseTaken(document: SeriesDocument, records: readonly ListRecord[]): readonly Issue[] {
  const seen = new Set<string>();
  return records.flatMap((record) => {
    const key = `${record.kind}:${record.id}`;
    const isTaken = seen.has(key) || findRecord(document, record.kind, record.id) !== undefined;
    seen.add(key);
    return isTaken ? [issue('record-exists', `${startWith(record)} has an id that is taken: ${quoteName(record.id)}.`, 'Choose another id.', { subjects: subjectsOf(record) })] : [];
  });
}

/**
 * Adds several records in one change, each at the end of its list, at revision 1.
 * Fails with `record-exists` or with the stops that they bring.
 */
export function createRecords(document: SeriesDocument, records: readonly ListRecord[], label: string): Result<Edited> {
  if (records.length === 0) return fail([issue('nothing-changed', 'There is nothing to add.', 'Add something first.')]);
  const taken = refuseTaken(document, records);
  if (taken.length > 0) return fail(taken);
  return makeEdited(document, { label, edits: createEdits(document, records), undoes: null });
}

/** New records, each at the end of its list, at revision 1. */
function createEdits(document: SeriesDocument, records: readonly ListRecord[]) {
  const orders = new Map<ListKind, number>();
  return records.map((record) => {
    const order = orders.get(record.kind) ?? nextOrder(document, record.kind);
    orders.set(record.kind, order + 1);
    return createEdit({ ...record, order, revision: 1 });
  });
}

/** Adds a record at the end of its list, at revision 1. Fails with `record-exists` or with the stops that it brings. */
export function createRecord(document: SeriesDocument, record: ListRecord): Result<Edited> {
  return createRecords(document, [record], `Added ${labelOf(record)}`);
}

/**
 * Changes fields of a record; the others stay. Its revision moves on by one.
 * Fails with `record-missing`, `stale-record`, `nothing-changed` or with the stops that the change brings.
 */
export function changeRecord<K extends RecordKind>(
  document: SeriesDocument, kind: K, id: string, revision: number, fields: Partial<FieldsOf<K>>,
): Result<Edited> {
  const found = findForWrite(document, kind, id, revision);
  if (!found.ok) return found;
  const before = found.value;
  const after = { ...before, ...fields };
  const changed = changedFields(before, after);
  if (changed.length === 0) {
    return fail([issue('nothing-changed', `${startWith(before)} is already like this.`, 'Change something first.', { subjects: subjectsOf(before) })]);
  }
  const label = `Changed ${labelOf(before)}: ${changed.map((field) => fieldLabel(kind, field)).join(', ')}`;
  return makeEdited(document, { label, edits: [changeEdit(before, after)], undoes: null });
}

/**
 * Brings several records to new contents in one change; a record that stays as it is keeps its revision.
 * Each names the revision it was based on. Fails with `record-missing`, `stale-record`, `nothing-changed` or with the stops that this brings.
 */
export function changeRecords(document: SeriesDocument, records: readonly SeriesRecord[], label: string): Result<Edited> {
  const found = records.map((after) => ({ after, before: findForWrite(document, after.kind, after.id, after.revision) }));
  const missing = found.flatMap(({ before }) => (before.ok ? [] : before.error));
  if (missing.length > 0) return fail(missing);
  const edits = found.flatMap(({ before, after }) =>
    (before.ok && changedFields(before.value, after).length > 0 ? [changeEdit(before.value, after)] : []));
  if (edits.length === 0) return fail([issue('nothing-changed', 'Everything is already like this.', 'Change something first.')]);
  return makeEdited(document, { label, edits, undoes: null });
}

/**
 * Adds records and brings others to new contents, in one change. Changed records name the revision they were based on.
 * Fails as {@link createRecords} and {@link changeRecords} do.
 */
export function editRecords(document: SeriesDocument, made: readonly ListRecord[], changed: readonly SeriesRecord[], label: string): Result<Edited> {
  if (changed.length === 0) return createRecords(document, made, label);
  const found = changed.map((after) => ({ after, before: findForWrite(document, after.kind, after.id, after.revision) }));
  const missing = [...refuseTaken(document, made), ...found.flatMap(({ before }) => (before.ok ? [] : before.error))];
  if (missing.length > 0) return fail(missing);
  const edits = found.flatMap(({ before, after }) => (before.ok && changedFields(before.value, after).length > 0 ? [changeEdit(before.value, after)] : []));
  return makeEdited(document, { label, edits: [...edits, ...createEdits(document, made)], undoes: null });
}

const PLURALS: Record<ListKind, string> = {
  person: 'people', place: 'places', equipment: 'equipment', part: 'parts', material: 'materials', trade: 'outside trades',
  outsideJob: 'outside jobs', task: 'tasks', link: 'links', session: 'sessions', episode: 'episodes',
  segment: 'segments', timeLog: 'time logs', sponsorship: 'sponsor obligations',
  hazard: 'hazards', statement: 'signed statements',
  coatingSystem: 'coating systems', heatingRun: 'heating runs', weather: 'weather tables', readings: 'sets of readings',
  camera: 'cameras', promise: 'promises on camera',
};

/**
 * Puts a list into the given order; every record that moves is changed.
 * Fails with `order-incomplete` when the ids are not those of the list, each once, or with `nothing-changed`.
 */
export function reorderRecords(document: SeriesDocument, kind: ListKind, ids: readonly string[]): Result<Edited> {
  const list: readonly ListRecord[] = listOf<ListKind>(document, kind);
  const places = new Map(ids.map((id, order) => [id, order]));
  if (places.size !== ids.length || ids.length !== list.length || list.some((record) => !places.has(record.id))) {
    return fail([issue('order-incomplete', `The new order of the ${PLURALS[kind]} does not name each of the ${list.length} once; somebody may have added or removed one.`, 'Load the page again and repeat your change.')]);
  }
  const edits = list.flatMap((record) => {
    const order = places.get(record.id) ?? record.order;
    return order === record.order ? [] : [changeEdit(record, { ...record, order })];
  });
  if (edits.length === 0) return fail([issue('nothing-changed', `The ${PLURALS[kind]} are already in this order.`, 'Move something first.')]);
  return makeEdited(document, { label: `Changed the order of the ${PLURALS[kind]}`, edits, undoes: null });
}
