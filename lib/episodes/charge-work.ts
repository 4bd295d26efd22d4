/** Which episode pays for which work. */
import { deriveOrder, isDone, listWorks, workKey, type Episode, type SeriesDocument } from '@/lib/build';

/**
 * Open tasks by id with the episode that pays for each: the first of `episodes`, in their order, that it is recorded for or that waits
 * for it, at however many removes and through outside jobs. Work of no episode, or of a later one, thus counts where it is first
 * needed. Work that no episode waits for is not in the map.
 */
export function chargeWork(document: SeriesDocument, episodes: readonly Episode[]): ReadonlyMap<string, string> {
  const open = new Map(listWorks(document).filter((work) => !isDone(work.record)).map((work) => [workKey(work.ref), work]));
  const before = new Map<string, string[]>();
  for (const { from, to } of deriveOrder(document)) {
    const list = before.get(workKey(to)) ?? [];
    list.push(workKey(from));
    before.set(workKey(to), list);
  }
  const payer = new Map<string, string>();
  for (const episode of episodes) {
    const queue = [...open].filter(([, work]) => work.record.episodeId === episode.id).map(([key]) => key);
    // The queue grows while it is walked.
    for (const key of queue) {
      if (payer.has(key) || !open.has(key)) continue;
      payer.set(key, episode.id);
      queue.push(...(before.get(key) ?? []));
    }
  }
  return new Map([...payer].flatMap(([key, episodeId]) => {
    const work = open.get(key);
    return work?.ref.kind === 'task' ? [[work.ref.id, episodeId] as const] : [];
  }));
}
