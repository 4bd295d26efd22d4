/** The series in the order in which viewers see it. */
import type { Episode, Segment, SeriesDocument } from '@/lib/build';

/** A piece of the series as viewers see it: a segment, or a task of an episode that has no segments yet. */
export interface AiredPiece {
  readonly id: string;
  readonly name: string;
  readonly episodeId: string | null;
  readonly taskIds: readonly string[];
  /** Goes back on purpose, and says so. */
  readonly isFlashback: boolean;
  /** null: a task stands for itself. */
  readonly segment: Segment | null;
}

function pieceOfSegment(segment: Segment): AiredPiece {
  const { id, name, episodeId, taskIds, isFlashback } = segment;
  return { id, name, episodeId, taskIds, isFlashback, segment };
}

/** Episodes in the order of release. */
export function releaseOrder(episodes: readonly Episode[]): readonly Episode[] {
  return episodes.toSorted((a, b) => a.releaseDate.localeCompare(b.releaseDate) || a.order - b.order);
}

/** The segments of each episode in the order of telling; where an episode has none, its tasks in theirs. */
export function airingOf({ episodes, segments, tasks }: SeriesDocument): readonly AiredPiece[] {
  return releaseOrder(episodes).flatMap((episode) => {
    const told = segments.filter(({ episodeId }) => episodeId === episode.id);
    if (told.length > 0) return told.map(pieceOfSegment);
    return tasks.filter(({ episodeId }) => episodeId === episode.id)
      .map(({ id, name }): AiredPiece => ({ id, name, episodeId: episode.id, taskIds: [id], isFlashback: false, segment: null }));
  });
}
