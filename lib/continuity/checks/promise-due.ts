import { startWith } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { isCut } from '../exposures';
import { lastEpisode, listPromises } from '../promises';
import { makeCheck } from './check';

/** 21: a promise on camera is kept, replaced or withdrawn by its episode; when the series ends, or its last episode is cut, none is open. */
export const promiseDue = makeCheck(21, 'warn', 'No promise on camera is past its episode; none is open when the series ends', (facts) => {
  const last = lastEpisode(facts.document);
  const isEnding = last !== null && isCut(last);
  return listPromises(facts.document, dateOf(facts.now, facts.document.series.zone)).filter(({ standing }) => standing !== 'closed' && (standing !== 'open' || isEnding)).map(({ promise, due, standing }) => {
    const stops = standing === 'broken' || isEnding;
    const why = standing === 'broken' ? 'is still open, and the series is over'
      : isEnding ? `is still open, and the last episode, “${last.name}”, is ${last.status}` : `was due in “${due?.name ?? ''}”, released on ${due?.releaseDate ?? ''}, and is still open`;
    return {
      key: promise.id, about: [promise, due ?? undefined], severity: stops ? 'stop' as const : 'warn' as const, message: `${startWith(promise)} ${why}.`,
      fix: 'Keep it, replace it with a reason, or withdraw it on screen.',
    };
  });
});
