/** What about the work itself, its people or its waits would give it a place. */
import { joinWords, type SeriesDocument, type Task } from '@/lib/build';
import { formatLength, formatMoment } from '@/lib/calendar';
import type { Lag, Placement, Problem } from '@/lib/scheduling';
import { readName } from '../compile/names';
import { heatCoat, hurryTrade, withDocument } from './relief-candidates';
import { activityTitle } from './titles';
import { sessionsOf, type Narrowed, type Wanted, type Widening } from './widening';

/** Of what stands in the way, so many are asked to give way. */
const MOST_BLOCKERS = 3;
/** More trips than this are no small change. */
const MOST_TRIPS = 3;

/** A change that is as small as it gets. */
function plain(text: string, size: number, problem: () => Problem, givesWay: readonly string[] = []): Widening {
  const narrow = (): Narrowed => ({ text, size, problem, givesWay });
  return { size, wide: null, narrow };
}

/** People booked for all of a session, with nothing in reserve. */
function fillUp({ compiled: { draft, problem } }: Wanted): Widening {
  const { people, series, sessions } = draft.document;
  const isFill = (id: string): boolean => draft.budgetReasons.get(id)?.kind === 'fill';
  const filled = (ids: ReadonlySet<string> | null): Problem => ({
    ...problem, budgets: (problem.budgets ?? []).map((one) => (isFill(one.id) && (ids === null || ids.has(one.id)) ? { ...one, limit: one.within.end - one.within.start } : one)),
  });
  const narrow = (placements: readonly Placement[]): Narrowed | null => {
    const used = (problem.budgets ?? []).filter(({ id, resource, within }) => isFill(id)
      && placements.some(({ crew, pieces }) => crew.includes(resource) && pieces.some((piece) => piece.start < within.end && piece.end > within.start)));
    const why = used.flatMap(({ id }) => draft.budgetReasons.get(id) ?? []).filter((reason) => reason.kind === 'fill');
    const who = [...new Set(why.map(({ personId }) => people.find(({ id }) => id === personId)?.name ?? personId))];
    const when = sessions.filter(({ id }) => why.some(({ sessionId }) => sessionId === id)).map(({ start }) => formatMoment(start, series.zone));
    if (when.length === 0 || when.length > 3) return null;
    return { text: `Book ${joinWords(who)} for all of ${sessionsOf(when)}, with nothing in reserve`, size: when.length, problem: () => filled(new Set(used.map(({ id }) => id))) };
  };
  return { size: 1, wide: () => filled(null), narrow };
}

/** Somebody else who can do it. */
function teach(wanted: Wanted, tasks: readonly Task[]): readonly Widening[] {
  const { compiled, document } = wanted;
  const skills = [...new Set(tasks.flatMap(({ crew }) => crew.flatMap(({ skill }) => skill ?? [])))];
  return document.people.flatMap((person) => {
    const missing = skills.filter((skill) => !person.skills.includes(skill));
    const people = document.people.map((one) => (one.id === person.id ? { ...one, skills: [...one.skills, ...missing] } : one));
    const text = `Teach ${person.name} ${joinWords(missing.map((skill) => `“${skill}”`))}, or find somebody with ${missing.length === 1 ? 'that skill' : 'those skills'} for the same sessions`;
    return missing.length === 0 ? [] : [plain(text, 6, () => withDocument(compiled, { ...document, people }))];
  });
}

const withTask = (document: SeriesDocument, changed: Task): SeriesDocument => ({ ...document, tasks: document.tasks.map((task) => (task.id === changed.id ? changed : task)) });

/** How and where one task is done. */
function otherwise(wanted: Wanted, task: Task): readonly Widening[] {
  const { compiled, document } = wanted;
  const zone = document.places.find(({ id }) => id === task.placeId)?.airZone;
  const pause = task.inOneGo && task.coats.length === 0 ? [plain(`Let “${task.name}” pause from one session to the next`, 3, () => withDocument(compiled, withTask(document, { ...task, inOneGo: false })))] : [];
  const pin = task.pinnedStart === null ? [] : [plain(`Take the pin out of “${task.name}”`, 1, () => withDocument(compiled, withTask(document, { ...task, pinnedStart: null })))];
  const elsewhere = document.places
    .filter((place) => place.id !== task.placeId && place.airZone === zone)
    .map((place) => plain(`Do “${task.name}” at ${place.name}`, 2, () => withDocument(compiled, withTask(document, { ...task, placeId: place.id }))));
  return [...pin, ...elsewhere, ...pause];
}

/** What halves a dose: points of vibration grow with its square, noise doubles every 3 dB. */
const SMOOTHER: Readonly<Record<string, string>> = { vibration: 'a tool that shakes 30 % less', noise: 'a tool that is 3 dB quieter', vapour: 'half the vapour, by more air or less spray' };

/** Half of what a day's limit counts. The limit itself is never raised. */
function soften({ chain, compiled: { draft, problem } }: Wanted): readonly Widening[] {
  return problem.activities.filter(({ id }) => chain.includes(id)).flatMap((activity) => (activity.doses ?? []).filter(({ perMinute }) => perMinute > 0).map(({ kind }) => {
    const doses = (activity.doses ?? []).map((dose) => (dose.kind === kind ? { ...dose, perMinute: Math.floor(dose.perMinute / 2) } : dose));
    const changed = { ...problem, activities: problem.activities.map((one) => (one.id === activity.id ? { ...one, doses } : one)) };
    return plain(`Do “${activityTitle(draft, activity.id)}” with ${SMOOTHER[kind] ?? `half the ${kind}`}`, 3, () => changed);
  }));
}

/** Longest waits, a recoat window or a link's, as long as it would take. */
function keepOpen({ chain, compiled: { draft, problem }, schedule }: Wanted): readonly Widening[] {
  const own = new Set(problem.lags.filter(({ from, max, to }) => max !== undefined && (chain.includes(from.activity) || chain.includes(to.activity))).map(({ id }) => id));
  if (own.size === 0) return [];
  const withMax = (maxOf: (lag: Lag) => number | undefined): Problem => ({
    ...problem,
    lags: problem.lags.map((lag) => {
      if (!own.has(lag.id)) return lag;
      const { max: _, ...rest } = lag;
      const max = maxOf(lag);
      return max === undefined ? rest : { ...rest, max };
    }),
  });
  const narrow = (placements: readonly Placement[]): Narrowed | null => {
    const all = new Map([...schedule.placements, ...placements].map((placement) => [placement.activity, placement]));
    const waitOf = ({ from, to }: Lag): number => (all.get(to.activity)?.[to.at] ?? 0) - (all.get(from.activity)?.[from.at] ?? 0);
    const broken = problem.lags.filter((lag) => own.has(lag.id) && all.has(lag.from.activity) && all.has(lag.to.activity) && waitOf(lag) > lag.max!);
    const [first] = broken;
    if (first === undefined || broken.length > 1) return null;
    const laid = activityTitle(draft, first.from.activity);
    const isCoat = draft.windows.get(readName(first.to.activity).id)?.laid.id === readName(first.from.activity).id;
    const [needed, now] = [formatLength(waitOf(first)), formatLength(first.max!)];
    const text = isCoat ? `Lay “${laid}” with a material whose recoat window stays open ${needed} in place of ${now}` : `Let ${needed} pass after “${laid}” in place of ${now}`;
    return { text, size: 5, problem: () => withMax((lag) => (lag.id === first.id ? waitOf(first) : lag.max)) };
  };
  return [{ size: 5, wide: () => withMax(() => undefined), narrow }];
}

/** Work in the way, as the plan told it, goes elsewhere. */
function giveWay({ compiled: { draft, problem }, schedule }: Wanted, blockers: readonly string[]): readonly Widening[] {
  const placed = new Set(schedule.placements.map(({ activity }) => activity));
  const pinned = new Set(problem.activities.filter(({ pin }) => pin !== undefined).map(({ id }) => id));
  return [...new Set(blockers)].filter((id) => placed.has(id) && !pinned.has(id)).slice(0, MOST_BLOCKERS).map((id) => plain(`Move “${activityTitle(draft, id)}” out of its way`, 4, () => problem, [id]));
}

/** Hours for a trip that nobody has, on working days. */
function runErrands({ chain, compiled, document }: Wanted): readonly Widening[] {
  const trips = chain.filter((id) => ['drop-off', 'collection'].includes(readName(id).kind));
  if (trips.length === 0) return [];
  const hours = ([1, 2, 3, 4, 5] as const).map((weekday) => ({ weekday, from: '08:00', to: '17:00' }) as const);
  const freed = (isFreed: (personId: string) => boolean): Problem => withDocument(compiled, {
    ...document, people: document.people.map((person) => (isFreed(person.id) ? { ...person, hours: [...person.hours, ...hours] } : person)),
  });
  const narrow = (placements: readonly Placement[]): Narrowed | null => {
    const own = placements.filter(({ activity }) => trips.includes(activity));
    const who = new Set(own.flatMap(({ crew }) => crew.map((resource) => readName(resource).id)));
    if (who.size === 0 || own.length > MOST_TRIPS) return null;
    const names = document.people.filter(({ id }) => who.has(id)).map(({ name }) => name);
    const when = own.map(({ start }) => formatMoment(compiled.draft.clock.moment(start), document.series.zone));
    return { text: `Let ${joinWords(names)} be free for the ${own.length === 1 ? 'trip' : 'trips'} of ${joinWords(when)}`, size: 1 + own.length + names.length, problem: () => freed((id) => who.has(id)) };
  };
  return [{ size: 3, wide: () => freed(() => true), narrow }];
}

/** A warmer coat, or a trade a day quicker, on the way to the work. */
function waitLess({ chain, compiled, schedule }: Wanted): readonly Widening[] {
  const ends = new Map(schedule.placements.map(({ activity, end }) => [activity, end]));
  return compiled.problem.lags.filter(({ to }) => chain.includes(to.activity)).flatMap((lag) => {
    const reason = { fact: { kind: 'lag-min', lag: lag.id } as const, until: ends.get(lag.from.activity) ?? compiled.draft.nowMinute, activities: [] };
    return [...heatCoat(compiled, reason), ...hurryTrade(compiled, reason)].map(({ problem, size, text }) => plain(text, size, () => problem));
  });
}

/** Everything but sessions that might give the work a place. `blockers`: what the plan found in its way. */
export function widerWork(wanted: Wanted, blockers: readonly string[]): readonly Widening[] {
  const { chain, compiled: { draft, problem } } = wanted;
  const tasks = [...new Set(chain.flatMap((id) => draft.tasks.get(readName(id).id) ?? []))];
  return [
    plain('Plan again as things stand: nothing is in its way any more', 0, () => problem),
    fillUp(wanted), ...tasks.slice(0, 2).flatMap((task) => otherwise(wanted, task)), ...waitLess(wanted), ...soften(wanted), ...runErrands(wanted),
    ...giveWay(wanted, blockers), ...keepOpen(wanted), ...teach(wanted, tasks),
  ];
}
