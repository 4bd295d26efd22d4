import { stateEnd } from './timing';
import { FAR } from './calendar-index';
import type { Model } from './model';
import { PLACED, type Obstacle, type Placer } from './placer';
import type { Fact, Minute } from './problem';

/** Something that kept an activity from starting between two moments. */
export interface Obstruction {
  readonly fact: Fact;
  readonly from: Minute;
  /** The first moment it no longer stood in the way; FAR: never. */
  readonly until: Minute;
}

/** The lag or hold behind an arc. */
export function factOfArc(model: Model, arc: number): Fact {
  const { arcs, problem } = model;
  const hold = problem.holds?.[arcs.hold[arc]!];
  if (hold !== undefined) return { kind: 'hold', hold: hold.id, activity: problem.activities[arcs.to[arc]!]!.id };
  return { kind: arcs.isMax[arc] === 1 ? 'lag-max' : 'lag-min', lag: problem.lags[arcs.lag[arc]!]!.id };
}

function usesResource(model: Model, placer: Placer, activity: number, resource: number): boolean {
  const { crew, demands, holds } = model;
  for (let row = demands.from[activity]!; row < demands.from[activity + 1]!; row += 1) {
    if (demands.resource[row] === resource) return true;
  }
  for (let slot = crew.from[activity]!; slot < crew.from[activity + 1]!; slot += 1) if (placer.crew[slot] === resource) return true;
  return holds.byActivity[activity]!.some((hold) => holds.resource[hold] === resource);
}

/** Ids of placed activities (other than the one asked about) that are under way between two moments and match. */
function listBlockers(model: Model, placer: Placer, from: number, to: number, isMatch: (other: number) => boolean): readonly string[] {
  const ids: string[] = [];
  for (let other = 0; other < model.count; other += 1) {
    if (placer.status[other] !== PLACED || placer.start[other]! >= to) continue;
    if (isMatch(other) && reachOf(model, placer, other) > from) ids.push(model.problem.activities[other]!.id);
  }
  return ids;
}

/** Latest moment at which a placed activity still takes something: its end, its state's tail or its hold's end. */
function reachOf(model: Model, placer: Placer, activity: number): number {
  const { holds, states } = model;
  let until = placer.end[activity]!;
  for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) until = Math.max(until, stateEnd(states, row, placer.end[activity]!));
  for (const hold of holds.byActivity[activity]!) if (holds.from[hold] === activity) until = Math.max(until, placer.holds.taken[hold]!);
  return until;
}

/** Turns one push of the search into a fact with its blockers. */
export function factOfObstacle(model: Model, placer: Placer, activity: number, push: { obstacle: Obstacle; index: number; from: number; to: number }): Fact {
  const { crew, problem } = model;
  const { id } = problem.activities[activity]!;
  const { index } = push;
  const end = Math.max(push.from + 1, Math.min(push.to, FAR));
  if (push.obstacle === 'budget') return { kind: 'budget', budget: problem.budgets![index]!.id, activity: id };
  if (push.obstacle === 'hold') return { kind: 'hold', hold: problem.holds![model.holds.source[index]!]!.id, activity: id };
  if (push.obstacle === 'span') return { kind: 'calendar', activity: id };
  if (push.obstacle === 'resource') {
    const blockers = listBlockers(model, placer, push.from, end, (other) => other !== activity && usesResource(model, placer, other, index));
    return { kind: 'resource', resource: problem.resources[index]!.id, activity: id, blockers };
  }
  if (push.obstacle === 'crew') {
    const pool = new Set(model.crew.pool.subarray(crew.poolFrom[crew.from[activity]!]!, crew.poolFrom[crew.from[activity + 1]!]!));
    const blockers = listBlockers(model, placer, push.from, end, (other) => other !== activity && [...pool].some((r) => usesResource(model, placer, other, r)));
    return { kind: 'crew', activity: id, pool: [...pool].map((r) => problem.resources[r]!.id), blockers };
  }
  const { states } = model;
  const own = new Map<number, number>();
  for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) own.set(states.medium[row]!, states.state[row]!);
  const excludes = (other: number) => {
    for (let row = states.from[other]!; row < states.from[other + 1]!; row += 1) {
      if (states.medium[row] === index && states.state[row] !== own.get(index)) return true;
    }
    return false;
  };
  const names = problem.activities[activity]!.states ?? [];
  const at = [...own.keys()].indexOf(index);
  return { kind: 'state', medium: names[at]?.medium ?? '', activity: id, blockers: listBlockers(model, placer, push.from, end, excludes) };
}

/** Searches a start in [from, latest] and notes all that pushed it on. */
export function collectObstacles(model: Model, placer: Placer, activity: number, from: number, latest: number): readonly Obstruction[] {
  const found: Obstruction[] = [];
  placer.listener = {
    pushed: (obstacle, index, start, to) => {
      found.push({ fact: factOfObstacle(model, placer, activity, { obstacle, index, from: start, to }), from: start, until: to });
    },
  };
  placer.findStart(activity, from, latest);
  placer.listener = null;
  return found;
}

function keyOf(fact: Fact): string {
  if (fact.kind === 'resource') return `resource ${fact.resource}`;
  return 'medium' in fact ? `state ${fact.medium}` : JSON.stringify({ ...fact, blockers: [] });
}

/** Nobody of the crew is at work then: a budget, where one is named too, tells more. */
export function isBareCrew(fact: Fact): boolean {
  return fact.kind === 'crew' && fact.blockers.length === 0;
}

/** One fact for each thing in the way, with all its blockers; the one that took most time first. */
export function sortFacts(found: readonly Obstruction[]): readonly Fact[] {
  const merged = new Map<string, { fact: Fact; time: number }>();
  for (const { fact, from, until } of found) {
    const key = keyOf(fact);
    const known = merged.get(key);
    const time = until - from + (known?.time ?? 0);
    if (known !== undefined && 'blockers' in fact && 'blockers' in known.fact) {
      merged.set(key, { fact: { ...known.fact, blockers: [...new Set([...known.fact.blockers, ...fact.blockers])] }, time });
    } else merged.set(key, { fact, time });
  }
  const all = [...merged.values()];
  const spent = all.reduce((least, { fact, time }) => (fact.kind === 'budget' ? Math.min(least, time) : least), FAR);
  const weigh = ({ fact, time }: { readonly fact: Fact; readonly time: number }): number => (isBareCrew(fact) ? Math.min(time, spent - 1) : time);
  return all.toSorted((a, b) => weigh(b) - weigh(a)).map(({ fact }) => fact);
}
