import { listRivals } from './closure';
import type { Closure } from './closure';
import { curveOfStarts, evaluateCurve, isLag, leastReaching } from './instance';
import type { CoreInstance, Piece } from './instance';

/**
 * The instance as a graph over bounds (see trail.ts). Variables: the activities' starts, then the makespan,
 * then one yes/no a pair of rivals (yes: the first of the pair goes first). An edge raises bound `to` to
 * bound `from` + lag, or along a curve; a conditional edge only while its condition holds.
 */
export interface Network {
  readonly instance: CoreInstance;
  readonly activities: number;
  readonly makespan: number;
  readonly variables: number;
  readonly least: Int32Array;
  readonly greatest: Int32Array;
  /** Edges of bound p are head[p] to head[p + 1] in `leaving`. */
  readonly head: Int32Array;
  readonly leaving: Int32Array;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  readonly edgeLag: Int32Array;
  /** -1 for a lag, else 2 * curve for forward and 2 * curve + 1 for backward. */
  readonly edgeCurve: Int32Array;
  /** The bound of the condition, -1 without. */
  readonly edgeIf: Int32Array;
  readonly curves: readonly (readonly Piece[])[];
  /** First edge of the orders' edges: four a pair, two for yes and two for no. */
  readonly orderEdges: number;
  /** First variable of the orders. */
  readonly orders: number;
  readonly orderFirst: Int32Array;
  readonly orderSecond: Int32Array;
}

interface EdgeDraft {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
  readonly curve: number;
  readonly condition: number;
}

export function buildNetwork(instance: CoreInstance, closure: Closure | null, openPairs: readonly number[] = listOpenPairs(instance, closure)): Network {
  const n = instance.durations.length;
  const edges: EdgeDraft[] = [];
  const curves: (readonly Piece[])[] = [];
  const link = (i: number, j: number, lag: number, condition: number): void => {
    edges.push({ from: 2 * i, to: 2 * j, lag, curve: -1, condition }, { from: 2 * j + 1, to: 2 * i + 1, lag, curve: -1, condition });
  };
  const bend = (i: number, j: number, pieces: readonly Piece[]): void => {
    const c = curves.push(pieces) - 1;
    edges.push({ from: 2 * i, to: 2 * j, lag: 0, curve: 2 * c, condition: -1 }, { from: 2 * j + 1, to: 2 * i + 1, lag: 0, curve: 2 * c + 1, condition: -1 });
  };
  linkRelations(instance, closure, link, bend);
  for (let i = 0; i < n; i++) {
    const ranges = instance.allowedStarts?.[i];
    if (ranges) bend(i, i, curveOfStarts(ranges, instance.horizon));
  }
  const pairs = openPairs;
  const orderEdges = edges.length;
  const orders = n + 1;
  for (let p = 0; p < pairs.length; p += 2) {
    const order = orders + p / 2;
    link(pairs[p]!, pairs[p + 1]!, instance.durations[pairs[p]!]!, 2 * order);
    link(pairs[p + 1]!, pairs[p]!, instance.durations[pairs[p + 1]!]!, 2 * order + 1);
  }
  const variables = orders + pairs.length / 2;
  const least = new Int32Array(variables);
  const greatest = new Int32Array(variables).fill(1);
  for (let i = 0; i < n; i++) greatest[i] = instance.horizon - instance.durations[i]!;
  greatest[n] = instance.horizon;
  return {
    instance, activities: n, makespan: n, variables, least, greatest, curves, orderEdges, orders,
    orderFirst: Int32Array.from(pairs.filter((_, k) => k % 2 === 0)),
    orderSecond: Int32Array.from(pairs.filter((_, k) => k % 2 === 1)),
    ...packEdges(edges, 2 * variables),
  };
}

type Link = (i: number, j: number, lag: number, condition: number) => void;

/** Relations, the orders the closure found, and the makespan after every activity that nothing follows. */
function linkRelations(instance: CoreInstance, closure: Closure | null, link: Link, bend: (i: number, j: number, pieces: readonly Piece[]) => void): void {
  const { durations, relations } = instance;
  const n = durations.length;
  const isFollowed = new Uint8Array(n);
  for (const relation of relations) {
    if (isLag(relation)) {
      link(relation.from, relation.to, relation.lag, -1);
      if (relation.lag >= durations[relation.from]! && relation.from !== relation.to) isFollowed[relation.from] = 1;
    } else bend(relation.from, relation.to, relation.pieces);
  }
  const isCyclic = closure !== null && closure.cycleAt >= 0;
  for (let i = 0; i < n; i++) if (isFollowed[i] === 0 || isCyclic) link(i, n, durations[i]!, -1);
  if (closure === null) return;
  const rivals = listRivals(instance);
  for (let p = 0; p < rivals.length; p += 2) {
    for (const [a, b] of [[rivals[p]!, rivals[p + 1]!], [rivals[p + 1]!, rivals[p]!]] as const) {
      if (closure.distance[a * n + b]! >= durations[a]!) link(a, b, durations[a]!, -1);
    }
  }
}

/** Rivals whose order is still open. */
export function listOpenPairs(instance: CoreInstance, closure: Closure | null): number[] {
  const rivals = listRivals(instance);
  if (closure === null) return rivals;
  const { n, distance } = closure;
  const open: number[] = [];
  for (let p = 0; p < rivals.length; p += 2) {
    const a = rivals[p]!;
    const b = rivals[p + 1]!;
    if (distance[a * n + b]! < instance.durations[a]! && distance[b * n + a]! < instance.durations[b]!) open.push(a, b);
  }
  return open;
}

function packEdges(edges: readonly EdgeDraft[], bounds: number): Pick<Network, 'head' | 'leaving' | 'edgeFrom' | 'edgeTo' | 'edgeLag' | 'edgeCurve' | 'edgeIf'> {
  const head = new Int32Array(bounds + 1);
  for (const edge of edges) head[edge.from + 1] = head[edge.from + 1]! + 1;
  for (let p = 0; p < bounds; p++) head[p + 1] = head[p + 1]! + head[p]!;
  const next = head.slice();
  const leaving = new Int32Array(edges.length);
  edges.forEach((edge, e) => {
    leaving[next[edge.from]!] = e;
    next[edge.from] = next[edge.from]! + 1;
  });
  return {
    head, leaving,
    edgeFrom: Int32Array.from(edges, (e) => e.from),
    edgeTo: Int32Array.from(edges, (e) => e.to),
    edgeLag: Int32Array.from(edges, (e) => e.lag),
    edgeCurve: Int32Array.from(edges, (e) => e.curve),
    edgeIf: Int32Array.from(edges, (e) => e.condition),
  };
}

/** The bound an edge brings its target to when its source stands at v. */
export function followEdge(network: Network, edge: number, v: number): number {
  const c = network.edgeCurve[edge]!;
  if (c < 0) return v + network.edgeLag[edge]!;
  const pieces = network.curves[c >> 1]!;
  if ((c & 1) === 0) return evaluateCurve(pieces, v);
  return 1 - leastReaching(pieces, 1 - v, 0, network.instance.horizon);
}

/** The least source bound from which an edge brings its target to w. */
export function sourceNeeded(network: Network, edge: number, w: number): number {
  const c = network.edgeCurve[edge]!;
  if (c < 0) return w - network.edgeLag[edge]!;
  const pieces = network.curves[c >> 1]!;
  if ((c & 1) === 0) return leastReaching(pieces, w, 0, network.instance.horizon);
  return 1 - evaluateCurve(pieces, 1 - w);
}
