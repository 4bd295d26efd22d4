import { FAR } from '../calendar-index';
import { ELAPSED, TABLE, type Model } from '../model';
import type { CoreInstance, Piece, Relation, StartRange } from '../proof';

/** Above this many activities the exact core costs more than it tells. */
const LARGEST = 300;

/** A problem that the core says exactly: the same plans, and the finish as what is to be made small. */
export interface Core {
  readonly instance: CoreInstance;
  /** No date, calendar or table in it: if nothing is feasible now, nothing is at any time. */
  readonly isTimeless: boolean;
  /** The problem's horizon leaves room for every plan without needless waits. */
  readonly isHorizonWide: boolean;
}

/**
 * Lowers a model to the core, or null where the core cannot say it: work that pauses, people to choose, states, holds,
 * budgets, lags in working time; whatever but the finish counts in the objective (wished ends, an accepted plan, quotas, upkeep).
 */
export function lowerToCore(model: Model): Core | null {
  if (model.count > LARGEST || !isSayable(model)) return null;
  const { arcs } = model;
  const relations: Relation[] = [];
  for (let arc = 0; arc < arcs.count; arc += 1) {
    if (arcs.kind[arc] !== ELAPSED && arcs.kind[arc] !== TABLE) return null;
    relations.push(lowerArc(model, arc));
  }
  const allowedStarts = Array.from(model.duration, (_, i) => listStarts(model, i));
  const isTimeless = allowedStarts.every((ranges) => ranges === null) && relations.every((relation) => 'lag' in relation);
  const wide = measureWidest(model, relations);
  const { demands } = model;
  const instance: CoreInstance = {
    durations: Array.from(model.duration),
    capacities: Array.from(model.capacity),
    demands: Array.from(model.duration, (_, i) => {
      const row = Array.from(model.capacity, () => 0);
      for (let k = demands.from[i]!; k < demands.from[i + 1]!; k += 1) row[demands.resource[k]!] = demands.amount[k]!;
      return row;
    }),
    relations,
    horizon: isTimeless ? Math.min(model.horizon, wide) : model.horizon,
    ...(isTimeless ? {} : { allowedStarts }),
  };
  return { instance, isTimeless, isHorizonWide: model.horizon >= wide };
}

function isSayable(model: Model): boolean {
  const { budgets, crew, holds, objective, states } = model;
  if (objective.quotas.count > 0 || objective.upkeep.spans.count > 0) return false;
  if (budgets.start.length > 0 || crew.from[model.count] !== 0 || holds.count > 0 || states.from[model.count] !== 0) return false;
  for (let i = 0; i < model.count; i += 1) {
    if (model.isSplit[i] === 1 && model.calendar[i]! >= 0 && model.duration[i]! > 0) return false;
    if (model.previous[i]! >= 0 || (model.dueAt[i]! < FAR && model.dueWeight[i]! > 0)) return false;
  }
  return true;
}

/** No plan needs more time than this, where time has no marks on it: every activity and lag one after the other. */
function measureWidest(model: Model, relations: readonly Relation[]): number {
  const longest = Float64Array.from(model.duration);
  for (const relation of relations) if ('lag' in relation) longest[relation.from] = Math.max(longest[relation.from]!, relation.lag);
  return longest.reduce((sum, length) => sum + length, 0);
}

/** An arc between starts. */
function lowerArc(model: Model, arc: number): Relation {
  const { arcs, duration, horizon } = model;
  const from = arcs.from[arc]!;
  const to = arcs.to[arc]!;
  const before = arcs.isFromEnd[arc] === 1 ? duration[from]! : 0;
  const after = arcs.isToEnd[arc] === 1 ? duration[to]! : 0;
  const table = arcs.tables[arc];
  if (!table) return { from, to, lag: before + arcs.minutes[arc]! - after };
  const step = arcs.minutes[arc]!;
  const pieces: Piece[] = [];
  for (let k = Math.ceil(before / step); (k - 1) * step - before < horizon; k += 1) {
    const ready = k < table.length ? Math.min(table[k]!, horizon + 1 + after) : horizon + 1 + after;
    const piece: Piece = { from: (k - 1) * step - before + 1, value: ready - after, slope: 0 };
    if (pieces.at(-1)?.value !== piece.value) pieces.push(piece);
    if (k >= table.length) break;
  }
  return { from, to, pieces };
}

/** Where an activity may start, by its dates, its own calendar and those of what it uses; null: anywhere before the horizon. */
function listStarts(model: Model, i: number): readonly StartRange[] | null {
  const { demands } = model;
  const length = model.duration[i]!;
  const last = Math.min(model.latestEnd[i]!, model.horizon) - length;
  let ranges: StartRange[] = [{ first: Math.max(0, model.release[i]!), last }];
  if (model.pin[i]! >= 0) ranges = intersect(ranges, [{ first: model.pin[i]!, last: model.pin[i]! }]);
  if (model.calendar[i]! >= 0) ranges = intersect(ranges, roomIn(model, model.calendar[i]!, length, false));
  for (let k = demands.from[i]!; k < demands.from[i + 1]!; k += 1) {
    const calendar = model.resourceCalendar[demands.resource[k]!]!;
    if (calendar >= 0 && length > 0) ranges = intersect(ranges, roomIn(model, calendar, length, true));
  }
  ranges = ranges.filter((range) => range.first <= range.last);
  const [only] = ranges;
  return ranges.length === 1 && only!.first === 0 && only!.last === model.horizon - length ? null : ranges;
}

/** Starts that keep so long a stretch inside a calendar; `isJoined`: it may go on from one interval into one that touches it. */
function roomIn(model: Model, index: number, length: number, isJoined: boolean): StartRange[] {
  const calendar = model.calendars[index]!;
  const ranges: StartRange[] = [];
  for (let k = 0; k < calendar.count; k += 1) {
    const first = calendar.start[k]!;
    if (isJoined) while (k + 1 < calendar.count && calendar.start[k + 1] === calendar.end[k]) k += 1;
    const last = calendar.end[k]! - length;
    const before = ranges.at(-1);
    if (last < first) continue;
    // Milestones on the border of two intervals that touch: one range.
    if (before && before.last >= first) ranges[ranges.length - 1] = { first: before.first, last };
    else ranges.push({ first, last });
  }
  return ranges;
}

function intersect(a: readonly StartRange[], b: readonly StartRange[]): StartRange[] {
  const both: StartRange[] = [];
  for (let p = 0, q = 0; p < a.length && q < b.length;) {
    const first = Math.max(a[p]!.first, b[q]!.first);
    const last = Math.min(a[p]!.last, b[q]!.last);
    if (first <= last) both.push({ first, last });
    if (a[p]!.last < b[q]!.last) p += 1;
    else q += 1;
  }
  return both;
}
