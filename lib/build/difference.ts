/** The change that leads from one state of a series to another. */
import { fail, issue, type Result } from '@/lib/result';
import { changeEdit, createEdit, makeEdited, removeEdit } from './apply-edits';
import type { Edited, RecordEdit } from './edit';
import { changedFields } from './fields';
import type { SeriesDocument } from './model';
import { listRecords } from './records';

const key = (record: { readonly kind: string; readonly id: string }): string => `${record.kind} ${record.id}`;

/**
 * One change of everything in which `after` differs: records made, changed and taken out.
 * Fails with `nothing-changed`, or with the stops that it brings.
 */
export function changeBetween(document: SeriesDocument, after: SeriesDocument, label: string): Result<Edited> {
  const before = new Map([document.series, ...listRecords(document)].map((record) => [key(record), record]));
  const next = new Map([after.series, ...listRecords(after)].map((record) => [key(record), record]));
  const edits: RecordEdit[] = [];
  for (const record of next.values()) {
    const was = before.get(key(record));
    if (was === undefined) {
      if (record.kind !== 'series') edits.push(createEdit({ ...record, revision: 1 }));
    } else if (changedFields(was, record).length > 0) edits.push(changeEdit(was, { ...record, revision: was.revision }));
  }
  for (const record of before.values()) if (!next.has(key(record)) && record.kind !== 'series') edits.push(removeEdit(record));
  if (edits.length === 0) return fail([issue('nothing-changed', 'This changes nothing in the series.', 'Choose something else.')]);
  return makeEdited(document, { label, edits, undoes: null });
}
