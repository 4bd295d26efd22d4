import { changeRecord as changeFields, findForWrite, type Edited, type RecordKind, type SeriesDocument } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { fieldsOf, readKind, settingOf } from './build-record';
import type { SeriesContext } from './context';
import { explainStale } from './explain-stale';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { readFields, type FormSetting } from './schemas';
import { settleHolidays } from './settle-holidays';

interface Write {
  readonly kind: RecordKind;
  readonly id: string;
  /** The revision that the person saw. */
  readonly revision: number;
}

function isFieldObject(input: unknown): input is Readonly<Record<string, unknown>> {
  return typeof input === 'object' && input !== null && !Array.isArray(input);
}

async function edit(document: SeriesDocument, { kind, id, revision }: Write, input: unknown, setting: FormSetting): Promise<Result<Edited>> {
  const found = findForWrite(document, kind, id, revision);
  if (!found.ok) return found;
  if (!isFieldObject(input)) return fail([issue('input-value', 'The form sent nothing that can be read.', 'Load the page again.')]);
  const read = readFields(kind, { ...fieldsOf(found.value), ...input }, setting);
  if (!read.ok) return read;
  const settled = await settleHolidays({ ...found.value, ...read.value }, found.value);
  return settled.ok ? changeFields(document, kind, id, revision, fieldsOf(settled.value)) : settled;
}

/**
 * Changes fields of a record, or of the series itself (kind `series`); fields that the input leaves out stay.
 * Fails with `record-missing`, `stale-record` (with what was changed), `nothing-changed`, and with the issues of the form,
 * of the rules and of storage; then nothing is saved.
 */
export async function changeRecord(
  context: SeriesContext, seriesId: string, kindText: string, id: string, revision: number, input: unknown,
): Promise<Result<Saved>> {
  const list = readKind(kindText);
  if (!list.ok && kindText !== 'series') return list;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const write: Write = { kind: list.ok ? list.value : 'series', id, revision };
  const edited = await edit(loaded.value, write, input, settingOf(context, loaded.value));
  return saveEdited(context, loaded.value, await explainStale(context, loaded.value, write, edited));
}
