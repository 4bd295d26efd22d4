/** The waits of coats, until the next coat or until they bear handling. */
import type { DryingStage, Task } from '@/lib/build';
import type { LagLength } from '@/lib/scheduling';
import { cureOf, need, type Draft, type LagReason } from './draft';
import type { ClockWait } from './wait-table';

/** A wait after the end of a piece of work. `max` null: no upper bound. */
export interface Wait {
  readonly min: LagLength;
  /** Minutes. */
  readonly max: number | null;
  readonly reason: LagReason;
  /** When it is over for work that ended at a minute. */
  readonly overAt: (end: number) => number;
}

export interface CoatWait extends Wait {
  readonly min: ClockWait;
  readonly reason: Extract<LagReason, { readonly kind: 'coat' }>;
}

/** The wait of one coat until a stage. */
export function stageOfCoat(draft: Draft, task: Task, materialId: string, stage: DryingStage, isRecoat: boolean): CoatWait {
  const material = need(draft.materials, materialId, 'material');
  const cure = cureOf(draft, task);
  return {
    min: cure.wait(material, stage), max: isRecoat ? cure.longest(material) : null,
    reason: { kind: 'coat', taskId: task.id, materialId, stage }, overAt: (end) => cure.reached(material, stage, end),
  };
}

/** The next coat that a task lays on what another has made of a part, by the states that both name. */
export function isNextCoat(before: Task, after: Task, partId: string, stateId: string): boolean {
  const isMade = before.parts.some((use) => use.partId === partId && use.to === stateId);
  return isMade && after.coats.length > 0 && after.parts.some((use) => use.partId === partId && use.from === stateId && use.to !== null);
}

/** Waits for the same work, the slowest from now on first; only that one keeps its longest wait. */
export function slowestFirst<T extends Wait>(draft: Draft, waits: readonly T[]): readonly T[] {
  const sorted = waits.toSorted((a, b) => b.overAt(draft.nowMinute) - a.overAt(draft.nowMinute));
  return sorted.map((wait, index) => (index === 0 ? wait : { ...wait, max: null }));
}

/** The waits that the coats of a task ask of the work that follows on the same part: the next coat, or anything that handles it. */
export function coatWaits(draft: Draft, before: Task, isRecoat: boolean): readonly CoatWait[] {
  return slowestFirst(draft, before.coats.map((coat) => stageOfCoat(draft, before, coat.materialId, isRecoat ? 'recoatFrom' : 'handle', isRecoat)));
}
