/** What the plan is to make small, beside lateness: weeks with too few episodes in hand, and the cost of heated sessions. */
import { DEFAULT_WORKSHOP, goalsOf, type Episode, type PlanGoal, type SeriesDocument, type Session } from '@/lib/build';
import { addDays, dateOf, isoWeekOf, mondayOf, startOfDay } from '@/lib/calendar';
import type { ObjectiveTerm, Problem, Quota, Upkeep } from '@/lib/scheduling';
import { MINUTES_PER_DAY } from '@/lib/units';
import { need, type Draft } from './draft';
import { episodeActivity, personResource } from './names';

/** The engine's word for each goal. */
const TERM_OF: Readonly<Record<PlanGoal, ObjectiveTerm>> = {
  lateness: 'tardiness', bank: 'shortages', changes: 'moved', finish: 'makespan', heating: 'cost',
};

/** Nothing of it is left to film. */
function isRecorded({ tasks }: SeriesDocument, { id, status }: Episode): boolean {
  const own = tasks.filter(({ episodeId }) => episodeId === id);
  return status !== 'planned' || (own.length > 0 && own.every(({ doneAt }) => doneAt !== null));
}

/**
 * A quota for the end of each week up to the last release: so many of the episodes still to air have to be finished, recording
 * and lead days, as the series wants in hand; fewer where fewer are to come. Weeks that no plan can change
 * are left out.
 */
function bankQuotas({ activities, clock, document, now, nowMinute }: Draft): readonly Quota[] {
  const { bankMinimum, leadDays, zone } = document.series;
  const planned = new Set(activities.map(({ id }) => id));
  const last = document.episodes.reduce((latest, { releaseDate }) => (releaseDate > latest ? releaseDate : latest), dateOf(now, zone));
  const quotas: Quota[] = [];
  for (let monday = mondayOf(isoWeekOf(dateOf(now, zone))); monday <= last; monday = addDays(monday, 7)) {
    const sunday = addDays(monday, 6);
    const toCome = document.episodes.filter(({ releaseDate, status }) => status !== 'released' && releaseDate > sunday);
    const open = toCome.map(({ id }) => episodeActivity(id)).filter((id) => planned.has(id));
    const least = Math.min(bankMinimum, toCome.length) - toCome.filter((episode) => isRecorded(document, episode)).length;
    // Midnight itself still belongs to the day before.
    const at = clock.down(startOfDay(addDays(sunday, 1 - leadDays), zone));
    if (least > 0 && least <= open.length && at > nowMinute) quotas.push({ id: `bank ${sunday}`, at, least, among: open });
  }
  return quotas;
}

/** Cost of the heat a session takes, in the currency of the workshop; 0 while no weather is known, for then no heat is. */
function heatingCost(draft: Draft, session: Session): number {
  const price = (draft.document.series.workshop ?? DEFAULT_WORKSHOP).pricePerKwh;
  const airs = new Set(session.placeIds.map((id) => need(draft.places, id, 'place').airZone));
  return [...airs].reduce((sum, air) => sum + (draft.cureIn(air).heat(session.start, session.end) ?? 0) * price, 0);
}

/** The heated sessions ahead, each paid for when anybody works in it. They are sorted and disjoint, as sessions of one crew may not overlap. */
function heatedSessions(draft: Draft): Upkeep | null {
  const { clock, document, nowMinute } = draft;
  const spans = document.sessions
    .filter((session) => session.heating !== null)
    .map((session) => ({ within: { start: Math.max(nowMinute, clock.up(session.start)), end: clock.down(session.end) }, cost: heatingCost(draft, session) }))
    .filter(({ cost, within }) => within.start < within.end && cost > 0)
    .toSorted((a, b) => a.within.start - b.within.start);
  const apart = spans.filter(({ within }, k) => k === 0 || within.start >= spans[k - 1]!.within.end);
  return apart.length === 0 ? null : { resources: document.people.map(({ id }) => personResource(id)), spans: apart };
}

/** The objective of a series as part of the problem. Called when all activities are there. */
export function compileObjective(draft: Draft): Pick<Problem, 'objective' | 'quotas' | 'upkeep'> {
  const upkeep = heatedSessions(draft);
  return {
    objective: goalsOf(draft.document.series).map((goal) => TERM_OF[goal]),
    quotas: bankQuotas(draft),
    ...(upkeep === null ? {} : { upkeep }),
  };
}

/** Minute before which the accepted plan stays as it is. */
export function frozenUntil({ document, nowMinute }: Draft): number {
  return nowMinute + document.series.frozenDays * MINUTES_PER_DAY;
}
