import { startWith } from '@/lib/build';
import { dateOf, formatDay, type CivilDate } from '@/lib/calendar';
import { listPictured } from '../in-picture';
import type { Facts } from '../facts';
import { makeCheck } from './check';

/** Batches that run out before work that the plan has no day for yet. */
function batches(facts: Facts, today: CivilDate) {
  return facts.document.materials.flatMap((material) => {
    const until = material.usableUntil;
    const waiting = facts.document.tasks.filter(({ id, doneAt, coats }) => doneAt === null && coats.some(({ materialId }) => materialId === material.id) && !facts.blocksOfTask.has(id));
    const [first] = waiting;
    if (until === undefined || first === undefined || until >= today) return [];
    return [{
      key: `batch/${material.id}`, about: [material, first], message: `${startWith(material)} could be used until ${formatDay(until)}, and “${first.name}” still needs it.`,
      fix: 'Get a new batch and write its date down.',
    }];
  });
}

/** Consents that end before an episode with the person comes out. */
function consents(facts: Facts) {
  return listPictured(facts).flatMap(({ person, episodes }) => {
    const until = person.consent?.until ?? null;
    const late = until === null ? undefined : episodes.find(({ status, releaseDate }) => status !== 'released' && releaseDate > until);
    if (until === null || late === undefined) return [];
    return [{
      key: `consent/${person.id}/${late.id}`, about: [person, late], message: `${person.name} agreed to releases until ${formatDay(until)}, and is in picture in “${late.name}” of ${formatDay(late.releaseDate)}.`,
      fix: 'Ask for a longer consent, or release the episode before.',
    }];
  });
}

/** 27: nothing runs out before it is used: batches of material, consents. */
export const expiry = makeCheck(27, 'warn', 'No batch and no consent runs out before it is used', (facts) => [...batches(facts, dateOf(facts.now, facts.document.series.zone)), ...consents(facts)]);
