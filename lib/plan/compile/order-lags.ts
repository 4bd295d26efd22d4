/** The order that follows from part states and links, as time lags with the waits of coats in them. */
import { type Link, type Material, type Precedence, type Task, type WorkRef, deriveOrder } from '@/lib/build';
import { mergeOverlappingAndTouching } from '@/lib/calendar';
import { curingTemperature, recoatWindow, stageWait } from '@/lib/cure';
import type { LagLength } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import { addLag, need, type Draft, type LagReason } from './draft';
import { beforeShotActivity, firstActivity, lastActivity } from './names';
import { shotsAhead, wetMinutes } from './task-activities';

/** A wait that already runs: nothing before this minute. */
export interface RunningWait {
  readonly minute: number;
  readonly reason: LagReason;
}

/** A wait after the end of a piece of work, minutes. `max` null: no upper bound. */
interface Wait {
  readonly min: number;
  readonly max: number | null;
  readonly clock: Link['clock'];
  readonly reason: LagReason;
}

const taskOf = (draft: Draft, ref: WorkRef): Task | null => (ref.kind === 'task' ? need(draft.tasks, ref.id, 'task') : null);

function isDone(draft: Draft, ref: WorkRef): boolean {
  if (ref.kind === 'task') return need(draft.tasks, ref.id, 'task').doneAt !== null;
  return need(draft.jobs, ref.id, 'outside job').collectedAt !== null;
}

function doneAt(draft: Draft, ref: WorkRef): Instant | null {
  return ref.kind === 'task' ? need(draft.tasks, ref.id, 'task').doneAt : need(draft.jobs, ref.id, 'outside job').collectedAt;
}

const coatReason = (task: Task, material: Material, stage: 'recoatFrom' | 'handle', isHeatOwed: boolean): LagReason => ({
  kind: 'coat', taskId: task.id, materialId: material.id, stage, isHeatOwed,
});

/** The longest wait that the coats of `before` ask of the work that follows on the same part. */
function coatWait(draft: Draft, before: Task, after: Task | null, isConsumed: boolean): Wait | null {
  const workshop = draft.document.series.workshopTemperature;
  const isRecoat = after !== null && after.coats.length > 0 && isConsumed;
  const waits = before.coats.map((coat): Wait => {
    const material = need(draft.materials, coat.materialId, 'material');
    const { isHeatOwed } = curingTemperature(material, workshop);
    if (!isRecoat) {
      return { min: stageWait(material, 'handle', workshop), max: null, clock: 'elapsed', reason: coatReason(before, material, 'handle', isHeatOwed) };
    }
    const window = recoatWindow(material, workshop);
    return { min: window.from, max: window.until, clock: 'elapsed', reason: coatReason(before, material, 'recoatFrom', isHeatOwed) };
  });
  return waits.toSorted((a, b) => b.min - a.min)[0] ?? null;
}

function linkWait(draft: Draft, link: Link, before: Task | null): Wait {
  const reason: LagReason = { kind: 'link', linkId: link.id };
  const workshop = draft.document.series.workshopTemperature;
  const stage = link.stage;
  const coats = stage === null || before === null ? [] : before.coats;
  const cure = coats.map((coat) => stageWait(need(draft.materials, coat.materialId, 'material'), stage!, workshop));
  return { min: Math.max(link.minWait, 0, ...cure), max: link.maxWait, clock: link.clock, reason };
}

function waitOf(draft: Draft, arc: Precedence): Wait {
  const before = taskOf(draft, arc.from);
  if (arc.because.kind === 'link') {
    const { linkId } = arc.because;
    const link = draft.document.links.find((candidate) => candidate.id === linkId);
    if (!link) throw new Error(`The order names an unknown link "${linkId}".`);
    return linkWait(draft, link, before);
  }
  const { partId, stateId } = arc.because;
  const after = taskOf(draft, arc.to);
  const isConsumed = after?.parts.some((use) => use.partId === partId && use.from === stateId && use.to !== null) ?? false;
  const isMade = before?.parts.some((use) => use.partId === partId && use.to === stateId) ?? false;
  const coat = before && isMade ? coatWait(draft, before, after, isConsumed) : null;
  return coat ?? { min: 0, max: null, clock: 'elapsed', reason: { kind: 'part-state', partId, stateId } };
}

/** The activities that open a piece of work: the task, and its before-shots, which need the parts in the same state. */
function openings(draft: Draft, ref: WorkRef): string[] {
  const task = taskOf(draft, ref);
  const isAway = ref.kind === 'outsideJob' && need(draft.jobs, ref.id, 'outside job').droppedOffAt !== null;
  const first = firstActivity(ref, isAway);
  return task && shotsAhead(task).length > 0 ? [beforeShotActivity(task.id), first] : [first];
}

function lagLength(draft: Draft, wait: Wait): LagLength {
  if (wait.clock === 'elapsed') return { kind: 'elapsed', minutes: wait.min };
  return { kind: 'working', minutes: wait.min, calendar: allSessionsCalendar(draft) };
}

function allSessionsCalendar(draft: Draft): string {
  const id = 'all sessions';
  if (!draft.calendars.has(id)) {
    const spans = draft.document.sessions
      .map((session) => ({ start: Math.max(draft.clock.up(session.start), draft.nowMinute), end: draft.clock.down(session.end) }))
      .filter((span) => span.start < span.end);
    draft.calendars.set(id, { id, intervals: mergeOverlappingAndTouching(spans) });
  }
  return id;
}

/**
 * Adds every lag of the derived order. Work that is done leaves a release minute where its wait still runs:
 * it is returned by activity and applied by the caller.
 */
export function addOrder(draft: Draft): ReadonlyMap<string, RunningWait> {
  const releases = new Map<string, RunningWait>();
  const holdBack = (activity: string, wait: RunningWait) => {
    if (wait.minute > (releases.get(activity)?.minute ?? draft.nowMinute)) releases.set(activity, wait);
  };
  for (const arc of deriveOrder(draft.document)) {
    if (isDone(draft, arc.to)) continue;
    const wait = waitOf(draft, arc);
    const finished = doneAt(draft, arc.from);
    for (const opening of openings(draft, arc.to)) {
      const isTaskItself = opening === openings(draft, arc.to).at(-1);
      if (finished !== null && isDone(draft, arc.from)) {
        holdBack(opening, { minute: draft.clock.up(finished) + wait.min, reason: wait.reason });
        continue;
      }
      const from = { activity: lastActivity(arc.from), at: 'end' as const };
      const max = wait.max === null || !isTaskItself ? {} : { max: wait.max };
      addLag(draft, { from, to: { activity: opening, at: 'start' }, min: lagLength(draft, wait), ...max }, wait.reason);
    }
  }
  for (const { wait, partIds } of wetCoats(draft)) {
    const touching = draft.document.tasks.filter((task) => task.doneAt === null && task.parts.some((use) => partIds.has(use.partId)));
    for (const task of touching) for (const opening of openings(draft, { kind: 'task', id: task.id })) holdBack(opening, wait);
  }
  return releases;
}

/** Coats of done tasks that are not touch dry yet. */
function wetCoats(draft: Draft): { readonly wait: RunningWait; readonly partIds: ReadonlySet<string> }[] {
  return draft.document.tasks.flatMap((task) => {
    const wet = wetMinutes(draft, task);
    if (task.doneAt === null || wet === null) return [];
    const reason: LagReason = { kind: 'coat', taskId: task.id, materialId: slowestCoat(draft, task), stage: 'touchDry', isHeatOwed: false };
    return [{ wait: { minute: draft.clock.up(task.doneAt) + wet, reason }, partIds: new Set(task.parts.map((use) => use.partId)) }];
  });
}

function slowestCoat(draft: Draft, task: Task): string {
  const workshop = draft.document.series.workshopTemperature;
  const wait = (materialId: string) => stageWait(need(draft.materials, materialId, 'material'), 'touchDry', workshop);
  return task.coats.map((coat) => coat.materialId).toSorted((a, b) => wait(b) - wait(a))[0]!;
}
