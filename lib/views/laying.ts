/** What laying a coating system on a part offers to choose from. */
import type { SeriesDocument } from '@/lib/build';
import { listChoices } from './record-form-choices';
import type { Choice } from './record-form-model';

export interface LayingView {
  readonly systems: readonly Choice[];
  /** Part and state, with a blank between. */
  readonly states: readonly Choice[];
  readonly places: readonly Choice[];
  readonly episodes: readonly Choice[];
  readonly skills: readonly Choice[];
}

export function viewLaying(document: SeriesDocument): LayingView {
  const { places, episodes, skills } = listChoices(document);
  return {
    systems: document.coatingSystems.map(({ id, name }) => ({ value: id, label: name })),
    states: document.parts.flatMap((part) => part.states.map((state) => ({ value: `${part.id} ${state.id}`, label: `${part.name}: ${state.name}` }))),
    places, episodes, skills,
  };
}
