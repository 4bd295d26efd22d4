/** The hazards that count in a series: the library, with the users' own beside it or in its place. */
import type { HazardRecord, SeriesDocument } from '@/lib/build';
import { LIBRARY } from './library';
import type { Hazard } from './model';

/** A user's hazard as the rules see it. One that replaces a hazard of the library goes by that one's id, so that signatures stay with it. */
function raiseOwn(record: HazardRecord): Hazard {
  const { severity, trigger, controls, equipment, signs, caution, show, deferral, needsSecondPerson, sources, replaces, name } = record;
  return { id: replaces ?? record.id, name, severity, trigger, controls, equipment, signs, caution, show, deferral, needsSecondPerson, sources, replaces, origin: 'own' };
}

/** Own hazards that replace one of the library stand in its place; the others come last. Of two that replace the same, the later counts. */
export function listHazards({ hazards }: Pick<SeriesDocument, 'hazards'>): readonly Hazard[] {
  const own = hazards.map(raiseOwn);
  const replaced = new Map(own.filter(({ replaces }) => replaces !== null).map((hazard) => [hazard.id, hazard]));
  return [...LIBRARY.map((hazard) => replaced.get(hazard.id) ?? hazard), ...own.filter(({ replaces }) => replaces === null)];
}
