/** A recoat window that has closed, or will: the work it asks for becomes tasks of its own between the two coats. */
import { editRecords, findRecord, NO_TASK_HAZARDS, startWith, type Category, type Link, type Part, type PartState, type PartUse, type SeriesDocument, type Task } from '@/lib/build';
import { coatMaterialOf, type CoatMaterial } from '@/lib/cure';
import { fail, issue, ok, type Result } from '@/lib/result';
import { minutes } from '@/lib/units';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { idOf } from './schemas/values';

const lateSchema = z.strictObject({
  /** The task that laid the coat whose window is missed. */
  coatTaskId: idOf('task'),
  /** The task with the next coat. */
  nextTaskId: idOf('task'),
});

/** Work of an abrasion where no coating system says it. Common practice, no source. */
const USUAL_MINUTES = 60;

/** One piece of the late work, and the state it leaves the parts in. */
interface Step {
  readonly name: string;
  readonly state: string;
  readonly category: Category;
  readonly length: number;
  readonly materialIds: readonly string[];
  readonly isDusty: boolean;
}

interface Between {
  readonly laid: Task;
  readonly next: Task;
  readonly material: CoatMaterial;
  /** What the next coat takes from the state that the missed one left. */
  readonly uses: readonly PartUse[];
}

function findBetween(document: SeriesDocument, coatTaskId: string, nextTaskId: string): Result<Between> {
  const [laid, next] = [findRecord(document, 'task', coatTaskId), findRecord(document, 'task', nextTaskId)];
  if (laid === undefined || next === undefined) return fail([issue('record-missing', 'One of the two coats is no longer in the series.', 'Load the page again.')]);
  const material = document.materials.find(({ id }) => id === laid.coats.at(-1)?.materialId);
  const uses = next.parts.filter((use) => use.from !== null && use.to !== null && laid.parts.some((made) => made.partId === use.partId && made.to === use.from));
  if (material === undefined || next.doneAt !== null || uses.length === 0) {
    return fail([issue('late-work-order', `${startWith(next)} is not the next coat on what ${startWith(laid)} leaves, or is done.`, 'Choose two coats that follow each other by the states of a part.')]);
  }
  return ok({ laid, next, material: coatMaterialOf(material), uses });
}

/** Time of an abrasion as the coating system of the material has it. */
function abradingOf({ coatingSystems }: SeriesDocument, materialId: string): number {
  return coatingSystems.find(({ layers }) => layers.some((layer) => layer.materialId === materialId))?.abrading ?? USUAL_MINUTES;
}

/** What the data sheet asks for; a stripped coat is laid again. */
function stepsOf({ laid, material, next }: Between, document: SeriesDocument): readonly Step[] {
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

/** Each part of the two coats gets the states of the steps after the one that the missed coat left. */
function addStates(document: SeriesDocument, uses: readonly PartUse[], steps: readonly Step[], newId: () => string): ReadonlyMap<string, { readonly part: Part; readonly made: readonly PartState[] }> {
  return new Map(uses.flatMap(({ partId, from }) => {
    const part = findRecord(document, 'part', partId);
    const at = part?.states.findIndex(({ id }) => id === from) ?? -1;
    if (part === undefined || at < 0) return [];
    const made = steps.map(({ state }): PartState => ({ id: newId(), name: state }));
    return [[partId, { part: { ...part, states: [...part.states.slice(0, at + 1), ...made, ...part.states.slice(at + 1)] }, made }] as const];
  }));
}

function taskOf({ next, material, uses }: Between, steps: readonly Step[], at: number, made: ReadonlyMap<string, { readonly made: readonly PartState[] }>, newId: () => string): Task {
  const step = steps[at]!;
  const length = minutes(Math.max(5, step.length));
  const stateAt = (use: PartUse, index: number): string | null => (index < 0 ? use.from : (made.get(use.partId)?.made[index]?.id ?? null));
  return {
    kind: 'task', id: newId(), revision: 1, order: 0, name: step.name.slice(0, 200), category: step.category, episodeId: next.episodeId, placeId: next.placeId,
    parts: uses.map((use) => ({ partId: use.partId, from: stateAt(use, at - 1), to: stateAt(use, at) })),
    effort: { low: length, likely: length, high: length }, inOneGo: step.materialIds.length > 0, irreversible: false, crew: next.crew, equipmentIds: [],
    coats: step.materialIds.map((materialId) => ({ id: newId(), materialId })), coverage: 'none', shots: [], conditions: { minimumTemperature: null, needsDaylight: false },
    isDusty: step.isDusty, isNoisy: false, layOut: [], cautions: [`The recoat window of ${material.name} is missed: without this the next coat does not hold.`],
    manualReference: '', pinnedStart: null, doneAt: null, hazards: NO_TASK_HAZARDS,
  };
}

/** Links from the missed coat to the next one lead to the late work instead; the window they may hold is over. */
function relink(document: SeriesDocument, { laid, next }: Between, first: Task): readonly Link[] {
  return document.links.filter(({ from, to }) => from.id === laid.id && to.id === next.id).map((link) => ({ ...link, to: { kind: 'task', id: first.id }, maxWait: null }));
}

/**
 * Puts the work that a missed recoat window asks for between two coats, as one change: tasks with a time of their own, the states they
 * leave, and the next coat on the last of them. Input: `{ coatTaskId, nextTaskId }`. Fails with `record-missing`, `late-work-order`,
 * `late-work-none` when the material asks for nothing, or the rules.
 */
export async function planLateWork(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const document = loaded.value;
  const read = readInput(lateSchema, input);
  if (!read.ok) return read;
  const between = findBetween(document, read.value.coatTaskId, read.value.nextTaskId);
  if (!between.ok) return between;
  const { next, material, uses } = between.value;
  const steps = stepsOf(between.value, document);
  if (steps.length === 0) return fail([issue('late-work-none', `${material.name} asks for nothing after its recoat window.`, 'Lay the next coat.')]);
  const states = addStates(document, uses, steps, context.newId);
  const tasks = steps.map((_, at) => taskOf(between.value, steps, at, states, context.newId));
  const onTop = next.parts.map((use) => {
    const last = uses.includes(use) ? states.get(use.partId)?.made.at(-1) : undefined;
    return last === undefined ? use : { ...use, from: last.id };
  });
  return saveEdited(context, document, editRecords(document, tasks, [...[...states.values()].map(({ part }) => part), { ...next, parts: onTop }, ...relink(document, between.value, tasks[0]!)], `Planned after a missed recoat window: ${tasks.map(({ name }) => name).join(', ')}`.slice(0, 200)));
}
