/** What a simulation is given and what it gives back: engine names and minutes, plain data that crosses to a thread. */
import type { Policy, Problem } from '@/lib/scheduling';

/** How long work may take: its own spread, times a factor that it shares with work of its kind, plus retakes. */
export interface LengthChance {
  readonly activity: string;
  /** Quantile table of worked minutes. */
  readonly quantiles: Int32Array;
  /** Factor group; null: none. */
  readonly group: string | null;
  readonly takes: number;
  /** 0 to 1 that one take has to be made again. */
  readonly retakeChance: number;
  readonly retakeMinutes: number;
  /** 0 to 1 that the one-way shot is lost; then so many minutes more (pickup, re-enactment). */
  readonly lostChance: number;
  readonly lostMinutes: number;
}

/** A factor shared by all work of a kind within one run: estimates of one sort are wrong together. */
export interface GroupChance {
  readonly id: string;
  /** Quantile table in thousandths. */
  readonly perMille: Int32Array;
}

/** How long an outside trade may take: one outcome for each number of working days. */
export interface DelayChance {
  readonly id: string;
  /** Lag of the time away, when it is still to be dropped off. */
  readonly lag: string | null;
  /** Collection, when it is away already. */
  readonly activity: string | null;
  /** Shares add up to 1. */
  readonly outcomes: readonly { readonly days: number; readonly share: number; readonly ready: Int32Array | null; readonly release: number }[];
}

/** A coat that may fail: then `redo` is worked, and what follows waits for it. */
export interface SpoilChance {
  readonly activity: string;
  readonly redo: string;
  readonly chance: number;
}

/** Weeks in which the workshop is colder than planned: coats laid in them wait longer. */
export interface ColdChance {
  /** 0 to 1 that a cold spell begins in a week, and that it lasts another week. */
  readonly begins: number;
  readonly lasts: number;
  readonly weeks: number;
  /** With the length of their waits in a cold week, in thousandths of the planned. */
  readonly coats: readonly { readonly activity: string; readonly week: number; readonly lags: readonly string[]; readonly perMille: number }[];
}

/** A person may miss whole weeks. */
export interface AbsenceChance {
  readonly resource: string;
  readonly chance: number;
  /** Their hours by week. */
  readonly weeks: readonly (readonly { readonly start: number; readonly end: number }[])[];
}

export interface ForecastInput {
  readonly problem: Problem;
  /** The accepted plan: its order and its people. */
  readonly policy: Policy;
  readonly lengths: readonly LengthChance[];
  readonly groups: readonly GroupChance[];
  readonly delays: readonly DelayChance[];
  readonly spoils: readonly SpoilChance[];
  readonly cold: ColdChance | null;
  readonly absences: readonly AbsenceChance[];
  /** Activities whose end is kept from every run. */
  readonly watched: readonly string[];
  readonly seed: number;
}

/** What some runs gave. Ends at the horizon mean: not within it. */
export interface RunBlock {
  readonly first: number;
  readonly count: number;
  /** Last end of each run. */
  readonly finish: Int32Array;
  /** Row of each run: ends of the watched. */
  readonly watched: Int32Array;
  /** Runs of this block in which each activity was on the chain that set the finish. */
  readonly critical: Int32Array;
  /** Runs looked at for that. */
  readonly criticalRuns: number;
  readonly lostShots: number;
  readonly spoiltCoats: number;
  readonly missedWindows: number;
  readonly retakes: number;
}
