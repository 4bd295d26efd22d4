/** Lowers a series to the engine's problem: the only place that knows both trade words and activities. */
import { deriveOrder, type SeriesDocument } from '@/lib/build';
import { startOfDay, dateOf } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Problem } from '@/lib/scheduling';
import { MINUTES_PER_DAY } from '@/lib/units';
import { cureModels } from './cure-clock';
import type { CompileInput, Draft } from './draft';
import { engineClock } from './engine-clock';
import { addEpisodes } from './episode-milestones';
import { addExposureBudgets } from './exposure';
import { dangerousHours } from './heater-hours';
import { addErrandPeople, addJob } from './job-activities';
import { findLateWork } from './late-work';
import { equipmentResource, partResource, placeResource } from './names';
import { compileObjective } from './objective';
import { addOrder, type RunningWait } from './order-lags';
import { learnedTrades } from './past-jobs';
import { addPeople } from './session-calendars';
import { addLateTask, addTask } from './task-activities';

/** The problem and what is needed to read its answer. */
export interface Compiled {
  readonly problem: Problem;
  readonly draft: Draft;
  /** Releases that come from waits which already run, by activity. */
  readonly runningWaits: ReadonlyMap<string, RunningWait>;
}

function byId<T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> {
  return new Map(records.map((record) => [record.id, record]));
}

function startDraft(input: CompileInput): Draft {
  const { document, now } = input;
  const zone = document.series.zone;
  const clock = engineClock(startOfDay(dateOf(now, zone), zone));
  const lastEnd = Math.max(...document.sessions.map((session) => session.end));
  const horizon = Math.ceil((lastEnd - clock.origin) / 60_000 / MINUTES_PER_DAY) * MINUTES_PER_DAY;
  return {
    ...input,
    clock,
    nowMinute: clock.up(now),
    horizon,
    calendars: new Map(),
    resources: [],
    activities: [],
    lags: [],
    holds: [],
    budgets: [],
    lagReasons: new Map(),
    budgetReasons: new Map(),
    impossible: new Map(),
    frozen: new Set(),
    lateWork: new Map(),
    windows: new Map(),
    coatedParts: new Set(document.tasks.filter((task) => task.doneAt === null && task.coats.length > 0).flatMap((task) => task.parts.map((use) => use.partId))),
    places: byId(document.places),
    parts: byId(document.parts),
    materials: byId(document.materials),
    trades: byId(document.trades),
    tasks: byId(document.tasks),
    jobs: byId(document.outsideJobs),
    cureIn: cureModels({ document, now, clock, horizon }, input.readings ?? new Map()),
    heatedIn: dangerousHours({ document, clock, horizon }),
    learned: learnedTrades(document),
  };
}

function addThings(draft: Draft, document: SeriesDocument): void {
  draft.resources.push(
    ...document.places.map((place) => ({ id: placeResource(place.id), capacity: place.capacity })),
    ...document.parts.map((part) => ({ id: partResource(part.id), capacity: 1 })),
    ...document.equipment.map((equipment) => ({ id: equipmentResource(equipment.id), capacity: equipment.count })),
  );
}

/**
 * Lowers a checked document.
 * Fails with `no-sessions-ahead` when no session ends after `now`, and `nothing-to-plan` when all work is done.
 */
export function compilePlan(input: CompileInput): Result<Compiled> {
  const { document, now } = input;
  const tasks = document.tasks.filter((task) => task.doneAt === null);
  const jobs = document.outsideJobs.filter((job) => job.collectedAt === null);
  const issues = [];
  if (!document.sessions.some((session) => session.end > now)) {
    issues.push(issue('no-sessions-ahead', `${document.series.name} has no session that ends after now, so nothing can be dated.`, 'Add sessions for the coming weeks.'));
  }
  if (tasks.length + jobs.length === 0) {
    issues.push(issue('nothing-to-plan', `${document.series.name} has no unfinished task and no open outside job.`, 'Add a task.'));
  }
  if (issues.length > 0) return fail(issues);
  const draft = startDraft(input);
  addThings(draft, document);
  addPeople(draft);
  addErrandPeople(draft);
  addExposureBudgets(draft);
  const order = deriveOrder(document);
  findLateWork(draft, order);
  for (const task of tasks) addTask(draft, task);
  for (const late of draft.lateWork.values()) addLateTask(draft, late);
  for (const job of jobs) addJob(draft, job);
  const runningWaits = addOrder(draft, order);
  addEpisodes(draft);
  const activities = draft.activities.map((activity) => {
    const wait = runningWaits.get(activity.id);
    return wait ? { ...activity, release: Math.min(draft.horizon, Math.max(activity.release ?? 0, wait.minute)) } : activity;
  });
  const { horizon, resources, lags, holds, budgets } = draft;
  const problem: Problem = { horizon, calendars: [...draft.calendars.values()], resources, activities, lags, holds, budgets, ...compileObjective(draft) };
  return ok({ problem, draft, runningWaits });
}
