/** Tasks, and the before-shots of irreversible ones, as activities. */
import { DEFAULT_WORKSHOP, heldForShots, isFilmedAhead, statesOf, type SeriesDocument, type Task } from '@/lib/build';
import { timesOf } from '@/lib/episodes';
import { bookable } from '@/lib/estimate';
import { asksForSecond } from '@/lib/safety';
import type { Activity, CrewNeed, Demand, StateNeed } from '@/lib/scheduling';
import { coatWaits } from './coat-waits';
import { breathStates, breathedStates, exposureDoses, fireStates } from './exposure';
import { addLag, cureOf, need, previousPlace, type Draft, type LateWork } from './draft';
import { addActivity } from './placeable';
import { SOUND_MEDIUM, airMedium, beforeShotActivity, equipmentResource, lateWorkActivity, partResource, personResource, placeResource, surfaceMedium, taskActivity } from './names';
import { taskCalendar } from './session-calendars';

/** Shortest piece of a task that pauses between sessions, worked minutes: less is spent on setting up. Common practice, no source. */
export const SHORTEST_PIECE = 30;

/** Shots that are filmed ahead of an irreversible task, whether they are in the can or not. */
export function beforeShots(task: Task): Task['shots'] {
  return task.shots.filter((shot) => isFilmedAhead(task, shot));
}

/** Shots that must still be filmed before the task may start. */
export function shotsAhead(task: Task): Task['shots'] {
  return beforeShots(task).filter((shot) => shot.filmedAt === null);
}

/**
 * Booked minutes of a task, to the next 5 min: mean hands-on time and the shots filmed during it, as typed or, where the
 * series plans by experience, as filming and finished work have shown.
 */
export function taskMinutes(document: SeriesDocument, task: Task): number {
  return bookable(timesOf(document)(task).mean);
}

/** Anybody, beside the one who does it: for work that is never done with one person. */
function secondPerson({ document }: Draft, task: Task): readonly Task['crew'][number][] {
  return asksForSecond(document, task) === null ? [] : [{ skill: null, count: 1 }];
}

function crewNeeds(draft: Draft, task: Task): CrewNeed[] {
  return [...task.crew, ...secondPerson(draft, task)]
    .filter((needed) => needed.count > 0)
    .map(({ skill, count }) => ({
      pool: draft.document.people.filter((person) => skill === null || person.skills.includes(skill)).map((person) => personResource(person.id)),
      count,
    }));
}

/** `shown`: other parts that must be in the picture: nobody else has them meanwhile, but pauses leave them free. */
function taskDemands(task: Task, shown: readonly string[]): Demand[] {
  const partIds = [...new Set(task.parts.map((use) => use.partId))];
  return [
    { resource: placeResource(task.placeId), amount: 1 },
    ...partIds.map((id) => ({ resource: partResource(id), amount: 1, throughPauses: true })),
    ...[...new Set(shown)].filter((id) => !partIds.includes(id)).map((id) => ({ resource: partResource(id), amount: 1 })),
    ...[...new Set(task.equipmentIds)].map((id) => ({ resource: equipmentResource(id), amount: 1 })),
  ];
}

function taskStates(draft: Draft, task: Task): StateNeed[] {
  const place = need(draft.places, task.placeId, 'place');
  const states: StateNeed[] = [];
  if (task.isDusty) states.push({ medium: airMedium(place.airZone), state: 'dusty', tail: (draft.document.series.workshop ?? DEFAULT_WORKSHOP).dustSettles });
  const wet = wetState(draft, task);
  if (wet !== null) states.push({ medium: airMedium(place.airZone), state: 'wet', ...wet });
  if (task.isNoisy) states.push({ medium: SOUND_MEDIUM, state: 'noisy', tail: 0 });
  if (task.coverage === 'piece to camera') states.push({ medium: SOUND_MEDIUM, state: 'quiet', tail: 0 });
  return [...states, ...breathStates(draft, task), ...fireStates(draft, task, wet), ...surfaceStates(draft, task, wet)];
}

type Lasting = Pick<StateNeed, 'tail' | 'until'>;

/** Until every coat of the task is touch dry; null without coats. */
function wetState(draft: Draft, task: Task): Lasting | null {
  if (task.coats.length === 0) return null;
  const waits = task.coats.map((coat) => cureOf(draft, task).wait(need(draft.materials, coat.materialId, 'material'), 'touchDry'));
  const tail = Math.max(0, ...waits.map((wait) => (wait.kind === 'elapsed' ? wait.minutes : 0)));
  // Coats of one material share a table.
  const tables = new Map(waits.filter((wait) => wait.kind === 'table').map((wait) => [wait.ready, wait]));
  const [first, ...others] = tables.values();
  if (first === undefined) return { tail };
  const ready = others.length === 0 ? first.ready : first.ready.map((minute, k) => Math.max(minute, ...others.map((other) => other.ready[k] ?? minute)));
  return { tail, until: { step: first.step, ready } };
}

/**
 * Nobody touches a part between a coat and touch dry, in whatever order the work comes: the part's surface is a medium
 * that each task puts in a state of its own, and a coat's state lasts until it is touch dry.
 */
function surfaceStates(draft: Draft, task: Task, wet: Lasting | null): StateNeed[] {
  const partIds = [...new Set(task.parts.map((use) => use.partId))].filter((id) => draft.coatedParts.has(id));
  return partIds.map((id) => ({ medium: surfaceMedium(id), state: wet === null ? 'handled' : `coat ${task.id}`, ...(wet ?? { tail: 0 }) }));
}

/** A task as an activity of a name. */
function activityOf(draft: Draft, id: string, task: Task): Activity {
  const duration = taskMinutes(draft.document, task);
  const doses = exposureDoses(draft.document, task);
  return {
    id,
    duration,
    calendar: taskCalendar(draft, task),
    mode: task.inOneGo ? 'one-go' : 'split',
    ...(task.inOneGo || duration === 0 ? {} : { shortestPiece: Math.min(SHORTEST_PIECE, duration) }),
    demands: taskDemands(task, heldForShots(task).map(({ partId }) => partId)),
    crew: crewNeeds(draft, task),
    ...(doses.length === 0 ? {} : { doses }),
    states: taskStates(draft, task),
    release: draft.nowMinute,
    ...previousPlace(draft, id, personResource),
  };
}

/**
 * The activity of a coat whose recoat window closes: it starts before that, which for work in one go is an end. Work that may
 * pause is done in one go then, where some session holds it: half a coat in the window is none.
 */
function inWindow(draft: Draft, task: Task, plain: Activity): Activity {
  const closes = draft.windows.get(task.id)?.closes ?? null;
  if (closes === null) return plain;
  const { shortestPiece: _piece, ...whole } = plain;
  const intervals = draft.calendars.get(plain.calendar ?? '')?.intervals ?? [];
  if (!task.inOneGo && !intervals.some(({ start, end }) => end - start >= plain.duration)) return plain;
  return { ...whole, mode: 'one-go', latestEnd: Math.min(draft.horizon, draft.clock.down(closes) + plain.duration) };
}

/** Adds the activity of an unfinished task, and its before-shots as one of their own ahead of it. */
export function addTask(draft: Draft, task: Task): void {
  const pin = task.pinnedStart === null ? {} : { pin: { start: draft.clock.down(task.pinnedStart) } };
  const plain = activityOf(draft, taskActivity(task.id), task);
  const activity: Activity = { ...inWindow(draft, task, plain), ...pin };
  addActivity(draft, activity, task);
  const ahead = shotsAhead(task);
  if (ahead.length > 0) addBeforeShots(draft, task, activity, ahead);
}

/** Adds what a missed recoat window asks for, and the next coat after it: at once, or in the window of a coat that is laid again. */
export function addLateTask(draft: Draft, late: LateWork): void {
  const id = lateWorkActivity(late.next.id);
  addActivity(draft, activityOf(draft, id, late.task), late.task);
  const to = { activity: taskActivity(late.next.id), at: 'start' as const };
  const reason = { kind: 'late-work' as const, nextTaskId: late.next.id };
  const [wait] = coatWaits(draft, late.task, true);
  const max = wait?.max ?? null;
  addLag(draft, { from: { activity: id, at: 'end' }, to, min: wait?.min ?? { kind: 'elapsed', minutes: 0 }, ...(max === null ? {} : { max }) }, reason);
}

function addBeforeShots(draft: Draft, task: Task, of: Activity, ahead: Task['shots']): void {
  const id = beforeShotActivity(task.id);
  // No coat is laid while filming: neither cold nor heat keeps it out.
  const filming = { ...task, coats: [] };
  const shots: Activity = {
    id,
    duration: bookable(ahead.reduce((sum, shot) => sum + shot.time, 0)),
    calendar: taskCalendar(draft, filming),
    mode: 'one-go',
    demands: taskDemands({ ...task, equipmentIds: [] }, ahead.flatMap(statesOf).map(({ partId }) => partId)),
    crew: [{ pool: draft.document.people.map((person) => personResource(person.id)), count: 1 }],
    states: [...surfaceStates(draft, task, null), ...breathedStates(draft, task)],
    release: draft.nowMinute,
    ...previousPlace(draft, id, personResource),
  };
  addActivity(draft, shots, filming);
  addLag(draft, { from: { activity: id, at: 'end' }, to: { activity: of.id, at: 'start' }, min: { kind: 'elapsed', minutes: 0 } }, { kind: 'before-shot', taskId: task.id, partId: null });
}
