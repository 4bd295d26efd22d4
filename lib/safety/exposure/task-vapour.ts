/** Vapour of a spraying task, from its materials, its amount and the air of its place. */
import { crewSize, type Material, type SeriesDocument, type Task } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { followVapour, type VapourCourse } from './vapour';

/** A task's course with the material it was computed for. */
export interface TaskVapour extends VapourCourse {
  readonly material: Material;
  /** Of the material, ppm over eight hours. */
  readonly limit: number;
}

function findMissing(document: SeriesDocument, task: Task, material: Material): readonly Issue[] {
  const { volume, airChanges } = document.places.find(({ id }) => id === task.placeId)?.air ?? { volume: null, airChanges: null };
  const { density, molarMass, solventShare, limit } = material.vapour;
  const gaps: readonly (readonly [boolean, string, string, { readonly kind: string; readonly id: string; readonly name: string }])[] = [
    [task.hazards.sprayed === null, 'how much is sprayed', 'Enter the millilitres in the task.', { kind: 'task', id: task.id, name: task.name }],
    [volume === null || airChanges === null, 'the volume and air changes of its place', 'Enter them in the place.', { kind: 'place', id: task.placeId, name: document.places.find(({ id }) => id === task.placeId)?.name ?? '' }],
    [density === null || molarMass === null || solventShare === null || limit === null, `what evaporates from ${material.name}`, 'Enter it in the material, from its data sheet.', { kind: 'material', id: material.id, name: material.name }],
  ];
  return gaps.filter(([isMissing]) => isMissing).map(([, what, fix, subject]) =>
    issue('vapour-unknown', `The vapour of “${task.name}” cannot be computed: nobody has said ${what}.`, fix, { severity: 'warn', subjects: [subject] }));
}

/**
 * The vapour of a task that sprays a solvent coat; null when it sprays none. Its likeliest hands-on time is taken for the
 * spraying, its first solvent coat for all of it. Fails with `vapour-unknown`, one issue for each figure that is missing.
 */
export function vapourOfTask(document: SeriesDocument, task: Task): Result<TaskVapour> | null {
  const material = document.materials.find(({ id, hasSolvent }) => hasSolvent && task.coats.some(({ materialId }) => materialId === id));
  if (material === undefined || !task.hazards.facts.includes('spraying') || crewSize(task) === 0) return null;
  const missing = findMissing(document, task, material);
  if (missing.length > 0) return fail(missing);
  const air = document.places.find(({ id }) => id === task.placeId)?.air;
  const { density, molarMass, solventShare, limit } = material.vapour;
  const course = followVapour({
    sprayed: task.hazards.sprayed ?? 0, volume: air?.volume ?? 0, airChanges: air?.airChanges ?? 0, density: density ?? 0, molarMass: molarMass ?? 0,
    solventShare: solventShare ?? 0, limit: limit ?? 0, minutes: Math.max(1, task.effort.likely * task.hazards.toolShare),
  });
  return course.ok ? ok({ ...course.value, material, limit: limit ?? 0 }) : course;
}

/**
 * What a planned minute of a task takes of a person's day of vapour, as a share of eight hours at the limit: the mean while
 * spraying, as breathed without a mask. 0 where the task sprays no solvent, or figures are missing.
 */
export function taskDose(document: SeriesDocument, task: Task): number {
  const vapour = vapourOfTask(document, task);
  if (vapour === null || !vapour.ok) return 0;
  return (vapour.value.mean / vapour.value.limit / 480) * task.hazards.toolShare;
}
