import { compile } from './compile';
import type { Model } from './model';
import type { Activity, Contradiction, Fact, Lag, Problem } from './problem';
import { propagate, type Bounds, type Propagation } from './propagate';
import { factOfArc, factOfObstacle } from './obstacles';
import { Placer } from './placer';

type Failure = Extract<Propagation, { ok: false }>;

/** The calendar with the pieces it cuts split work into: one fact. */
function keepCalendar({ calendar, shortestPiece }: Activity): Partial<Activity> {
  return { ...(calendar === undefined ? {} : { calendar }), ...(shortestPiece === undefined ? {} : { shortestPiece }) };
}

/** The temporal part of a problem with only the given facts left in force. */
function keepFacts(problem: Problem, facts: readonly Fact[]): Problem {
  const lagMin = new Set<string>();
  const lagMax = new Set<string>();
  const holds = new Set<string>();
  const own = new Set<string>();
  for (const fact of facts) {
    if (fact.kind === 'lag-min') lagMin.add(fact.lag);
    else if (fact.kind === 'lag-max') lagMax.add(fact.lag);
    else if (fact.kind === 'hold') holds.add(fact.hold);
    else if ('activity' in fact) own.add(`${fact.kind} ${fact.activity}`);
  }
  const keepActivity = (activity: Activity): Activity => ({
    id: activity.id,
    mode: activity.mode,
    demands: [],
    duration: own.has(`duration ${activity.id}`) ? activity.duration : 0,
    ...(own.has(`calendar ${activity.id}`) ? keepCalendar(activity) : {}),
    ...(activity.release !== undefined && own.has(`release ${activity.id}`) ? { release: activity.release } : {}),
    ...(activity.latestEnd !== undefined && own.has(`latest-end ${activity.id}`) ? { latestEnd: activity.latestEnd } : {}),
    ...(activity.pin !== undefined && own.has(`pin ${activity.id}`) ? { pin: { start: activity.pin.start } } : {}),
  });
  const keepLag = (lag: Lag): readonly Lag[] => {
    const min = lagMin.has(lag.id) ? lag.min : undefined;
    const max = lagMax.has(lag.id) ? lag.max : undefined;
    if (min === undefined && max === undefined) return [];
    return [{ id: lag.id, from: lag.from, to: lag.to, ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) }];
  };
  const lags = problem.lags.flatMap(keepLag);
  const keptHolds = (problem.holds ?? []).filter((hold) => holds.has(hold.id));
  const used = new Set<string>(facts.flatMap((fact) => ('activity' in fact ? [fact.activity] : [])));
  for (const lag of lags) used.add(lag.from.activity).add(lag.to.activity);
  for (const hold of keptHolds) used.add(hold.from).add(hold.to);
  return { ...problem, lags, holds: keptHolds, budgets: [], quotas: [], activities: problem.activities.filter((a) => used.has(a.id)).map(keepActivity) };
}

function isContradictory(problem: Problem, facts: readonly Fact[]): boolean {
  return !propagate(compile(keepFacts(problem, facts))).ok;
}

function factsOfActivity(activity: Activity): readonly Fact[] {
  const facts: Fact[] = [];
  if (activity.pin !== undefined) facts.push({ kind: 'pin', activity: activity.id });
  if (activity.latestEnd !== undefined) facts.push({ kind: 'latest-end', activity: activity.id });
  if (activity.release !== undefined) facts.push({ kind: 'release', activity: activity.id });
  if (activity.calendar !== undefined) facts.push({ kind: 'calendar', activity: activity.id });
  if (activity.duration > 0) facts.push({ kind: 'duration', activity: activity.id });
  return facts;
}

/** Arcs along the causes of a bound, from `start` to where it began. */
function traceArcs(by: Int32Array, start: number, follow: Int32Array): readonly number[] {
  const arcs: number[] = [];
  const seen = new Set<number>();
  for (let at = start; by[at]! >= 0 && !seen.has(at);) {
    seen.add(at);
    arcs.push(by[at]!);
    at = follow[by[at]!]!;
  }
  return arcs;
}

function collectChain(model: Model, failure: Failure): { readonly arcs: readonly number[]; readonly activities: readonly number[] } {
  const { bounds, at } = failure;
  const arcs = failure.cycleArcs ?? [...traceArcs(bounds.earliestBy, at[0]!, model.arcs.from).toReversed(), ...traceArcs(bounds.latestBy, at[0]!, model.arcs.to)];
  const activities = [...new Set([...arcs.flatMap((arc) => [model.arcs.from[arc]!, model.arcs.to[arc]!]), ...at])];
  return { arcs, activities };
}

function everyFact(problem: Problem): readonly Fact[] {
  const facts: Fact[] = problem.activities.flatMap(factsOfActivity);
  for (const lag of problem.lags) {
    if (lag.min !== undefined) facts.push({ kind: 'lag-min', lag: lag.id });
    if (lag.max !== undefined) facts.push({ kind: 'lag-max', lag: lag.id });
  }
  for (const hold of problem.holds ?? []) facts.push({ kind: 'hold', hold: hold.id, activity: hold.to });
  return facts;
}

/** Drops every fact that is not needed, in growing and halving runs; what is left is minimal. */
function minimise(problem: Problem, facts: readonly Fact[]): readonly Fact[] {
  let kept = [...facts];
  let run = Math.max(1, kept.length >> 1);
  for (;;) {
    const before = kept.length;
    for (let k = 0; k < kept.length;) {
      const without = [...kept.slice(0, k), ...kept.slice(k + run)];
      if (isContradictory(problem, without)) kept = without;
      else k += run;
    }
    if (run === 1 && kept.length === before) return kept;
    run = Math.max(1, run >> 1);
  }
}

/** A minimal set of facts behind a failed propagation: drop any one of them and the rest can hold together. */
export function explainContradiction(problem: Problem, model: Model, failure: Failure): Contradiction {
  const chain = collectChain(model, failure);
  const chained: Fact[] = [
    ...chain.arcs.map((arc) => factOfArc(model, arc)),
    ...chain.activities.flatMap((i) => factsOfActivity(problem.activities[i]!)),
  ];
  const facts = minimise(problem, isContradictory(problem, chained) ? chained : everyFact(problem));
  const kept = keepFacts(problem, facts);
  const named = new Set(kept.activities.map((activity) => activity.id));
  const ordered = chain.activities.map((i) => problem.activities[i]!.id).filter((id) => named.has(id));
  return { facts, activities: ordered.length === named.size ? ordered : [...named] };
}

/** What the stated facts leave of each start, or those of them that cannot hold together, whatever the search. */
export function weighFacts(model: Model): { readonly bounds: Bounds; readonly contradiction: null } | { readonly contradiction: Contradiction } {
  const propagation = propagate(model);
  if (!propagation.ok) return { contradiction: explainContradiction(model.problem, model, propagation) };
  const contradiction = findPinConflict(model);
  return contradiction === null ? { bounds: propagation.bounds, contradiction } : { contradiction };
}

/** What of a valid problem's facts cannot hold together, whatever the search; null when nothing says so. */
export function findContradiction(problem: Problem): Contradiction | null {
  return weighFacts(compile(problem)).contradiction;
}

/** Two pins (or more) that cannot stand together on a resource or in a state; null when they can. */
function findPinConflict(model: Model): Contradiction | null {
  const { problem } = model;
  const pinned = problem.activities.map((_, i) => i).filter((i) => model.pin[i]! >= 0);
  const isFixed = (i: number) => model.crew.from[i] === model.crew.from[i + 1] || problem.activities[i]?.pin?.crew !== undefined;
  const clash = (list: readonly number[]): Fact | null => {
    const placer = new Placer(model);
    for (const i of list) {
      let fact: Fact | null = null;
      placer.listener = {
        pushed: (obstacle, index, from, to) => {
          fact ??= factOfObstacle(model, placer, i, { obstacle, index, from, to });
        },
      };
      if (!placer.fits(i, model.pin[i]!)) return fact;
      placer.place(i, model.pin[i]!);
    }
    return null;
  };
  let list = pinned.filter(isFixed);
  if (clash(list) === null) return null;
  for (let k = 0; k < list.length;) {
    const without = list.filter((_, index) => index !== k);
    if (clash(without) === null) k += 1;
    else list = without;
  }
  const fact = clash(list);
  const ids = list.map((i) => problem.activities[i]!.id);
  const pins: Fact[] = ids.map((activity) => ({ kind: 'pin', activity }));
  return { facts: fact === null ? pins : [...pins, fact], activities: ids };
}
