import { issue } from '@/lib/result';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** An episode that is still to be recorded and has no task is pointed out. */
export const checkEpisodeWork: Rule = (document) =>
  document.episodes
    .filter((episode) => episode.status === 'planned' && !document.tasks.some((task) => task.episodeId === episode.id))
    .map((episode) => issue('episode-without-tasks', `${startWith(episode)} has no task, so there is nothing to film for it.`,
      'Choose this episode in one of the tasks.', { severity: 'warn', subjects: subjectsOf(episode) }));
