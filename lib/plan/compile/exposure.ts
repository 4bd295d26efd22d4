/** What the engine must know of exposure: air that nobody may breathe yet, and daily limits of noise, vibration and vapour. */
import { crewSize, type Person, type SeriesDocument, type Task } from '@/lib/build';
import { addDays, dateOf, endOfDay, startOfDay, type CivilDate } from '@/lib/calendar';
import type { Dose, StateNeed } from '@/lib/scheduling';
import { clearanceOfTask, exposureRates, factsOfTask, givesOffVapour, makesSparks, VIBRATION_LIMIT_POINTS, type ExposureKind } from '@/lib/safety';
import { addMinutes, MS_PER_MINUTE } from '@/lib/units';
import { need, type Draft } from './draft';
import { breathMedium, fireMedium, personResource, taskActivity } from './names';
import { isAttending } from './session-calendars';

/** Minutes a place stays shut after isocyanate when nobody knows its air changes: until the next day. Judgement. */
const UNKNOWN_WAIT = 1440;
/** Doses are whole numbers: a hundredth of a point of vibration, a millionth of a day of noise or vapour. */
const PARTS = { vibration: 100, noise: 1_000_000, vapour: 1_000_000 } as const satisfies Readonly<Record<ExposureKind, number>>;
const LIMITS = { vibration: VIBRATION_LIMIT_POINTS * PARTS.vibration, noise: PARTS.noise, vapour: PARTS.vapour } as const;
const KINDS: readonly ExposureKind[] = ['vibration', 'noise', 'vapour'];

/** What an unfinished task does to the air of its zone. */
interface InAir {
  readonly zone: string;
  readonly spraysIsocyanate: boolean;
  readonly givesOffVapour: boolean;
  readonly makesSparks: boolean;
}

const known = new WeakMap<SeriesDocument, ReadonlyMap<string, InAir>>();

/** Every unfinished task of a document, worked out once for all of them. */
function listInAir({ document, places }: Draft): ReadonlyMap<string, InAir> {
  const held = known.get(document);
  if (held !== undefined) return held;
  const all = new Map(document.tasks.filter(({ doneAt }) => doneAt === null).map((task) => {
    const facts = factsOfTask(document, task).map(({ fact }) => fact);
    return [task.id, {
      zone: need(places, task.placeId, 'place').airZone, spraysIsocyanate: clearanceOfTask(document, task) !== null,
      givesOffVapour: givesOffVapour(facts), makesSparks: makesSparks(facts),
    }];
  }));
  known.set(document, all);
  return all;
}

/** The task's own part, and everything unfinished in its zone. */
function airOf(draft: Draft, task: Task): { readonly own: InAir; readonly zone: readonly InAir[] } {
  const all = listInAir(draft);
  // The work of a missed recoat window is no record: it breathes, and gives off what it lays.
  const own = all.get(task.id) ?? {
    zone: need(draft.places, task.placeId, 'place').airZone, spraysIsocyanate: clearanceOfTask(draft.document, task) !== null, makesSparks: false,
    givesOffVapour: task.coats.some(({ materialId }) => need(draft.materials, materialId, 'material').hasSolvent),
  };
  return { own, zone: [...all.values()].filter(({ zone }) => zone === own.zone) };
}

/** The air that a task's isocyanate shuts and the minutes until it has cleared; null where it sprays none. */
export function shutAfter({ document, places }: Draft, task: Task): { readonly zone: string; readonly minutes: number } | null {
  const wait = clearanceOfTask(document, task);
  return wait === null ? null : { zone: need(places, task.placeId, 'place').airZone, minutes: wait.ok ? wait.value : UNKNOWN_WAIT };
}

/** Isocyanate shuts its air zone to all other work until it has cleared; where none is sprayed, nothing is said. */
export function breathStates(draft: Draft, task: Task): readonly StateNeed[] {
  const { own } = airOf(draft, task);
  const shut = own.spraysIsocyanate ? shutAfter(draft, task) : null;
  return shut === null ? breathedStates(draft, task) : [{ medium: breathMedium(shut.zone), state: 'isocyanate', tail: shut.minutes }];
}

/** Somebody breathes the air of the task's place without air-fed protection. */
export function breathedStates(draft: Draft, task: Task): readonly StateNeed[] {
  const { own, zone } = airOf(draft, task);
  return zone.some(({ spraysIsocyanate }) => spraysIsocyanate) ? [{ medium: breathMedium(own.zone), state: 'breathed', tail: 0 }] : [];
}

/** Elapsed minutes that wiped solvent stays in the air. Judgement. */
const WIPED_STAYS = 60;

/** Sparks, flames and heaters never meet solvent in one air; what a coat gives off stays until it is touch dry. Said only where a zone has both. */
export function fireStates(draft: Draft, task: Task, wet: Pick<StateNeed, 'tail' | 'until'> | null): readonly StateNeed[] {
  const { own, zone } = airOf(draft, task);
  const hasBoth = zone.some((one) => one.givesOffVapour) && zone.some((one) => one.makesSparks);
  if (!hasBoth) return [];
  // A task that does both is refused by the rules of safety, not by the plan.
  if (own.givesOffVapour) return [{ medium: fireMedium(own.zone), state: 'vapour', ...(wet ?? { tail: WIPED_STAYS }) }];
  return own.makesSparks ? [{ medium: fireMedium(own.zone), state: 'sparks', tail: 0 }] : [];
}

/** What a minute of a task does to each person on it, in whole parts of the daily limits. */
export function exposureDoses(document: SeriesDocument, task: Task): readonly (Dose & { readonly kind: ExposureKind })[] {
  if (crewSize(task) === 0) return [];
  return exposureRates(document, task).map(({ kind, perMinute }) => ({ kind, perMinute: Math.ceil(perMinute * PARTS[kind]) }));
}

/** Days that the sessions still to come touch for one person, in order. */
function daysOf({ document, now }: Draft, person: Person): readonly CivilDate[] {
  const { zone } = document.series;
  const attended = document.sessions.filter((session) => session.end > now && isAttending(person, session, zone));
  return [...new Set(attended.flatMap(({ end, start }) => [dateOf(start, zone), dateOf(addMinutes(end, -1), zone)]))].toSorted();
}

/** Minutes of a task worked on a day until now: as logged, else its likely time where it was ticked on that day. */
function workedOn({ document, now }: Draft, task: Task, date: CivilDate): number {
  const { zone } = document.series;
  const [from, until] = [startOfDay(date, zone), Math.min(now, endOfDay(date, zone))];
  const logged = document.timeLogs.filter(({ activity, taskId }) => activity === 'hands-on' && taskId === task.id)
    .reduce((sum, { end, start }) => sum + Math.max(0, Math.min(until, end ?? now) - Math.max(from, start)) / MS_PER_MINUTE, 0);
  if (logged > 0) return logged;
  return task.doneAt !== null && dateOf(task.doneAt, zone) === date ? task.effort.likely : 0;
}

/** What somebody has had of a limit today, by the people that the accepted plan names. */
function takenOn(draft: Draft, personId: string, what: ExposureKind, date: CivilDate): number {
  if (date !== dateOf(draft.now, draft.document.series.zone)) return 0;
  return draft.document.tasks.reduce((sum, task) => {
    if (draft.previousBlocks.get(taskActivity(task.id))?.crewIds.includes(personId) !== true) return sum;
    const rate = exposureDoses(draft.document, task).find(({ kind }) => kind === what)?.perMinute ?? 0;
    return rate === 0 ? sum : sum + Math.ceil(rate * workedOn(draft, task, date));
  }, 0);
}

/** The limits as budgets of each person and day, less what was had today, where some task takes anything of them. */
export function addExposureBudgets(draft: Draft): void {
  const { document, clock, horizon, nowMinute } = draft;
  const { zone } = document.series;
  const open = document.tasks.filter((task) => task.doneAt === null);
  const given = new Set(open.flatMap((task) => exposureDoses(document, task).map(({ kind }) => kind)));
  const kinds = KINDS.filter((what) => given.has(what));
  if (kinds.length === 0) return;
  for (const person of document.people) {
    for (const date of daysOf(draft, person)) {
      const within = { start: Math.max(nowMinute, clock.up(startOfDay(date, zone))), end: Math.min(horizon, clock.up(startOfDay(addDays(date, 1), zone))) };
      if (within.start >= within.end) continue;
      for (const what of kinds) {
        const id = `${what} ${person.id} ${date}`;
        draft.budgets.push({ id, resource: personResource(person.id), dose: what, within, limit: Math.max(0, LIMITS[what] - takenOn(draft, person.id, what, date)) });
        draft.budgetReasons.set(id, { kind: 'exposure', what, personId: person.id, date });
      }
    }
  }
}
