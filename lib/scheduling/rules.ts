import { FAR } from './calendar-index';
import type { Model } from './model';
import type { Order } from './order';
import { endOf } from './timing';
import { findLatestStarts, type Bounds } from './propagate';

/** Latest ends wished for: the due date where there is one, else the horizon. */
function wishedEnds(model: Model): Int32Array {
  return Int32Array.from({ length: model.count }, (_, i) => Math.min(model.dueAt[i]!, model.latestEnd[i]!, model.horizon));
}

function countFollowers(order: Order): Float64Array {
  const count = order.after.length;
  const followers = new Float64Array(count);
  const seen = new Int32Array(count).fill(-1);
  const stack: number[] = [];
  for (let i = 0; i < count; i += 1) {
    stack.push(i);
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      for (const next of order.after[at]!) {
        if (seen[next] === i) continue;
        seen[next] = i;
        followers[i]! += 1;
        stack.push(next);
      }
    }
  }
  return followers;
}

/** Priority rules as keys: lower goes first. The first one is the base of random sampling. */
export function makePriorities(model: Model, order: Order, bounds: Bounds): readonly Float64Array[] {
  const { count } = model;
  const latest = findLatestStarts(model, wishedEnds(model));
  // A wish that cannot be met still says how urgent: the further below zero, the sooner.
  const start = Float64Array.from({ length: count }, (_, i) => Math.min(latest[i]!, model.horizon));
  const finish = Float64Array.from({ length: count }, (_, i) => (start[i]! < 0 ? model.duration[i]! : Math.min(endOf(model, i, start[i]!), FAR)));
  const slack = Float64Array.from({ length: count }, (_, i) => start[i]! - bounds.earliest[i]!);
  const followers = countFollowers(order).map((n) => -n);
  const early = Float64Array.from(bounds.earliest);
  const previous = Float64Array.from({ length: count }, (_, i) => (model.previous[i]! >= 0 ? model.previous[i]! : model.horizon + start[i]!));
  const rules = [finish, start, slack, followers, early];
  return model.previous.some((at) => at >= 0) ? [previous, ...rules] : rules;
}
