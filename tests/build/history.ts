/** A history in memory for tests of edits. */
import { listRecords, undoChange, type Edited, type SavedChange, type SeriesDocument, type SeriesRecord } from '@/lib/build';
import type { Result } from '@/lib/result';
import { at } from './sample-series';

export interface History {
  readonly document: SeriesDocument;
  readonly changes: readonly SavedChange[];
}

/** The history with one more change, or null when the edit was refused. */
export function save(history: History, edited: Result<Edited>): History | null {
  if (!edited.ok) return null;
  const { document, change } = edited.value;
  const saved: SavedChange = { ...change, number: document.changeNumber, at: at('2026-11-30', '12:00'), undoneBy: null };
  const marked = history.changes.map((old) => (old.number === change.undoes ? { ...old, undoneBy: saved.number } : old));
  return { document, changes: [...marked, saved] };
}

/** The history with a change taken back. Throws when that is refused. */
export function undo(history: History, number: number): History {
  const change = history.changes.find((one) => one.number === number);
  if (change === undefined) throw new Error(`No change ${number}`);
  const undone = undoChange(history.document, change);
  const next = save(history, undone);
  if (next === null) throw new Error(`Undo of ${number} refused: ${JSON.stringify(undone)}`);
  return next;
}

/** Every record without its revision. */
export function contents(document: SeriesDocument): readonly Omit<SeriesRecord, 'revision'>[] {
  return listRecords(document).map(({ revision: _revision, ...rest }) => rest);
}
