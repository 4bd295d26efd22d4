'use server';

import { isRecordKind, type ListKind, type RecordKind } from '@/lib/build';
import { changeRecord, createRecord, createSessions, removeRecord, reorderRecords } from '@/lib/commands';
import { loadDocument, readRecordForm, readRepeatForm, viewNewest, type DraftObject, type NewestRecord } from '@/lib/views';
import { runAction } from './run';
import type { Outcome } from './outcome';

interface RecordToSave {
  readonly seriesId: string;
  readonly kind: RecordKind;
  /** null: a new record. */
  readonly id: string | null;
  readonly revision: number;
  readonly draft: DraftObject;
}

/** Saves what stands in a record form. */
export async function saveRecordAction({ seriesId, kind, id, revision, draft }: RecordToSave): Promise<Outcome> {
  if (!isRecordKind(kind)) throw new Error(`No form saves records of kind ${String(kind)}`);
  const input = readRecordForm(kind, draft);
  if (!input.ok) return { ok: false, issues: input.error };
  return runAction(seriesId, (context) => {
    if (id !== null) return changeRecord(context, seriesId, kind, id, revision, input.value);
    if (kind === 'series') throw new Error('A series is made in the list of series');
    return createRecord(context, seriesId, kind, input.value);
  });
}

/** The newest version of a record that somebody else has saved; null when it is gone. */
export async function loadNewestAction(seriesId: string, kind: RecordKind, id: string): Promise<NewestRecord | null> {
  const document = await loadDocument(seriesId);
  return document === null ? null : viewNewest(document, kind, id);
}

interface RecordToRemove {
  readonly seriesId: string;
  readonly kind: ListKind;
  readonly id: string;
  readonly revision: number;
  /** Take what needs it along. */
  readonly cascade: boolean;
}

export async function removeRecordAction({ seriesId, kind, id, revision, cascade }: RecordToRemove): Promise<Outcome> {
  return runAction(seriesId, (context) => removeRecord(context, seriesId, kind, id, revision, { cascade }));
}

export async function reorderRecordsAction(seriesId: string, kind: ListKind, ids: readonly string[]): Promise<Outcome> {
  return runAction(seriesId, (context) => reorderRecords(context, seriesId, kind, ids));
}

/** Adds sessions that repeat weekly. */
export async function createSessionsAction(seriesId: string, draft: DraftObject): Promise<Outcome> {
  const input = readRepeatForm(draft);
  if (!input.ok) return { ok: false, issues: input.error };
  return runAction(seriesId, (context) => createSessions(context, seriesId, input.value));
}
