import { compareDates, isCivilDate } from '@/lib/calendar';
import { issue } from '@/lib/result';
import { quoteName, startWith, subjectsOf } from '../words';
import { checkDate } from './date-span';
import type { Rule } from './rule';

/** Release dates are real; a later episode that comes out no later than an earlier one is pointed out. Evergreens may move. */
export const checkEpisodeDates: Rule = (document) => {
  const unreadable = document.episodes.flatMap((episode) => checkDate(episode, episode.releaseDate, ['releaseDate']));
  const dated = document.episodes.filter((episode) => !episode.isEvergreen && isCivilDate(episode.releaseDate));
  const swapped = dated.flatMap((episode, index) => {
    const before = dated[index - 1];
    if (before === undefined || compareDates(before.releaseDate, episode.releaseDate) < 0) return [];
    const message = `${startWith(episode)} comes out on ${episode.releaseDate}, but the one before it, ${quoteName(before.name)}, comes out on ${before.releaseDate}.`;
    return [issue('episodes-out-of-order', message, `Choose a date after ${before.releaseDate}, or change the order of the episodes.`, {
      severity: 'warn', path: ['releaseDate'], subjects: subjectsOf(episode, before),
    })];
  });
  return [...unreadable, ...swapped];
};
