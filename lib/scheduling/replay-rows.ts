/** What each activity takes, flat, for replaying: its resources with the chosen crew, and the intervals it may be worked in. */
import type { CalendarIndex } from './calendar-index';
import type { Model } from './model';
import type { Interval, Placement, Problem } from './problem';

/** The policy that a replay follows: the order of the starts, and who does what. */
export type Policy = readonly Pick<Placement, 'activity' | 'start' | 'crew'>[];

export interface ReplayRows {
  /** Rows of activity i: `from[i]` to `from[i + 1]`, crew first. */
  readonly from: Int32Array;
  readonly resource: Int32Array;
  readonly amount: Int32Array;
  readonly isThrough: Uint8Array;
}

/** The problem with the crew of the policy: each slot has one person to choose from. */
export function withFixedCrew(problem: Problem, policy: Policy): Problem {
  const chosen = new Map(policy.map((placement) => [placement.activity, placement.crew]));
  return {
    ...problem,
    activities: problem.activities.map(({ pin, previousStart: _previous, ...activity }) => {
      const needs = activity.crew ?? [];
      const count = needs.reduce((sum, need) => sum + need.count, 0);
      const known = chosen.get(activity.id);
      const crew = known?.length === count ? known : needs.flatMap((need) => need.pool.slice(0, need.count));
      return {
        ...activity,
        // An appointment is kept as "not before": what comes too late for it comes after it.
        release: Math.max(activity.release ?? 0, pin?.start ?? 0),
        crew: [...new Set(crew)].map((id) => ({ pool: [id], count: 1 })),
      };
    }),
  };
}

export function listRows(model: Model): ReplayRows {
  const rows: Row[][] = [];
  for (let i = 0; i < model.count; i += 1) {
    const own: Row[] = [];
    for (let slot = model.crew.from[i]!; slot < model.crew.from[i + 1]!; slot += 1) own.push({ resource: model.crew.pool[model.crew.poolFrom[slot]!]!, amount: 1, isThrough: 0 });
    for (let d = model.demands.from[i]!; d < model.demands.from[i + 1]!; d += 1) {
      own.push({ resource: model.demands.resource[d]!, amount: model.demands.amount[d]!, isThrough: model.demands.isThrough[d]! });
    }
    rows.push(own);
  }
  return layRows(rows);
}

/** The rows, and behind them what the crew takes of each dose: an account of budgets in place of a resource. */
export function addDoses(model: Model, rows: ReplayRows): ReplayRows {
  const { crew, doses } = model;
  if (doses.kindCount === 0) return rows;
  return layRows(Array.from({ length: model.count }, (_, i) => {
    const own = listOwn(rows, i);
    for (let slot = crew.from[i]!; slot < crew.from[i + 1]!; slot += 1) {
      for (let row = doses.from[i]!; row < doses.from[i + 1]!; row += 1) {
        const account = doses.account[crew.pool[crew.poolFrom[slot]!]! * doses.kindCount + doses.kind[row]!]!;
        if (account >= 0) own.push({ resource: account, amount: doses.perMinute[row]!, isThrough: 0 });
      }
    }
    return own;
  }));
}

interface Row {
  readonly resource: number;
  readonly amount: number;
  readonly isThrough: number;
}

/** One list an activity, laid flat. */
function layRows(rows: readonly (readonly Row[])[]): ReplayRows {
  const flat = rows.flat();
  const from = new Int32Array(rows.length + 1);
  rows.forEach((own, i) => {
    from[i + 1] = from[i]! + own.length;
  });
  return {
    from,
    resource: Int32Array.from(flat, (row) => row.resource),
    amount: Int32Array.from(flat, (row) => row.amount),
    isThrough: Uint8Array.from(flat, (row) => row.isThrough),
  };
}

/** Those rows of each activity that are asked for. */
export function pickRows(rows: ReplayRows, isWanted: (resource: number, isThrough: boolean) => boolean): ReplayRows {
  return layRows(Array.from({ length: rows.from.length - 1 }, (_, i) => listOwn(rows, i).filter(({ isThrough, resource }) => isWanted(resource, isThrough === 1))));
}

function listOwn({ amount, from, isThrough, resource }: ReplayRows, activity: number): Row[] {
  return Array.from({ length: from[activity + 1]! - from[activity]! }, (_, k) => {
    const row = from[activity]! + k;
    return { resource: resource[row]!, amount: amount[row]!, isThrough: isThrough[row]! };
  });
}

/** Intervals of a calendar with those that touch made one: a resource may be used across the seam. */
function seamless(calendar: CalendarIndex): Interval[] {
  const joined: { start: number; end: number }[] = [];
  for (let k = 0; k < calendar.count; k += 1) {
    const last = joined.at(-1);
    if (last !== undefined && last.end === calendar.start[k]) last.end = calendar.end[k]!;
    else joined.push({ start: calendar.start[k]!, end: calendar.end[k]! });
  }
  return joined;
}

function intersect(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  const both: Interval[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length;) {
    const start = Math.max(a[i]!.start, b[j]!.start);
    const end = Math.min(a[i]!.end, b[j]!.end);
    if (start < end) both.push({ start, end });
    if (a[i]!.end < b[j]!.end) i += 1;
    else j += 1;
  }
  return both;
}

const DAY = 1440;

/** Intervals in which an activity and all its resources are there, found by the day. */
export class Openings {
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly count: number;
  /** First interval that ends after the first minute of each day. */
  private readonly firstOfDay: Int32Array;

  constructor(open: readonly Interval[], horizon: number) {
    this.start = Int32Array.from(open, (o) => o.start);
    this.end = Int32Array.from(open, (o) => o.end);
    this.count = open.length;
    this.firstOfDay = new Int32Array(Math.floor(horizon / DAY) + 1);
    for (let day = 0, k = 0; day < this.firstOfDay.length; day += 1) {
      while (k < this.count && this.end[k]! <= day * DAY) k += 1;
      this.firstOfDay[day] = k;
    }
  }

  /** Index of the first interval that ends after `t`; `count` when there is none. @param t 0 or later */
  firstAfter(t: number): number {
    const day = (t / DAY) | 0;
    if (day >= this.firstOfDay.length) return this.count;
    let k = this.firstOfDay[day]!;
    while (k < this.count && this.end[k]! <= t) k += 1;
    return k;
  }
}

/** One entry an activity; those with the same calendars share theirs. */
export function listOpenings(model: Model, rows: ReplayRows): readonly Openings[] {
  const known = new Map<string, Openings>();
  return Array.from({ length: model.count }, (_, i) => {
    const timed = [...new Set(Array.from(rows.resource.subarray(rows.from[i]!, rows.from[i + 1]!), (r) => model.resourceCalendar[r]!))].filter((c) => c >= 0);
    const key = `${model.calendar[i]!} ${timed.toSorted((a, b) => a - b).join(' ')}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const own = model.calendars[model.calendar[i]!];
    let open: readonly Interval[] = own === undefined
      ? [{ start: 0, end: model.horizon }]
      : Array.from({ length: own.count }, (_unused, k) => ({ start: own.start[k]!, end: own.end[k]! }));
    for (const calendar of timed) open = intersect(open, seamless(model.calendars[calendar]!));
    const made = new Openings(open, model.horizon);
    known.set(key, made);
    return made;
  });
}
