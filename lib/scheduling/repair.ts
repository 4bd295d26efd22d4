/** The least that has to move: a schedule that keeps the previous one wherever it still holds. */
import { findLowerBound } from './bound';
import { FAR } from './calendar-index';
import { compile } from './compile';
import { Constructor } from './construct';
import { weighFacts } from './contradiction';
import { describe } from './describe';
import { Incumbent } from './incumbent';
import { listByKey } from './list-order';
import { LocalSearch } from './local-search';
import type { Model } from './model';
import { arrange } from './order';
import { PLACED, Placer } from './placer';
import type { Problem, Solution } from './problem';
import { earliestOverArc, type Bounds } from './propagate';
import { Random } from './random';
import { makePriorities } from './rules';
import { alignStart } from './timing';

/** Builds with gaps alone: what moved in one gives way in the next. */
const MOST_ROUNDS = 3;
/** Orders tried besides, in which others give way. */
const OTHER_ORDERS = 2;
/** Changes of the order tried where nothing else is said: a fifth of a second for three hundred tasks. */
const USUAL_MOVES = 60;
const SEED = 1;

/** Activities that cannot stay where they were, were they the last to be asked: 1 for each. */
function findAffected(model: Model, bounds: Bounds, list: Int32Array): Uint8Array {
  const { arcs, previous } = model;
  const placer = new Placer(model);
  const start = new Int32Array(model.count);
  const isAffected = new Uint8Array(model.count);
  for (const i of list) {
    let from = bounds.earliest[i]!;
    for (const arc of model.arcsIn[i]!) if (arcs.isMax[arc] === 0) from = Math.max(from, earliestOverArc(model, arc, start[arcs.from[arc]!]!));
    const at = previous[i]!;
    if (at >= from && at <= bounds.latest[i]! && placer.fits(i, at)) {
      placer.place(i, at);
      start[i] = at;
      continue;
    }
    isAffected[i] = 1;
    start[i] = Math.min(FAR, Math.max(alignStart(model, i, Math.min(from, FAR)), at));
  }
  return isAffected;
}

/** Adds what stands elsewhere now; true when any of it was not known to. */
function markMoved({ count, previous }: Model, { start, status }: Placer, isAffected: Uint8Array): boolean {
  let isNew = false;
  for (let i = 0; i < count; i += 1) {
    if (previous[i]! < 0 || isAffected[i] === 1 || (status[i] === PLACED && start[i] === previous[i])) continue;
    isAffected[i] = 1;
    isNew = true;
  }
  return isNew;
}

/**
 * A schedule near the previous one, in a few builds: each activity stays where and with whom it was as long as it can, and what cannot is
 * put into the gaps, each at its earliest place. Where less is late when others give way, they do: the order of the objective decides, as in
 * `solve`, so that work that nobody would miss a date for stays put.
 * `infeasible` is a contradiction between stated facts, as in `solve`; `feasible` promises no more than that.
 * @param problem must be valid
 * @param moves changes of the order tried after that, where anything was in the way
 */
export function repair(problem: Problem, moves = USUAL_MOVES): Solution {
  const model = compile(problem);
  const facts = weighFacts(model);
  if (facts.contradiction !== null) return { status: 'infeasible', contradiction: facts.contradiction, seed: 0 };
  const { bounds } = facts;
  const order = arrange(model);
  const builder = new Constructor(model, order, bounds);
  const best = new Incumbent(model);
  const steady = new Uint8Array(model.count).fill(1);
  let schedulesTried = 0;
  let bestList = new Int32Array(model.count);
  const build = (list: Int32Array): void => {
    builder.build(list, steady);
    const { improvements } = best;
    best.offer(builder.decider);
    if (best.improvements > improvements) bestList = Int32Array.from(list);
    schedulesTried += 1;
  };
  // New work is asked after all that had a place, then by how early it can be.
  const before = Float64Array.from(model.previous, (at, i) => (at >= 0 ? at : model.horizon + Math.min(bounds.earliest[i]!, model.horizon)));
  const isAffected = findAffected(model, bounds, listByKey(order, before));
  for (let round = 0, isNew = true; isNew && round < MOST_ROUNDS; round += 1) {
    build(listByKey(order, before.map((key, i) => (isAffected[i] === 1 ? 4 * model.horizon + key : key))));
    isNew = markMoved(model, builder.placer, isAffected);
  }
  // Nothing was in the way of anything: no other order moves less.
  if (isAffected.includes(1)) for (const rule of makePriorities(model, order, bounds).slice(0, OTHER_ORDERS)) build(listByKey(order, rule));
  if (isAffected.includes(1) && moves > 0) {
    const local = new LocalSearch({ model, order, random: new Random(SEED), builder, incumbent: best });
    local.start(bestList, steady);
    for (let k = 0; k < moves; k += 1) local.step();
    schedulesTried += moves;
  }
  return { status: 'feasible', schedule: describe(model, bounds, best), lowerBound: findLowerBound(model, bounds), schedulesTried, seed: 0 };
}
