/**
 * The engine's friendly model: what a caller writes. Plain, serialisable data.
 * Times are whole minutes since the caller's origin, intervals are half-open.
 * The engine knows activities, lags, calendars and resources; it knows no trade.
 */

/** Whole minutes since the problem's origin. */
export type Minute = number;

/** A long row of minutes; flat where threads share its memory. */
export type Minutes = readonly Minute[] | Int32Array;

/** [start, end) in minutes, start < end. */
export interface Interval {
  readonly start: Minute;
  readonly end: Minute;
}

/**
 * Times that may be used. Intervals are sorted and disjoint. Two that touch stay two:
 * work in one go never crosses from one into the next.
 */
export interface Calendar {
  readonly id: string;
  readonly intervals: readonly Interval[];
}

/** A renewable resource. Without a calendar it is there at every minute. */
export interface Resource {
  readonly id: string;
  /** Units available at each minute of its calendar, a whole number >= 0. */
  readonly capacity: number;
  readonly calendar?: string;
}

export interface Demand {
  readonly resource: string;
  /** Units held while the activity is worked. */
  readonly amount: number;
  /**
   * True: held from start to end, pauses between sessions included (a part on the bench).
   * False or absent: held only during worked minutes (a person).
   */
  readonly throughPauses?: boolean;
}

/** `count` different resources out of `pool`, one unit each, the same ones for the whole activity. */
export interface CrewNeed {
  readonly pool: readonly string[];
  readonly count: number;
}

/**
 * What the activity does to a shared medium such as the air of a room. Activities that put a medium in
 * different states never overlap, their tails included; the same state may overlap itself.
 */
export interface StateNeed {
  readonly medium: string;
  readonly state: string;
  /** Elapsed minutes the state lasts after the activity's end. */
  readonly tail: number;
  /** The state also lasts to `ready[k]` after an end in ((k-1)*step, k*step], as with a table of {@link LagLength}. */
  readonly until?: { readonly step: number; readonly ready: Minutes };
}

/** What each worked minute does to everybody on the work (vibration, noise): counted by the budgets of that dose. */
export interface Dose {
  readonly kind: string;
  /** A whole number >= 0, in the unit of the budgets' limits. */
  readonly perMinute: number;
}

export interface Activity {
  readonly id: string;
  /** Worked minutes in `calendar`; elapsed minutes when there is none. A whole number >= 0. */
  readonly duration: number;
  readonly calendar?: string;
  /** `one-go`: inside one interval of the calendar. `split`: pauses at interval ends and goes on in the next. */
  readonly mode: 'one-go' | 'split';
  /**
   * Split work only: worked minutes that no piece may be shorter than (the whole duration, when that is shorter).
   * Intervals of the calendar that are shorter than this are passed over. At least 1.
   */
  readonly shortestPiece?: number;
  readonly demands: readonly Demand[];
  readonly crew?: readonly CrewNeed[];
  readonly doses?: readonly Dose[];
  readonly states?: readonly StateNeed[];
  /** Not before. */
  readonly release?: Minute;
  /** Hard latest end. */
  readonly latestEnd?: Minute;
  /** Wished end; lateness counts `weight` a minute in the objective. */
  readonly due?: { readonly at: Minute; readonly weight: number };
  /** Fixed by a person. `crew` names the resources chosen, in the order of the crew needs. */
  readonly pin?: { readonly start: Minute; readonly crew?: readonly string[] };
  /** Where the accepted plan has it: moving it counts as a change. */
  readonly previousStart?: Minute;
  /**
   * Who does it in the accepted plan, with `previousStart`: taken again where they are free; other people, in whatever
   * order, count as a change. Somebody who is no resource any more cannot be taken.
   */
  readonly previousCrew?: readonly string[];
}

/** One end of an activity. */
export interface EventRef {
  readonly activity: string;
  readonly at: 'start' | 'end';
}

export type LagLength =
  /** Minutes on the clock; may be negative (allowed overlap). */
  | { readonly kind: 'elapsed'; readonly minutes: number }
  /** Minutes counted only inside the calendar's intervals; >= 0. */
  | { readonly kind: 'working'; readonly minutes: number; readonly calendar: string }
  /**
   * Depends on the moment it starts (cure in a changing climate, a trade's working days).
   * `ready[k]` is the earliest minute of the second event when the first falls in ((k-1)*step, k*step].
   * First in, first out: `ready` never decreases, and ready[k] >= k*step.
   */
  | { readonly kind: 'table'; readonly step: number; readonly ready: Minutes };

/**
 * `to` happens at least `min` and at most `max` after `from`. What is left out of a schedule counts as happening at the
 * horizon or later: what needs it first is left out too, and a window that was opened must reach the horizon.
 */
export interface Lag {
  readonly id: string;
  readonly from: EventRef;
  readonly to: EventRef;
  readonly min?: LagLength;
  /** Elapsed minutes. */
  readonly max?: number;
}

/** A resource unit kept from the start of one activity to the end of another (a part away from drop-off to collection). The two do not ask for it themselves. With the last one left out it lasts to the horizon. */
export interface Hold {
  readonly id: string;
  readonly resource: string;
  readonly amount: number;
  readonly from: string;
  readonly to: string;
}

/**
 * At most `limit` busy unit-minutes of a resource inside the interval (a session's fill limit). With `dose`: at most so much
 * of that dose, taken by the resource as one of the crew (what a person may get in a day).
 */
export interface Budget {
  readonly id: string;
  readonly resource: string;
  readonly dose?: string;
  readonly within: Interval;
  readonly limit: number;
}

/** At least `least` of the activities have ended by `at`; one that is missed counts one in the objective (a week with too few in hand). */
export interface Quota {
  readonly id: string;
  readonly at: Minute;
  readonly least: number;
  readonly among: readonly string[];
}

/** What it costs to have people in: a span is paid for once when one of the resources works inside it. Spans are sorted and disjoint. */
export interface Upkeep {
  readonly resources: readonly string[];
  /** `cost` in any one unit, at least 0. */
  readonly spans: readonly { readonly within: Interval; readonly cost: number }[];
}

/** Terms of the objective whose order the caller may choose. The count of what is left out comes before them, the sum of ends after. */
export type ObjectiveTerm = 'tardiness' | 'shortages' | 'moved' | 'makespan' | 'cost';

export interface Problem {
  /** Nothing happens at or after this minute. */
  readonly horizon: Minute;
  readonly calendars: readonly Calendar[];
  readonly resources: readonly Resource[];
  readonly activities: readonly Activity[];
  readonly lags: readonly Lag[];
  readonly holds?: readonly Hold[];
  readonly budgets?: readonly Budget[];
  readonly quotas?: readonly Quota[];
  readonly upkeep?: Upkeep;
  /** Each term once, the first outweighs all after it. Left out: the order of {@link ObjectiveTerm}. */
  readonly objective?: readonly ObjectiveTerm[];
}

/** A dated activity. */
export interface Placement {
  readonly activity: string;
  readonly start: Minute;
  readonly end: Minute;
  /** Worked pieces in order; one piece for one-go work and for zero duration none. */
  readonly pieces: readonly Interval[];
  /** Chosen crew resources, in the order of the crew needs. */
  readonly crew: readonly string[];
}

/** Something the caller stated, as named in an explanation or a contradiction. */
export type Fact =
  | { readonly kind: 'lag-min' | 'lag-max'; readonly lag: string }
  | { readonly kind: 'duration' | 'release' | 'latest-end' | 'pin' | 'calendar' | 'due' | 'previous'; readonly activity: string }
  | { readonly kind: 'resource'; readonly resource: string; readonly activity: string; readonly blockers: readonly string[] }
  | { readonly kind: 'crew'; readonly activity: string; readonly pool: readonly string[]; readonly blockers: readonly string[] }
  | { readonly kind: 'state'; readonly medium: string; readonly activity: string; readonly blockers: readonly string[] }
  | { readonly kind: 'budget'; readonly budget: string; readonly activity: string }
  | { readonly kind: 'hold'; readonly hold: string; readonly activity: string }
  | { readonly kind: 'horizon' };

/** An activity that got no place before the horizon, with what stood in the way. */
export interface Unplaced {
  readonly activity: string;
  /** Most telling first. `waits-for` names activities that are themselves unplaced. */
  readonly because: readonly Fact[];
  readonly waitsFor: readonly string[];
}

/** Objective terms: an earlier one always outweighs a later one, in the order of the problem's `objective`. */
export interface Score {
  readonly unplaced: number;
  /** Sum of weight x minutes late; what is left out counts as ending at the horizon. */
  readonly tardiness: number;
  /** Quotas that are missed. */
  readonly shortages: number;
  /** Activities moved from their previous start or given other people than before, or left out although they had a start. One each. */
  readonly moved: number;
  /** Latest end of all placed activities. */
  readonly makespan: Minute;
  /** Cost of the upkeep spans in which somebody works. */
  readonly cost: number;
  /** Sum of the ends of all placed activities: breaks ties towards early work. */
  readonly sumOfEnds: number;
}

export interface Schedule {
  readonly placements: readonly Placement[];
  readonly unplaced: readonly Unplaced[];
  readonly score: Score;
}

/** Facts that cannot all hold: taken together they are a contradiction. */
export interface Contradiction {
  readonly facts: readonly Fact[];
  /** Activities on the contradictory chain, in order. */
  readonly activities: readonly string[];
}

export type Solution =
  | {
      readonly status: 'optimal' | 'feasible';
      readonly schedule: Schedule;
      /** No schedule with everything in it ends before this minute. */
      readonly lowerBound: Minute;
      readonly schedulesTried: number;
      readonly seed: number;
    }
  | { readonly status: 'infeasible'; readonly contradiction: Contradiction; readonly seed: number }
  | { readonly status: 'unknown'; readonly lowerBound: Minute; readonly schedulesTried: number; readonly seed: number };

/** Told from time to time while solving. */
export interface Progress {
  readonly schedulesTried: number;
  readonly best: Score | null;
  readonly lowerBound: Minute;
  /** 0 to 1 of the stopping rule's budget. */
  readonly share: number;
}
