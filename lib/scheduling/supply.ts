import { FAR } from './calendar-index';
import type { Model } from './model';

/** A stretch in which a resource gives `units` a minute. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly units: number;
}

/** Minutes both of the resource's calendar and of the given one (-1: any), before the horizon. */
function openStretches(model: Model, resource: number, calendar: number): readonly Stretch[] {
  const own = model.calendars[model.resourceCalendar[resource]!];
  const other = model.calendars[calendar];
  const whole = { count: 1, start: [0], end: [model.horizon] };
  const a = own ?? whole;
  const b = other ?? whole;
  const units = model.capacity[resource]!;
  const found: Stretch[] = [];
  for (let i = 0, k = 0; i < a.count && k < b.count;) {
    const start = Math.max(a.start[i]!, b.start[k]!);
    const end = Math.min(a.end[i]!, b.end[k]!);
    if (start < end) found.push({ start, end, units });
    if (a.end[i]! < b.end[k]!) i += 1;
    else k += 1;
  }
  return found;
}

/** A part of a stretch inside one budget; -1: in none. */
interface Part extends Stretch {
  readonly budget: number;
}

/** The stretches cut where budgets begin and end. Of budgets that overlap one at a time counts. */
function cutAtBudgets(model: Model, resource: number, stretches: readonly Stretch[]): readonly Part[] {
  const { budgets } = model;
  const last = budgets.from[resource + 1]!;
  const found: Part[] = [];
  let row = budgets.from[resource]!;
  for (const { end, start, units } of stretches) {
    for (let at = start; at < end;) {
      while (row < last && budgets.end[row]! <= at) row += 1;
      const isInside = row < last && budgets.start[row]! <= at;
      const border = row === last ? end : isInside ? budgets.end[row]! : budgets.start[row]!;
      const to = Math.min(end, border);
      found.push({ start: at, end: to, units, budget: isInside ? row : -1 });
      at = to;
    }
  }
  return found;
}

/** What the budgets leave of the parts when each is used up as early (or as late) as can be. */
function useBudgets(model: Model, parts: readonly Part[], isLate: boolean): readonly Stretch[] {
  let open = -1;
  let left = 0;
  return (isLate ? parts.toReversed() : parts).map(({ budget, end, start, units }) => {
    if (budget < 0) return { start, end, units };
    if (budget !== open) left = model.budgets.limit[budget]!;
    open = budget;
    const minutes = Math.min(end - start, left / units);
    left -= minutes * units;
    return isLate ? { start: end - minutes, end, units } : { start, end: start + minutes, units };
  });
}

/** Unit-minutes given up to each moment, as a rising function in straight pieces. */
class Total {
  private readonly time: number[] = [0];
  private readonly given: number[] = [0];

  constructor(stretches: readonly Stretch[]) {
    const steps = stretches.flatMap(({ end, start, units }) => [{ at: start, units }, { at: end, units: -units }]).toSorted((a, b) => a.at - b.at);
    let units = 0;
    for (const step of steps) {
      const before = this.time.at(-1)!;
      if (step.at > before) {
        this.given.push(this.given.at(-1)! + units * (step.at - before));
        this.time.push(step.at);
      }
      units += step.units;
    }
  }

  before(t: number): number {
    const { given, time } = this;
    if (t <= 0) return 0;
    const k = this.find((row) => time[row]! > t);
    if (k === time.length) return given.at(-1)!;
    return given[k - 1]! + ((t - time[k - 1]!) / (time[k]! - time[k - 1]!)) * (given[k]! - given[k - 1]!);
  }

  timeFor(work: number): number {
    const { given, time } = this;
    if (work <= 1e-6) return 0;
    const k = this.find((row) => given[row]! >= work - 1e-6);
    if (k === time.length) return FAR;
    const share = (work - given[k - 1]!) / (given[k]! - given[k - 1]!);
    return Math.ceil(time[k - 1]! + share * (time[k]! - time[k - 1]!) - 1e-6);
  }

  /** First row for which the test holds; it holds for all rows after it. */
  private find(isAt: (row: number) => boolean): number {
    let low = 0;
    let high = this.time.length;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (isAt(mid)) high = mid;
      else low = mid + 1;
    }
    return low;
  }
}

/** The most unit-minutes some resources together can give, inside a calendar (-1: any time) and within their budgets. */
export class Supply {
  private readonly early: Total;
  private readonly late: Total;

  constructor(model: Model, resources: Iterable<number>, calendar: number) {
    const parts = [...resources].filter((resource) => model.capacity[resource]! > 0)
      .map((resource) => cutAtBudgets(model, resource, openStretches(model, resource, calendar)));
    this.early = new Total(parts.flatMap((own) => useBudgets(model, own, false)));
    this.late = new Total(parts.flatMap((own) => useBudgets(model, own, true)));
  }

  /** Unit-minutes before `t` at the most. */
  before(t: number): number {
    return this.early.before(t);
  }

  /** Unit-minutes before `t` that nothing later can have instead: between `h` and `t` there are at most before(t) - spent(h). */
  spent(t: number): number {
    return this.late.before(t);
  }

  /** Earliest whole minute by which so many unit-minutes can be given; FAR: never. */
  timeFor(work: number): number {
    return this.early.timeFor(work);
  }
}
