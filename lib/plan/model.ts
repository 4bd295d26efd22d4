/** A plan as saved and shown: trade words and moments, no engine minutes. Plain, serialisable data. */
import type { PlanGoal } from '@/lib/build';
import type { CivilDate } from '@/lib/calendar';
import type { Instant, Minutes } from '@/lib/units';

/** What a block is about. */
export type BlockKind =
  /** Work of a task in sessions. */
  | 'task'
  /** Filming the before-shots of an irreversible task, ahead of it. */
  | 'before-shot'
  /** What a missed recoat window asks for before the next coat, added by the plan. */
  | 'late-work'
  /** Trips to and from an outside trade. */
  | 'drop-off'
  | 'collection'
  /** A part is at an outside trade. Nobody works on it. */
  | 'away'
  /** A coat dries. Nobody may touch it before it is ready. */
  | 'cure'
  /** Isocyanate has to clear: nobody may breathe the air of the place. */
  | 'shut';

export interface Span {
  readonly start: Instant;
  readonly end: Instant;
}

/** Why a block is not earlier, in words, with the moment the reason ends and what would free it. */
export interface Because {
  /** `waits for the primer on the frame, ready to recoat Tue 1 Dec 18:40`. */
  readonly text: string;
  readonly until: Instant | null;
  /** The smallest thing that would free it, or null where none is known. */
  readonly change: string | null;
  /** Block that binds, where there is one. */
  readonly blockId: string | null;
}

/** When a coat reaches each stage, at the temperature the plan assumes. */
export interface CoatStages {
  readonly materialId: string;
  readonly touchDry: Instant;
  readonly recoatFrom: Instant;
  /** null: the window does not close. */
  readonly recoatUntil: Instant | null;
  readonly handle: Instant;
  readonly fullCure: Instant;
}

export interface PlanBlock {
  /** Stable across plans: `task:t12`, `before-shot:t12`, `away:j3`, `cure:t12`, `shut:t12:p4`. */
  readonly id: string;
  readonly kind: BlockKind;
  /** The task or outside job it belongs to. */
  readonly subject: { readonly kind: 'task' | 'outsideJob'; readonly id: string };
  readonly title: string;
  readonly start: Instant;
  readonly end: Instant;
  /** Worked pieces; for `away`, `cure` and `shut` one piece, the whole wait. */
  readonly pieces: readonly Span[];
  /** Row it is drawn in; null: not in the workshop. */
  readonly placeId: string | null;
  readonly crewIds: readonly string[];
  readonly partIds: readonly string[];
  readonly episodeId: string | null;
  readonly isPinned: boolean;
  /** For `cure` blocks the stages of the coat, else null. */
  readonly stages: CoatStages | null;
  readonly because: readonly Because[];
}

export interface UnplacedWork {
  readonly subject: { readonly kind: 'task' | 'outsideJob'; readonly id: string };
  readonly title: string;
  readonly because: readonly Because[];
}

/** How an episode's recording stands against its shoot due date. */
export interface EpisodeOutlook {
  readonly episodeId: string;
  readonly shootDue: Instant;
  /** null: some of its work has no place. */
  readonly recordedBy: Instant | null;
  readonly late: Minutes;
}

/** How a plan stands by each goal that no other field tells. */
export interface GoalFigures {
  /** The goals in the order they counted. */
  readonly order: readonly PlanGoal[];
  /** Weeks that end with too few finished episodes, of those that a plan could still change. */
  readonly bankWeeks: number;
  /** Blocks moved, or given to other people, against the plan that was accepted then. */
  readonly changes: number;
  /** Cost of the heated sessions that are used, in the currency of the workshop; null: no session's heat is known. */
  readonly heating: number | null;
}

export interface PlanResult {
  readonly blocks: readonly PlanBlock[];
  readonly unplaced: readonly UnplacedWork[];
  readonly episodes: readonly EpisodeOutlook[];
  readonly status: 'optimal' | 'feasible';
  /** Left out of plans made before goals could be ordered. */
  readonly goals?: GoalFigures | undefined;
  /** The last block's end. */
  readonly finish: Instant;
  /** No plan of this work ends before this moment. */
  readonly earliestFinish: Instant;
  readonly schedulesTried: number;
  readonly seed: number;
  /** Milliseconds of solving. */
  readonly solveTime: number;
  /** Dates the plan covers. */
  readonly from: CivilDate;
  readonly to: CivilDate;
}

export type PlanStatus = 'draft' | 'accepted' | 'superseded' | 'discarded';

/** A numbered plan of a series. */
export interface SavedPlan {
  readonly id: string;
  readonly number: number;
  readonly status: PlanStatus;
  readonly madeAt: Instant;
  readonly acceptedAt: Instant | null;
  /** Who accepted it and why, as they said it; left out: not said. */
  readonly acceptedBy?: string;
  readonly acceptedWhy?: string;
  /** Change number of the document it was made from. */
  readonly basedOnChange: number;
  readonly result: PlanResult;
}
