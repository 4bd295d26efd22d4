/** What a plan leaves of finished episodes in hand, in a sentence. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, formatIsoWeek } from '@/lib/calendar';
import { countBank } from '@/lib/episodes';
import type { EpisodeOutlook } from '@/lib/plan';
import { addMinutes, type Instant } from '@/lib/units';
import { listBanked } from './episodes-facts';
import { formatCount } from './week-words';

/** Episodes with the release dates that a plan was made for: a what-if may move them. */
function withReleases(document: SeriesDocument, episodes: readonly EpisodeOutlook[]): SeriesDocument {
  const { leadDays, zone } = document.series;
  const dues = new Map(episodes.map(({ episodeId, shootDue }) => [episodeId, addDays(dateOf(addMinutes(shootDue, -1), zone), leadDays)]));
  return { ...document, episodes: document.episodes.map((episode) => ({ ...episode, releaseDate: dues.get(episode.id) ?? episode.releaseDate })) };
}

/** `2 weeks end with fewer than 2 finished episodes in hand, the first 2026-W51 with 0.` */
export function tellBank(document: SeriesDocument, episodes: readonly EpisodeOutlook[], now: Instant): string {
  const { bankMinimum, zone } = document.series;
  const banked = listBanked({ document: withReleases(document, episodes), plan: { result: { blocks: [], episodes } }, now });
  const { firstAlarm, weeks } = countBank(banked, dateOf(now, zone), bankMinimum);
  if (weeks.length === 0) return 'No episode is to come.';
  if (firstAlarm === null) return `${formatCount(bankMinimum, 'finished episode')} or more in hand every week.`;
  const low = weeks.filter(({ isBelowMinimum }) => isBelowMinimum).length;
  return `${formatCount(low, 'week ends', 'weeks end')} with fewer than ${formatCount(bankMinimum, 'finished episode')} in hand, the first ${formatIsoWeek(firstAlarm.week)} with ${firstAlarm.inHand}.`;
}
