import { createRecord as addRecord } from '@/lib/build';
import { ok, type Result } from '@/lib/result';
import { buildRecord, readKind, settingOf } from './build-record';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { settleHolidays } from './settle-holidays';

/** A saved change that made one record. */
export interface Created extends Saved {
  /** Of the new record. */
  readonly id: string;
}

/**
 * Adds a record to the end of its list.
 * Fails with the issues of the form, of the rules (see `checkSeries`) and of storage; then nothing is saved.
 */
export async function createRecord(context: SeriesContext, seriesId: string, kindText: string, input: unknown): Promise<Result<Created>> {
  const kind = readKind(kindText);
  if (!kind.ok) return kind;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const id = context.newId();
  const record = buildRecord(kind.value, id, input, settingOf(context, loaded.value));
  if (!record.ok) return record;
  const settled = await settleHolidays(record.value, null);
  if (!settled.ok) return settled;
  const saved = await saveEdited(context, loaded.value, addRecord(loaded.value, settled.value));
  return saved.ok ? ok({ ...saved.value, id }) : saved;
}
