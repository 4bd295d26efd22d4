/** From what a form sent to a record. */
import { LIST_KINDS, type ListKind, type RecordKind, type RecordOf, type SeriesDocument, type SeriesRecord } from '@/lib/build';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { readFields, type FormSetting } from './schemas';

/** What the forms of a series have to know about it. */
export function settingOf({ newId }: SeriesContext, document: SeriesDocument): FormSetting {
  return { zone: document.series.zone, newId };
}

/** The kind of a list, or `unknown-kind`: kinds come from addresses and forms. */
export function readKind(text: string): Result<ListKind> {
  // Statements are signed, not filled in: their commands set the person and the time.
  const kind = LIST_KINDS.filter((known) => known !== 'statement').find((known) => known === text);
  return kind === undefined
    ? fail([issue('unknown-kind', `There is no list of “${text.slice(0, 40)}” in a series.`, `Choose one of: ${LIST_KINDS.join(', ')}.`)])
    : ok(kind);
}

/** What of a record a person fills in. */
export function fieldsOf(record: SeriesRecord): Readonly<Record<string, unknown>> {
  const { id: _id, kind: _kind, revision: _revision, order: _order, ...fields } = record;
  return fields;
}

/** A new record from a form, at revision 1; its place in the list is given when it is added. */
export function buildRecord<K extends RecordKind>(kind: K, id: string, input: unknown, setting: FormSetting): Result<RecordOf<K>> {
  const read = readFields(kind, input, setting);
  if (!read.ok) return read;
  const record: unknown = { ...read.value, kind, id, revision: 1, order: 0 };
  // The fields are all of the kind's own but the four set here; the compiler cannot follow that for a kind it does not know.
  return ok(record as RecordOf<K>);
}
