/** What the engine must know of exposure: air that nobody may breathe yet, and daily limits of noise, vibration and vapour. */
import type { SeriesDocument, Task } from '@/lib/build';
import { addDays, dateOf, startOfDay } from '@/lib/calendar';
import type { Demand, StateNeed } from '@/lib/scheduling';
import { exposureRates, factsOfTask, givesOffVapour, isocyanateWait, makesSparks, VIBRATION_LIMIT_POINTS, type ExposureKind } from '@/lib/safety';
import { need, type Draft } from './draft';
import { breathMedium, fireMedium } from './names';

/** Minutes a place stays shut after isocyanate when nobody knows its air changes: until the next day. Judgement. */
const UNKNOWN_WAIT = 1440;
/** Budgets are whole numbers: a hundredth of a point of vibration, a millionth of a day of noise or vapour. */
const PARTS = { vibration: 100, noise: 1_000_000, vapour: 1_000_000 } as const satisfies Readonly<Record<ExposureKind, number>>;
const RESOURCES = { vibration: 'exposure:vibration', noise: 'exposure:noise', vapour: 'exposure:vapour' } as const;
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
      zone: need(places, task.placeId, 'place').airZone, spraysIsocyanate: facts.includes('isocyanate') && facts.includes('spraying'),
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
    zone: need(draft.places, task.placeId, 'place').airZone, spraysIsocyanate: false, makesSparks: false,
    givesOffVapour: task.coats.some(({ materialId }) => need(draft.materials, materialId, 'material').hasSolvent),
  };
  return { own, zone: [...all.values()].filter(({ zone }) => zone === own.zone) };
}

/** Isocyanate shuts its air zone to all other work until it has cleared; where none is sprayed, nothing is said. */
export function breathStates(draft: Draft, task: Task): readonly StateNeed[] {
  const { own, zone } = airOf(draft, task);
  if (!zone.some(({ spraysIsocyanate }) => spraysIsocyanate)) return [];
  if (!own.spraysIsocyanate) return [{ medium: breathMedium(own.zone), state: 'breathed', tail: 0 }];
  const wait = isocyanateWait(need(draft.places, task.placeId, 'place').air.airChanges);
  return [{ medium: breathMedium(own.zone), state: 'isocyanate', tail: wait.ok ? wait.value : UNKNOWN_WAIT }];
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

/** What a minute of a task takes of each daily limit, in whole parts. */
function ratesOf(document: SeriesDocument, task: Task): Readonly<Record<ExposureKind, number>> {
  const rates = exposureRates(document, task);
  const whole = (kind: ExposureKind): number => Math.ceil((rates.find((rate) => rate.kind === kind)?.perMinute ?? 0) * PARTS[kind]);
  return { vibration: whole('vibration'), noise: whole('noise'), vapour: whole('vapour') };
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
