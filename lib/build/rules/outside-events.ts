import { issue } from '@/lib/result';
import { sayMoment, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** What goes to a trade is dropped off before it is collected. */
export const checkOutsideEvents: Rule = (document) =>
  document.outsideJobs.flatMap((job) => {
    const { droppedOffAt, collectedAt } = job;
    const more = { path: ['collectedAt'], subjects: subjectsOf(job) };
    if (collectedAt === null) return [];
    if (droppedOffAt === null) {
      return [issue('collected-without-drop-off', `${startWith(job)} was collected on ${sayMoment(document, collectedAt)}, but never dropped off.`, 'Say when it was dropped off.', more)];
    }
    if (droppedOffAt <= collectedAt) return [];
    return [issue('collected-before-drop-off', `${startWith(job)} was collected on ${sayMoment(document, collectedAt)}, before it was dropped off on ${sayMoment(document, droppedOffAt)}.`,
      `Choose a collection after ${sayMoment(document, droppedOffAt)}.`, more)];
  });
