import { FAR } from './calendar-index';
import type { Model } from './model';
import { findLatestStarts, type Bounds } from './propagate';
import { endOf } from './timing';

/** The latest of the earliest ends: the critical path with calendars. FAR: something cannot end before the horizon. */
function boundByPath(model: Model, bounds: Bounds): number {
  let bound = 0;
  for (let i = 0; i < model.count; i += 1) bound = Math.max(bound, endOf(model, i, bounds.earliest[i]!));
  return Math.min(bound, FAR);
}

/** Units free of a resource from the start up to `t`, in unit-minutes. */
function supply(model: Model, resource: number, t: number): number {
  const calendar = model.calendars[model.resourceCalendar[resource]!];
  return model.capacity[resource]! * (calendar === undefined ? t : calendar.workedBefore(t));
}

/** Earliest minute by which the resource has supplied so many unit-minutes; only asked of one that somebody may have. */
function supplied(model: Model, resource: number, work: number): number {
  const calendar = model.calendars[model.resourceCalendar[resource]!];
  const capacity = model.capacity[resource]!;
  const minutes = Math.ceil(work / capacity);
  return calendar === undefined ? minutes : calendar.timeAtWork(minutes);
}

/** Shortest time from the start of each activity to the end of everything after it, calendars left aside. */
function findTails(model: Model): Int32Array {
  // Latest starts against a far end give the tails as differences.
  const end = 2 * model.horizon + 1;
  const latest = findLatestStarts({ ...model, pin: new Int32Array(model.count).fill(-1) }, new Int32Array(model.count).fill(end));
  return latest.map((start) => (start < 0 ? 0 : end - start));
}

/**
 * Work on each resource against its supply: activities that cannot start before r, and have at least q minutes to
 * go after their own end, need their work between r and q before the end.
 */
function boundByEnergy(model: Model, bounds: Bounds): number {
  const { demands } = model;
  const isPlain = model.calendars.length === 0;
  const tails = isPlain ? findTails(model) : null;
  const users: number[][] = Array.from({ length: model.resourceCount }, () => []);
  const amounts: number[][] = users.map(() => []);
  for (let i = 0; i < model.count; i += 1) {
    for (let row = demands.from[i]!; row < demands.from[i + 1]!; row += 1) {
      users[demands.resource[row]!]!.push(i);
      amounts[demands.resource[row]!]!.push(demands.amount[row]!);
    }
  }
  let bound = 0;
  users.forEach((list, resource) => {
    const heads = [...new Set(list.map((i) => bounds.earliest[i]!))].toSorted((a, b) => b - a);
    const rows = list.map((i, k) => ({
      head: bounds.earliest[i]!,
      tail: tails === null ? 0 : tails[i]! - model.duration[i]!,
      work: model.duration[i]! * amounts[resource]![k]!,
    })).toSorted((a, b) => b.tail - a.tail);
    for (const head of heads) {
      if (head >= FAR) continue;
      let work = supply(model, resource, head);
      for (const row of rows) {
        if (row.head < head) continue;
        work += row.work;
        bound = Math.max(bound, supplied(model, resource, work) + row.tail);
      }
    }
  });
  return bound;
}

/** A minute before which no schedule with everything in it ends, found at once. At most the horizon; see `energy` for a better one. */
export function findLowerBound(model: Model, bounds: Bounds): number {
  return Math.min(model.horizon, Math.max(boundByPath(model, bounds), boundByEnergy(model, bounds)));
}
