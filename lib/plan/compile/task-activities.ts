/** Tasks, and the before-shots of irreversible ones, as activities. */
import type { Task } from '@/lib/build';
import { stageWait } from '@/lib/cure';
import { bookable, threePointMean } from '@/lib/estimate';
import type { Activity, CrewNeed, Demand, StateNeed } from '@/lib/scheduling';
import { addLag, need, previousPlace, type Draft } from './draft';
import { addActivity } from './placeable';
import { SOUND_MEDIUM, airMedium, beforeShotActivity, equipmentResource, partResource, personResource, placeResource, surfaceMedium, taskActivity } from './names';
import { sessionDemands, taskCalendar } from './session-calendars';

/** Elapsed minutes that dust needs to settle; 30-60 is common practice, no source. */
export const DUST_SETTLES = 60;

/** Shortest piece of a task that pauses between sessions, worked minutes: less is spent on setting up. Common practice, no source. */
export const SHORTEST_PIECE = 30;

/** Shots that are filmed ahead of an irreversible task, whether they are in the can or not. */
export function beforeShots(task: Task): Task['shots'] {
  return task.irreversible ? task.shots.filter((shot) => shot.purpose === 'before') : [];
}

/** Shots that must still be filmed before the task may start. */
export function shotsAhead(task: Task): Task['shots'] {
  return beforeShots(task).filter((shot) => shot.filmedAt === null);
}

/** Booked minutes of a task: mean hands-on time and the shots filmed during it, to the next 5 min. */
export function taskMinutes(task: Task): number {
  const ahead = new Set(beforeShots(task).map((shot) => shot.id));
  const filming = task.shots.filter((shot) => !ahead.has(shot.id)).reduce((sum, shot) => sum + shot.time, 0);
  return bookable(threePointMean(task.effort) + filming);
}

function crewNeeds(draft: Draft, task: Task): CrewNeed[] {
  return task.crew
    .filter((needed) => needed.count > 0)
    .map(({ skill, count }) => ({
      pool: draft.document.people.filter((person) => skill === null || person.skills.includes(skill)).map((person) => personResource(person.id)),
      count,
    }));
}

function taskDemands(task: Task): Demand[] {
  const partIds = [...new Set(task.parts.map((use) => use.partId))];
  return [
    { resource: placeResource(task.placeId), amount: 1 },
    ...partIds.map((id) => ({ resource: partResource(id), amount: 1, throughPauses: true })),
    ...[...new Set(task.equipmentIds)].map((id) => ({ resource: equipmentResource(id), amount: 1 })),
  ];
}

function taskStates(draft: Draft, task: Task): StateNeed[] {
  const place = need(draft.places, task.placeId, 'place');
  const states: StateNeed[] = [];
  if (task.isDusty) states.push({ medium: airMedium(place.airZone), state: 'dusty', tail: DUST_SETTLES });
  const wet = wetMinutes(draft, task);
  if (wet !== null) states.push({ medium: airMedium(place.airZone), state: 'wet', tail: wet });
  if (task.isNoisy) states.push({ medium: SOUND_MEDIUM, state: 'noisy', tail: 0 });
  if (task.coverage === 'piece to camera') states.push({ medium: SOUND_MEDIUM, state: 'quiet', tail: 0 });
  return [...states, ...surfaceStates(draft, task, wet)];
}

/** Minutes until every coat of the task is touch dry; null without coats. */
export function wetMinutes(draft: Draft, task: Task): number | null {
  const wet = task.coats.map((coat) => stageWait(need(draft.materials, coat.materialId, 'material'), 'touchDry', draft.document.series.workshopTemperature));
  return wet.length === 0 ? null : Math.max(...wet);
}

/**
 * Nobody touches a part between a coat and touch dry, in whatever order the work comes: the part's surface is a medium
 * that each task puts in a state of its own, and a coat's state lasts until it is touch dry.
 */
function surfaceStates(draft: Draft, task: Task, wet: number | null): StateNeed[] {
  const partIds = [...new Set(task.parts.map((use) => use.partId))].filter((id) => draft.coatedParts.has(id));
  return partIds.map((id) => ({ medium: surfaceMedium(id), state: wet === null ? 'handled' : `coat ${task.id}`, tail: wet ?? 0 }));
}

/** What a session must offer: `at the bench, recording`. */
function demandWords(draft: Draft, task: Task): string {
  return sessionDemands(draft, task).map((demand) => demand.words).join(', ');
}

/** Adds the activity of an unfinished task, and its before-shots as one of their own ahead of it. */
export function addTask(draft: Draft, task: Task): void {
  const id = taskActivity(task.id);
  const pin = task.pinnedStart === null ? {} : { pin: { start: draft.clock.down(task.pinnedStart) } };
  const duration = taskMinutes(task);
  const activity: Activity = {
    id,
    duration,
    calendar: taskCalendar(draft, task),
    mode: task.inOneGo ? 'one-go' : 'split',
    ...(task.inOneGo || duration === 0 ? {} : { shortestPiece: Math.min(SHORTEST_PIECE, duration) }),
    demands: taskDemands(task),
    crew: crewNeeds(draft, task),
    states: taskStates(draft, task),
    release: draft.nowMinute,
    ...pin,
    ...previousPlace(draft, id, personResource),
  };
  addActivity(draft, activity, demandWords(draft, task));
  const ahead = shotsAhead(task);
  if (ahead.length > 0) addBeforeShots(draft, task, activity, ahead);
}

function addBeforeShots(draft: Draft, task: Task, of: Activity, ahead: Task['shots']): void {
  const id = beforeShotActivity(task.id);
  const shots: Activity = {
    id,
    duration: bookable(ahead.reduce((sum, shot) => sum + shot.time, 0)),
    calendar: of.calendar!,
    mode: 'one-go',
    demands: taskDemands({ ...task, equipmentIds: [] }),
    crew: [{ pool: draft.document.people.map((person) => personResource(person.id)), count: 1 }],
    states: surfaceStates(draft, task, null),
    release: draft.nowMinute,
    ...previousPlace(draft, id, personResource),
  };
  addActivity(draft, shots, demandWords(draft, task));
  addLag(draft, { from: { activity: id, at: 'end' }, to: { activity: of.id, at: 'start' }, min: { kind: 'elapsed', minutes: 0 } }, { kind: 'before-shot', taskId: task.id });
}
