/** A compiled series and its accepted plan as the input of a simulation. */
import type { OutsideJob, SeriesDocument, Task } from '@/lib/build';
import { addDays, dateOf } from '@/lib/calendar';
import { bookable } from '@/lib/estimate';
import { learnRatio, openingHours, probabilityWithin, workingDays, workingDaysTaken, type PastJob } from '@/lib/outwork';
import {
  awayTable, beforeShotActivity, beforeShots, collectionActivity, dropOffActivity, episodeActivity, expectedReady, isWorkshopWork, personResource, readName, taskActivity,
  type Compiled, type PlanResult,
} from '@/lib/plan';
import type { Activity, Lag, Policy, Problem } from '@/lib/scheduling';
import type { AbsenceChance, ColdChance, DelayChance, ForecastInput, LengthChance, SpoilChance } from '@/lib/simulation';
import { addMinutes, MINUTES_PER_DAY } from '@/lib/units';
import type { Assumptions } from './assumptions';
import { coldRatio } from './cold-spell';
import { lognormalQuantiles, tabulate, threePointQuantiles } from './quantiles';

const MINUTES_PER_WEEK = 7 * MINUTES_PER_DAY;

/** What has been learned of the estimates of a category: mean and standard deviation of ln(actual / estimate). */
export interface LearnedFactor {
  readonly mean: number;
  readonly deviation: number;
}

export interface ChanceSources {
  readonly assumptions: Assumptions;
  /** By category; what is not in it is taken as it is estimated, with the wide default spread. */
  readonly factors: ReadonlyMap<string, LearnedFactor>;
  readonly seed: number;
}

const isOpen = (task: Task): boolean => task.doneAt === null;

/** Order and people of a saved plan, in the engine's minutes. */
function policyOf({ draft, problem }: Compiled, plan: PlanResult): Policy {
  const known = new Set(problem.activities.map((activity) => activity.id));
  return plan.blocks.filter((block) => known.has(block.id)).map((block) => ({
    activity: block.id,
    start: draft.clock.down(block.start),
    crew: block.crewIds.map((id) => (isWorkshopWork(block.kind) ? personResource(id) : `errand:${id}`)),
  }));
}

/** Work of the same estimate shares one table. */
type Tables = Map<string, Int32Array>;

function tableOf(tables: Tables, { high, likely, low }: Task['effort'], filming: number): Int32Array {
  const key = `${low} ${likely} ${high} ${filming}`;
  const known = tables.get(key);
  if (known !== undefined) return known;
  const effort = threePointQuantiles({ low, likely, high });
  const made = tabulate((share) => effort(share) + filming);
  tables.set(key, made);
  return made;
}

function lengthOf(task: Task, activity: Activity, assumptions: Assumptions, tables: Tables): LengthChance {
  const ahead = new Set(beforeShots(task).map((shot) => shot.id));
  const during = task.shots.filter((shot) => !ahead.has(shot.id));
  const filming = during.reduce((sum, shot) => sum + shot.time, 0);
  return {
    activity: activity.id,
    quantiles: tableOf(tables, task.effort, filming),
    group: task.category,
    takes: task.irreversible ? 0 : during.length,
    retakeChance: assumptions.retakeChance, retakeMinutes: assumptions.retakeMinutes,
    lostChance: task.irreversible && during.length > 0 ? assumptions.lostChance : 0, lostMinutes: assumptions.lostMinutes,
  };
}

function lengthChances({ document }: { document: SeriesDocument }, activities: ReadonlyMap<string, Activity>, assumptions: Assumptions): LengthChance[] {
  const tables: Tables = new Map();
  return document.tasks.filter(isOpen).flatMap((task) => {
    const work = activities.get(taskActivity(task.id));
    const shots = activities.get(beforeShotActivity(task.id));
    return [
      ...(work === undefined || work.duration === 0 ? [] : [lengthOf(task, work, assumptions, tables)]),
      ...(shots === undefined || shots.duration === 0 ? [] : [{
        activity: shots.id, quantiles: tabulate(() => shots.duration), group: null, takes: beforeShots(task).length,
        retakeChance: assumptions.retakeChance, retakeMinutes: assumptions.retakeMinutes, lostChance: 0, lostMinutes: 0,
      }]),
    ];
  });
}

/** Finished jobs of the series, as far as both trips are known. */
function pastJobs(document: SeriesDocument): PastJob[] {
  const { zone } = document.series;
  return document.outsideJobs.flatMap((job) => {
    const trade = document.trades.find((one) => one.id === job.tradeId);
    if (trade === undefined || job.droppedOffAt === null || job.collectedAt === null) return [];
    const open = workingDays(openingHours(trade, dateOf(job.droppedOffAt, zone), dateOf(job.collectedAt, zone), zone), zone);
    return [{ tradeId: trade.id, craft: trade.craft, quoted: job.quote.likely, actual: workingDaysTaken(open, job.droppedOffAt, job.collectedAt, zone) }];
  });
}

/** How late a promised day comes, in working days; common practice, no source: most promises hold, one in three slips. */
const SLIPS = [{ days: 0, share: 0.68 }, { days: 1, share: 0.1 }, { days: 2, share: 0.08 }, { days: 3, share: 0.06 }, { days: 5, share: 0.05 }, { days: 10, share: 0.03 }] as const;

/** Tails beyond are put into the last outcome. */
const LONGEST_IN_LIKELY = 4;

function dayShares(job: OutsideJob, past: readonly PastJob[], craft: string): { days: number; share: number }[] {
  const ratio = learnRatio(past, { tradeId: job.tradeId, craft });
  const most = Math.max(Math.ceil(job.quote.high), Math.ceil(LONGEST_IN_LIKELY * job.quote.likely), 1);
  const shares: { days: number; share: number }[] = [];
  for (let days = 1; days <= most; days += 1) {
    const share = probabilityWithin(job.quote, ratio, days) - probabilityWithin(job.quote, ratio, days - 1);
    if (share > 0) shares.push({ days, share });
  }
  const rest = 1 - shares.reduce((sum, one) => sum + one.share, 0);
  if (rest > 1e-9) shares.push({ days: most, share: rest });
  return shares;
}

/** Jobs of one trade share their tables: each is laid flat once. They never change. */
const flatTables = new WeakMap<readonly number[], Int32Array>();

function flatTable(ready: readonly number[]): Int32Array {
  const flat = flatTables.get(ready) ?? Int32Array.from(ready);
  flatTables.set(ready, flat);
  return flat;
}

function delayOf({ draft }: Compiled, job: OutsideJob, past: readonly PastJob[], lags: readonly Lag[]): DelayChance | null {
  const trade = draft.trades.get(job.tradeId);
  if (trade === undefined) return null;
  const shares = dayShares(job, past, trade.craft);
  if (job.droppedOffAt === null) {
    const lag = lags.find((one) => one.from.activity === dropOffActivity(job.id) && one.to.activity === collectionActivity(job.id) && one.min?.kind === 'table');
    if (lag === undefined) return null;
    return { id: job.id, lag: lag.id, activity: null, outcomes: shares.map(({ days, share }) => ({ days, share, release: 0, ready: flatTable(awayTable(draft, job, days).ready) })) };
  }
  const ready = (changed: OutsideJob): number => {
    const back = expectedReady(draft, changed);
    return back === null ? draft.horizon : Math.max(draft.nowMinute, draft.clock.up(back));
  };
  const { promisedFor } = job;
  const outcomes = promisedFor === null
    ? shares.map(({ days, share }) => ({ days, share, ready: null, release: ready({ ...job, quote: { low: days, likely: days, high: days } }) }))
    : SLIPS.map(({ days, share }) => ({ days, share, ready: null, release: ready({ ...job, promisedFor: addDays(promisedFor, Math.ceil((days * 7) / 5)) }) }));
  return { id: job.id, lag: null, activity: collectionActivity(job.id), outcomes };
}

/** Time that passes by the clock, not by working hours. */
const isWait = (lag: Lag): lag is Lag & { readonly min: NonNullable<Lag['min']> } => lag.min !== undefined && lag.min.kind !== 'working';

const redoName = (taskId: string): string => `redo:${taskId}`;

/** The problem with a second go at each coat, worked only in runs in which the first one fails. */
function withRedos({ problem }: Compiled, policy: Policy, tasks: readonly Task[], assumptions: Assumptions): { problem: Problem; policy: Policy; spoils: SpoilChance[]; coatLags: ReadonlyMap<string, readonly string[]> } {
  const starts = new Map(policy.map((placement) => [placement.activity, placement]));
  const activities = new Map(problem.activities.map((activity) => [activity.id, activity]));
  const coated = tasks.filter((task) => isOpen(task) && task.coats.length > 0 && starts.has(taskActivity(task.id)));
  const spoils: SpoilChance[] = [];
  const coatLags = new Map<string, string[]>();
  const extra: { activities: Activity[]; lags: Lag[]; policy: Policy[number][] } = { activities: [], lags: [], policy: [] };
  const opened = new Set<string>();
  const closed = new Map<string, Lag>();
  for (const task of coated) {
    const work = activities.get(taskActivity(task.id));
    const planned = starts.get(taskActivity(task.id));
    if (work === undefined || planned === undefined || work.duration === 0) continue;
    const redo = redoName(task.id);
    const after = problem.lags.filter((lag) => lag.from.activity === work.id && lag.from.at === 'end');
    const { due: _due, pin: _pin, previousStart: _previous, ...copy } = work;
    extra.activities.push({ ...copy, id: redo });
    extra.policy.push({ activity: redo, start: planned.start, crew: planned.crew });
    const ends = { from: { activity: work.id, at: 'end' as const }, to: { activity: redo, at: 'start' as const } };
    extra.lags.push({ id: `${work.id}>${redo}`, ...ends, min: { kind: 'elapsed', minutes: 0 } });
    for (const lag of after) {
      // The redo waits, like whatever comes next, until what was laid has dried.
      if (isWait(lag)) extra.lags.push({ id: `${lag.id} first`, ...ends, min: lag.min });
      extra.lags.push({ ...lag, id: `${lag.id} again`, from: { activity: redo, at: 'end' } });
      if (lag.max === undefined) continue;
      // The window is counted from the coat that stays, and nobody lays one sooner than planned.
      const { max: _max, ...rest } = lag;
      closed.set(lag.id, { ...rest, min: rest.min ?? { kind: 'elapsed', minutes: 0 } });
      opened.add(work.id);
    }
    coatLags.set(work.id, after.filter(isWait).flatMap(({ id }) => [id, `${id} first`, `${id} again`]));
    spoils.push({ activity: work.id, redo, chance: assumptions.spoilChance });
  }
  return {
    problem: {
      ...problem,
      activities: [...problem.activities.map((activity) => (opened.has(activity.id) ? { ...activity, release: Math.max(activity.release ?? 0, starts.get(activity.id)?.start ?? 0) } : activity)), ...extra.activities],
      lags: [...problem.lags.map((lag) => closed.get(lag.id) ?? lag), ...extra.lags],
    },
    policy: [...policy, ...extra.policy],
    spoils,
    coatLags,
  };
}

/** Thousandths by which the coats of a task take longer in a cold week: by the slowest of its materials, at the air of its place. */
function coldPerMille({ draft }: Compiled, task: Task, start: number, drop: number): number {
  const laid = draft.clock.moment(start);
  const air = draft.cureIn(draft.places.get(task.placeId)?.airZone ?? '');
  const temperature = air.warmth(laid, addMinutes(laid, MINUTES_PER_DAY)) ?? draft.document.series.workshopTemperature;
  const ratios = task.coats.flatMap(({ materialId }) => {
    const material = draft.materials.get(materialId);
    return material === undefined ? [] : [coldRatio(material, temperature, drop)];
  });
  return Math.round(1000 * Math.max(1, ...ratios));
}

function coldChance(compiled: Compiled, policy: Policy, coatLags: ReadonlyMap<string, readonly string[]>, assumptions: Assumptions): ColdChance {
  const { draft } = compiled;
  const starts = new Map(policy.map((placement) => [placement.activity, placement.start]));
  const weeks = Math.ceil(draft.horizon / MINUTES_PER_WEEK);
  return {
    begins: assumptions.coldBegins, lasts: assumptions.coldLasts, weeks,
    coats: [...coatLags].map(([activity, lags]) => {
      const start = starts.get(activity) ?? 0;
      const task = draft.tasks.get(readName(activity).id);
      return { activity, lags, week: Math.min(weeks - 1, Math.floor(start / MINUTES_PER_WEEK)), perMille: task === undefined ? 1000 : coldPerMille(compiled, task, start, assumptions.coldDrop) };
    }),
  };
}

function absenceChances({ problem }: Compiled, assumptions: Assumptions): AbsenceChance[] {
  const calendars = new Map(problem.calendars.map((calendar) => [calendar.id, calendar.intervals]));
  return problem.resources.filter((resource) => readName(resource.id).kind === 'person').map((resource) => {
    const weeks: { start: number; end: number }[][] = [];
    for (const { end, start } of calendars.get(resource.calendar ?? '') ?? []) (weeks[Math.floor(start / MINUTES_PER_WEEK)] ??= []).push({ start, end });
    return { resource: resource.id, chance: assumptions.absenceChance, weeks: Array.from(weeks, (week) => week ?? []) };
  });
}

/**
 * Everything that may go otherwise than planned, as chances on the engine's own problem. The plan must be one of this series; work that
 * has come since goes last.
 */
export function findChances(compiled: Compiled, plan: PlanResult, { assumptions, factors, seed }: ChanceSources): ForecastInput {
  const { document } = compiled.draft;
  const activities = new Map(compiled.problem.activities.map((activity) => [activity.id, activity]));
  const first = policyOf(compiled, plan);
  const { coatLags, policy, problem, spoils } = withRedos(compiled, first, document.tasks, assumptions);
  const past = pastJobs(document);
  const lengths = lengthChances({ document }, activities, assumptions).filter((chance) => !compiled.draft.impossible.has(chance.activity));
  const groups = [...new Set(lengths.flatMap(({ group }) => (group === null ? [] : [group])))].map((id) => {
    const { deviation, mean } = factors.get(id) ?? { mean: 0, deviation: assumptions.factorDeviation };
    return { id, perMille: tabulate(lognormalQuantiles(1000 * Math.exp(mean), deviation)) };
  });
  return {
    problem, policy, lengths, groups, spoils, seed,
    delays: document.outsideJobs.filter((job) => job.collectedAt === null).map((job) => delayOf(compiled, job, past, problem.lags)).filter((chance) => chance !== null),
    cold: coldChance(compiled, policy, coatLags, assumptions),
    absences: absenceChances(compiled, assumptions),
    watched: document.episodes.map((episode) => episodeActivity(episode.id)).filter((id) => activities.has(id)),
  };
}

/** The same input with these outside jobs a working day quicker. */
export function withDaySaved(input: ForecastInput, jobIds: ReadonlySet<string>): ForecastInput {
  return {
    ...input,
    delays: input.delays.map((chance) => (jobIds.has(chance.id)
      ? { ...chance, outcomes: chance.outcomes.map((outcome, k) => ({ ...outcome, ready: chance.outcomes[Math.max(0, k - 1)]!.ready, release: chance.outcomes[Math.max(0, k - 1)]!.release })) }
      : chance)),
  };
}

/** The same input with one thing quicker: an outside job by a working day, a task by an hour; for the worth of a day saved. */
export function withSaving(input: ForecastInput, subject: { readonly kind: 'task' | 'outsideJob'; readonly id: string }): ForecastInput {
  if (subject.kind === 'task') {
    const activity = taskActivity(subject.id);
    return { ...input, lengths: input.lengths.map((chance) => (chance.activity === activity ? { ...chance, quantiles: chance.quantiles.map((minutes) => Math.max(bookable(minutes / 4), minutes - 60)) } : chance)) };
  }
  return withDaySaved(input, new Set([subject.id]));
}
