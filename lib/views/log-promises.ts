/** Promises made on camera and how each stands. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf, formatDay } from '@/lib/calendar';
import { listPromises } from '@/lib/continuity';
import type { ViewContext } from './context';

export interface PromiseView {
  readonly id: string;
  readonly revision: number;
  readonly words: string;
  /** `in Down to the frame, closing words`. */
  readonly said: string;
  readonly due: string;
  readonly standing: 'open' | 'overdue' | 'broken' | 'closed';
  readonly closure: string;
  readonly reason: string;
}

export function viewPromises({ now }: ViewContext, document: SeriesDocument): { readonly promises: readonly PromiseView[]; readonly episodes: readonly { readonly id: string; readonly name: string }[] } {
  const nameOf = (id: string | null): string | null => document.episodes.find((episode) => episode.id === id)?.name ?? null;
  const promises = listPromises(document, dateOf(now, document.series.zone)).map(({ promise, due, standing }): PromiseView => {
    const [saidIn, closedIn] = [nameOf(promise.saidInId), nameOf(promise.closedInId)];
    return {
      id: promise.id, revision: promise.revision, words: promise.name, standing, reason: promise.reason,
      said: [saidIn === null ? 'not in an episode yet' : `in ${saidIn}`, promise.where].filter((word) => word !== '').join(', '),
      due: due === null ? 'by the end of the series' : `${promise.dueId === null ? 'by the end of the series, ' : ''}${due.name}, ${formatDay(due.releaseDate)}`,
      closure: closedIn === null ? promise.closure : `${promise.closure} in ${closedIn}`,
    };
  });
  return { promises, episodes: document.episodes.map(({ id, name }) => ({ id, name })) };
}
