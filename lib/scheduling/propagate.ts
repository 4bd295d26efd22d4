import { FAR } from './calendar-index';
import { ELAPSED, WORKING, type Model } from './model';
import { findPositiveCycle } from './pushing-cycle';
import { alignStart, endOf, latestAligned, latestStart, passArc, passArcBack, startForEnd } from './timing';

/** Where a bound came from: an arc, or (-1) the activity's own release, pin or latest end. */
export interface Bounds {
  /** Earliest starts; FAR: not before the horizon. */
  readonly earliest: Int32Array;
  /** Latest starts that pins and latest ends allow (the horizon is no such limit); FAR: none. */
  readonly latest: Int32Array;
  readonly earliestBy: Int32Array;
  readonly latestBy: Int32Array;
}

export type Propagation =
  | { readonly ok: true; readonly bounds: Bounds }
  /** Activities where the contradiction showed: a cycle that pushes itself on, or a window that closed. */
  | { readonly ok: false; readonly bounds: Bounds; readonly at: readonly number[]; /** Arcs of the cycle; null where a window closed. */ readonly cycleArcs: readonly number[] | null };

/** A first-in, first-out list of activities without repeats. */
class Worklist {
  private readonly items: Int32Array;
  private readonly isIn: Uint8Array;
  private head = 0;
  private size = 0;

  constructor(count: number) {
    this.items = new Int32Array(Math.max(1, count));
    this.isIn = new Uint8Array(count);
    for (let i = 0; i < count; i += 1) this.add(i);
  }

  add(item: number): void {
    if (this.isIn[item] === 1) return;
    this.isIn[item] = 1;
    this.items[(this.head + this.size) % this.items.length] = item;
    this.size += 1;
  }

  /** -1 when empty. */
  take(): number {
    if (this.size === 0) return -1;
    const item = this.items[this.head]!;
    this.head = (this.head + 1) % this.items.length;
    this.size -= 1;
    this.isIn[item] = 0;
    return item;
  }
}

/** Earliest start an arc allows its second activity, given the start of its first. */
export function earliestOverArc(model: Model, arc: number, startOfFirst: number): number {
  const { arcs } = model;
  const first = arcs.from[arc]!;
  const event = arcs.isFromEnd[arc] === 1 ? endOf(model, first, startOfFirst) : startOfFirst;
  const bound = passArc(model, arc, event);
  const second = arcs.to[arc]!;
  if (arcs.isToEnd[arc] === 1) return bound <= 0 ? alignStart(model, second, 0) : startForEnd(model, second, bound);
  return alignStart(model, second, Math.max(0, bound));
}

/** Latest start an arc allows its first activity, given the latest start of its second; below 0: none. */
export function latestOverArc(model: Model, arc: number, startOfSecond: number): number {
  const { arcs } = model;
  if (startOfSecond >= FAR) return FAR;
  const event = arcs.isToEnd[arc] === 1 ? endOf(model, arcs.to[arc]!, startOfSecond) : startOfSecond;
  const bound = passArcBack(model, arc, event);
  if (bound < 0) return -1;
  const first = arcs.from[arc]!;
  return arcs.isFromEnd[arc] === 1 ? latestStart(model, first, bound) : latestAligned(model, first, bound);
}

/** The longest span rule of split work, applied to a start: the next start that keeps to it. */
function respectSpan(model: Model, activity: number, start: number): number {
  const limit = model.maxSpan[activity]!;
  if (limit >= FAR) return start;
  let at = start;
  while (at !== FAR && endOf(model, activity, at) - at > limit) {
    const calendar = model.calendars[model.calendar[activity]!];
    if (calendar === undefined) return FAR;
    const next = calendar.firstEndingAfter(at) + 1;
    at = next < calendar.count ? alignStart(model, activity, calendar.start[next]!) : FAR;
  }
  return at;
}

/** Least minutes a step along the cycle adds, or minus infinity when a calendar may undo it. */
function leastGain(model: Model, arc: number, next: number): number {
  const { arcs } = model;
  const kind = arcs.kind[arc]!;
  let gain = kind === ELAPSED || kind === WORKING ? arcs.minutes[arc]! : 0;
  const at = arcs.to[arc]!;
  const entersEnd = arcs.isToEnd[arc] === 1;
  const leavesEnd = arcs.isFromEnd[next] === 1;
  if (!entersEnd && leavesEnd) gain += model.duration[at]!;
  if (entersEnd && !leavesEnd) {
    if (model.calendar[at]! >= 0 && model.isSplit[at] === 1) return -Infinity;
    gain -= model.duration[at]!;
  }
  return gain;
}

/** Activities of a cycle of causes through `start` that must push itself on for ever; empty when there is none. */
function findPushingCycle(model: Model, by: Int32Array, start: number): readonly number[] {
  const seen = new Map<number, number>();
  const path: number[] = [];
  let at = start;
  while (by[at]! >= 0 && !seen.has(at)) {
    seen.set(at, path.length);
    path.push(at);
    at = model.arcs.from[by[at]!]!;
  }
  const first = seen.get(at);
  if (first === undefined) return [];
  const cycle = path.slice(first);
  let gain = 0;
  cycle.forEach((activity, k) => {
    const after = cycle[(k + cycle.length - 1) % cycle.length]!;
    gain += leastGain(model, by[activity]!, by[after]!);
  });
  return gain > 0 ? cycle.toReversed() : [];
}

/** Earliest starts by repeated passing over the arcs; returns the activities of a pushing cycle, if any. */
function passForward(model: Model, earliest: Int32Array, by: Int32Array): readonly number[] {
  const cap = Math.max(model.horizon, 0);
  for (let i = 0; i < model.count; i += 1) {
    earliest[i] = respectSpan(model, i, alignStart(model, i, Math.max(model.release[i]!, model.pin[i]!, 0)));
    by[i] = -1;
  }
  const list = new Worklist(model.count);
  let updates = 0;
  for (let u = list.take(); u >= 0; u = list.take()) {
    for (const arc of model.arcsOut[u]!) {
      const v = model.arcs.to[arc]!;
      const bound = respectSpan(model, v, earliestOverArc(model, arc, earliest[u]!));
      if (bound <= earliest[v]!) continue;
      earliest[v] = bound > cap ? FAR : bound;
      by[v] = arc;
      list.add(v);
      updates += 1;
      if (updates % (model.count + 1) === 0 || earliest[v] === FAR) {
        const cycle = findPushingCycle(model, by, v);
        if (cycle.length > 0) return cycle;
      }
    }
  }
  return [];
}

function passBackward(model: Model, ends: ArrayLike<number>, latest: Int32Array, by: Int32Array): void {
  for (let i = 0; i < model.count; i += 1) {
    const own = latestStart(model, i, ends[i]!);
    latest[i] = model.pin[i]! >= 0 ? Math.min(own, model.pin[i]!) : own;
    by[i] = -1;
  }
  const list = new Worklist(model.count);
  for (let v = list.take(); v >= 0; v = list.take()) {
    if (latest[v]! < 0) continue;
    for (const arc of model.arcsIn[v]!) {
      const u = model.arcs.from[arc]!;
      const bound = latestOverArc(model, arc, latest[v]!);
      if (bound >= latest[u]!) continue;
      latest[u] = Math.max(-1, bound);
      by[u] = arc;
      list.add(u);
    }
  }
}

/**
 * Earliest and latest starts on the temporal network: calendars, lags, releases, pins, latest ends.
 * Resources are left aside. Not fitting before the horizon is no contradiction (earliest = FAR).
 */
export function propagate(model: Model): Propagation {
  const bounds: Bounds = {
    earliest: new Int32Array(model.count),
    latest: new Int32Array(model.count),
    earliestBy: new Int32Array(model.count),
    latestBy: new Int32Array(model.count),
  };
  const cycle = passForward(model, bounds.earliest, bounds.earliestBy);
  if (cycle.length > 0) return { ok: false, bounds, at: cycle, cycleArcs: cycle.map((activity) => bounds.earliestBy[activity]!) };
  // A cycle may push itself past the horizon before it shows; what is stated must not depend on who comes first.
  const hidden = bounds.earliest.includes(FAR) ? findPositiveCycle(model) : null;
  if (hidden !== null) return { ok: false, bounds, at: hidden.activities, cycleArcs: hidden.arcs };
  passBackward(model, model.latestEnd, bounds.latest, bounds.latestBy);
  for (let i = 0; i < model.count; i += 1) {
    if (bounds.earliest[i]! > bounds.latest[i]!) return { ok: false, bounds, at: [i], cycleArcs: null };
  }
  return { ok: true, bounds };
}

/** Latest starts that would keep the given latest ends; below 0: none. For priorities, not for rules. */
export function findLatestStarts(model: Model, ends: ArrayLike<number>): Int32Array {
  const latest = new Int32Array(model.count);
  passBackward(model, ends, latest, new Int32Array(model.count));
  return latest;
}
