import { issue, type Issue } from '@/lib/result';
import type { SeriesDocument, Session } from '../model';
import { findRecord } from '../records';
import { quoteName, sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Pairs of sessions that share time, the earlier start first. Touching ends share none. */
function overlappingPairs(sessions: readonly Session[]): readonly (readonly [Session, Session])[] {
  const sorted = sessions.filter((session) => session.end > session.start).toSorted((a, b) => a.start - b.start || a.order - b.order);
  return sorted.flatMap((first, index) => {
    const pairs: [Session, Session][] = [];
    for (const second of sorted.slice(index + 1)) {
      if (second.start >= first.end) break;
      pairs.push([first, second]);
    }
    return pairs;
  });
}

function describePair(document: SeriesDocument, [first, second]: readonly [Session, Session]): readonly Issue[] {
  const both = `${startWith(first)} (to ${sayMoment(document, first.end)}) and the session ${quoteName(second.name)} (from ${sayMoment(document, second.start)})`;
  const people = second.crewIds.filter((id) => first.crewIds.includes(id)).map((id) => {
    const person = findRecord(document, 'person', id);
    const name = quoteName(person?.name ?? id);
    return issue('person-in-two-sessions', `${both} overlap, and ${name} is in both.`, `Take ${name} out of one of them.`, {
      path: ['crewIds'], subjects: subjectsOf(second, first, person),
    });
  });
  const places = second.placeIds.filter((id) => first.placeIds.includes(id)).map((id) => {
    const place = findRecord(document, 'place', id);
    return issue('place-in-two-sessions', `${both} overlap in the place ${quoteName(place?.name ?? id)}.`, 'Make one session of the two, or end one before the other starts.', {
      severity: 'warn', path: ['placeIds'], subjects: subjectsOf(second, first, place),
    });
  });
  return [...people, ...places];
}

/** Nobody is in two sessions at once; a place in two sessions at once is pointed out. */
export const checkSessionOverlaps: Rule = (document) => overlappingPairs(document.sessions).flatMap((pair) => describePair(document, pair));
