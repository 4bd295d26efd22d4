/** Taking a change back, any change whose records have not moved on since. */
import { fail, issue, type Issue, type Result } from '@/lib/result';
import { changeEdit, createEdit, makeEdited, removeEdit } from './apply-edits';
import type { Edited, RecordEdit, SavedChange } from './edit';
import { changedFields, fieldLabel } from './fields';
import type { SeriesDocument, SeriesRecord } from './model';
import { findRecord } from './records';
import { startWith, subjectsOf } from './words';

function refuse(record: SeriesRecord, message: string, fix: string): readonly Issue[] {
  return [issue('changed-since', message, fix, { subjects: subjectsOf(record) })];
}

/** Why an edit cannot be turned round, or nothing. Only content counts: a change that was itself taken back does no harm. */
function findConflict(document: SeriesDocument, { kind, id, before, after }: RecordEdit): readonly Issue[] {
  const current = findRecord(document, kind, id);
  if (after === null) {
    return current === undefined ? [] : refuse(current, `${startWith(current)} is in the series again already.`, 'Remove it first if you want the old one back.');
  }
  if (current === undefined) {
    return refuse(after, `${startWith(after)} has been removed since.`, 'Undo its removal first.');
  }
  const fields = changedFields(after, current).map((field) => fieldLabel(kind, field));
  const hasMoved = before !== null && before.order !== after.order && current.order !== after.order;
  if (fields.length === 0 && !hasMoved) return [];
  const what = [...fields, ...(hasMoved ? ['place in the list'] : [])].join(', ');
  return refuse(current, `${startWith(current)} has been changed since: ${what}.`, 'Undo the later change first, or change it by hand.');
}

/** The edit the other way round, on top of what the record is now. */
function turnRound(document: SeriesDocument, { kind, id, before, after }: RecordEdit): readonly RecordEdit[] {
  const current = findRecord(document, kind, id);
  if (before === null) return current === undefined || current.kind === 'series' ? [] : [removeEdit(current)];
  if (after === null) return [createEdit({ ...before, revision: before.revision + 1 })];
  if (current === undefined) return [];
  const order = before.order === after.order ? current.order : before.order;
  return [changeEdit(current, { ...before, order })];
}

/** `Undid: Added task X`, and `Redid: Added task X` when that is taken back in turn. */
function labelUndo({ label }: SavedChange): string {
  const [, verb, rest] = /^(Undid|Redid): (.*)$/su.exec(label) ?? [];
  if (rest === undefined) return `Undid: ${label}`;
  return `${verb === 'Undid' ? 'Redid' : 'Undid'}: ${rest}`;
}

/**
 * The change that takes another one back. Undoing an undo does the first thing again.
 * Fails with `already-undone`, with `changed-since` for every record that has moved on, with `removal-orphans` or
 * with the stops that going back would bring.
 */
export function undoChange(document: SeriesDocument, change: SavedChange): Result<Edited> {
  if (change.undoneBy !== null) {
    return fail([issue('already-undone', `“${change.label}” has been undone already.`, 'Nothing is left to do.')]);
  }
  const conflicts = change.edits.flatMap((edit) => findConflict(document, edit));
  if (conflicts.length > 0) return fail(conflicts);
  const edits = change.edits.toReversed().flatMap((edit) => turnRound(document, edit));
  return makeEdited(document, { label: labelUndo(change), edits, undoes: change.number });
}
