/** Sessions as calendars of tasks, attendance as calendars of people, the fill limit as budgets. */
import type { Person, Session, Task } from '@/lib/build';
import type { Interval } from '@/lib/scheduling';
import { mergeOverlapping, subtractIntervals, wallOf } from '@/lib/calendar';
import { cureOf, need, type Draft } from './draft';
import { heaterHours } from './heater-hours';
import { personResource } from './names';

/** The session's part that is still to come, in engine minutes; null when it is over. */
function remaining(draft: Draft, session: Session): Interval | null {
  const start = Math.max(draft.clock.up(session.start), draft.nowMinute);
  const end = draft.clock.down(session.end);
  return start < end ? { start, end } : null;
}

/** A person is in the session's crew and not marked away on its day. */
export function isAttending(person: Person, session: Session, zone: string): boolean {
  if (!session.crewIds.includes(person.id)) return false;
  const day = wallOf(session.start, zone).date;
  return !person.away.some((span) => span.from <= day && day <= span.to);
}

/** What a task asks of a session, each with the words used when no session has it. */
export function sessionDemands(draft: Draft, task: Task): readonly { readonly words: string; readonly isMet: (session: Session) => boolean }[] {
  const place = need(draft.places, task.placeId, 'place');
  const materialFloors = task.coats.map((coat) => need(draft.materials, coat.materialId, 'material').minimumTemperature);
  const floor = Math.max(task.conditions.minimumTemperature ?? -Infinity, ...materialFloors);
  const demands = [{ words: `at ${place.name}`, isMet: (s: Session) => s.placeIds.includes(task.placeId) }];
  if (isFilmed(task)) demands.push({ words: 'recording', isMet: (s) => s.isRecording });
  if (task.conditions.needsDaylight) demands.push({ words: 'with daylight', isMet: (s) => s.hasDaylight });
  if (task.isNoisy) demands.push({ words: 'with noise allowed', isMet: (s) => s.isNoiseAllowed });
  if (floor > -Infinity) {
    const cure = cureOf(draft, task);
    const warmth = (s: Session) => Math.max(s.heating ?? -Infinity, cure.warmth(s.start, s.end) ?? draft.document.series.workshopTemperature);
    demands.push({ words: `at ${floor} °C or more`, isMet: (s) => warmth(s) >= floor });
  }
  return demands;
}

/** A task is filmed when it has coverage or shots. */
export function isFilmed(task: Task): boolean {
  return task.coverage !== 'none' || task.shots.length > 0;
}

/** Minutes that a task may not use although a session offers them, with the words for what it needs instead. */
export interface Closure {
  readonly words: string;
  /** What would open them. */
  readonly change: string;
  readonly spans: readonly Interval[];
}

/** When a coat of the task would never form, since the cold comes before it is touch dry. */
function coldMinutes(draft: Draft, task: Task): readonly Closure[] {
  const { airZone } = need(draft.places, task.placeId, 'place');
  return task.coats.map((coat) => need(draft.materials, coat.materialId, 'material')).map((material) => ({
    words: `warm until ${material.name} is dry in ${airZone}`, change: `Heat ${airZone} until ${material.name} is dry.`, spans: cureOf(draft, task).spoilt(material),
  }));
}

/** What makes room for a solvent coat in a heated air. */
export const fireChange = (airZone: string, material: string): string =>
  `Heat ${airZone} before the work and switch off, heat it with something made for air that holds solvent, or lay ${material} in another air.`;

/** When solvent of the task would meet a heater that can light it. */
function fireMinutes(draft: Draft, task: Task): readonly Closure[] {
  const hours = heaterHours(draft, task);
  return [...new Set(hours.map(({ materialName }) => materialName))].map((name) => {
    const own = hours.filter(({ materialName }) => materialName === name);
    const { airZone, heater } = own[0]!;
    return {
      words: `with the ${heater} heater of ${airZone} off until ${name} is dry`, spans: own.map(({ closed }) => closed),
      change: fireChange(airZone, name),
    };
  });
}

/** What a session must offer a task: `at the bench, recording`. */
export function demandWords(draft: Draft, task: Task): string {
  return [...sessionDemands(draft, task), ...closuresOf(draft, task)].map(({ words }) => words).join(', ');
}

/** Every closure of a task that has minutes in it. */
export function closuresOf(draft: Draft, task: Task): readonly Closure[] {
  return task.coats.length === 0 ? [] : [...coldMinutes(draft, task), ...fireMinutes(draft, task)].filter(({ spans }) => spans.length > 0);
}

/** Name of the calendar of the sessions that meet every demand of the task, less what is closed to it; made on first use. */
export function taskCalendar(draft: Draft, task: Task, closures: readonly Closure[] = closuresOf(draft, task)): string {
  const demands = sessionDemands(draft, task);
  const id = `sessions ${[...demands, ...closures].map(({ words }) => words).join(', ')}`;
  if (!draft.calendars.has(id)) {
    const intervals = draft.document.sessions
      .filter((session) => demands.every((d) => d.isMet(session)))
      .map((session) => remaining(draft, session))
      .filter((interval) => interval !== null);
    const closed = mergeOverlapping(closures.flatMap(({ spans }) => spans));
    draft.calendars.set(id, { id, intervals: subtractIntervals(mergeOverlapping(intervals), closed) });
  }
  return id;
}

/** One resource a person, with attendance as its calendar and each session's fill limit as a budget. */
export function addPeople(draft: Draft): void {
  const { people, sessions, series } = draft.document;
  for (const person of people) {
    const attended = sessions
      .filter((session) => isAttending(person, session, series.zone))
      .map((session) => ({ session, left: remaining(draft, session) }))
      .filter((entry): entry is { session: Session; left: Interval } => entry.left !== null);
    const calendar = `attendance ${person.id}`;
    const resource = personResource(person.id);
    draft.calendars.set(calendar, { id: calendar, intervals: mergeOverlapping(attended.map((entry) => entry.left)) });
    draft.resources.push({ id: resource, capacity: 1, calendar });
    if (series.fillLimit >= 1) continue;
    for (const { session, left } of attended) {
      const limit = Math.floor((left.end - left.start) * series.fillLimit);
      const id = `fill ${person.id} ${session.id}`;
      draft.budgets.push({ id, resource, within: left, limit });
      draft.budgetReasons.set(id, { kind: 'fill', personId: person.id, sessionId: session.id });
    }
  }
}
