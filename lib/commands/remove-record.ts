import { removeRecord as takeOut } from '@/lib/build';
import type { Result } from '@/lib/result';
import { readKind } from './build-record';
import type { SeriesContext } from './context';
import { explainStale } from './explain-stale';
import { loadDocument, saveEdited, type Saved } from './save-edited';

export interface RemoveOptions {
  /** Records that make no sense without it go too, and other mentions of it are taken out. */
  readonly cascade?: boolean;
}

/**
 * Removes a record. Refused with `removal-orphans` or `removal-orphans-state`, which say what would be left with a gap,
 * unless `cascade` is set.
 */
export async function removeRecord(
  context: SeriesContext, seriesId: string, kindText: string, id: string, revision: number, options: RemoveOptions = {},
): Promise<Result<Saved>> {
  const kind = readKind(kindText);
  if (!kind.ok) return kind;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const edited = takeOut(loaded.value, kind.value, id, revision, options);
  return saveEdited(context, loaded.value, await explainStale(context, loaded.value, { kind: kind.value, id, revision }, edited));
}
