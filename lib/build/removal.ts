/** Taking records out of a series. */
import { fail, type Result } from '@/lib/result';
import { changeEdit, makeEdited, removeEdit } from './apply-edits';
import type { Edited, RecordEdit } from './edit';
import { findForWrite, labelOf } from './edits';
import type { SeriesDocument } from './model';
import { findStateOrphans } from './orphans';
import { findRecord, listRecords, type ListKind, type ListRecord } from './records';
import { findUsers, referencesOf, withoutReference } from './references';
import { count } from './words';

/** The record and everything that makes no sense without it, the most dependent first. */
function collectRemoved(document: SeriesDocument, record: ListRecord): readonly ListRecord[] {
  const removed: ListRecord[] = [record];
  // The list grows while it is walked.
  for (const next of removed) {
    for (const { record: user, reference } of findUsers(document, next.kind, next.id)) {
      if (reference.isNeeded && user.kind !== 'series' && !removed.includes(user)) removed.push(user);
    }
  }
  return removed.toReversed();
}

/** Everything else that points at a removed record loses that pointer. */
function dropPointers(document: SeriesDocument, removed: readonly ListRecord[]): readonly RecordEdit[] {
  const isRemoved = (kind: string, id: string): boolean => removed.some((record) => record.kind === kind && record.id === id);
  return listRecords(document).filter((record) => !isRemoved(record.kind, record.id)).flatMap((record) => {
    const dangling = referencesOf(record).filter(({ kind, id }) => isRemoved(kind, id));
    if (dangling.length === 0) return [];
    return [changeEdit(record, dangling.reduce((next, { kind, id }) => withoutReference(next, kind, id), record))];
  });
}

/**
 * Removes a record. Without `cascade` it is refused with `removal-orphans` while something points at it, and with
 * `removal-orphans-state` when it is the only work that makes a state which other work needs. With `cascade`, pointers
 * to it are taken out and records that make no sense without it go too, all in one change.
 * Also fails with `record-missing`, `stale-record` or with the stops that the removal brings.
 */
export function removeRecord(
  document: SeriesDocument, kind: ListKind, id: string, revision: number, options: { readonly cascade?: boolean } = {},
): Result<Edited> {
  const found = findForWrite<ListKind>(document, kind, id, revision);
  if (!found.ok) return found;
  const record = found.value;
  const removed = options.cascade === true ? collectRemoved(document, record) : [record];
  const changed = options.cascade === true ? dropPointers(document, removed) : [];
  const stateOrphans = options.cascade === true ? [] : findStateOrphans(document, record);
  const others = [
    removed.length > 1 ? `${count(removed.length - 1, 'record')} that needed it` : '',
    changed.length > 0 ? `its mention in ${count(changed.length, 'record')}` : '',
  ].filter((text) => text !== '').join(' and ');
  const label = `Removed ${labelOf(record)}${others === '' ? '' : `, with ${others}`}`;
  const edited = makeEdited(document, { label, edits: [...changed, ...removed.map(removeEdit)], undoes: null });
  if (stateOrphans.length === 0) return edited;
  return fail(edited.ok ? stateOrphans : [...edited.error, ...stateOrphans]);
}

/** What would go and what would change with a record, for the question before it is removed. */
export interface RemovalPreview {
  /** The record itself is the last. */
  readonly removed: readonly ListRecord[];
  readonly changed: readonly RecordEdit[];
}

/** What {@link removeRecord} with `cascade` would do, or null when there is no such record. */
export function previewRemoval(document: SeriesDocument, kind: ListKind, id: string): RemovalPreview | null {
  const record = findRecord<ListKind>(document, kind, id);
  if (record === undefined) return null;
  const removed = collectRemoved(document, record);
  return { removed, changed: dropPointers(document, removed) };
}
