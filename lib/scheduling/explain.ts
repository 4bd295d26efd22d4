import { FAR } from './calendar-index';
import { compile } from './compile';
import type { Model } from './model';
import { collectObstacles, factOfArc, isBareCrew, type Obstruction } from './obstacles';
import { PLACED } from './placer';
import type { Fact, Minute, Problem, Schedule } from './problem';
import { earliestOverArc } from './propagate';
import { placeOthers, readSchedule, type Setting } from './setting';
import { alignStart } from './timing';

/** One thing that keeps an activity from starting earlier. */
export interface Reason {
  readonly fact: Fact;
  /** The start it allows at the earliest. */
  readonly until: Minute;
  /** Activities behind it: the other end of the lag, or those that hold what is needed. */
  readonly activities: readonly string[];
}

/** A step of the chain that leads back to the root. */
export interface ChainLink {
  readonly activity: string;
  readonly start: Minute;
  /** The tightest reason; null at the root: nothing holds it. */
  readonly reason: Reason | null;
}

const readSchedules = new WeakMap<Schedule, { readonly problem: Problem; readonly setting: Setting }>();

/** A schedule back in the model's arrays, once for all questions about it: nothing here writes to them. */
function readOnce(problem: Problem, schedule: Schedule): Setting {
  const known = readSchedules.get(schedule);
  if (known?.problem === problem) return known.setting;
  const setting = readSchedule(compile(problem), schedule);
  readSchedules.set(schedule, { problem, setting });
  return setting;
}

function listTemporalReasons(setting: Setting, i: number): readonly Reason[] {
  const { model, start, status } = setting;
  const activity = model.problem.activities[i]!;
  const reasons: Reason[] = [];
  for (const arc of model.arcsIn[i]!) {
    const first = model.arcs.from[arc]!;
    if (status[first] !== PLACED) continue;
    const until = earliestOverArc(model, arc, start[first]!);
    if (until > 0 && until <= start[i]!) reasons.push({ fact: factOfArc(model, arc), until, activities: [model.problem.activities[first]!.id] });
  }
  const release = model.release[i]!;
  if (release > 0) reasons.push({ fact: { kind: 'release', activity: activity.id }, until: alignStart(model, i, release), activities: [] });
  if (activity.pin !== undefined) reasons.push({ fact: { kind: 'pin', activity: activity.id }, until: activity.pin.start, activities: [] });
  return reasons;
}

/** Earliest start by lags and release, the pin left aside, before the calendar is asked. */
function findFloor(reasons: readonly Reason[]): number {
  return reasons.reduce((most, reason) => (reason.fact.kind === 'pin' ? most : Math.max(most, reason.until)), 0);
}

function toReason({ fact, until }: Obstruction, model: Model, i: number): Reason {
  const aligned = until >= FAR ? FAR : alignStart(model, i, until);
  return { fact, until: aligned, activities: 'blockers' in fact ? fact.blockers : [] };
}

/** The calendar holds what is ready at a time that it does not offer. */
function listCalendarReason(setting: Setting, i: number, reasons: readonly Reason[]): readonly Reason[] {
  const { model, start } = setting;
  if (model.calendar[i]! < 0) return [];
  const first = alignStart(model, i, 0);
  const isHeld = reasons.some((reason) => reason.until === start[i]);
  if (isHeld || start[i] !== first || first === 0) return [];
  return [{ fact: { kind: 'calendar', activity: model.problem.activities[i]!.id }, until: first, activities: [] }];
}

/** Nothing else holds it: it stays where the accepted plan has it. */
function listPreviousReason(setting: Setting, i: number, reasons: readonly Reason[]): readonly Reason[] {
  const { model, start } = setting;
  const isKept = model.previous[i]! >= 0 && model.previous[i] === start[i] && alignStart(model, i, 0) < start[i]!;
  if (!isKept || reasons.some((reason) => reason.until === start[i])) return [];
  return [{ fact: { kind: 'previous', activity: model.problem.activities[i]!.id }, until: start[i]!, activities: [] }];
}

function collectReasons(setting: Setting, i: number): readonly Reason[] {
  const { model, start } = setting;
  const temporal = listTemporalReasons(setting, i);
  const floor = findFloor(temporal);
  const placer = placeOthers(setting, i);
  // Searching up to just before the start gives everything that stood in the way until then.
  const pushed = collectObstacles(model, placer, i, floor, start[i]! - 1).filter((found) => found.until > 0);
  const latest = new Map<string, Reason>();
  for (const found of pushed) {
    const reason = toReason(found, model, i);
    const key = JSON.stringify({ ...reason.fact, blockers: [] });
    const known = latest.get(key);
    if (known === undefined || known.until <= reason.until) latest.set(key, reason);
  }
  const reasons = [...temporal, ...latest.values()];
  return [...reasons, ...listCalendarReason(setting, i, reasons), ...listPreviousReason(setting, i, reasons)]
    .toSorted((a, b) => b.until - a.until || Number(isBareCrew(a.fact)) - Number(isBareCrew(b.fact)));
}

/**
 * Why a placed activity does not start earlier: the lags, resources, people, states, budgets, holds, release, pin or accepted plan
 * in its way, the tightest first. Empty when it starts as soon as anything may, or is not placed.
 * @example explainPlacement(problem, schedule, 'topcoat')[0] // { fact: { kind: 'lag-min', lag: 'cure' }, until: 2040, … }
 */
export function explainPlacement(problem: Problem, schedule: Schedule, activityId: string): readonly Reason[] {
  const setting = readOnce(problem, schedule);
  const i = setting.index.get(activityId);
  return i === undefined || setting.status[i] !== PLACED ? [] : collectReasons(setting, i);
}

function findLastToEnd(setting: Setting, ids: readonly string[]): string | undefined {
  const endOfId = (id: string) => setting.end[setting.index.get(id) ?? -1] ?? 0;
  return ids.toSorted((a, b) => endOfId(b) - endOfId(a))[0];
}

/**
 * The chain back from an activity: each step names what holds it tightest, and goes on with the activity behind
 * that, to the root which nothing holds. An activity appears once.
 */
export function explainChain(problem: Problem, schedule: Schedule, activityId: string): readonly ChainLink[] {
  const setting = readOnce(problem, schedule);
  const chain: ChainLink[] = [];
  const seen = new Set<string>();
  let at: string | undefined = activityId;
  while (at !== undefined && !seen.has(at)) {
    seen.add(at);
    const i = setting.index.get(at);
    if (i === undefined || setting.status[i] !== PLACED) break;
    const reasons: readonly Reason[] = collectReasons(setting, i);
    const reason: Reason | null = reasons[0] ?? null;
    chain.push({ activity: at, start: setting.start[i]!, reason });
    at = findLastToEnd(setting, reason?.activities.filter((id) => !seen.has(id)) ?? []);
  }
  return chain;
}
