/** Long tables of a forecast in memory that threads share: a thread starts without a copy of its own. */
import type { ForecastInput } from '@/lib/forecast';
import type { Activity, Lag } from '@/lib/scheduling';

/** A forecast whose tables lie apart, each once however many waits go by it. */
export interface SharedInput {
  /** Its tables of lags and states are empty. */
  readonly input: ForecastInput;
  readonly tables: readonly Int32Array[];
  /** Table of each lag and, for each activity, of each of its states; -1: none. */
  readonly ofLag: Int32Array;
  readonly ofStates: readonly (readonly number[] | null)[];
}

/** Tables by the array they come from. */
class TableShelf {
  readonly tables: Int32Array[] = [];
  private readonly known = new Map<object, number>();

  put(values: ArrayLike<number> & object): number {
    const at = this.known.get(values) ?? this.tables.length;
    if (at < this.tables.length) return at;
    const shared = new Int32Array(new SharedArrayBuffer(4 * values.length));
    shared.set(values);
    this.tables.push(shared);
    this.known.set(values, at);
    return at;
  }
}

const NONE: readonly number[] = [];

const withoutTable = (lag: Lag): Lag => (lag.min?.kind === 'table' ? { ...lag, min: { ...lag.min, ready: NONE } } : lag);

function withoutTables(activity: Activity): Activity {
  if (!activity.states?.some(({ until }) => until !== undefined)) return activity;
  return { ...activity, states: activity.states.map((need) => (need.until === undefined ? need : { ...need, until: { ...need.until, ready: NONE } })) };
}

/** Lays the tables apart, in shared memory. */
export function shareTables(input: ForecastInput): SharedInput {
  const shelf = new TableShelf();
  const { activities, lags } = input.problem;
  const ofLag = Int32Array.from(lags, ({ min }) => (min?.kind === 'table' ? shelf.put(min.ready) : -1));
  const ofStates = activities.map(({ states }) => (states?.some(({ until }) => until !== undefined) ? states.map(({ until }) => (until === undefined ? -1 : shelf.put(until.ready))) : null));
  const delays = input.delays.map((delay) => ({
    ...delay, outcomes: delay.outcomes.map((outcome) => (outcome.ready === null ? outcome : { ...outcome, ready: shelf.tables[shelf.put(outcome.ready)]! })),
  }));
  return { input: { ...input, delays, problem: { ...input.problem, lags: lags.map(withoutTable), activities: activities.map(withoutTables) } }, tables: shelf.tables, ofLag, ofStates };
}

/** The forecast as it was before {@link shareTables}. */
export function gatherTables({ input, ofLag, ofStates, tables }: SharedInput): ForecastInput {
  const known = new Map<number, readonly number[]>();
  const tableAt = (at: number): readonly number[] => {
    const found = known.get(at) ?? Array.from(tables[at]!);
    known.set(at, found);
    return found;
  };
  const lags = input.problem.lags.map((lag, k) => (lag.min?.kind === 'table' ? { ...lag, min: { ...lag.min, ready: tableAt(ofLag[k]!) } } : lag));
  const activities = input.problem.activities.map((activity, k) => {
    const own = ofStates[k];
    if (!own || activity.states === undefined) return activity;
    return { ...activity, states: activity.states.map((need, s) => (need.until === undefined ? need : { ...need, until: { ...need.until, ready: tableAt(own[s]!) } })) };
  });
  return { ...input, problem: { ...input.problem, lags, activities } };
}
