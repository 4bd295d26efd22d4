/**
 * Names the compiler gives to what it hands the engine, and reads back from its answer.
 * `task:t12` is both the activity of a task and the block drawn for it.
 */
import type { WorkRef } from '@/lib/build';

export const taskActivity = (taskId: string): string => `task:${taskId}`;
export const beforeShotActivity = (taskId: string): string => `before-shot:${taskId}`;
/** Work that a missed recoat window asks for, before the task with the next coat. */
export const lateWorkActivity = (nextTaskId: string): string => `late-work:${nextTaskId}`;
export const dropOffActivity = (jobId: string): string => `drop-off:${jobId}`;
export const collectionActivity = (jobId: string): string => `collection:${jobId}`;
export const episodeActivity = (episodeId: string): string => `episode:${episodeId}`;

export const personResource = (personId: string): string => `person:${personId}`;
export const errandResource = (personId: string): string => `errand:${personId}`;
export const placeResource = (placeId: string): string => `place:${placeId}`;
export const partResource = (partId: string): string => `part:${partId}`;
export const equipmentResource = (equipmentId: string): string => `equipment:${equipmentId}`;
export const airMedium = (zone: string): string => `air:${zone}`;
/** Who may breathe in an air zone: isocyanate keeps everybody else out until it has cleared. */
export const breathMedium = (zone: string): string => `breath:${zone}`;
/** Solvent in the air of a zone and sparks or flames exclude each other. */
export const fireMedium = (zone: string): string => `fire:${zone}`;
export const surfaceMedium = (partId: string): string => `surface:${partId}`;
export const SOUND_MEDIUM = 'sound:workshop';

/** Splits `task:t12` into its kind and id. */
export function readName(name: string): { readonly kind: string; readonly id: string } {
  const at = name.indexOf(':');
  return { kind: name.slice(0, at), id: name.slice(at + 1) };
}

/** True for work that people do in the workshop, told by the kind of its activity or block; false for trips and waits. */
export function isWorkshopWork(kind: string): kind is 'task' | 'before-shot' | 'late-work' {
  return kind === 'task' || kind === 'before-shot' || kind === 'late-work';
}

/** Where work begins in the engine: an outside job begins with its drop-off, or its collection once it is away. */
export function firstActivity(ref: WorkRef, isAway: boolean): string {
  if (ref.kind === 'task') return taskActivity(ref.id);
  return isAway ? collectionActivity(ref.id) : dropOffActivity(ref.id);
}

/** Where work ends in the engine. */
export function lastActivity(ref: WorkRef): string {
  return ref.kind === 'task' ? taskActivity(ref.id) : collectionActivity(ref.id);
}
