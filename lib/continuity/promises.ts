/** What viewers were told would come, and how it stands. */
import type { Episode, SeriesDocument, SpokenPromise } from '@/lib/build';
import type { CivilDate } from '@/lib/calendar';

export interface PromiseStanding {
  readonly promise: SpokenPromise;
  /** The episode that must have kept it: its own, else the last of the series. */
  readonly due: Episode | null;
  /** `overdue`: its episode is out. `broken`: the whole series is out. */
  readonly standing: 'open' | 'overdue' | 'broken' | 'closed';
}

/** The last episode by release; those that may air at any time do not end a series. */
export function lastEpisode({ episodes }: SeriesDocument): Episode | null {
  const dated = episodes.filter(({ isEvergreen }) => !isEvergreen);
  return dated.toSorted((a, b) => b.releaseDate.localeCompare(a.releaseDate) || b.order - a.order)[0] ?? null;
}

const isOut = (episode: Episode, today: CivilDate): boolean => episode.status === 'released' || episode.releaseDate < today;

/** All promises: broken and overdue ones first, then open ones by due date, then closed ones. */
export function listPromises(document: SeriesDocument, today: CivilDate): readonly PromiseStanding[] {
  const last = lastEpisode(document);
  const episodes = new Map(document.episodes.map((episode) => [episode.id, episode]));
  const rank = { broken: 0, overdue: 1, open: 2, closed: 3 };
  return document.promises.map((promise): PromiseStanding => {
    const due = (promise.dueId === null ? null : episodes.get(promise.dueId)) ?? last;
    if (promise.closure !== 'open') return { promise, due, standing: 'closed' };
    if (last !== null && isOut(last, today)) return { promise, due, standing: 'broken' };
    return { promise, due, standing: due !== null && isOut(due, today) ? 'overdue' : 'open' };
  }).toSorted((a, b) => rank[a.standing] - rank[b.standing] || (a.due?.releaseDate ?? '').localeCompare(b.due?.releaseDate ?? '') || a.promise.order - b.promise.order);
}
