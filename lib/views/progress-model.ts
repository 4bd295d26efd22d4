/** What the progress pages show: plain, serialisable data. */
import type { Issue } from '@/lib/result';
import type { RecordLink } from './week-model';

export type Tone = 'good' | 'warn' | 'stop' | 'plain';

/** One of the four questions with its answer. */
export interface Answer {
  readonly question: string;
  readonly answer: string;
  readonly detail: string;
  readonly tone: Tone;
  /** The record the answer is about. */
  readonly about: RecordLink | null;
}

/** A sign on a timeline. `at` is its place, 0 to 1 of the axis. */
export interface Mark {
  readonly key: string;
  readonly kind: 'plan' | 'ghost' | 'likely' | 'sure' | 'release' | 'recorded';
  readonly at: number;
  readonly word: string;
  readonly when: string;
  readonly tone: Tone;
}

export interface Timelines {
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
  readonly now: number;
  readonly build: readonly Mark[];
  readonly series: readonly Mark[];
  /** 10 % to 80 % of the finish, as places on the axis; null: no forecast. */
  readonly span: { readonly from: number; readonly to: number } | null;
}

export interface PartCounts {
  readonly done: readonly string[];
  readonly away: readonly string[];
  readonly drying: readonly string[];
  readonly open: number;
  readonly total: number;
}

/** A date in words, with the words for one beyond all sessions. */
export interface Odds {
  readonly p10: string;
  readonly p50: string;
  readonly p80: string;
}

export interface EpisodeOdds extends Odds {
  readonly episode: RecordLink;
  readonly due: string;
  readonly release: string;
  /** `64 %`, with `± 1` beside it. */
  readonly chance: string;
  readonly chanceError: string;
  readonly tone: Tone;
  /** Places on the page's axis, 0 to 1; null: beyond the sessions assumed. */
  readonly places: { readonly p10: number | null; readonly p50: number | null; readonly p80: number | null; readonly due: number };
}

export interface ThreatRow {
  readonly subject: RecordLink;
  readonly share: string;
  readonly width: number;
  readonly worth: string;
}

/** An outside trade with how often a job of it held the end up. */
export interface TradeRow {
  readonly trade: RecordLink;
  /** `2 open jobs` */
  readonly jobs: string;
  readonly share: string;
  readonly width: number;
  readonly worth: string;
}

/** The date for a confidence that somebody typed. */
export interface WantedDate {
  readonly typed: string;
  /** Sentence; null: there is no such confidence, and `issue` says why. */
  readonly answer: string | null;
  readonly issue: Issue | null;
}

export interface BankRow {
  readonly week: string;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface ForecastView {
  readonly number: number;
  readonly planNumber: number;
  readonly madeAt: string;
  /** Sentence when it is not about the plan that counts now. */
  readonly staleness: string | null;
  readonly runs: string;
  readonly exactness: string;
  readonly finish: Odds;
  readonly beyond: string;
  /** Date that holds with a confidence. */
  readonly promises: readonly { readonly confidence: string; readonly date: string }[];
  /** Curve of the finish: share of runs done by a place on the axis. */
  readonly curve: readonly { readonly at: number; readonly share: number; readonly label: string }[];
  readonly axis: { readonly from: string; readonly to: string };
  readonly episodes: readonly EpisodeOdds[];
  readonly threats: readonly ThreatRow[];
  /** Null: the forecast is older than this count. */
  readonly trades: readonly TradeRow[] | null;
  readonly bank: readonly BankRow[];
  readonly luck: readonly string[];
  readonly assumptions: readonly string[];
}

export interface CalibrationView {
  /** Null: nothing has come true yet. */
  readonly verdict: string | null;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  readonly rows: readonly CalibrationRow[];
}

export interface CalibrationRow {
  readonly key: string;
  /** `4, made Sun 15 Nov 18:59` */
  readonly forecast: string;
  readonly episode: string;
  readonly interval: string;
  readonly actual: string;
  readonly isInside: boolean;
  /** Places on the axis of all rows, 0 to 1; `to` null: beyond all sessions. */
  readonly places: { readonly from: number; readonly to: number | null; readonly actual: number };
}

export interface EarnedView {
  /** `2.5 of 12 planned weeks are done after 3`. */
  readonly words: string;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}

export interface ProgressView {
  readonly seriesId: string;
  readonly seriesName: string;
  readonly week: string;
  readonly today: string;
  readonly hasWork: boolean;
  readonly planNumber: number | null;
  readonly answers: readonly Answer[];
  readonly timelines: Timelines | null;
  readonly parts: PartCounts;
  readonly earned: EarnedView;
  readonly forecast: ForecastView | null;
  /** Null: no confidence was typed, or there is no forecast. */
  readonly wanted: WantedDate | null;
  readonly calibration: CalibrationView;
  readonly ghosts: readonly { readonly number: number; readonly finish: string; readonly made: string }[];
  /** What is done since Monday and what the plan has for the rest of the week. */
  readonly review: { readonly done: readonly string[]; readonly next: readonly string[]; readonly late: readonly string[] };
}
