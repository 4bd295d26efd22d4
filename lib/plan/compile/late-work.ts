/** Work that a missed recoat window asks for, planned by itself: an activity between the coat whose window is over and the next one. */
import type { Material, Precedence, Task } from '@/lib/build';
import { coatMaterialOf, lateSteps, lateTask } from '@/lib/cure';
import type { Interval } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import { coatWaits, isNextCoat, type CoatWait } from './coat-waits';
import { cureOf, need, type Draft, type KeptWindow, type LateReason } from './draft';
import { taskCalendar } from './session-calendars';
import { SHORTEST_PIECE, taskMinutes } from './task-activities';
import { lastEnd, readyAfter } from './wait-table';

/** Minutes in which work may start, or end, both bounds in them. */
type Bounds = readonly Interval[];

/** The least that a task works in a session. */
const shortest = (draft: Draft, task: Task): number => Math.min(taskMinutes(draft.document, task), task.inOneGo ? Infinity : SHORTEST_PIECE);

/** When a task may start as far as sessions go. */
function startsOf(draft: Draft, task: Task): Bounds {
  if (task.pinnedStart !== null) {
    const at = draft.clock.down(task.pinnedStart);
    return [{ start: at, end: at }];
  }
  const length = shortest(draft, task);
  const intervals = draft.calendars.get(taskCalendar(draft, task))?.intervals ?? [];
  return intervals.filter(({ start, end }) => end - start >= length).map(({ start, end }) => ({ start, end: end - length }));
}

function endsOf(draft: Draft, task: Task): Bounds {
  const length = shortest(draft, task);
  return startsOf(draft, task).map(({ start, end }) => ({ start: start + length, end: end + length }));
}

/** Step in which ends of the first coat are tried, minutes. */
const STEP = 60;

/** True when some start lies in the window that some end opens: nothing but sessions and the wait are looked at. */
function canFollow(ends: Bounds, starts: Bounds, wait: CoatWait['min'], max: number): boolean {
  return ends.some(({ start: first, end: last }) => starts.some((range) => {
    if (range.end < first || range.start > last + max) return false;
    const isIn = (end: number): boolean => end >= first && end <= last && Math.max(range.start, readyAfter(wait, end)) <= Math.min(range.end, end + max);
    if (isIn(last) || isIn(Math.min(last, lastEnd(wait, range.end)))) return true;
    for (let end = first; end < last; end += STEP) if (isIn(end)) return true;
    return false;
  }));
}

interface Missed {
  readonly why: LateReason;
  readonly closes: Instant | null;
  readonly longest: number | null;
}

/** How the window of a coat that is on is missed; null: there is time, or it does not close. */
function missedOnDone(draft: Draft, laidAt: Instant, wait: CoatWait, closes: Instant, next: Task): Missed | null {
  if (closes <= draft.now) return { why: 'closed', closes, longest: null };
  // A pin is taken at its word: whether it comes too early is told elsewhere.
  const from = next.pinnedStart === null ? Math.max(draft.nowMinute, wait.overAt(draft.clock.up(laidAt))) : 0;
  const hasTime = startsOf(draft, next).some(({ start, end }) => end >= from && Math.max(start, from) <= draft.clock.down(closes));
  return hasTime ? null : { why: 'closes', closes, longest: null };
}

/** Looks at two coats that follow each other: whether the window is missed, kept, or there is none. */
function judgeWindow(draft: Draft, laid: Task, next: Task, wait: CoatWait, material: Material): Missed | KeptWindow | null {
  if (laid.doneAt !== null) {
    const closes = cureOf(draft, laid).moments(material, laid.doneAt).recoatUntil;
    return closes === null ? null : (missedOnDone(draft, laid.doneAt, wait, closes, next) ?? { laid, material, closes });
  }
  const { max } = wait;
  if (max === null) return null;
  const [ends, starts] = [endsOf(draft, laid), startsOf(draft, next)];
  // What has no time at all is told as that.
  const isMissed = ends.length > 0 && starts.length > 0 && !canFollow(ends, starts, wait.min, max);
  return isMissed ? { why: 'no sessions', closes: null, longest: max } : { laid, material, closes: null };
}

/** The work itself, in the place and hands of the next coat; null where the material asks for nothing, or for too much. */
function workOf(draft: Draft, laid: Task, next: Task, material: Material): Task | null {
  const pair = { laid, next, material: coatMaterialOf(material) };
  const steps = lateSteps(pair, draft.document);
  const [first, ...others] = steps;
  // A coat that is not on yet is not planned to be stripped: that is for a person to decide.
  if (first === undefined || (laid.doneAt === null && others.length > 0)) return null;
  const whole = others.length === 0 ? first : {
    ...first, name: first.name.replace(':', ' and lay it again:'), isDusty: false, length: steps.reduce((sum, step) => sum + step.length, 0), materialIds: steps.flatMap((step) => step.materialIds),
  };
  const shared = next.parts.filter(({ partId, from, to }) => from !== null && to !== null && laid.parts.some((use) => use.partId === partId && use.to === from));
  let count = 0;
  return lateTask(pair, whole, shared.map((use) => ({ ...use, to: use.from })), () => `late-${next.id}-${(count += 1)}`);
}

/**
 * Finds every pair of coats whose recoat window is missed, and the windows that the plan has to keep. One task gets late work once,
 * for the first such coat under it.
 */
export function findLateWork(draft: Draft, order: readonly Precedence[]): void {
  for (const { from, to, because } of order) {
    if (because.kind !== 'part-state' || from.kind !== 'task' || to.kind !== 'task') continue;
    const [laid, next] = [need(draft.tasks, from.id, 'task'), need(draft.tasks, to.id, 'task')];
    if (next.doneAt !== null || draft.lateWork.has(next.id) || laid.coats.length === 0 || !isNextCoat(laid, next, because.partId, because.stateId)) continue;
    const [wait] = coatWaits(draft, laid, true);
    if (wait === undefined) continue;
    const material = need(draft.materials, wait.reason.materialId, 'material');
    const judged = judgeWindow(draft, laid, next, wait, material);
    if (judged === null) continue;
    const isForced = draft.lateFor?.has(next.id) ?? false;
    const missed: Missed | null = 'why' in judged ? judged : isForced ? { why: 'no place', closes: judged.closes, longest: wait.max } : null;
    const task = missed === null ? null : workOf(draft, laid, next, material);
    if (missed !== null && task !== null) draft.lateWork.set(next.id, { next, laid, material, ...missed, task });
    else if (!('why' in judged)) draft.windows.set(next.id, judged);
  }
}
