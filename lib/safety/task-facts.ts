/** What about a task may hurt somebody: stated by a person, or following from its materials, tools and place. */
import { factWords, type HazardFact, type SeriesDocument, type Task } from '@/lib/build';
import { NOISE_ACTION_LOWER } from './exposure';

/** A fact and where it comes from, in words. */
export interface FoundFact {
  readonly fact: HazardFact;
  readonly because: string;
}

function factsOfCoats({ materials }: SeriesDocument, task: Task): readonly FoundFact[] {
  return materials.filter(({ id }) => task.coats.some(({ materialId }) => materialId === id)).flatMap(({ name, hasSolvent, hasIsocyanate }) => [
    ...(hasSolvent ? [{ fact: 'solvent', because: `${name} holds solvent` } as const] : []),
    ...(hasIsocyanate ? [{ fact: 'isocyanate', because: `${name} holds isocyanate` } as const] : []),
  ]);
}

function factsOfTools({ equipment }: SeriesDocument, task: Task): readonly FoundFact[] {
  const tools = equipment.filter(({ id }) => task.equipmentIds.includes(id)).flatMap(({ name, exposure: { noise, vibration } }) => [
    ...(noise !== null && noise >= NOISE_ACTION_LOWER ? [{ fact: 'loud-tool', because: `${name} makes ${noise} dB(A)` } as const] : []),
    ...(vibration !== null && vibration > 0 ? [{ fact: 'vibrating-tool', because: `${name} shakes at ${vibration} m/s²` } as const] : []),
  ]);
  return task.isNoisy ? [...tools, { fact: 'loud-tool', because: 'the task is marked noisy' }] : tools;
}

function factsOfPlace({ places }: SeriesDocument, task: Task): readonly FoundFact[] {
  const place = places.find(({ id }) => id === task.placeId);
  return place !== undefined && place.air.volume !== null ? [{ fact: 'indoors', because: `${place.name} is a room` }] : [];
}

const WELDING: readonly HazardFact[] = ['arc-welding', 'gas-welding'];

/** Each fact once; what a person stated comes first. A welding task is taken for arc welding until somebody says gas. */
export function factsOfTask(document: SeriesDocument, task: Task): readonly FoundFact[] {
  const stated = task.hazards.facts.map((fact): FoundFact => ({ fact, because: factWords(fact) }));
  const isWelding = task.category === 'welding' && !stated.some(({ fact }) => WELDING.includes(fact));
  const assumed: readonly FoundFact[] = isWelding ? [{ fact: 'arc-welding', because: 'the task is welding and says no other method' }] : [];
  const all = [...stated, ...factsOfCoats(document, task), ...factsOfTools(document, task), ...factsOfPlace(document, task), ...assumed];
  return all.filter(({ fact }, index) => all.findIndex((other) => other.fact === fact) === index);
}
