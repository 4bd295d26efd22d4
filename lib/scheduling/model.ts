import type { CalendarIndex } from './calendar-index';
import type { Objective } from './objective';
import type { Problem } from './problem';

/** Rows of `Row` data are `from[i]` up to (not including) `from[i + 1]`. */
export type Offsets = Int32Array;

export const ELAPSED = 0;
export const WORKING = 1;
export const TABLE = 2;

export interface Demands {
  readonly from: Offsets;
  readonly resource: Int32Array;
  readonly amount: Int32Array;
  readonly isThrough: Uint8Array;
}

/** One row a person needed; `pool` rows are the persons who may fill it. */
export interface CrewSlots {
  readonly from: Offsets;
  readonly poolFrom: Offsets;
  readonly pool: Int32Array;
}

/** People of the accepted plan, in its order; -1: no resource any more. */
export interface PreviousCrew {
  readonly from: Offsets;
  readonly resource: Int32Array;
  /** 1 where the caller named them, even if nobody. */
  readonly isGiven: Uint8Array;
}

export interface States {
  readonly from: Offsets;
  readonly medium: Int32Array;
  readonly state: Int32Array;
  readonly tail: Int32Array;
  /** Table of the moments a state lasts to, by row; null: the tail alone. */
  readonly until: readonly ({ readonly step: number; readonly ready: Int32Array } | null)[];
  readonly mediumCount: number;
  readonly stateCount: number;
}

/**
 * Every lag as lower bounds: the event of `to` comes no earlier than f(event of `from`).
 * A maximum lag is the arc back, with a length of minus its minutes.
 */
export interface Arcs {
  readonly count: number;
  readonly from: Int32Array;
  readonly isFromEnd: Uint8Array;
  readonly to: Int32Array;
  readonly isToEnd: Uint8Array;
  /** {@link ELAPSED}, {@link WORKING} or {@link TABLE}. */
  readonly kind: Uint8Array;
  readonly minutes: Int32Array;
  /** Calendar of a working lag. */
  readonly calendar: Int32Array;
  readonly tables: readonly (Int32Array | null)[];
  readonly isMax: Uint8Array;
  /** Index in `problem.lags`; -1 for the order inside a hold. */
  readonly lag: Int32Array;
  /** Index in `problem.holds`; -1 for a lag. */
  readonly hold: Int32Array;
}

export interface Holds {
  readonly count: number;
  readonly resource: Int32Array;
  readonly amount: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Index in `problem.holds`. */
  readonly source: Int32Array;
  /** Holds of each activity, as `from` or `to`. */
  readonly byActivity: readonly Int32Array[];
}

/** Budgets sorted by account and start. Account r counts the busy minutes of resource r; behind those stand the accounts of {@link Doses}. */
export interface Budgets {
  readonly from: Offsets;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Largest end of this and all earlier budgets of the account. */
  readonly reach: Int32Array;
  readonly limit: Int32Array;
  /** Index in `problem.budgets`. */
  readonly source: Int32Array;
}

/** Doses of the kinds that some budget counts. Rows of activity i: `from[i]` to `from[i + 1]`. */
export interface Doses {
  readonly from: Offsets;
  readonly kind: Int32Array;
  readonly perMinute: Int32Array;
  /** 0: nothing is counted. */
  readonly kindCount: number;
  /** Account in {@link Budgets} of resource r and kind k, at r * kindCount + k; -1: no budget. */
  readonly account: Int32Array;
}

/** The problem as integers in typed arrays. Indices follow the order of the problem's lists. */
export interface Model {
  readonly problem: Problem;
  readonly horizon: number;
  readonly count: number;
  readonly duration: Int32Array;
  /** -1: none. */
  readonly calendar: Int32Array;
  readonly isSplit: Uint8Array;
  /** Least length of a piece of split work with a calendar, at most its duration; 0: none. Its calendar has no shorter interval. */
  readonly shortest: Int32Array;
  readonly release: Int32Array;
  /** FAR: none. */
  readonly latestEnd: Int32Array;
  /** FAR: none. */
  readonly dueAt: Int32Array;
  readonly dueWeight: Float64Array;
  /** -1: none. */
  readonly pin: Int32Array;
  /** -1: none. */
  readonly previous: Int32Array;
  readonly previousCrew: PreviousCrew;
  /** Largest elapsed length from start to end; FAR: none. */
  readonly maxSpan: Int32Array;
  readonly calendars: readonly CalendarIndex[];
  readonly resourceCount: number;
  readonly capacity: Int32Array;
  /** -1: there at every minute. */
  readonly resourceCalendar: Int32Array;
  readonly demands: Demands;
  readonly crew: CrewSlots;
  readonly states: States;
  readonly arcs: Arcs;
  /** Arcs into each activity. */
  readonly arcsIn: readonly Int32Array[];
  /** Arcs out of each activity. */
  readonly arcsOut: readonly Int32Array[];
  readonly holds: Holds;
  readonly budgets: Budgets;
  readonly objective: Objective;
  readonly doses: Doses;
}
