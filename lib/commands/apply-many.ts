import { createRecords, type ListRecord, type SeriesDocument } from '@/lib/build';
import { fail, ok, type Issue, type Result } from '@/lib/result';
import { buildRecord, readKind, settingOf } from './build-record';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';

/** One record to make. Records of one change may point at each other by the ids given here. */
export interface Creation {
  readonly kind: string;
  /** Left out: a new one. */
  readonly id?: string;
  readonly input: unknown;
}

/** A saved change that made several records. */
export interface CreatedMany extends Saved {
  /** Of the new records, in the order of the creations. */
  readonly ids: readonly string[];
}

function buildAll(context: SeriesContext, document: SeriesDocument, creations: readonly Creation[]): Result<readonly ListRecord[]> {
  const setting = settingOf(context, document);
  const built = creations.map(({ kind, id = context.newId(), input }, index) => {
    const known = readKind(kind);
    const record = known.ok ? buildRecord(known.value, id, input, setting) : known;
    return record.ok ? record : fail(record.error.map((found): Issue => ({ ...found, path: [index, ...found.path] })));
  });
  const issues = built.flatMap((one) => (one.ok ? [] : one.error));
  return issues.length > 0 ? fail(issues) : ok(built.flatMap((one) => (one.ok ? [one.value] : [])));
}

/**
 * Makes many records in one change, all or none. In the path of a form's issue, the creation's place comes first.
 * Fails with the issues of the forms, of the rules and of storage.
 */
export async function applyMany(context: SeriesContext, seriesId: string, label: string, creations: readonly Creation[]): Promise<Result<CreatedMany>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const records = buildAll(context, loaded.value, creations);
  if (!records.ok) return records;
  const saved = await saveEdited(context, loaded.value, createRecords(loaded.value, records.value, label));
  return saved.ok ? ok({ ...saved.value, ids: records.value.map(({ id }) => id) }) : saved;
}
