/** Putting segments into episodes and into another order. */
import { fail, issue, type Result } from '@/lib/result';
import { changeEdit, makeEdited } from './apply-edits';
import type { Edited } from './edit';
import { findForWrite, labelOf } from './edits';
import type { SeriesDocument } from './model';
import { count } from './words';

/** Where a segment goes: into an episode or none, and in front of which segment; null: to the end of the episode. */
export interface SegmentMove {
  readonly episodeId: string | null;
  readonly beforeId: string | null;
}

function arrange(document: SeriesDocument, ids: readonly string[], episodeOf: ReadonlyMap<string, string | null>, label: string): Result<Edited> {
  const edits = document.segments.flatMap((segment) => {
    const order = ids.indexOf(segment.id);
    const known = episodeOf.get(segment.id);
    const episodeId = known === undefined ? segment.episodeId : known;
    return order === segment.order && episodeId === segment.episodeId ? [] : [changeEdit(segment, { ...segment, order, episodeId })];
  });
  if (edits.length === 0) return fail([issue('nothing-changed', 'Everything is already like this.', 'Change something first.')]);
  return makeEdited(document, { label, edits, undoes: null });
}

/**
 * Moves one segment. Fails with `record-missing`, `stale-record`, `segment-move` when the segment in front of which it should go is not in
 * that episode, or `nothing-changed`.
 */
export function moveSegment(document: SeriesDocument, id: string, revision: number, { episodeId, beforeId }: SegmentMove): Result<Edited> {
  const found = findForWrite(document, 'segment', id, revision);
  if (!found.ok) return found;
  const others = document.segments.filter((segment) => segment.id !== id);
  const inEpisode = others.filter((segment) => segment.episodeId === episodeId);
  if (beforeId !== null && !inEpisode.some((segment) => segment.id === beforeId)) {
    return fail([issue('segment-move', 'The segment it should go in front of is not in that episode any more.', 'Load the page again and repeat your move.')]);
  }
  const last = inEpisode.at(-1);
  const at = beforeId === null ? (last === undefined ? others.length : others.indexOf(last) + 1) : others.findIndex((segment) => segment.id === beforeId);
  const ids = others.toSpliced(at, 0, found.value).map((segment) => segment.id);
  const episode = document.episodes.find((each) => each.id === episodeId);
  const where = found.value.episodeId === episodeId ? 'within its episode' : episode === undefined ? 'out of its episode' : `to ${episode.name}`;
  return arrange(document, ids, new Map([[id, episodeId]]), `Moved ${labelOf(found.value)} ${where}`);
}

/** Puts many segments into episodes, each with its order, in one change. Segments that are not named stay, behind the others. */
export function arrangeSegments(document: SeriesDocument, episodes: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[]): Result<Edited> {
  const named = episodes.flatMap(({ segmentIds }) => segmentIds);
  const known = new Set(document.segments.map((segment) => segment.id));
  if (new Set(named).size !== named.length || named.some((id) => !known.has(id))) {
    return fail([issue('segment-arrangement', 'The proposal names a segment that is not there any more, or one twice.', 'Load the page again.')]);
  }
  const episodeOf = new Map(episodes.flatMap(({ episodeId, segmentIds }) => segmentIds.map((id) => [id, episodeId] as const)));
  // The named ones fill the places that named ones had, so that the rest does not move.
  const queue = [...named];
  const isNamed = new Set(named);
  const ids = document.segments.map((segment) => (isNamed.has(segment.id) ? queue.shift()! : segment.id));
  return arrange(document, ids, episodeOf, `Put ${count(named.length, 'segment')} into ${count(episodes.length, 'episode')}`);
}
