/** What the compiler's steps share: the document, the clock, and the problem as it grows. */
import type { DryingStage, Material, OutsideJob, Part, Place, SeriesDocument, Task, Trade } from '@/lib/build';
import type { CivilDate } from '@/lib/calendar';
import type { Activity, Budget, Calendar, Hold, Interval, Lag, Resource } from '@/lib/scheduling';
import type { ExposureKind } from '@/lib/safety';
import type { Instant } from '@/lib/units';
import type { PlanBlock, PlanResult, SavedPlan } from '../model';
import type { CureModel } from './cure-model';
import type { EngineClock } from './engine-clock';
import type { ReadingRows } from '@/lib/cure';
import type { LearnedRatio } from '@/lib/outwork';

/** How the window is missed: it is over; it will be before there is time; no two sessions lie in it; or nobody has the time. */
export type LateReason = 'closed' | 'closes' | 'no sessions' | 'no place';

export interface LateWork {
  /** The task with the next coat. */
  readonly next: Task;
  /** The task that laid, or lays, the coat whose window is missed. */
  readonly laid: Task;
  readonly material: Material;
  readonly why: LateReason;
  /** End of the window of a coat that is on. */
  readonly closes: Instant | null;
  /** Longest wait of a coat that is still to be laid, minutes. */
  readonly longest: number | null;
  /** The work, as a task of no record. */
  readonly task: Task;
}

/** A window that the plan keeps. */
export interface KeptWindow {
  readonly laid: Task;
  readonly material: Material;
  /** End of the window of a coat that is on; null: it follows from when that is laid. */
  readonly closes: Instant | null;
}

/** Why a lag is there, for the words of an explanation. */
export type LagReason =
  | { readonly kind: 'part-state'; readonly partId: string; readonly stateId: string }
  | { readonly kind: 'link'; readonly linkId: string }
  | { readonly kind: 'coat'; readonly taskId: string; readonly materialId: string; readonly stage: DryingStage }
  | { readonly kind: 'away'; readonly jobId: string; readonly days: number; readonly learned: LearnedRatio | null }
  /** Shots ahead of a task come before it, or before other work that changes a part they show. */
  | { readonly kind: 'before-shot'; readonly taskId: string; readonly partId: string | null }
  | { readonly kind: 'episode'; readonly episodeId: string }
  /** Isocyanate of a task that is done has to clear. */
  | { readonly kind: 'shut'; readonly taskId: string }
  /** The next coat follows what a missed recoat window asks for. */
  | { readonly kind: 'late-work'; readonly nextTaskId: string };

/** What a budget limits: somebody's share of a session, or what a day may do to them. */
export type BudgetReason =
  | { readonly kind: 'fill'; readonly personId: string; readonly sessionId: string }
  | { readonly kind: 'exposure'; readonly what: ExposureKind; readonly personId: string; readonly date: CivilDate };

/** What the accepted plan has for a piece of work. */
export type PreviousBlock = Pick<PlanBlock, 'start' | 'crewIds'>;

export interface CompileInput {
  readonly document: SeriesDocument;
  /** Nothing is placed before this moment. */
  readonly now: Instant;
  /** Work of the accepted plan by activity name; moving one, or giving it to other people, counts as a change. */
  readonly previousBlocks: ReadonlyMap<string, PreviousBlock>;
  /** Rows of the series' loggers; left out: none. */
  readonly readings?: ReadingRows;
  /** Tasks whose coat gets late work although sessions would allow its recoat window; left out: none. */
  readonly lateFor?: ReadonlySet<string>;
}

export interface Draft extends CompileInput {
  readonly clock: EngineClock;
  /** Minute of `now`. */
  readonly nowMinute: number;
  readonly horizon: number;
  readonly calendars: Map<string, Calendar>;
  readonly resources: Resource[];
  readonly activities: Activity[];
  readonly lags: Lag[];
  readonly holds: Hold[];
  readonly budgets: Budget[];
  readonly lagReasons: Map<string, LagReason>;
  readonly budgetReasons: Map<string, BudgetReason>;
  /** Activities that no session or crew can hold, with the words for it: the engine leaves them unplaced. */
  readonly impossible: Map<string, { readonly text: string; readonly change: string }>;
  /** Parts that some unfinished task lays a coat on. */
  readonly coatedParts: ReadonlySet<string>;
  readonly places: ReadonlyMap<string, Place>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly materials: ReadonlyMap<string, Material>;
  readonly trades: ReadonlyMap<string, Trade>;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly jobs: ReadonlyMap<string, OutsideJob>;
  /** Activities that stay where the accepted plan has them, because they start soon. */
  readonly frozen: ReadonlySet<string>;
  /** What missed recoat windows ask for, by the task with the next coat. */
  readonly lateWork: Map<string, LateWork>;
  /** Recoat windows that the plan keeps, by the task with the next coat. */
  readonly windows: Map<string, KeptWindow>;
  /** How coats cure in an air. */
  readonly cureIn: (airZone: string) => CureModel;
  /** When a heater that can light solvent is on in an air. */
  readonly heatedIn: (airZone: string) => readonly Interval[];
  /** What the past jobs say of a trade; null while no job is finished. */
  readonly learned: (trade: Trade) => LearnedRatio | null;
}

/** A record that the checked document must hold; its absence is a bug. */
export function need<T>(map: ReadonlyMap<string, T>, id: string, what: string): T {
  const found = map.get(id);
  if (found === undefined) throw new Error(`The compiler met an unknown ${what} "${id}" in a checked document.`);
  return found;
}

/** How the coats of a task cure: by the air of its place. */
export function cureOf(draft: Draft, task: Task): CureModel {
  return draft.cureIn(need(draft.places, task.placeId, 'place').airZone);
}

/** Adds a lag under a name made of its ends and remembers why it is there. */
export function addLag(draft: Draft, lag: Omit<Lag, 'id'>, reason: LagReason): void {
  const id = `${lag.from.activity}>${lag.to.activity}#${draft.lags.length}`;
  draft.lags.push({ id, ...lag });
  draft.lagReasons.set(id, reason);
}

/** The work of a plan by activity name, for the plan that follows it. */
export function previousBlocks(plan: SavedPlan | null): ReadonlyMap<string, PreviousBlock> {
  return new Map((plan?.result.blocks ?? []).map((block) => [block.id, block]));
}

/** The tasks before which a plan has the work of a missed window, so that it can be asked about as it stands. */
export function lateTasksOf(plan: PlanResult): ReadonlySet<string> {
  return new Set(plan.blocks.filter(({ kind }) => kind === 'late-work').map(({ subject }) => subject.id));
}

/** Where the accepted plan has the activity and with whom, as a part of an activity's fields. What has begun is not held. */
export function previousPlace(draft: Draft, activity: string, resourceOf: (personId: string) => string): Pick<Activity, 'previousStart' | 'previousCrew'> {
  const block = draft.previousBlocks.get(activity);
  if (block === undefined || block.start < draft.now) return {};
  return { previousStart: draft.clock.down(block.start), previousCrew: block.crewIds.map(resourceOf) };
}
