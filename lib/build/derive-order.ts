/** The order of work that follows from what it does to parts, and from links. */
import type { OutsideJob, SeriesDocument, Task, WorkRef } from './model';
import { heldForShots } from './shot-states';
import { findWork, isDone, listWorks, workKey, type Work } from './works';

/** Why one piece of work comes before another. */
export type PrecedenceReason =
  /** `from` makes the state that `to` needs, or needs a state that `to` takes away. */
  | { readonly kind: 'part-state'; readonly partId: string; readonly stateId: string }
  | { readonly kind: 'link'; readonly linkId: string };

/** `from` ends before `to` starts. */
export interface Precedence {
  readonly from: WorkRef;
  readonly to: WorkRef;
  readonly because: PrecedenceReason;
}

/** What the works of a series do with one state of one part. */
export interface StateUse {
  readonly partId: string;
  readonly stateId: string;
  /** They bring the part into the state. */
  readonly makers: readonly Work[];
  /** They need the state, or show it in a shot still to be filmed, and leave the part in it. */
  readonly keepers: readonly Work[];
  /** They need the state and take the part out of it. */
  readonly takers: readonly Work[];
}

/** The use of every state that some work names, part by part in the order of the document. */
export function listStateUses(document: SeriesDocument): readonly StateUse[] {
  const uses = new Map<string, { partId: string; stateId: string; makers: Work[]; keepers: Work[]; takers: Work[] }>();
  const useOf = (partId: string, stateId: string) => {
    // Its length says where the first id ends.
    const key = `${partId.length} ${partId} ${stateId}`;
    const known = uses.get(key) ?? { partId, stateId, makers: [], keepers: [], takers: [] };
    uses.set(key, known);
    return known;
  };
  for (const part of document.parts) for (const state of part.states) useOf(part.id, state.id);
  for (const work of listWorks(document)) {
    for (const { partId, from, to } of [...work.parts, ...(work.record.kind === 'task' ? heldForShots(work.record) : [])]) {
      if (to !== null) useOf(partId, to).makers.push(work);
      if (from !== null) useOf(partId, from)[to === null ? 'keepers' : 'takers'].push(work);
    }
  }
  return [...uses.values()].filter((use) => use.makers.length + use.keepers.length + use.takers.length > 0);
}

/**
 * Every precedence of a series: the work that makes a state comes before all work that needs it; work that only
 * needs a state comes before the work that takes the part out of it; links as they stand. Done work is included.
 * Nothing is left out when the order contradicts itself: see {@link findCycle}.
 */
export function deriveOrder(document: SeriesDocument): readonly Precedence[] {
  const { links, outsideJobs, parts, tasks } = document;
  const known = orders.get(tasks);
  if (known?.links === links && known.outsideJobs === outsideJobs && known.parts === parts) return known.order;
  const order = makeOrder(document);
  orders.set(tasks, { links, outsideJobs, parts, order });
  return order;
}

type Source = Pick<SeriesDocument, 'links' | 'outsideJobs' | 'parts'>;

/** Orders made already: series that differ by their sessions or dates alone share one. Documents never change. */
const orders = new WeakMap<SeriesDocument['tasks'], Source & { readonly order: readonly Precedence[] }>();

function makeOrder(document: SeriesDocument): readonly Precedence[] {
  const byState = listStateUses(document).flatMap(({ partId, stateId, makers, keepers, takers }) => {
    const because = { kind: 'part-state', partId, stateId } as const;
    const arcs = (before: readonly Work[], after: readonly Work[]): readonly Precedence[] =>
      before.flatMap((from) => after.filter((to) => to !== from).map((to) => ({ from: from.ref, to: to.ref, because })));
    return [...arcs(makers, keepers), ...arcs(makers, takers), ...arcs(keepers, takers)];
  });
  const byLink = document.links
    .filter((link) => findWork(document, link.from) !== undefined && findWork(document, link.to) !== undefined)
    .map((link): Precedence => ({ from: link.from, to: link.to, because: { kind: 'link', linkId: link.id } }));
  return [...byState, ...byLink];
}

/** Open work that comes before a piece of work, directly or through other open work; the nearest first. */
export function listOpenBefore(document: SeriesDocument, ref: WorkRef): readonly (Task | OutsideJob)[] {
  const arcs = deriveOrder(document);
  const found = new Map<string, Task | OutsideJob>();
  const queue: WorkRef[] = [ref];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    const at = workKey(next);
    for (const { from } of arcs.filter(({ to }) => workKey(to) === at)) {
      const work = findWork(document, from);
      const key = workKey(from);
      if (work === undefined || isDone(work) || found.has(key) || key === workKey(ref)) continue;
      found.set(key, work);
      queue.push(from);
    }
  }
  return [...found.values()];
}

/** Arcs by the work they start from, without those whose start nothing on a ring leads to. */
function cyclicArcs(arcs: readonly Precedence[]): ReadonlyMap<string, readonly Precedence[]> {
  const arcsFrom = new Map<string, Precedence[]>();
  const waitsFor = new Map<string, number>();
  for (const arc of arcs) {
    const [from, to] = [workKey(arc.from), workKey(arc.to)];
    const others = arcsFrom.get(from);
    if (others === undefined) arcsFrom.set(from, [arc]);
    else others.push(arc);
    waitsFor.set(from, waitsFor.get(from) ?? 0);
    waitsFor.set(to, (waitsFor.get(to) ?? 0) + 1);
  }
  const free = [...waitsFor].filter(([, count]) => count === 0).map(([key]) => key);
  for (let next = free.pop(); next !== undefined; next = free.pop()) {
    for (const arc of arcsFrom.get(next) ?? []) {
      const key = workKey(arc.to);
      const count = (waitsFor.get(key) ?? 0) - 1;
      waitsFor.set(key, count);
      if (count === 0) free.push(key);
    }
    arcsFrom.delete(next);
  }
  return arcsFrom;
}

/** The shortest way from a piece of work back to itself, breadth first. */
function shortestReturn(start: string, arcsFrom: ReadonlyMap<string, readonly Precedence[]>): readonly Precedence[] | null {
  const reachedBy = new Map<string, Precedence>();
  const queue = [start];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    for (const arc of arcsFrom.get(next) ?? []) {
      const key = workKey(arc.to);
      if (reachedBy.has(key)) continue;
      reachedBy.set(key, arc);
      if (key !== start) {
        queue.push(key);
        continue;
      }
      const way: Precedence[] = [];
      for (let at: string = start; way.length === 0 || at !== start; ) {
        const step = reachedBy.get(at);
        if (step === undefined) throw new Error(`No way back to ${start} at ${at}`);
        way.unshift(step);
        at = workKey(step.from);
      }
      return way;
    }
  }
  return null;
}

/**
 * A shortest ring of arcs, each starting where the one before ends, or null when the order is free of contradiction.
 * The same arcs give the same ring.
 */
export function findCycle(arcs: readonly Precedence[]): readonly Precedence[] | null {
  const arcsFrom = cyclicArcs(arcs);
  let shortest: readonly Precedence[] | null = null;
  for (const start of arcsFrom.keys()) {
    const way = shortestReturn(start, arcsFrom);
    if (way !== null && (shortest === null || way.length < shortest.length)) shortest = way;
  }
  return shortest;
}
