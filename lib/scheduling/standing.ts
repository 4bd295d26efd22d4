import { FAR } from './calendar-index';
import { compile } from './compile';
import { explainContradiction } from './contradiction';
import { listPieces } from './describe';
import { ELAPSED, type Model } from './model';
import { factOfArc, factOfObstacle } from './obstacles';
import { PLACED, type Obstacle, type Placer } from './placer';
import type { Contradiction, Fact, Minute, Placement, Problem, Schedule } from './problem';
import { earliestOverArc, latestOverArc, propagate } from './propagate';
import { placeOthers, readSchedule, type Setting } from './setting';
import { alignStart, endOf, latestStart, passArc, startForEnd } from './timing';

/** Earliest start an arc allows when its first activity is left out: that counts as happening at the horizon. FAR: never. */
function earliestAfterLeftOut(model: Model, arc: number): number {
  const { arcs } = model;
  if (arcs.kind[arc] !== ELAPSED || arcs.minutes[arc]! >= 0) return FAR;
  const bound = Math.max(0, passArc(model, arc, model.horizon));
  return arcs.isToEnd[arc] === 1 ? startForEnd(model, arcs.to[arc]!, bound) : bound;
}

/** One thing that a start chosen by hand runs into. */
export interface Clash {
  readonly fact: Fact;
  /** For a lag: the earliest minute it allows its second end. For anything else: when it no longer stands in the way. null: never. */
  readonly until: Minute | null;
  /** Activities on the other side that would have to give way. */
  readonly activities: readonly string[];
}

/** What a start chosen by hand would mean. */
export interface Trial {
  /** `fits`: nothing else moves. `displaces`: other work has to give way, and none of it is fixed. `impossible`: what was stated forbids it. */
  readonly verdict: 'fits' | 'displaces' | 'impossible';
  readonly start: Minute;
  /** null: it does not end before its calendar does. */
  readonly end: Minute | null;
  /** Where and with whom it would be, when it fits. */
  readonly placement: Placement | null;
  readonly clashes: readonly Clash[];
  /** A minimal set of facts that cannot hold together, the chosen start among them. */
  readonly contradiction: Contradiction | null;
}

interface Push {
  readonly obstacle: Obstacle;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

const NONE: ReadonlySet<number> = new Set();

/** A schedule as it stands, to ask what would happen if one activity started at another time. Only {@link settle} changes it. */
export class Standing {
  private readonly setting: Setting;

  /** `problem` must be valid. Activities that the schedule leaves out are in nobody's way. */
  constructor(private readonly problem: Problem, schedule: Schedule) {
    this.setting = readSchedule(compile(problem), schedule);
  }

  /** Where the activity stands; null: it has no place. */
  startOf(activityId: string): Minute | null {
    const i = this.setting.index.get(activityId);
    return i === undefined || this.setting.status[i] !== PLACED ? null : this.setting.start[i]!;
  }

  /**
   * Earliest start in [from, to] that fits while everything else stays, minimum lags to what follows included; null when there is none.
   * @throws Error when the activity is unknown.
   */
  earliest(activityId: string, from: Minute, to: Minute): Minute | null {
    return this.findEarliest(this.find(activityId), from, to, NONE)?.at ?? null;
  }

  /**
   * Gives the activity its earliest place, or that of its pin, while everything else stays, and keeps it there; null, and nothing
   * changed, when there is none. `soon`: activities that are settled next, so that what waits for them is left to them.
   * @throws Error when an activity is unknown.
   */
  settle(activityId: string, soon: readonly string[] = []): Placement | null {
    const i = this.find(activityId);
    const { crew, end, model, start, status } = this.setting;
    const isPinned = model.pin[i]! >= 0;
    const found = this.findEarliest(i, isPinned ? model.pin[i]! : 0, isPinned ? model.pin[i]! : model.horizon, new Set(soon.map((id) => this.find(id))));
    if (found === null) return null;
    const { at, placer } = found;
    if (!placer.fits(i, at)) return null;
    const placement = this.place(model, placer, i, at);
    status[i] = PLACED;
    start[i] = placement.start;
    end[i] = placement.end;
    crew.set(placer.crew.subarray(model.crew.from[i]!, model.crew.from[i + 1]!), model.crew.from[i]!);
    return placement;
  }

  /** The earliest start in [from, to], and everything else in a placer. */
  private findEarliest(i: number, from: Minute, to: Minute, soon: ReadonlySet<number>): { readonly at: Minute; readonly placer: Placer } | null {
    const { model, start, status } = this.setting;
    let low = Math.max(from, model.release[i]!);
    for (const arc of model.arcsIn[i]!) {
      const first = model.arcs.from[arc]!;
      if (soon.has(first) && status[first] !== PLACED) continue;
      low = Math.max(low, status[first] === PLACED ? earliestOverArc(model, arc, start[first]!) : earliestAfterLeftOut(model, arc));
    }
    let high = Math.min(to, latestStart(model, i, Math.min(model.latestEnd[i]!, model.horizon)));
    for (const arc of model.arcsOut[i]!) {
      const second = model.arcs.to[arc]!;
      if (status[second] === PLACED) high = Math.min(high, latestOverArc(model, arc, start[second]!));
    }
    if (low > high) return null;
    const placer = placeOthers(this.setting, i);
    for (let at = placer.findStart(i, low, high); at >= 0; at = placer.findStart(i, at + 1, high)) {
      if (this.openHold(model, placer, i, at, soon) === null) return { at, placer };
    }
    return null;
  }

  /**
   * What it would mean to fix an activity at a start: what was stated is asked by propagation, the schedule by its board.
   * @throws Error when the activity is unknown.
   */
  tryStart(activityId: string, start: Minute): Trial {
    const i = this.find(activityId);
    const model = this.pinned(i, start);
    const end = endOf(model, i, start);
    const base = { start, end: end >= FAR ? null : end };
    if (start + model.duration[i]! > model.horizon || (end < FAR && end > model.horizon)) return { ...base, verdict: 'impossible', placement: null, clashes: [{ fact: { kind: 'horizon' }, until: null, activities: [] }], contradiction: null };
    const propagation = propagate(model);
    if (!propagation.ok) {
      const contradiction = explainContradiction(model.problem, model, propagation);
      return { ...base, verdict: 'impossible', placement: null, clashes: [], contradiction };
    }
    const lags = this.listLagClashes(model, i, start);
    const placer = placeOthers(this.setting, i);
    const { clashes, isStuck } = this.clearBoard(model, placer, i, start);
    const all = [...lags, ...clashes];
    const placement = all.length === 0 ? this.place(model, placer, i, start) : null;
    return { ...base, verdict: isStuck ? 'impossible' : placement === null ? 'displaces' : 'fits', placement, clashes: all, contradiction: null };
  }

  private find(activityId: string): number {
    const i = this.setting.index.get(activityId);
    if (i === undefined) throw new Error(`There is no activity "${activityId}".`);
    return i;
  }

  /** The model with one more pin; nothing is compiled again. */
  private pinned(i: number, start: Minute): Model {
    const { model } = this.setting;
    const pin = model.pin.slice();
    pin[i] = start;
    const activities = this.problem.activities.map((activity, k) => (k === i ? { ...activity, pin: { ...activity.pin, start } } : activity));
    return { ...model, pin, problem: { ...this.problem, activities } };
  }

  /** Lags to and from what stands that the start would break. */
  private listLagClashes(model: Model, i: number, at: Minute): readonly Clash[] {
    const { start, status } = this.setting;
    const clashes: Clash[] = [];
    const add = (arc: number, other: number, until: number) => {
      clashes.push({ fact: factOfArc(model, arc), until: until >= FAR ? null : until, activities: [this.problem.activities[other]!.id] });
    };
    for (const arc of model.arcsIn[i]!) {
      const first = model.arcs.from[arc]!;
      const until = status[first] === PLACED ? earliestOverArc(model, arc, start[first]!) : earliestAfterLeftOut(model, arc);
      if (until > at) add(arc, first, until);
    }
    for (const arc of model.arcsOut[i]!) {
      const second = model.arcs.to[arc]!;
      if (status[second] !== PLACED) continue;
      const until = earliestOverArc(model, arc, at);
      if (until > start[second]!) add(arc, second, until);
    }
    return clashes;
  }

  /** What {@link Placer.fits} has just found. */
  private place(model: Model, placer: Placer, i: number, at: Minute): Placement {
    placer.place(i, at);
    const end = placer.end[i]!;
    const crew = Array.from(placer.crew.subarray(model.crew.from[i]!, model.crew.from[i + 1]!), (r) => this.problem.resources[r]!.id);
    return { activity: this.problem.activities[i]!.id, start: at, end, pieces: listPieces(model, i, at, end), crew };
  }

  /** Takes away what stands in the way, one by one, until it fits or only fixed things are left. */
  private clearBoard(model: Model, placer: Placer, i: number, at: Minute): { readonly clashes: readonly Clash[]; readonly isStuck: boolean } {
    const clashes: Clash[] = [];
    for (;;) {
      let push: Push | null = null;
      placer.listener = { pushed: (obstacle, index, from, to) => { push ??= { obstacle, index, from, to }; } };
      const fits = alignStart(model, i, at) === at && placer.fits(i, at);
      placer.listener = null;
      const open = fits ? this.openHold(model, placer, i, at) : null;
      if (fits && open === null) return { clashes, isStuck: false };
      push ??= open;
      const fact = this.factOfPush(model, placer, i, push);
      const { to } = push ?? { to: FAR };
      const inWay = this.listInWay(placer, fact, i, at);
      const free = inWay.filter((other) => model.pin[other]! < 0);
      const named = (free.length > 0 ? free.slice(0, 1) : inWay).map((other) => this.problem.activities[other]!.id);
      const shown = 'blockers' in fact ? { ...fact, blockers: named } : fact;
      clashes.push({ fact: shown, until: to >= FAR ? null : to, activities: named });
      if (free.length === 0) return { clashes, isStuck: true };
      placer.remove(free[0]!);
    }
  }

  /** A hold that the activity would begin and whose end is left out lasts to the horizon: the first one that does not fit. */
  private openHold(model: Model, placer: Placer, i: number, at: Minute, soon: ReadonlySet<number> = NONE): Push | null {
    const { holds } = model;
    for (const hold of holds.byActivity[i]!) {
      if (holds.from[hold] !== i || placer.status[holds.to[hold]!] === PLACED || soon.has(holds.to[hold]!)) continue;
      const to = placer.profiles[holds.resource[hold]!]!.conflictEnd(at, model.horizon, holds.amount[hold]!);
      if (to > 0) return { obstacle: 'hold', index: hold, from: at, to };
    }
    return null;
  }

  private factOfPush(model: Model, placer: Placer, i: number, push: Push | null): Fact {
    const activity = this.problem.activities[i]!.id;
    return push === null ? { kind: 'calendar', activity } : factOfObstacle(model, placer, i, push);
  }

  /** Placed activities that a fact speaks of and that touch the time asked for, the latest to start first. */
  private listInWay(placer: Placer, fact: Fact, i: number, at: Minute): readonly number[] {
    const { index, model } = this.setting;
    if (fact.kind === 'budget') return this.listSpenders(placer, fact.budget, i);
    if (fact.kind === 'hold') {
      const hold = this.problem.holds?.find(({ id }) => id === fact.hold);
      const users = [...placer.status.keys()].filter((other) => placer.status[other] === PLACED && this.takes(placer, other, hold?.resource ?? ''));
      return users.filter((other) => other !== i).toSorted((a, b) => placer.start[b]! - placer.start[a]!);
    }
    if (!('blockers' in fact)) return [];
    const end = Math.max(at + 1, endOf(model, i, at));
    return fact.blockers
      .map((id) => index.get(id)!)
      .filter((other) => fact.kind === 'state' || placer.start[other]! < end)
      .toSorted((a, b) => placer.start[b]! - placer.start[a]!);
  }

  private listSpenders(placer: Placer, budgetId: string, i: number): readonly number[] {
    const budget = this.problem.budgets?.find(({ id }) => id === budgetId);
    if (budget === undefined) return [];
    const isCounted = (other: number) => budget.dose === undefined || this.problem.activities[other]!.doses?.some(({ kind }) => kind === budget.dose) === true;
    const touches = (other: number) => placer.start[other]! < budget.within.end && placer.end[other]! > budget.within.start && isCounted(other);
    return [...placer.status.keys()]
      .filter((other) => other !== i && placer.status[other] === PLACED && touches(other) && this.takes(placer, other, budget.resource))
      .toSorted((a, b) => placer.start[b]! - placer.start[a]!);
  }

  private takes(placer: Placer, activity: number, resource: string): boolean {
    const { crew } = this.setting.model;
    const row = this.problem.activities[activity]!;
    if (row.demands.some((demand) => demand.resource === resource)) return true;
    for (let slot = crew.from[activity]!; slot < crew.from[activity + 1]!; slot += 1) {
      if (this.problem.resources[placer.crew[slot]!]?.id === resource) return true;
    }
    return false;
  }
}
