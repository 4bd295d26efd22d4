/** The order that follows from part states and links, as time lags with the waits of coats in them. */
import { type Link, type Precedence, type Task, type WorkRef, listShotsAhead } from '@/lib/build';
import { mergeOverlappingAndTouching } from '@/lib/calendar';
import type { LagLength } from '@/lib/scheduling';
import { addMinutes, type Instant } from '@/lib/units';
import { coatWaits, isNextCoat, slowestFirst, stageOfCoat, type Wait } from './coat-waits';
import { addLag, need, type Draft, type LagReason } from './draft';
import { beforeShotActivity, firstActivity, lastActivity, lateWorkActivity } from './names';
import { shutAfter } from './exposure';
import { shotsAhead } from './task-activities';

/** A wait that already runs: nothing before this minute. */
export interface RunningWait {
  readonly minute: number;
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

const NONE: LagLength = { kind: 'elapsed', minutes: 0 };

function linkWaits(draft: Draft, link: Link, before: Task | null): readonly Wait[] {
  const { stage, minWait } = link;
  const coats = stage === null || before === null ? [] : before.coats.map((coat) => stageOfCoat(draft, before, coat.materialId, stage, false));
  const min: LagLength = link.clock === 'elapsed' ? { kind: 'elapsed', minutes: minWait } : { kind: 'working', minutes: minWait, calendar: allSessionsCalendar(draft) };
  const own: Wait = { min, max: link.maxWait, reason: { kind: 'link', linkId: link.id }, overAt: (end) => end + minWait };
  // A link that only waits for a coat is told as that coat's.
  return minWait > 0 || link.maxWait !== null || coats.length === 0 ? [own, ...coats] : slowestFirst(draft, coats);
}

function waitsOf(draft: Draft, arc: Precedence): readonly Wait[] {
  const before = taskOf(draft, arc.from);
  if (arc.because.kind === 'link') {
    const { linkId } = arc.because;
    const link = draft.document.links.find((candidate) => candidate.id === linkId);
    if (!link) throw new Error(`The order names an unknown link "${linkId}".`);
    return linkWaits(draft, link, before);
  }
  const { partId, stateId } = arc.because;
  const after = taskOf(draft, arc.to);
  const isMade = before?.parts.some((use) => use.partId === partId && use.to === stateId) ?? false;
  const isNext = before !== null && after !== null && isNextCoat(before, after, partId, stateId) && !isLate(draft, arc);
  const coats = before && isMade ? coatWaits(draft, before, isNext) : [];
  return coats.length > 0 ? coats : [{ min: NONE, max: null, reason: { kind: 'part-state', partId, stateId }, overAt: (end) => end }];
}

/** True between two coats whose recoat window is missed. */
function isLate(draft: Draft, { from, to }: Precedence): boolean {
  return from.kind === 'task' && to.kind === 'task' && draft.lateWork.get(to.id)?.laid.id === from.id;
}

/** The activities that open a piece of work: the task, and its before-shots, which need the parts in the same state. */
function openings(draft: Draft, ref: WorkRef): string[] {
  const task = taskOf(draft, ref);
  const isAway = ref.kind === 'outsideJob' && need(draft.jobs, ref.id, 'outside job').droppedOffAt !== null;
  const first = firstActivity(ref, isAway);
  return task && shotsAhead(task).length > 0 ? [beforeShotActivity(task.id), first] : [first];
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
export function addOrder(draft: Draft, order: readonly Precedence[]): ReadonlyMap<string, RunningWait> {
  const releases = new Map<string, RunningWait>();
  const holdBack = (activity: string, wait: RunningWait) => {
    if (wait.minute > (releases.get(activity)?.minute ?? draft.nowMinute)) releases.set(activity, wait);
  };
  for (const arc of order) {
    if (isDone(draft, arc.to)) continue;
    const waits = waitsOf(draft, arc);
    const finished = doneAt(draft, arc.from);
    const own = openings(draft, arc.to);
    // What a missed window asks for comes first, once the coat bears it.
    const opened = isLate(draft, arc) ? [...own, lateWorkActivity(arc.to.id)] : own;
    for (const opening of opened) {
      const isTaskItself = opening === own.at(-1) && opened === own;
      for (const wait of waits) {
        if (finished !== null && isDone(draft, arc.from)) {
          holdBack(opening, { minute: wait.overAt(draft.clock.up(finished)), reason: wait.reason });
          continue;
        }
        const from = { activity: lastActivity(arc.from), at: 'end' as const };
        const max = wait.max === null || !isTaskItself ? {} : { max: wait.max };
        addLag(draft, { from, to: { activity: opening, at: 'start' }, min: wait.min, ...max }, wait.reason);
      }
    }
  }
  addShotOrder(draft);
  for (const { wait, partIds } of wetCoats(draft)) {
    const touching = draft.document.tasks.filter((task) => task.doneAt === null && task.parts.some((use) => partIds.has(use.partId)));
    for (const task of touching) for (const opening of openings(draft, { kind: 'task', id: task.id })) holdBack(opening, wait);
  }
  for (const { wait, zone } of uncleared(draft)) {
    const breathing = draft.document.tasks.filter((task) => task.doneAt === null && need(draft.places, task.placeId, 'place').airZone === zone && shutAfter(draft, task) === null);
    for (const task of breathing) for (const opening of openings(draft, { kind: 'task', id: task.id })) holdBack(opening, wait);
  }
  return releases;
}

/** Shots ahead of a task come after the work that makes what they show, and before the work that takes it away. */
function addShotOrder(draft: Draft): void {
  for (const { task, shown, makers, takers } of listShotsAhead(draft.document)) {
    const shots = beforeShotActivity(task.id);
    const lag = { min: NONE };
    for (const { ref } of makers.filter((work) => !isDone(draft, work.ref))) {
      addLag(draft, { ...lag, from: { activity: lastActivity(ref), at: 'end' }, to: { activity: shots, at: 'start' } }, { kind: 'part-state', ...shown });
    }
    for (const { ref } of takers.filter((work) => !isDone(draft, work.ref))) {
      const isAway = ref.kind === 'outsideJob' && need(draft.jobs, ref.id, 'outside job').droppedOffAt !== null;
      addLag(draft, { ...lag, from: { activity: shots, at: 'end' }, to: { activity: firstActivity(ref, isAway), at: 'start' } }, { kind: 'before-shot', taskId: task.id, partId: shown.partId });
    }
  }
}

/** Coats of done tasks that are not touch dry yet. */
function wetCoats(draft: Draft): { readonly wait: RunningWait; readonly partIds: ReadonlySet<string> }[] {
  return draft.document.tasks.flatMap((task) => {
    const { doneAt: laidAt } = task;
    if (laidAt === null) return [];
    const partIds = new Set(task.parts.map((use) => use.partId));
    return slowestFirst(draft, task.coats.map((coat) => stageOfCoat(draft, task, coat.materialId, 'touchDry', false))).slice(0, 1)
      .map((wait) => ({ wait: { minute: wait.overAt(draft.clock.up(laidAt)), reason: wait.reason }, partIds }));
  });
}

/** Isocyanate of done tasks that has not cleared yet. */
function uncleared(draft: Draft): { readonly wait: RunningWait; readonly zone: string }[] {
  return draft.document.tasks.flatMap((task) => {
    const shut = task.doneAt === null ? null : shutAfter(draft, task);
    if (shut === null || task.doneAt === null) return [];
    return [{ zone: shut.zone, wait: { minute: draft.clock.up(addMinutes(task.doneAt, shut.minutes)), reason: { kind: 'shut', taskId: task.id } } }];
  });
}
