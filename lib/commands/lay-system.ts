import { NO_TASK_HAZARDS, editRecords, findRecord, quoteName, type Part, type PartState, type SeriesDocument, type Task } from '@/lib/build';
import { coatMaterialOf, systemOf, unfoldSystem, type CoatingSystem, type SystemCoat } from '@/lib/cure';
import { fail, issue, ok, type Result } from '@/lib/result';
import { minutes } from '@/lib/units';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { idOf, orNull, phrase, splitMessage } from './schemas/values';

const layingSchema = z.strictObject({
  partId: idOf('part'),
  /** State of the part that the first coat goes on. */
  fromState: idOf('state'),
  placeId: idOf('place'),
  episodeId: orNull(idOf('episode')).default(null),
  /** null: anybody. */
  skill: orNull(phrase).default(null),
});

type Laying = z.output<typeof layingSchema>;

/** One task of an unfolded system: abrading, or one coat, or coats wet on wet in one piece of work. */
interface Step {
  readonly name: string;
  readonly state: string;
  readonly minutes: number;
  readonly materialIds: readonly string[];
}

/** Coats that follow wet on wet are one piece of work, the flash-offs between them included; planned abrading is one of its own. */
function stepsOf(system: CoatingSystem, coats: readonly SystemCoat[]): readonly Step[] {
  const counts = new Map<string, number>();
  const steps: Step[] = [];
  for (const coat of coats) {
    const { material, lag } = coat;
    const number = (counts.get(material.id) ?? 0) + 1;
    counts.set(material.id, number);
    const last = steps.at(-1);
    if (last !== undefined && lag?.stage === 'flashOff' && last.materialIds.includes(material.id)) {
      steps[steps.length - 1] = { ...last, name: `${material.name}, coats wet on wet`, minutes: last.minutes + material.stages.flashOff + coat.work, materialIds: [...last.materialIds, material.id] };
      continue;
    }
    if (coat.isAbradedBefore) steps.push({ name: `Abrade for ${material.name}`, state: `abraded for ${material.name}`, minutes: system.lateWorkMinutes, materialIds: [] });
    steps.push({ name: `${material.name}, coat ${number}`, state: `${material.name} ${number}`, minutes: coat.work, materialIds: [material.id] });
  }
  return steps;
}

function taskOf(step: Step, laying: Laying, part: Part, use: { readonly from: string; readonly to: string }, newId: () => string): Task {
  const isAbrading = step.materialIds.length === 0;
  const length = minutes(Math.max(5, step.minutes));
  return {
    kind: 'task', id: newId(), revision: 1, order: 0, name: `${part.name}: ${step.name}`, category: isAbrading ? 'clean' : 'paint', episodeId: laying.episodeId, placeId: laying.placeId,
    parts: [{ partId: part.id, ...use }], effort: { low: length, likely: length, high: length }, inOneGo: !isAbrading, irreversible: false,
    crew: [{ skill: laying.skill, count: 1 }], equipmentIds: [], coats: step.materialIds.map((materialId) => ({ id: newId(), materialId })),
    coverage: 'none', shots: [], conditions: { minimumTemperature: null, needsDaylight: false }, isDusty: isAbrading, isNoisy: false, layOut: [], cautions: [],
    manualReference: '', pinnedStart: null, doneAt: null, hazards: NO_TASK_HAZARDS,
  };
}

function unfold(document: SeriesDocument, systemId: string, laying: Laying, newId: () => string): Result<{ readonly part: Part; readonly tasks: readonly Task[]; readonly name: string }> {
  const record = findRecord(document, 'coatingSystem', systemId);
  const part = findRecord(document, 'part', laying.partId);
  const from = part?.states.findIndex((state) => state.id === laying.fromState) ?? -1;
  if (record === undefined) return fail([issue('record-missing', 'This coating system is no longer in the series.', 'Load the page again.')]);
  if (part === undefined || from < 0) return fail([issue('input-value', 'The part has no such state.', 'Choose a part and one of its states.', { path: ['fromState'] })]);
  const system = systemOf(record);
  const materials = new Map(document.materials.map((material) => [material.id, coatMaterialOf(material)]));
  // The longest waits are taken anew from the climate at every planning; here only the order matters.
  const coats = unfoldSystem(system, materials, Number.NEGATIVE_INFINITY);
  if (!coats.ok) return coats;
  const steps = stepsOf(system, coats.value);
  const states = steps.map((step): PartState => ({ id: newId(), name: step.state }));
  const tasks = steps.map((step, index) => taskOf(step, laying, part, { from: states[index - 1]?.id ?? laying.fromState, to: states[index]!.id }, newId));
  return ok({ part: { ...part, states: [...part.states.slice(0, from + 1), ...states, ...part.states.slice(from + 1)] }, tasks, name: record.name });
}

/**
 * Unfolds a coating system on a part, as one change: a state of the part and a task for each coat or abrasion. The waits follow from
 * the states and the materials. Fails with `input-value`, `record-missing`, `system-material`, `system-coats`, `system-empty` or the rules.
 */
export async function laySystem(context: SeriesContext, seriesId: string, systemId: string, input: unknown): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const read = layingSchema.safeParse(input);
  if (!read.success) {
    return fail(read.error.issues.map((found) => {
      const { problem, fix } = splitMessage(found.message);
      return issue('input-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
    }));
  }
  const unfolded = unfold(loaded.value, systemId, read.data, context.newId);
  if (!unfolded.ok) return unfolded;
  const { part, tasks, name } = unfolded.value;
  return saveEdited(context, loaded.value, editRecords(loaded.value, tasks, [part], `Laid ${quoteName(name)} on ${quoteName(part.name)}`));
}
