import { undoChange as takeBack } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/**
 * Takes a change back by a change of its own; undoing that one does the first again.
 * Fails with `no-such-change`, `already-undone`, `changed-since` (naming the record and its fields) or with the stops
 * that going back would bring.
 */
export async function undoChange(context: SeriesContext, seriesId: string, number: number): Promise<Result<Saved>> {
  const change = await context.storage.getChange(seriesId, number);
  if (change === null) return fail([issue('no-such-change', `There is no change ${number} in the history.`, 'Load the history again.')]);
  return editSeries(context, seriesId, (document) => takeBack(document, change));
}
