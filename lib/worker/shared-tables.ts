/** A forecast for threads: its long tables lie in memory that all share, so that a thread starts without a copy of its own. */
import type { ForecastInput } from '@/lib/simulation';
import type { Activity, Lag, Minutes } from '@/lib/scheduling';

/** What the runs draw from, whose tables are shared already. */
export type Luck = Pick<ForecastInput, 'lengths' | 'delays'>;

/** A forecast whose tables lie apart, each once however many waits go by it. */
export interface SharedInput {
  /** Its tables of lags and states are empty, and it has no luck. */
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
    const shared = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT * values.length));
    shared.set(values);
    this.tables.push(shared);
    this.known.set(values, at);
    return at;
  }
}

const NONE: readonly number[] = [];

const withoutTable = (lag: Lag): Lag => (lag.min?.kind === 'table' ? { ...lag, min: { ...lag.min, ready: NONE } } : lag);

const hasTable = ({ states = [] }: Activity): boolean => states.some(({ until }) => until !== undefined);

/** The activity with other tables for its states, by their place. */
function withTables(activity: Activity, tableOf: (state: number) => Minutes): Activity {
  if (activity.states === undefined) return activity;
  return { ...activity, states: activity.states.map((need, k) => (need.until === undefined ? need : { ...need, until: { ...need.until, ready: tableOf(k) } })) };
}

/** A forecast laid out for threads; other luck on the same problem finds its tables there already. */
export class SharedForecast {
  readonly shared: SharedInput;
  private readonly shelf = new TableShelf();
  /** Tables of delays, apart from those of the problem: they cross with the luck. */
  private readonly delayShelf = new TableShelf();

  constructor(input: ForecastInput) {
    const { shelf } = this;
    const { activities, lags } = input.problem;
    const ofLag = Int32Array.from(lags, ({ min }) => (min?.kind === 'table' ? shelf.put(min.ready) : -1));
    const ofStates = activities.map((activity) => (hasTable(activity) ? (activity.states ?? []).map(({ until }) => (until === undefined ? -1 : shelf.put(until.ready))) : null));
    const problem = { ...input.problem, lags: lags.map(withoutTable), activities: activities.map((activity) => (hasTable(activity) ? withTables(activity, () => NONE) : activity)) };
    this.shared = { input: { ...input, problem, lengths: [], delays: [] }, tables: shelf.tables, ofLag, ofStates };
  }

  luckOf({ delays, lengths }: Luck): Luck {
    const { delayShelf: shelf } = this;
    return {
      lengths,
      delays: delays.map((delay) => ({ ...delay, outcomes: delay.outcomes.map((outcome) => (outcome.ready === null ? outcome : { ...outcome, ready: shelf.tables[shelf.put(outcome.ready)]! })) })),
    };
  }
}

/** The forecast as it was, without its luck. */
export function gatherTables({ input, ofLag, ofStates, tables }: SharedInput): ForecastInput {
  const lags = input.problem.lags.map((lag, k) => (lag.min?.kind === 'table' ? { ...lag, min: { ...lag.min, ready: tables[ofLag[k]!]! } } : lag));
  const activities = input.problem.activities.map((activity, k) => {
    const own = ofStates[k];
    return own ? withTables(activity, (state) => tables[own[state]!]!) : activity;
  });
  return { ...input, problem: { ...input.problem, lags, activities } };
}
