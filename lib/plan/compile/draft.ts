/** What the compiler's steps share: the document, the clock, and the problem as it grows. */
import type { Material, OutsideJob, Part, Place, SeriesDocument, Task, Trade } from '@/lib/build';
import type { CivilDate } from '@/lib/calendar';
import type { Activity, Budget, Calendar, Hold, Lag, Resource } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import type { EngineClock } from './engine-clock';

/** Why a lag is there, for the words of an explanation. */
export type LagReason =
  | { readonly kind: 'part-state'; readonly partId: string; readonly stateId: string }
  | { readonly kind: 'link'; readonly linkId: string }
  | { readonly kind: 'coat'; readonly taskId: string; readonly materialId: string; readonly stage: 'recoatFrom' | 'handle' | 'touchDry' | 'fullCure'; readonly isHeatOwed: boolean }
  | { readonly kind: 'away'; readonly jobId: string; readonly days: number }
  | { readonly kind: 'before-shot'; readonly taskId: string }
  | { readonly kind: 'episode'; readonly episodeId: string };

/** What a budget limits: somebody's share of a session, or what a day may do to one pair of hands and ears. */
export type BudgetReason =
  | { readonly kind: 'fill'; readonly personId: string; readonly sessionId: string }
  | { readonly kind: 'exposure'; readonly what: 'vibration' | 'noise'; readonly date: CivilDate };

export interface CompileInput {
  readonly document: SeriesDocument;
  /** Nothing is placed before this moment. */
  readonly now: Instant;
  /** Starts of the accepted plan by activity name; moving one counts as a change. */
  readonly previousStarts: ReadonlyMap<string, Instant>;
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
}

/** A record that the checked document must hold; its absence is a bug. */
export function need<T>(map: ReadonlyMap<string, T>, id: string, what: string): T {
  const found = map.get(id);
  if (found === undefined) throw new Error(`The compiler met an unknown ${what} "${id}" in a checked document.`);
  return found;
}

/** Adds a lag under a name made of its ends and remembers why it is there. */
export function addLag(draft: Draft, lag: Omit<Lag, 'id'>, reason: LagReason): void {
  const id = `${lag.from.activity}>${lag.to.activity}#${draft.lags.length}`;
  draft.lags.push({ id, ...lag });
  draft.lagReasons.set(id, reason);
}

/** Where the accepted plan has the activity, as a part of an activity's fields. */
export function previousStart(draft: Draft, activity: string): { previousStart?: number } {
  const at = draft.previousStarts.get(activity);
  return at === undefined || at < draft.now ? {} : { previousStart: draft.clock.down(at) };
}
