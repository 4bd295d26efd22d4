/** Everything that was changed, newest first, in words. */
import {
  isSame, kindLabel, listRecords, undoChange, type RecordEdit, type RecordKind, type SavedChange, type SeriesDocument, type SeriesRecord,
} from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { ViewContext } from './context';
import { keyOf } from './record-form-draft';
import { listChoices, listPartStates } from './record-form-choices';
import { listFields } from './record-form-specs';
import { sayField, type Naming } from './record-form-words';

export interface FieldChange {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export interface EditView {
  readonly kind: RecordKind;
  readonly id: string;
  /** `task`. */
  readonly kindWord: string;
  readonly name: string;
  readonly what: 'made' | 'changed' | 'removed';
  /** There still is such a record to open. */
  readonly isThere: boolean;
  readonly fields: readonly FieldChange[];
}

export interface ChangeView {
  readonly number: number;
  /** `Tue 1 Dec 18:30`. */
  readonly at: string;
  /** Machine-readable moment. */
  readonly isoAt: string;
  readonly label: string;
  readonly edits: readonly EditView[];
  /** Edits beyond those listed. */
  readonly moreEdits: number;
  /** Number of the change it takes back. */
  readonly undoes: number | null;
  /** Why there is no Undo button, null where there is one. */
  readonly whyNot: string | null;
}

export interface HistoryView {
  readonly changes: readonly ChangeView[];
  /** How many to ask for to see more; null when these are all. */
  readonly more: number | null;
}

const MOST_EDITS = 12;
export const HISTORY_STEP = 25;

function describeFields(kind: RecordKind, before: SeriesRecord, after: SeriesRecord, naming: Naming): readonly FieldChange[] {
  const fields = listFields(kind).flatMap((field) => {
    const was = keyOf(before, field.name);
    const is = keyOf(after, field.name);
    if (isSame(was, is)) return [];
    return [{ label: field.label, before: sayField(field, was, naming), after: sayField(field, is, naming) }];
  });
  if (before.order === after.order) return fields;
  return [...fields, { label: 'Place in the list', before: String(before.order + 1), after: String(after.order + 1) }];
}

function describeEdit({ kind, id, before, after }: RecordEdit, naming: Naming, present: ReadonlySet<string>): EditView {
  const record = after ?? before;
  return {
    kind,
    id,
    kindWord: kindLabel(kind),
    name: record?.name ?? id,
    what: before === null ? 'made' : after === null ? 'removed' : 'changed',
    isThere: present.has(`${kind}:${id}`),
    fields: before !== null && after !== null ? describeFields(kind, before, after, naming) : [],
  };
}

/** Names of today, with those of records since removed taken from the changes shown. */
function collectNaming(document: SeriesDocument, changes: readonly SavedChange[]): Naming {
  const choices = listChoices(document);
  const partStates = { ...listPartStates(document) };
  for (const { edits } of changes) {
    for (const { before } of edits) {
      if (before?.kind === 'part') partStates[before.id] = [...(partStates[before.id] ?? []), ...before.states.map(({ id, name }) => ({ value: id, label: name }))];
    }
  }
  return { zone: document.series.zone, choices, partStates };
}

/** Changes in words; `changes` newest first. */
export function describeChanges(document: SeriesDocument, changes: readonly SavedChange[]): readonly ChangeView[] {
  const naming = collectNaming(document, changes);
  const present = new Set(listRecords(document).map(({ kind, id }) => `${kind}:${id}`));
  return changes.map((change) => ({
    number: change.number,
    at: formatMoment(change.at, naming.zone),
    isoAt: new Date(change.at).toISOString(),
    label: change.label,
    edits: change.edits.slice(0, MOST_EDITS).map((edit) => describeEdit(edit, naming, present)),
    moreEdits: Math.max(0, change.edits.length - MOST_EDITS),
    undoes: change.undoes,
    whyNot: sayWhyNot(document, change),
  }));
}

function sayWhyNot(document: SeriesDocument, change: SavedChange): string | null {
  if (change.undoneBy !== null) return `Taken back by change ${change.undoneBy}.`;
  const undone = undoChange(document, change);
  return undone.ok ? null : undone.error.map(({ message, fix }) => `${message} ${fix}`).join(' ');
}

/** The latest changes of a series, `limit` of them. */
export async function viewHistory({ storage }: ViewContext, document: SeriesDocument, limit: number): Promise<HistoryView> {
  const found = await storage.listChanges(document.series.id, limit + 1);
  return { changes: describeChanges(document, found.slice(0, limit)), more: found.length > limit ? limit + HISTORY_STEP : null };
}
