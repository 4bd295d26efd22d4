/** What has happened to a record since somebody opened it. */
import { changedFields, fieldLabel, findRecord, kindLabel, type RecordKind, type SavedChange, type SeriesDocument } from '@/lib/build';
import { fail, type Issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';

/** Changes looked through for what happened. */
const HISTORY = 50;

function fieldsSince(changes: readonly SavedChange[], kind: RecordKind, id: string, revision: number): readonly string[] {
  const edits = changes.flatMap((change) => change.edits).filter((edit) => edit.kind === kind && edit.id === id);
  const fields = edits.flatMap(({ before, after }) => (before === null || after === null || before.revision < revision ? [] : changedFields(before, after)));
  return [...new Set(fields)].map((field) => fieldLabel(kind, field));
}

/** Adds to a `stale-record` issue which fields were changed, by the history. Other results pass unchanged. */
export async function explainStale<T>(
  context: SeriesContext, document: SeriesDocument, write: { readonly kind: RecordKind; readonly id: string; readonly revision: number }, result: Result<T>,
): Promise<Result<T>> {
  if (result.ok || !result.error.some(({ code }) => code === 'stale-record')) return result;
  const changes = await context.storage.listChanges(document.series.id, HISTORY);
  const fields = fieldsSince(changes, write.kind, write.id, write.revision);
  if (fields.length === 0) return result;
  const name = findRecord(document, write.kind, write.id)?.name ?? '';
  const explain = (found: Issue): Issue => (found.code !== 'stale-record' ? found : {
    ...found, message: `The ${kindLabel(write.kind)} “${name.slice(0, 60)}” has been changed since you opened it: ${fields.join(', ')}.`,
  });
  return fail(result.error.map(explain));
}
