import { changeRecords } from '@/lib/build';
import type { Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/** Has plans book by experience, or as typed again. Fails with `stale-record` or `nothing-changed`. */
export async function planByExperience(context: SeriesContext, seriesId: string, revision: number, usesExperience: boolean): Promise<Result<Saved>> {
  return editSeries(context, seriesId, (document) =>
    changeRecords(document, [{ ...document.series, revision, usesExperience }], usesExperience ? 'Plan by experience' : 'Plan by typed times'));
}
