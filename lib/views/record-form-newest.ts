/** What a form needs after somebody else has saved the record: the newest version, in words too. */
import type { RecordKind, SeriesDocument } from '@/lib/build';
import { findRecord } from '@/lib/build';
import { listChoices, listPartStates } from './record-form-choices';
import { keyOf } from './record-form-draft';
import { viewRecordForm } from './record-form';
import type { RecordFormView } from './record-form-model';
import { listFields } from './record-form-specs';
import { sayField } from './record-form-words';

export interface NewestRecord {
  readonly view: RecordFormView;
  /** Its values in words, by the name of the field. */
  readonly words: Readonly<Record<string, string>>;
}

/** The newest version of a record, null when it has been removed. */
export function viewNewest(document: SeriesDocument, kind: RecordKind, id: string): NewestRecord | null {
  const view = viewRecordForm(document, kind, id);
  const record = findRecord(document, kind, id);
  if (view === null || record === undefined) return null;
  const naming = { zone: document.series.zone, choices: listChoices(document), partStates: listPartStates(document) };
  return { view, words: Object.fromEntries(listFields(kind).map((field) => [field.name, sayField(field, keyOf(record, field.name), naming)])) };
}
