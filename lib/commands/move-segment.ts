import { arrangeSegments as arrange, moveSegment as move, type SegmentMove } from '@/lib/build';
import type { Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/** Puts a segment into an episode, in front of another. Fails as the rules of the build say; a segment that does not fit the episodes stays where it was. */
export async function moveSegment(context: SeriesContext, seriesId: string, id: string, revision: number, to: SegmentMove): Promise<Result<Saved>> {
  return editSeries(context, seriesId, (document) => move(document, id, revision, to));
}

/** Puts segments into episodes as a proposal says, in one change. */
export async function arrangeSegments(
  context: SeriesContext, seriesId: string, episodes: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[],
): Promise<Result<Saved>> {
  return editSeries(context, seriesId, (document) => arrange(document, episodes));
}
