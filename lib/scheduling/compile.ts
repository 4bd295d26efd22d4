import { FAR } from './calendar-index';
import { compileBudgets } from './compile-budgets';
import { compilePieces } from './compile-pieces';
import { find, flatten, indexById, numberOf, type Index } from './compile-rows';
import { ELAPSED, TABLE, WORKING, type Arcs, type CrewSlots, type Demands, type Holds, type Model, type PreviousCrew, type States } from './model';
import { compileObjective } from './objective';
import type { Activity, Demand, Lag, LagLength, Minutes, Problem } from './problem';

/** One demand a resource; when one of several lasts through pauses, all of them do. */
function mergeDemands(demands: readonly Demand[]): readonly Demand[] {
  const merged = new Map<string, Demand>();
  for (const demand of demands) {
    if (demand.amount === 0) continue;
    const known = merged.get(demand.resource);
    merged.set(demand.resource, known === undefined ? demand : {
      resource: demand.resource,
      amount: known.amount + demand.amount,
      throughPauses: known.throughPauses === true || demand.throughPauses === true,
    });
  }
  return [...merged.values()];
}

function compileDemands(problem: Problem, resources: Index): Demands {
  // A hold from and to the same activity is a demand through its pauses.
  const kept = (activity: Activity) => (problem.holds ?? [])
    .filter((hold) => hold.from === activity.id && hold.to === activity.id)
    .map((hold) => ({ resource: hold.resource, amount: hold.amount, throughPauses: true }));
  const { from, flat } = flatten(problem.activities.map((a) => mergeDemands([...a.demands, ...kept(a)])));
  return {
    from,
    resource: Int32Array.from(flat, (d) => find(resources, d.resource)),
    amount: Int32Array.from(flat, (d) => d.amount),
    isThrough: Uint8Array.from(flat, (d) => (d.throughPauses === true ? 1 : 0)),
  };
}

function compileCrew(problem: Problem, resources: Index): CrewSlots {
  const slots = flatten(problem.activities.map((activity) => {
    const chosen = activity.pin?.crew;
    if (chosen !== undefined) return chosen.map((id) => [find(resources, id)]);
    return (activity.crew ?? []).flatMap((need) => {
      const pool = [...new Set(need.pool)].map((id) => find(resources, id));
      return Array.from({ length: need.count }, () => pool);
    });
  }));
  const pools = flatten(slots.flat);
  return { from: slots.from, poolFrom: pools.from, pool: Int32Array.from(pools.flat) };
}

function compilePreviousCrew(activities: readonly Activity[], resources: Index): PreviousCrew {
  const { from, flat } = flatten(activities.map((activity) => activity.previousCrew ?? []));
  return {
    from,
    resource: Int32Array.from(flat, (id) => resources.get(id) ?? -1),
    isGiven: Uint8Array.from(activities, (activity) => Number(activity.previousCrew !== undefined && activity.previousStart !== undefined)),
  };
}

function compileStates(problem: Problem): States {
  const media = new Map<string, number>();
  const states = new Map<string, number>();
  const { from, flat } = flatten(problem.activities.map((a) => a.states ?? []));
  return {
    from,
    medium: Int32Array.from(flat, (s) => numberOf(media, s.medium)),
    state: Int32Array.from(flat, (s) => numberOf(states, s.state)),
    tail: Int32Array.from(flat, (s) => s.tail),
    until: flat.map(({ until }) => (until === undefined ? null : { step: until.step, ready: flatTable(until.ready) })),
    mediumCount: media.size,
    stateCount: states.size,
  };
}

interface ArcRow {
  readonly from: number;
  readonly isFromEnd: boolean;
  readonly to: number;
  readonly isToEnd: boolean;
  readonly length: LagLength;
  readonly isMax: boolean;
  readonly lag: number;
  readonly hold: number;
}

function arcsOfLag(lag: Lag, index: number, activities: Index): readonly ArcRow[] {
  const from = find(activities, lag.from.activity);
  const to = find(activities, lag.to.activity);
  const isFromEnd = lag.from.at === 'end';
  const isToEnd = lag.to.at === 'end';
  const rows: ArcRow[] = [];
  if (lag.min !== undefined) rows.push({ from, isFromEnd, to, isToEnd, length: lag.min, isMax: false, lag: index, hold: -1 });
  if (lag.max !== undefined) {
    const length = { kind: 'elapsed', minutes: -lag.max } as const;
    rows.push({ from: to, isFromEnd: isToEnd, to: from, isToEnd: isFromEnd, length, isMax: true, lag: index, hold: -1 });
  }
  return rows;
}

function arcsOfHolds(problem: Problem, activities: Index): readonly ArcRow[] {
  return (problem.holds ?? []).flatMap((hold, index) => {
    if (hold.from === hold.to) return [];
    const length = { kind: 'elapsed', minutes: 0 } as const;
    return [{ from: find(activities, hold.from), isFromEnd: false, to: find(activities, hold.to), isToEnd: true, length, isMax: false, lag: -1, hold: index }];
  });
}

function minutesOf(length: LagLength): number {
  return length.kind === 'table' ? length.step : length.minutes;
}

function compileArcs(problem: Problem, activities: Index, calendars: Index): Arcs {
  // A lag inside one activity (start to end) is its longest span, not an arc.
  const rows = [...problem.lags.flatMap((lag, i) => arcsOfLag(lag, i, activities)), ...arcsOfHolds(problem, activities)]
    .filter((row) => row.from !== row.to);
  const kinds = { elapsed: ELAPSED, working: WORKING, table: TABLE };
  return {
    count: rows.length,
    from: Int32Array.from(rows, (r) => r.from),
    isFromEnd: Uint8Array.from(rows, (r) => Number(r.isFromEnd)),
    to: Int32Array.from(rows, (r) => r.to),
    isToEnd: Uint8Array.from(rows, (r) => Number(r.isToEnd)),
    kind: Uint8Array.from(rows, (r) => kinds[r.length.kind]),
    minutes: Int32Array.from(rows, (r) => minutesOf(r.length)),
    calendar: Int32Array.from(rows, (r) => (r.length.kind === 'working' ? find(calendars, r.length.calendar) : -1)),
    tables: rows.map((r) => (r.length.kind === 'table' ? flatTable(r.length.ready) : null)),
    isMax: Uint8Array.from(rows, (r) => Number(r.isMax)),
    lag: Int32Array.from(rows, (r) => r.lag),
    hold: Int32Array.from(rows, (r) => r.hold),
  };
}

function groupArcs(count: number, ends: Int32Array): readonly Int32Array[] {
  const groups: number[][] = Array.from({ length: count }, () => []);
  ends.forEach((activity, arc) => groups[activity]!.push(arc));
  return groups.map((group) => Int32Array.from(group));
}

/** Tables are long and shared by many lags: each is laid flat once. They never change. */
const flatTables = new WeakMap<readonly number[], Int32Array>();

function flatTable(ready: Minutes): Int32Array {
  if (ready instanceof Int32Array) return ready;
  const flat = flatTables.get(ready) ?? Int32Array.from(ready);
  flatTables.set(ready, flat);
  return flat;
}

function compileHolds(problem: Problem, activities: Index, resources: Index): Holds {
  const sources = (problem.holds ?? []).map((hold, source) => ({ hold, source })).filter(({ hold }) => hold.from !== hold.to);
  const rows = sources.map(({ hold }) => hold);
  const byActivity: number[][] = problem.activities.map(() => []);
  rows.forEach((hold, index) => {
    byActivity[find(activities, hold.from)]!.push(index);
    byActivity[find(activities, hold.to)]!.push(index);
  });
  return {
    count: rows.length,
    resource: Int32Array.from(rows, (h) => find(resources, h.resource)),
    amount: Int32Array.from(rows, (h) => h.amount),
    from: Int32Array.from(rows, (h) => find(activities, h.from)),
    to: Int32Array.from(rows, (h) => find(activities, h.to)),
    source: Int32Array.from(sources, ({ source }) => source),
    byActivity: byActivity.map((list) => Int32Array.from(list)),
  };
}

/** Shortest of the maximum lags from an activity's start to its own end. */
function spanLimits(problem: Problem, activities: Index): Int32Array {
  const limits = new Int32Array(problem.activities.length).fill(FAR);
  for (const lag of problem.lags) {
    if (lag.from.activity !== lag.to.activity || lag.max === undefined) continue;
    const i = find(activities, lag.from.activity);
    limits[i] = Math.min(limits[i]!, lag.max);
  }
  return limits;
}

/** Lowers a validated problem to typed arrays. @throws Error when an id is unknown. */
export function compile(problem: Problem): Model {
  const { activities: rows } = problem;
  const activities = indexById(rows);
  const calendars = indexById(problem.calendars);
  const resources = indexById(problem.resources);
  const calendarOf = (id: string | undefined) => (id === undefined ? -1 : find(calendars, id));
  const arcs = compileArcs(problem, activities, calendars);
  const pieces = compilePieces(problem);
  return {
    problem,
    horizon: problem.horizon,
    count: rows.length,
    duration: Int32Array.from(rows, (a) => a.duration),
    calendar: pieces.calendar,
    isSplit: Uint8Array.from(rows, (a) => Number(a.mode === 'split')),
    shortest: pieces.shortest,
    release: Int32Array.from(rows, (a) => Math.max(0, a.release ?? 0)),
    latestEnd: Int32Array.from(rows, (a) => a.latestEnd ?? FAR),
    dueAt: Int32Array.from(rows, (a) => a.due?.at ?? FAR),
    dueWeight: Float64Array.from(rows, (a) => a.due?.weight ?? 0),
    pin: Int32Array.from(rows, (a) => a.pin?.start ?? -1),
    previous: Int32Array.from(rows, (a) => a.previousStart ?? -1),
    previousCrew: compilePreviousCrew(rows, resources),
    maxSpan: spanLimits(problem, activities),
    calendars: pieces.calendars,
    resourceCount: problem.resources.length,
    capacity: Int32Array.from(problem.resources, (r) => r.capacity),
    resourceCalendar: Int32Array.from(problem.resources, (r) => calendarOf(r.calendar)),
    demands: compileDemands(problem, resources),
    crew: compileCrew(problem, resources),
    states: compileStates(problem),
    arcs,
    arcsIn: groupArcs(rows.length, arcs.to),
    arcsOut: groupArcs(rows.length, arcs.from),
    holds: compileHolds(problem, activities, resources),
    objective: compileObjective(problem, activities, resources),
    ...compileBudgets(problem, resources),
  };
}
