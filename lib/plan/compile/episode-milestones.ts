/** The end of an episode's recording as an activity without length, with the shoot due date as its due date. */
import { shootDue } from '@/lib/build';
import { addLag, type Draft } from './draft';
import { beforeShotActivity, collectionActivity, dropOffActivity, episodeActivity, taskActivity } from './names';

/** A minute late on a dated episode weighs as much as five on one that can air at any time. Our choice. */
const DATED_WEIGHT = 5;
const EVERGREEN_WEIGHT = 1;

/** Adds one milestone for each episode that still has unfinished work, whatever it is called: only what is out is past its date. */
export function addEpisodes(draft: Draft): void {
  const { document, clock } = draft;
  const planned = new Set(draft.activities.map((activity) => activity.id));
  for (const episode of document.episodes) {
    if (episode.status === 'released') continue;
    const own = [
      ...document.tasks.filter((task) => task.episodeId === episode.id).flatMap((task) => [taskActivity(task.id), beforeShotActivity(task.id)]),
      ...document.outsideJobs.filter((job) => job.episodeId === episode.id).flatMap((job) => [dropOffActivity(job.id), collectionActivity(job.id)]),
    ].filter((activity) => planned.has(activity));
    if (own.length === 0) continue;
    const id = episodeActivity(episode.id);
    draft.activities.push({
      id,
      duration: 0,
      mode: 'one-go',
      demands: [],
      release: draft.nowMinute,
      due: { at: clock.down(shootDue(document.series, episode)), weight: episode.isEvergreen ? EVERGREEN_WEIGHT : DATED_WEIGHT },
    });
    for (const activity of own) {
      const ends = { from: { activity, at: 'end' as const }, to: { activity: id, at: 'start' as const } };
      addLag(draft, { ...ends, min: { kind: 'elapsed', minutes: 0 } }, { kind: 'episode', episodeId: episode.id });
    }
  }
}
