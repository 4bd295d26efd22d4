import { FAR, type CalendarIndex } from './calendar-index';
import { findLeastLength, findLeastWaits } from './least-waits';
import type { Model } from './model';
import type { Bounds } from './propagate';
import { Supply } from './supply';

/** Different earliest starts looked at for each group of work. */
const HEADS = 12;
/** Sets of people looked at. */
const SETS = 40;
/** Single resources looked at: those with the most users. */
const SINGLES = 6;

/** Least minutes from the end of each activity to the end of all; calendars are left aside, which makes it less. */
function findTails(model: Model): Float64Array {
  const { arcs } = model;
  const tails = new Float64Array(model.count);
  const waits = findLeastWaits(model);
  // Minimum lags alone may go in a circle that adds nothing: as many rounds as activities are enough.
  for (let round = 0, isChanged = true; isChanged && round <= model.count; round += 1) {
    isChanged = false;
    for (let arc = arcs.count - 1; arc >= 0; arc -= 1) {
      const from = arcs.from[arc]!;
      const tail = findLeastLength(model, waits, arc) + tails[arcs.to[arc]!]!;
      if (tail <= tails[from]!) continue;
      tails[from] = tail;
      isChanged = true;
    }
  }
  return tails;
}

/** True when every interval of `a` lies inside one of `b`. */
function isWithin(a: CalendarIndex, b: CalendarIndex): boolean {
  for (let k = 0; k < a.count; k += 1) {
    const at = b.lastStartingBy(a.start[k]!);
    if (at < 0 || b.end[at]! < a.end[k]!) return false;
  }
  return true;
}

/** Sets of resources whose work is looked at together: pools, two pools at a time, all of them, and busy single resources. */
function listSets(model: Model): readonly ReadonlySet<number>[] {
  const { crew, demands } = model;
  const sets = new Map<string, ReadonlySet<number>>();
  const add = (members: Iterable<number>) => {
    const sorted = [...new Set(members)].toSorted((a, b) => a - b);
    if (sets.size < SETS && sorted.length > 0) sets.set(sorted.join(' '), new Set(sorted));
  };
  for (let slot = 0; slot < crew.poolFrom.length - 1; slot += 1) add(crew.pool.subarray(crew.poolFrom[slot]!, crew.poolFrom[slot + 1]!));
  const pools = [...sets.values()];
  for (const a of pools) for (const b of pools) if ([...a].some((member) => b.has(member))) add([...a, ...b]);
  const users = new Int32Array(model.resourceCount);
  for (const resource of demands.resource) users[resource]! += 1;
  const busy = [...users.keys()].filter((resource) => users[resource]! > 1).toSorted((a, b) => users[b]! - users[a]!);
  for (const resource of busy.slice(0, SINGLES)) add([resource]);
  return [...sets.values()];
}

/** Unit-minutes that each activity surely takes from the set. */
function workOn(model: Model, set: ReadonlySet<number>): Float64Array {
  const { crew, demands, duration } = model;
  return Float64Array.from({ length: model.count }, (_, i) => {
    let units = 0;
    for (let row = demands.from[i]!; row < demands.from[i + 1]!; row += 1) if (set.has(demands.resource[row]!)) units += demands.amount[row]!;
    for (let slot = crew.from[i]!; slot < crew.from[i + 1]!; slot += 1) {
      if (crew.pool.subarray(crew.poolFrom[slot]!, crew.poolFrom[slot + 1]!).every((person) => set.has(person))) units += 1;
    }
    return units * duration[i]!;
  });
}

interface Row {
  readonly head: number;
  readonly tail: number;
  readonly work: number;
}

/** The least end of all that the rows allow: what cannot start before a head must be supplied after it, and its tails come on top. */
function boundOf(rows: readonly Row[], supply: Supply, known: number): number {
  const heads = [...new Set(rows.map((row) => row.head))].toSorted((a, b) => a - b);
  const step = Math.max(1, Math.ceil(heads.length / HEADS));
  let bound = known;
  for (let h = 0; h < heads.length; h += step) {
    const head = heads[h]!;
    let work = supply.spent(head);
    for (let k = 0; k < rows.length; k += 1) {
      const row = rows[k]!;
      if (row.head < head) continue;
      work += row.work;
      // Rows with the same tail are counted together.
      if (rows[k + 1]?.tail === row.tail && rows[k + 1]!.head >= head) continue;
      if (supply.before(bound - row.tail) >= work) continue;
      bound = Math.max(bound, supply.timeFor(work) + row.tail);
    }
  }
  return bound;
}

/**
 * A minute before which no schedule with everything in it ends, from the busy minutes of people and resources against
 * what they can give: attendance, within the calendars of the work, less what budgets keep free.
 */
export function boundByCalendarEnergy(model: Model, bounds: Bounds, known: number): number {
  if (model.calendars.length === 0 && model.crew.pool.length === 0) return known;
  const tails = findTails(model);
  const used = [...new Set(model.calendar)].filter((calendar) => calendar >= 0);
  const scopes = [-1, ...used].map((calendar) => {
    const own = model.calendars[calendar];
    const within = new Set(own === undefined ? [-1, ...used] : used.filter((other) => other === calendar || isWithin(model.calendars[other]!, own)));
    return { calendar, within };
  });
  let bound = known;
  for (const set of listSets(model)) {
    const work = workOn(model, set);
    for (const { calendar, within } of scopes) {
      const rows: Row[] = [];
      for (let i = 0; i < model.count; i += 1) {
        if (work[i]! > 0 && within.has(model.calendar[i]!) && bounds.earliest[i]! < FAR) rows.push({ head: bounds.earliest[i]!, tail: tails[i]!, work: work[i]! });
      }
      if (rows.length < 2) continue;
      rows.sort((a, b) => b.tail - a.tail);
      bound = boundOf(rows, new Supply(model, set, calendar), bound);
      if (bound >= model.horizon) return model.horizon;
    }
  }
  return bound;
}
