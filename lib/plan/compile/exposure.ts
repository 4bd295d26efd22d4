/** What the engine must know of exposure: air that nobody may breathe yet, and daily limits of noise and vibration. */
import type { SeriesDocument, Task } from '@/lib/build';
import { addDays, dateOf, startOfDay } from '@/lib/calendar';
import type { Demand, StateNeed } from '@/lib/scheduling';
import { factsOfTask, givesOffVapour, isocyanateWait, makesSparks, NOISE_LIMIT, VIBRATION_LIMIT_POINTS, vibrationPoints } from '@/lib/safety';
import { need, type Draft } from './draft';
import { breathMedium, fireMedium } from './names';

/** Minutes a place stays shut after isocyanate when nobody knows its air changes: until the next day. Judgement. */
const UNKNOWN_WAIT = 1440;
/** dB that ear protection takes off in use, far below its label. Judgement. */
const EAR_PROTECTION = 15;
/** Budgets are whole numbers: a hundredth of a point of vibration, a millionth of a day of noise. */
const POINT = 100;
const NOISE_DAY = 1_000_000;

const RESOURCES = { vibration: 'exposure:vibration', noise: 'exposure:noise' } as const;
const LIMITS = { vibration: VIBRATION_LIMIT_POINTS * POINT, noise: NOISE_DAY } as const;
type What = keyof typeof RESOURCES;
const KINDS: readonly What[] = ['vibration', 'noise'];

function spraysIsocyanate(document: SeriesDocument, task: Task): boolean {
  const facts = factsOfTask(document, task).map(({ fact }) => fact);
  return facts.includes('isocyanate') && facts.includes('spraying');
}

/** Isocyanate shuts its air zone to all other work until it has cleared; where none is sprayed, nothing is said. */
export function breathStates(draft: Draft, task: Task): readonly StateNeed[] {
  const { document, places } = draft;
  const zone = need(places, task.placeId, 'place').airZone;
  const sprayers = document.tasks.filter((other) => other.doneAt === null && need(places, other.placeId, 'place').airZone === zone && spraysIsocyanate(document, other));
  if (sprayers.length === 0) return [];
  if (!sprayers.includes(task)) return [{ medium: breathMedium(zone), state: 'breathed', tail: 0 }];
  const wait = isocyanateWait(need(places, task.placeId, 'place').air.airChanges);
  return [{ medium: breathMedium(zone), state: 'isocyanate', tail: wait.ok ? wait.value : UNKNOWN_WAIT }];
}

/** Elapsed minutes that wiped solvent stays in the air. Judgement. */
const WIPED_STAYS = 60;

/** Sparks, flames and heaters never meet solvent in one air; what a coat gives off stays until it is touch dry. Said only where a zone has both. */
export function fireStates(draft: Draft, task: Task, wet: number | null): readonly StateNeed[] {
  const { document, places } = draft;
  const zoneOf = ({ placeId }: Task): string => need(places, placeId, 'place').airZone;
  const zone = zoneOf(task);
  const open = document.tasks.filter((other) => other.doneAt === null && zoneOf(other) === zone);
  const hasBoth = open.some((other) => givesOffVapour(document, other)) && open.some((other) => makesSparks(document, other));
  if (!hasBoth) return [];
  // A task that does both is refused by the rules of safety, not by the plan.
  if (givesOffVapour(document, task)) return [{ medium: fireMedium(zone), state: 'vapour', tail: wet ?? WIPED_STAYS }];
  return makesSparks(document, task) ? [{ medium: fireMedium(zone), state: 'sparks', tail: 0 }] : [];
}

/** What a task's tools take of each daily limit, in whole parts a minute. */
function ratesOf(document: SeriesDocument, task: Task): Readonly<Record<What, number>> {
  const tools = document.equipment.filter(({ id }) => task.equipmentIds.includes(id)).map(({ exposure }) => exposure);
  const share = task.hazards.toolShare;
  const points = tools.reduce((sum, { vibration }) => sum + vibrationPoints({ magnitude: vibration ?? 0, minutes: 1 }), 0);
  const noise = tools.reduce((sum, { noise: level }) => sum + (level === null ? 0 : 10 ** ((level - EAR_PROTECTION - NOISE_LIMIT) / 10) / 480), 0);
  return { vibration: Math.ceil(points * share * POINT), noise: Math.ceil(noise * share * NOISE_DAY) };
}

/** Demands on the daily limits. The limits are of one person: counted as if the same one held every tool that day. */
export function exposureDemands(document: SeriesDocument, task: Task): readonly Demand[] {
  const rates = ratesOf(document, task);
  return KINDS.filter((what) => rates[what] > 0).map((what) => ({ resource: RESOURCES[what], amount: rates[what] }));
}

/** The limits as budgets of each day that has a session, where some task takes anything of them. */
export function addExposureBudgets(draft: Draft): void {
  const { document, clock, horizon, nowMinute } = draft;
  const zone = document.series.zone;
  const open = document.tasks.filter((task) => task.doneAt === null);
  const days = [...new Set(document.sessions.filter(({ end }) => end > draft.now).map(({ start }) => dateOf(start, zone)))];
  for (const what of KINDS) {
    const rates = open.map((task) => ratesOf(document, task)[what]);
    const highest = Math.max(0, ...rates);
    if (highest === 0) continue;
    // Several tasks at once add up; the budget is the limit, not the capacity.
    draft.resources.push({ id: RESOURCES[what], capacity: rates.reduce((sum, rate) => sum + rate, 0) });
    for (const date of days) {
      const within = { start: Math.max(nowMinute, clock.up(startOfDay(date, zone))), end: Math.min(horizon, clock.up(startOfDay(addDays(date, 1), zone))) };
      if (within.start >= within.end) continue;
      const id = `${RESOURCES[what]} ${date}`;
      draft.budgets.push({ id, resource: RESOURCES[what], within, limit: LIMITS[what] });
      draft.budgetReasons.set(id, { kind: 'exposure', what, date });
    }
  }
}
