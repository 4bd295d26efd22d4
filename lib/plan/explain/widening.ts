/** Changes that may give work a place: first made everywhere they could be, then only where they turn out to be used. */
import { joinWords, type SeriesDocument } from '@/lib/build';
import type { Placement, Problem, Schedule } from '@/lib/scheduling';
import type { Compiled } from '../compile/compile';
import { collectionActivity, dropOffActivity, lateWorkActivity, readName, taskActivity, beforeShotActivity } from '../compile/names';
import type { UnplacedWork } from '../model';

/** A change that is small enough to be said and tried. */
export interface Narrowed {
  /** `Stay an hour longer in the session of Tue 1 Dec 18:30`. */
  readonly text: string;
  /** How much it asks of people; smaller is smaller. Our choice. */
  readonly size: number;
  readonly problem: () => Problem;
  /** Work that gives way and is given another place after it. */
  readonly givesWay?: readonly string[];
}

export interface Widening {
  /** Least size of what may come of it: smaller ones are tried first. */
  readonly size: number;
  /** Of several with the same word, one that works is enough; left out: it stands for itself. */
  readonly sort?: string;
  /** The problem with the change wherever it could be made; null: it is narrow as it is. */
  readonly wide: (() => Problem) | null;
  /** What of it these placements use; null: nothing that could be said. */
  readonly narrow: (placements: readonly Placement[]) => Narrowed | null;
}

/** Work without a place, and what has to have one with it. */
export interface Wanted {
  readonly compiled: Compiled;
  readonly schedule: Schedule;
  readonly document: SeriesDocument;
  /** In an order in which they can be placed; the last of the work asked for is `target`. */
  readonly chain: readonly string[];
  readonly target: string;
}

/** `the session of Tue 1 Dec 18:30`, `the sessions of Tue 1 Dec 18:30 and Thu 3 Dec 18:30`. */
export function sessionsOf(moments: readonly string[]): string {
  return `the ${moments.length === 1 ? 'session' : 'sessions'} of ${joinWords(moments)}`;
}

/** The last activity of a piece of work that a schedule leaves out; null: it leaves out none. */
export function lastUnplaced(problem: Problem, schedule: Schedule, { id, kind }: UnplacedWork['subject']): string | null {
  const placed = new Set(schedule.placements.map(({ activity }) => activity));
  const names = kind === 'task' ? [taskActivity(id), beforeShotActivity(id), lateWorkActivity(id)] : [collectionActivity(id), dropOffActivity(id)];
  return names.find((name) => !placed.has(name) && problem.activities.some((activity) => activity.id === name)) ?? null;
}

/** Everything without a place that has to come before the target, or soon after something of it, what comes first ahead. */
export function chainTo(problem: Problem, schedule: Schedule, target: string): readonly string[] {
  const placed = new Set(schedule.placements.map(({ activity }) => activity));
  const isOpen = (id: string): boolean => !placed.has(id) && readName(id).kind !== 'episode';
  const chain: string[] = [];
  const seen = new Set<string>();
  const visit = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    for (const lag of problem.lags) if (lag.to.activity === id && lag.min !== undefined && isOpen(lag.from.activity)) visit(lag.from.activity);
    chain.push(id);
    for (const lag of problem.lags) if (lag.from.activity === id && lag.max !== undefined && isOpen(lag.to.activity)) visit(lag.to.activity);
    for (const hold of problem.holds ?? []) if (hold.from === id && isOpen(hold.to)) visit(hold.to);
  };
  visit(target);
  return chain;
}
