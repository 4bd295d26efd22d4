import type { Result } from '@/lib/result';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import type { Saved } from './save-edited';

/** Says of a segment that it goes back in the story on purpose. Fails with `record-missing`, `stale-record` or `nothing-changed`. */
export async function markFlashback(context: SeriesContext, seriesId: string, segmentId: string, revision: number): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'segment', id: segmentId, revision }, (segment) => turnTo('Marked as a flashback:', { ...segment, isFlashback: true }));
}
