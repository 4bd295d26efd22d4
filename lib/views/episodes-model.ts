/** What the pages of episodes show: plain, serialisable data. */
import type { Issue } from '@/lib/result';
import type { RecordLink } from './week-model';

/** How a number of hours stands, in a word of its own and in a sentence. */
export interface Standing {
  readonly verdict: 'fits' | 'tight' | 'short' | 'done';
  /** `Fits`, `Tight`, `Too little time`, `Workshop time done`. */
  readonly word: string;
  readonly text: string;
}

/** Minutes on screen against the wish of the series. */
export interface RuntimeView {
  readonly minutes: number;
  readonly target: number;
  readonly min: number;
  readonly max: number;
  readonly isInside: boolean;
  /** `14.5 min, 1.5 under the wish`. */
  readonly text: string;
}

/** A segment on the board. */
export interface BoardRow {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  /** Minutes on screen. */
  readonly length: number;
  /** When its work is recorded by the plan, milliseconds; null: not known. */
  readonly readyAt: number | null;
  /** `recorded Sat 5 Dec 16:10`; empty: not known. */
  readonly ready: string;
}

export interface ReelView {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** `Fri 11 Dec`. */
  readonly release: string;
  readonly shootDue: string;
  /** `recorded`, and how many of the five stages are behind it. */
  readonly stage: string;
  readonly stagesDone: number;
  readonly isEvergreen: boolean;
  readonly runtime: RuntimeView;
  readonly segments: number;
  /** Its segments in the order of telling. */
  readonly rows: readonly BoardRow[];
  /** When its recording is due, milliseconds. */
  readonly due: number;
  readonly results: number;
  readonly standing: Standing;
  /** What still stands in its way besides time, in short sentences. */
  readonly open: readonly string[];
}

export interface BankWeekView {
  /** `W50`, `Mon 7 Dec`. */
  readonly week: string;
  readonly monday: string;
  readonly inHand: number;
  readonly evergreen: number;
  readonly events: readonly string[];
  readonly isBelow: boolean;
}

export interface BankView {
  readonly minimum: number;
  readonly cadence: number;
  /** What the series does now, and what could be tried. */
  readonly choices: readonly { readonly days: number; readonly label: string; readonly isCurrent: boolean }[];
  readonly summary: string;
  readonly isAlarm: boolean;
  readonly weeks: readonly BankWeekView[];
  readonly issues: readonly Issue[];
}

export interface ProposalView {
  readonly title: string;
  /** How far from proved best; null: proved. */
  readonly gap: string | null;
  /** Segments that would change episode. */
  readonly moves: number;
  readonly episodes: readonly {
    readonly name: string;
    readonly reasons: string;
    readonly segments: readonly { readonly name: string; readonly isNew: boolean }[];
  }[];
  /** Parts that would go back in time on screen, and do not now. */
  readonly warnings: readonly string[];
  readonly arrangement: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[];
}

export interface EpisodesView {
  readonly seriesId: string;
  readonly reels: readonly ReelView[];
  /** Minutes of titles in every episode. */
  readonly titles: number;
  /** Segments in no episode, as the board moves them. */
  readonly looseRows: readonly BoardRow[];
  readonly bank: BankView;
  readonly loose: readonly { readonly id: string; readonly name: string; readonly text: string }[];
  readonly proposals: readonly ProposalView[];
  /** Why there is no proposal. */
  readonly proposalIssues: readonly Issue[];
  readonly sponsorIssues: readonly Issue[];
  readonly orderIssues: readonly Issue[];
}

export interface SegmentRow {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  readonly length: number;
  readonly isResult: boolean;
  readonly role: string;
  /** `leaves 40 % open`, `recorded Sat 5 Dec 16:10`. */
  readonly facts: readonly string[];
  /** When its work is recorded by the plan, milliseconds; null: not known. */
  readonly readyAt: number | null;
}

export interface BalanceView {
  readonly what: string;
  readonly need: string;
  readonly p80: string;
  readonly earlier: string;
  readonly available: string;
  readonly left: string;
  readonly leftAtP80: string;
  readonly isShort: boolean;
}

export interface ShotRow {
  readonly key: string;
  readonly name: string;
  readonly purpose: string;
  readonly task: RecordLink;
  readonly isMustHave: boolean;
  /** `Body traced, Door traced`; empty: as the work has them. */
  readonly parts: string;
  /** Chance to lose it; null: it can be taken again. */
  readonly risk: string | null;
  readonly state: string;
}

/** A change of segments that brings the runtime inside its bounds, ready to be made. */
export interface RuntimeOffer {
  readonly words: string;
  readonly arrangement: readonly { readonly episodeId: string; readonly segmentIds: readonly string[] }[];
}

export interface SponsorRow {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly issues: readonly Issue[];
}

export interface EpisodeView {
  readonly seriesId: string;
  readonly id: string;
  readonly name: string;
  readonly number: number;
  readonly above: string;
  readonly lead: string;
  readonly standing: Standing;
  readonly balances: readonly BalanceView[];
  /** Part of the need that is work of no episode or of another; null: none. */
  readonly owedElsewhere: string | null;
  /** Sets of changes that would make it fit. */
  readonly relief: readonly { readonly frees: string; readonly isEnough: boolean; readonly changes: readonly { readonly words: string; readonly task: RecordLink | null }[] }[];
  readonly runtime: RuntimeView;
  readonly titles: number;
  /** When its recording is due, milliseconds. */
  readonly due: number;
  /** What to take out or bring in where the runtime is outside its bounds. */
  readonly runtimeOffers: readonly RuntimeOffer[];
  readonly segments: readonly SegmentRow[];
  readonly results: number;
  readonly otherEpisodes: readonly { readonly id: string; readonly name: string }[];
  readonly loose: readonly SegmentRow[];
  readonly warnings: readonly Issue[];
  readonly shots: readonly ShotRow[];
  readonly shotWords: readonly string[];
  readonly camera: readonly string[];
  readonly sponsors: readonly SponsorRow[];
}

/** The checklist of an episode in short. */
export interface SafetySummary {
  readonly isOpen: boolean;
  readonly words: string;
  /** `Grinding (II critical) in 2 tasks`. */
  readonly hazards: readonly string[];
  /** The first blocks of the gate, and how many more there are. */
  readonly first: readonly { readonly message: string; readonly fix: string }[];
  readonly more: number;
}

/** What the log and its checks say of an episode in short. */
export interface ContinuitySummary {
  readonly stops: number;
  readonly warns: number;
  readonly words: string;
  readonly first: readonly Issue[];
  readonly more: number;
  readonly promises: readonly { readonly id: string; readonly words: string; readonly standing: string }[];
  readonly pickups: readonly { readonly key: string; readonly words: string }[];
}

export interface EpisodePageView extends EpisodeView {
  readonly safety: SafetySummary;
  readonly continuity: ContinuitySummary;
}

export interface FactorRow {
  readonly what: string;
  readonly n: number;
  readonly factor: string;
  readonly interval: string;
  readonly own: string;
  readonly borrowed: string;
}

export interface PlotPoint {
  readonly key: string;
  readonly name: string;
  readonly kind: 'hands-on' | 'filming';
  readonly category: string;
  readonly estimate: number;
  readonly actual: number;
  readonly wasInterrupted: boolean;
}

/** An open task as typed and by experience. */
export interface OpenTaskRow {
  readonly id: string;
  readonly name: string;
  readonly typed: string;
  readonly typedP80: string;
  readonly experienced: string;
  readonly experiencedP80: string;
  /** `5 finished tasks of strip`. */
  readonly from: string;
}

export interface EstimatesView {
  readonly seriesId: string;
  readonly revision: number;
  readonly usesExperience: boolean;
  /** What the switch changes, in a sentence. */
  readonly effect: string;
  readonly note: string;
  readonly handsOn: readonly FactorRow[];
  readonly filming: readonly FactorRow[];
  /** The open tasks whose P80 experience changes most. */
  readonly open: readonly OpenTaskRow[];
  readonly points: readonly PlotPoint[];
  /** Largest length on the plot, minutes. */
  readonly reach: number;
}
