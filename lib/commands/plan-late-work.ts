/** A recoat window that has closed, or will: the work it asks for becomes tasks of its own between the two coats. */
import { editRecords, findRecord, startWith, type Link, type Part, type PartState, type PartUse, type SeriesDocument, type Task } from '@/lib/build';
import { coatMaterialOf, lateSteps, lateTask, type LatePair, type LateStep } from '@/lib/cure';
import { fail, issue, ok, type Result } from '@/lib/result';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { idOf } from './schemas/values';

const lateSchema = z.strictObject({
  /** The task that laid the coat whose window is missed; null: the one under the next coat. */
  coatTaskId: idOf('task').nullable(),
  /** The task with the next coat. */
  nextTaskId: idOf('task'),
});

interface Between extends LatePair {
  /** What the next coat takes from the state that the missed one left. */
  readonly uses: readonly PartUse[];
}

/** The task whose coat another one lies on, by the state of a part. */
function coatUnder(document: SeriesDocument, next: Task | undefined): Task | undefined {
  const taken = next?.parts.filter(({ from, to }) => from !== null && to !== null) ?? [];
  return document.tasks.find(({ coats, parts }) => coats.length > 0 && parts.some((made) => taken.some((use) => use.partId === made.partId && use.from === made.to)));
}

function findBetween(document: SeriesDocument, coatTaskId: string | null, nextTaskId: string): Result<Between> {
  const next = findRecord(document, 'task', nextTaskId);
  const laid = coatTaskId === null ? coatUnder(document, next) : findRecord(document, 'task', coatTaskId);
  if (laid === undefined || next === undefined) return fail([issue('record-missing', 'One of the two coats is no longer in the series.', 'Load the page again.')]);
  const material = document.materials.find(({ id }) => id === laid.coats.at(-1)?.materialId);
  const uses = next.parts.filter((use) => use.from !== null && use.to !== null && laid.parts.some((made) => made.partId === use.partId && made.to === use.from));
  if (material === undefined || next.doneAt !== null || uses.length === 0) {
    return fail([issue('late-work-order', `${startWith(next)} is not the next coat on what ${startWith(laid)} leaves, or is done.`, 'Choose two coats that follow each other by the states of a part.')]);
  }
  return ok({ laid, next, material: coatMaterialOf(material), uses });
}

/** Each part of the two coats gets the states of the steps after the one that the missed coat left. */
function addStates(document: SeriesDocument, uses: readonly PartUse[], steps: readonly LateStep[], newId: () => string): ReadonlyMap<string, { readonly part: Part; readonly made: readonly PartState[] }> {
  return new Map(uses.flatMap(({ partId, from }) => {
    const part = findRecord(document, 'part', partId);
    const at = part?.states.findIndex(({ id }) => id === from) ?? -1;
    if (part === undefined || at < 0) return [];
    const made = steps.map(({ state }): PartState => ({ id: newId(), name: state }));
    return [[partId, { part: { ...part, states: [...part.states.slice(0, at + 1), ...made, ...part.states.slice(at + 1)] }, made }] as const];
  }));
}

function taskOf(between: Between, steps: readonly LateStep[], at: number, made: ReadonlyMap<string, { readonly made: readonly PartState[] }>, newId: () => string): Task {
  const stateAt = (use: PartUse, index: number): string | null => (index < 0 ? use.from : (made.get(use.partId)?.made[index]?.id ?? null));
  return lateTask(between, steps[at]!, between.uses.map((use) => ({ partId: use.partId, from: stateAt(use, at - 1), to: stateAt(use, at) })), newId);
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
  const steps = lateSteps(between.value, document);
  if (steps.length === 0) return fail([issue('late-work-none', `${material.name} asks for nothing after its recoat window.`, 'Lay the next coat.')]);
  const states = addStates(document, uses, steps, context.newId);
  const tasks = steps.map((_, at) => taskOf(between.value, steps, at, states, context.newId));
  const onTop = next.parts.map((use) => {
    const last = uses.includes(use) ? states.get(use.partId)?.made.at(-1) : undefined;
    return last === undefined ? use : { ...use, from: last.id };
  });
  return saveEdited(context, document, editRecords(document, tasks, [...[...states.values()].map(({ part }) => part), { ...next, parts: onTop }, ...relink(document, between.value, tasks[0]!)], `Planned after a missed recoat window: ${tasks.map(({ name }) => name).join(', ')}`.slice(0, 200)));
}
