/** What the plans page shows: plain, serialisable data. */
import type { PlanGoal } from '@/lib/build';
import type { PlanChange } from '@/lib/plan';
import type { PlanStamp, RecordLink, WaitingWork } from './week-model';

export interface ChangeLine {
  readonly key: string;
  readonly title: string;
  readonly kind: PlanChange['kind'];
  /** `Earlier`, `Later`, `New`, `Gone`, `Other people`, `Other place`. */
  readonly kindWord: string;
  readonly text: string;
}

export interface EpisodeLine {
  readonly episode: RecordLink;
  /** `better`: recorded sooner, or now at all. `worse`: later, or no longer. */
  readonly kind: 'better' | 'worse' | 'same' | 'first';
  readonly text: string;
  /** Against the day its recording is due: `2 d 4 h to spare`, `5 h late`. */
  readonly outlook: string;
  readonly isLate: boolean;
}

/** A plan's figures in words. */
export interface PlanFacts {
  readonly number: number;
  readonly madeAt: string;
  readonly work: string;
  readonly unplaced: number;
  /** `nothing late`, `2 episodes late, 9 h together`. */
  readonly late: string;
  readonly isLate: boolean;
  readonly finish: string;
  /** `2 weeks end with fewer than 2 in hand`; null: plans made before this was counted. */
  readonly bank: string | null;
  /** `£ 12.40 for heated sessions`. */
  readonly heating: string | null;
  /** What the search can say of its answer. */
  readonly proof: string;
  readonly search: string;
}

export interface DraftView extends PlanFacts {
  readonly summary: string;
  readonly changes: readonly ChangeLine[];
  readonly episodes: readonly EpisodeLine[];
  readonly without: readonly WaitingWork[];
  /** Sentence when the build has changed since the draft was made. */
  readonly staleness: string | null;
}

/** A line of the list of plans. */
export interface PlanRow {
  readonly number: number;
  readonly status: 'draft' | 'accepted' | 'superseded' | 'discarded';
  readonly statusWord: string;
  readonly madeAt: string;
  readonly acceptedAt: string | null;
  /** Who accepted it and why, in a sentence; null: not said. */
  readonly acceptedWords: string | null;
  /** `84 blocks`. */
  readonly size: string;
  readonly unplaced: number;
  readonly finish: string;
  readonly basedOnChange: number;
}

/** A start fixed by hand that the accepted plan does not have: whoever drops the draft it was fixed for may want it free again. */
export interface LoosePin {
  readonly taskId: string;
  readonly revision: number;
  readonly name: string;
  /** `Tue 1 Dec 18:30`. */
  readonly when: string;
}

/** A goal of plans, at its place. */
export interface GoalLine {
  readonly goal: PlanGoal;
  /** `episodes in hand`. */
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

export interface PlansView {
  readonly seriesId: string;
  readonly seriesName: string;
  readonly currentWeek: string;
  readonly accepted: (PlanFacts & { readonly stamp: PlanStamp }) | null;
  readonly draft: DraftView | null;
  readonly history: readonly PlanRow[];
  readonly loosePins: readonly LoosePin[];
  /** Names of those who may have accepted a plan. */
  readonly people: readonly string[];
  /** Open work there is to plan; 0: nothing. */
  readonly openWork: number;
  /** What planning by experience changes, in a sentence. */
  readonly experience: string;
  readonly sessionsAhead: number;
  /** The first counts most. */
  readonly goals: readonly GoalLine[];
  readonly seriesRevision: number;
  /** `Work of the next 2 days stays where the accepted plan has it.` */
  readonly frozen: string;
}
