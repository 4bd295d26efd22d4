import { ELAPSED, WORKING, type Model } from './model';

/** An edge between two events: the second happens at least `gain` minutes after the first, on any calendar. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly gain: number;
  /** Index of the time lag, -1 for a duration. */
  readonly arc: number;
}

const startOf = (activity: number): number => 2 * activity;
const endOf = (activity: number): number => 2 * activity + 1;

/** Differences that hold whatever the calendars say: a lower bound of what each arc and each duration adds. */
function listEdges(model: Model): readonly Edge[] {
  const edges: Edge[] = [];
  for (let i = 0; i < model.count; i += 1) {
    edges.push({ from: startOf(i), to: endOf(i), gain: model.duration[i]!, arc: -1 });
    // Split work may pause, so its end says nothing sure about its start.
    if (model.calendar[i]! < 0 || model.isSplit[i] === 0) edges.push({ from: endOf(i), to: startOf(i), gain: -model.duration[i]!, arc: -1 });
  }
  const { arcs } = model;
  for (let arc = 0; arc < arcs.from.length; arc += 1) {
    const kind = arcs.kind[arc]!;
    edges.push({
      from: arcs.isFromEnd[arc] === 1 ? endOf(arcs.from[arc]!) : startOf(arcs.from[arc]!),
      to: arcs.isToEnd[arc] === 1 ? endOf(arcs.to[arc]!) : startOf(arcs.to[arc]!),
      gain: kind === ELAPSED || kind === WORKING ? arcs.minutes[arc]! : 0,
      arc,
    });
  }
  return edges;
}

/** Activities of a cycle in its order, and the time lags along it. */
interface Cycle {
  readonly activities: readonly number[];
  readonly arcs: readonly number[];
}

/**
 * A cycle of time lags that pushes itself on for ever; null when there is none.
 * Longest paths after Bellman and Ford. Whether there is one does not depend on the order in which the facts are stated.
 */
export function findPositiveCycle(model: Model): Cycle | null {
  const edges = listEdges(model);
  const count = 2 * model.count;
  const longest = new Float64Array(count);
  const by = new Int32Array(count).fill(-1);
  let pushed = -1;
  for (let round = 0; round <= count; round += 1) {
    pushed = -1;
    edges.forEach(({ from, to, gain }, index) => {
      if (longest[from]! + gain <= longest[to]!) return;
      longest[to] = longest[from]! + gain;
      by[to] = index;
      pushed = to;
    });
    if (pushed < 0) return null;
  }
  // Walking back as many steps as there are events ends inside the cycle.
  let at = pushed;
  for (let step = 0; step < count; step += 1) at = edges[by[at]!]!.from;
  const steps: Edge[] = [];
  const first = at;
  do {
    const step = edges[by[at]!]!;
    steps.unshift(step);
    at = step.from;
  } while (at !== first);
  return { activities: [...new Set(steps.map((step) => step.from >> 1))], arcs: steps.flatMap(({ arc }) => (arc < 0 ? [] : [arc])) };
}
