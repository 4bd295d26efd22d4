import { issue } from '@/lib/result';
import { quoteName, sayLength, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A trade opens at some time of the week, and a trip to it takes 0 min or more. */
export const checkTradesOpen: Rule = (document) =>
  document.trades.flatMap((trade) => {
    const subjects = subjectsOf(trade);
    const closed = trade.openHours.length > 0 ? [] : [
      issue('trade-never-open', `${startWith(trade)} is never open, so nothing can be dropped off or collected.`, 'Add its opening hours.', { path: ['openHours'], subjects }),
    ];
    if (trade.trip >= 0) return closed;
    return [...closed, issue('trip-negative', `A trip to the outside trade ${quoteName(trade.name)} takes ${sayLength(trade.trip)}; it cannot take less than 0 min.`, 'Type 0 min or more.', { path: ['trip'], subjects })];
  });
