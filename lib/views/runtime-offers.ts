/** What to take out of an episode or bring into it, so that it keeps to its runtime. */
import { joinWords, type Episode, type Segment } from '@/lib/build';
import { fitRuntime } from '@/lib/episodes';
import { listOpenEpisodes, segmentsOf, type EpisodesInput } from './episodes-facts';
import type { RuntimeOffer, RuntimeView } from './episodes-model';

/** Segments go to the next episode to be recorded, and come from no episode or from that one. Only while the episode is planned. */
export function listRuntimeOffers({ document }: EpisodesInput, episode: Episode, own: readonly Segment[], runtime: RuntimeView): readonly RuntimeOffer[] {
  if (own.length === 0 || episode.status !== 'planned') return [];
  const next = listOpenEpisodes(document).find((each) => each.releaseDate > episode.releaseDate && !each.isEvergreen);
  const others = [...segmentsOf(document, null), ...(next === undefined ? [] : segmentsOf(document, next.id))];
  const names = (ids: readonly string[]): string => joinWords(ids.map((id) => `“${[...own, ...others].find((segment) => segment.id === id)?.name ?? id}”`));
  return fitRuntime(runtime.minutes, runtime, own, others).flatMap(({ kind, segmentIds, minutes }): readonly RuntimeOffer[] => {
    const length = Math.round(minutes * 10) / 10;
    if (kind === 'bring in') return [{ words: `Bring in ${names(segmentIds)}: ${length} min`, arrangement: [{ episodeId: episode.id, segmentIds: [...own.map(({ id }) => id), ...segmentIds] }] }];
    return next === undefined ? [] : [{ words: `Move ${names(segmentIds)} to “${next.name}”: ${length} min here`, arrangement: [{ episodeId: next.id, segmentIds }] }];
  });
}
