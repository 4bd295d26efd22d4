import { startWith } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { listPromises } from '../promises';
import { makeCheck } from './check';

/** 21: a promise on camera is kept, replaced or withdrawn by its episode; when the series ends none is open. */
export const promiseDue = makeCheck(21, 'warn', 'No promise on camera is past its episode; none is open when the series ends', (facts) =>
  listPromises(facts.document, dateOf(facts.now, facts.document.series.zone)).filter(({ standing }) => standing === 'overdue' || standing === 'broken').map(({ promise, due, standing }) => ({
    key: promise.id, about: [promise, due ?? undefined], severity: standing === 'broken' ? 'stop' as const : 'warn' as const,
    message: standing === 'broken'
      ? `${startWith(promise)} is still open, and the series is over.`
      : `${startWith(promise)} was due in “${due?.name ?? ''}”, released on ${due?.releaseDate ?? ''}, and is still open.`,
    fix: 'Keep it, replace it with a reason, or withdraw it on screen.',
  })));
