import { fail, issue, ok, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { loadDocument } from './save-edited';

/**
 * Removes a series with its history and plans, for good: this cannot be undone, so its name must be typed to confirm.
 * Fails with `no-such-series` or `name-not-confirmed`.
 */
export async function removeSeries(context: SeriesContext, seriesId: string, typedName: string): Promise<Result<{ readonly name: string }>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const { name } = loaded.value.series;
  if (typedName.trim() !== name) {
    return fail([issue('name-not-confirmed', 'The name that was typed is not the name of this series, so nothing was removed.', `Type “${name}”.`, { path: ['name'] })]);
  }
  await context.storage.removeSeries(seriesId);
  return ok({ name });
}
