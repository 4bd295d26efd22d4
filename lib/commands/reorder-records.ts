import { reorderRecords as putInOrder } from '@/lib/build';
import type { Result } from '@/lib/result';
import { readKind } from './build-record';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/** Puts a list into the order of the ids. Fails with `order-incomplete` when they are not those of the list, each once. */
export async function reorderRecords(context: SeriesContext, seriesId: string, kindText: string, ids: readonly string[]): Promise<Result<Saved>> {
  const kind = readKind(kindText);
  if (!kind.ok) return kind;
  return editSeries(context, seriesId, (document) => putInOrder(document, kind.value, ids));
}
