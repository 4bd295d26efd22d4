/** The accepted plan as it stands, ready to be asked; kept for a while, since a hand that drags asks many times. */
import type { SeriesDocument } from '@/lib/build';
import type { ReadingRows } from '@/lib/cure';
import { closeOnHolidays } from '@/lib/exchange';
import { compilePlan, lateTasksOf, previousBlocks, scheduleOf, type Compiled, type PlanResult } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { Standing } from '@/lib/scheduling';
import { MS_PER_MINUTE, instant, type Instant } from '@/lib/units';
import type { CommandContext } from './context';

export interface StandingPlan {
  readonly document: SeriesDocument;
  readonly compiled: Compiled;
  readonly standing: Standing;
  readonly plan: PlanResult;
}

/** Minutes that now may be off: a plan is compiled again after so long even when nothing has changed. */
const STEP = 5;

interface Kept {
  readonly key: string;
  readonly value: Result<StandingPlan>;
}

/** The plan that counts, or the one that waits to be accepted. */
export type WhichPlan = 'accepted' | 'draft';

/** One for each document that storage still holds: a change makes another document, and this goes with the old one. */
const kept = new WeakMap<SeriesDocument, Kept>();

/** The rows of the series' loggers. */
export async function loadReadings(storage: CommandContext['storage'], document: SeriesDocument): Promise<ReadingRows> {
  const rows = document.readings.map(async (set) => [set.id, await storage.listReadings(document.series.id, set.id, set)] as const);
  return new Map(await Promise.all(rows));
}

function compileStanding(document: SeriesDocument, plan: PlanResult, now: Instant, readings: ReadingRows, previous: ReturnType<typeof previousBlocks>): Result<StandingPlan> {
  const compiled = compilePlan({ document, now, previousBlocks: previous, readings, lateFor: lateTasksOf(plan) });
  if (!compiled.ok) return compiled;
  return ok({ document, plan, compiled: compiled.value, standing: new Standing(compiled.value.problem, scheduleOf(compiled.value, plan)) });
}

const NO_PLAN = {
  accepted: issue('no-accepted-plan', 'There is no accepted plan to move work in.', 'Make a plan and accept it.'),
  draft: issue('no-draft', 'There is no draft any more.', 'Plan again.'),
} as const;

/**
 * The accepted plan of a series, or its draft, on the build as it is now. Fails with `no-such-series`, `no-accepted-plan`, `no-draft`,
 * `no-sessions-ahead` or `nothing-to-plan`. The same answer is given again while neither series nor plan has changed, for at most five minutes.
 */
export async function loadStanding({ now, storage }: CommandContext, seriesId: string, which: WhichPlan = 'accepted'): Promise<Result<StandingPlan>> {
  const [document, accepted] = await Promise.all([storage.loadSeries(seriesId), storage.acceptedPlan(seriesId)]);
  const plan = which === 'accepted' ? accepted : await storage.latestDraft(seriesId);
  if (document === null) return fail([issue('no-such-series', `There is no series "${seriesId}".`, 'Go back to the list of series.')]);
  if (plan === null) return fail([NO_PLAN[which]]);
  const rounded = instant(Math.floor(now() / (STEP * MS_PER_MINUTE)) * STEP * MS_PER_MINUTE);
  const key = `${plan.number} ${accepted?.number ?? 'none'} ${rounded}`;
  const known = kept.get(document);
  if (known?.key === key) return known.value;
  const value = compileStanding(await closeOnHolidays(document, now()), plan.result, now(), await loadReadings(storage, document), previousBlocks(accepted));
  kept.set(document, { key, value });
  return value;
}
