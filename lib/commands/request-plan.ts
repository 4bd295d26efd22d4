/** Makes a plan of a series in the worker and saves it as a draft. The accepted plan is not touched. */
import { checkSeries } from '@/lib/build';
import { closeOnHolidays } from '@/lib/exchange';
import { compilePlan, previousBlocks, raisePlan, tellContradiction, type Compiled, type SavedPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { check, repair, type Schedule, type Solution } from '@/lib/scheduling';
import { instant } from '@/lib/units';
import { solveInWorker } from '@/lib/worker';
import type { CommandContext } from './context';
import { loadReadings } from './standing-plan';

/** Told while the worker searches. */
export interface PlanProgress {
  /** 0 to 1 of the time allowed. */
  readonly share: number;
  readonly schedulesTried: number;
  /** Weighted minutes of lateness of the best so far; null before the first. */
  readonly lateMinutes: number | null;
  readonly unplaced: number | null;
}

export interface PlanOptions {
  /** Milliseconds the search may take. */
  readonly milliseconds: number;
  readonly seed: number;
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: PlanProgress) => void;
}

type Solved = Extract<Solution, { schedule: Schedule }>;

const noSuchSeries = (seriesId: string) =>
  fail([issue('no-such-series', `There is no series "${seriesId}".`, 'Go back to the list of series.')]);

async function solveCompiled(compiled: Compiled, options: PlanOptions): Promise<Result<Solved>> {
  const solution = await solveInWorker(
    compiled.problem,
    { stop: { kind: 'time', milliseconds: options.milliseconds }, seed: options.seed },
    {
      ...(options.signal && { signal: options.signal }),
      onProgress: ({ share, schedulesTried, best }) => options.onProgress?.({ share, schedulesTried, lateMinutes: best?.tardiness ?? null, unplaced: best?.unplaced ?? null }),
    },
  );
  if (!solution.ok) return solution;
  if (solution.value.status === 'infeasible') return fail(tellContradiction(compiled, solution.value.contradiction));
  if (solution.value.status === 'unknown') {
    return fail([issue('no-plan-in-time', 'No plan was found in the time allowed.', 'Allow more time and plan again.')]);
  }
  return ok(solution.value);
}

/**
 * Compiles, solves in a worker thread, has the independent checker look at the answer, and saves the draft.
 * Fails with every stop issue of the series, `plan-contradiction`, `no-sessions-ahead`, `nothing-to-plan`, `no-plan-in-time` or `cancelled`.
 * @throws Error when the checker finds a fault in the engine's answer: that is a bug, and nothing is saved.
 */
export function requestPlan(ctx: CommandContext, seriesId: string, options: PlanOptions): Promise<Result<{ readonly plan: SavedPlan }>> {
  return draftPlan(ctx, seriesId, (compiled) => solveCompiled(compiled, options), options.signal);
}

/**
 * As {@link requestPlan}, but mends the accepted plan with as little moved as there can be, in a moment. Fails besides with
 * `no-accepted-plan`.
 */
export async function requestRepair(ctx: CommandContext, seriesId: string): Promise<Result<{ readonly plan: SavedPlan }>> {
  if ((await ctx.storage.acceptedPlan(seriesId)) === null) return fail([issue('no-accepted-plan', 'There is no accepted plan to mend.', 'Make a plan.')]);
  return draftPlan(ctx, seriesId, async (compiled) => mendCompiled(compiled));
}

function mendCompiled(compiled: Compiled): Result<Solved> {
  const mended = repair(compiled.problem);
  if (mended.status === 'infeasible') return fail(tellContradiction(compiled, mended.contradiction));
  if (mended.status === 'unknown') throw new Error('The engine built no schedule, although one is always built.');
  return ok(mended);
}

async function draftPlan(ctx: CommandContext, seriesId: string, solve: (compiled: Compiled) => Promise<Result<Solved>>, signal?: AbortSignal): Promise<Result<{ readonly plan: SavedPlan }>> {
  const document = await ctx.storage.loadSeries(seriesId);
  if (!document) return noSuchSeries(seriesId);
  const stops = checkSeries(document).filter((found) => found.severity === 'stop');
  if (stops.length > 0) return fail(stops);
  const now = ctx.now();
  const readings = await loadReadings(ctx.storage, document);
  const kept = await closeOnHolidays(document, now);
  const compiled = compilePlan({ document: kept, now, previousBlocks: previousBlocks(await ctx.storage.acceptedPlan(seriesId)), readings });
  if (!compiled.ok) return compiled;
  const solved = await solve(compiled.value);
  if (!solved.ok) return solved;
  // The thread hands over its best when it is stopped; the person who stopped it wants nothing changed.
  if (signal?.aborted === true) return fail([issue('cancelled', 'Planning was stopped. Nothing was saved.', 'Plan again.')]);
  const violations = check(compiled.value.problem, solved.value.schedule);
  if (violations.length > 0) throw new Error(`The plan breaks its own rules, so it was not saved: ${violations.slice(0, 3).map((violation) => violation.message).join(' ')}`);
  const result = raisePlan(compiled.value, solved.value, { solveTime: instant(ctx.now()) - now });
  const saved = await ctx.storage.savePlan(seriesId, { result, basedOnChange: document.changeNumber, madeAt: now });
  return saved.ok ? ok({ plan: saved.value }) : saved;
}
