/** What a missed recoat window costs, as work: what has to be done, how long it takes, and the task that it would be. */
import { NO_TASK_HAZARDS, type Category, type PartUse, type SeriesDocument, type Task } from '@/lib/build';
import { minutes } from '@/lib/units';
import type { CoatMaterial } from './coat-material';

/** Work of an abrasion where no coating system says it. Common practice, no source. */
const USUAL_MINUTES = 60;

/** What an abrasion by hand is done with. Common practice, no source. */
export const ABRASIVE = 'red non-woven pad, about P320 to P400 (common practice, no source)';

/** One piece of the late work, and the state it leaves the parts in. */
export interface LateStep {
  readonly name: string;
  readonly state: string;
  readonly category: Category;
  /** Minutes. */
  readonly length: number;
  /** Laid in it. */
  readonly materialIds: readonly string[];
  readonly isDusty: boolean;
}

/** A coat whose window is missed, and the one that was to follow. */
export interface LatePair {
  readonly laid: Task;
  readonly next: Task;
  /** Of the missed coat. */
  readonly material: CoatMaterial;
}

/** Time of an abrasion as the coating system of the material has it. */
function abradingOf({ coatingSystems }: SeriesDocument, materialId: string): number {
  return coatingSystems.find(({ layers }) => layers.some((layer) => layer.materialId === materialId))?.abrading ?? USUAL_MINUTES;
}

/** What the data sheet asks for; a stripped coat is laid again. Empty where it asks for nothing. */
export function lateSteps({ laid, material, next }: LatePair, document: SeriesDocument): readonly LateStep[] {
  const length = abradingOf(document, material.id);
  const plain = { materialIds: [], isDusty: false } as const;
  const top = document.materials.find(({ id }) => id === next.coats[0]?.materialId);
  switch (material.lateWork) {
    case 'none': return [];
    case 'abrade': return [{ ...plain, name: `Abrade ${material.name}: its recoat window is over`, state: `${material.name} abraded`, category: 'clean', length, isDusty: true }];
    case 'clean and tack coat':
      return [{ ...plain, name: `Clean ${material.name} and lay a tack coat: its recoat window is over`, state: `${material.name} with tack coat`, category: 'clean', length: length + (top?.cure?.flashOff ?? 0) }];
    case 'strip': return [
      { ...plain, name: `Strip ${material.name}: its recoat window is over`, state: `${material.name} stripped`, category: 'strip', length, isDusty: true },
      { ...plain, name: `Lay ${material.name} again`, state: `${material.name} again`, category: 'paint', length: laid.effort.likely, materialIds: laid.coats.map(({ materialId }) => materialId) },
    ];
  }
}

/** A step as a task in the place and hands of the next coat. `newId` is asked for the task first, then for each of its coats. */
export function lateTask({ next, material }: LatePair, step: LateStep, parts: readonly PartUse[], newId: () => string): Task {
  const length = minutes(Math.max(5, step.length));
  return {
    kind: 'task', id: newId(), revision: 1, order: 0, name: step.name.slice(0, 200), category: step.category, episodeId: next.episodeId, placeId: next.placeId, parts,
    effort: { low: length, likely: length, high: length }, inOneGo: step.materialIds.length > 0, irreversible: false, crew: next.crew, equipmentIds: [],
    coats: step.materialIds.map((materialId) => ({ id: newId(), materialId })), coverage: 'none', shots: [], conditions: { minimumTemperature: null, needsDaylight: false },
    isDusty: step.isDusty, isNoisy: false, layOut: material.lateWork === 'abrade' ? [ABRASIVE] : [], cautions: [`The recoat window of ${material.name} is missed: without this the next coat does not hold.`],
    manualReference: '', pinnedStart: null, doneAt: null, hazards: NO_TASK_HAZARDS,
  };
}
