/** Makes a plan of a series in the worker and saves it as a draft. The accepted plan is not touched. */
import { listStops } from '@/lib/build';
import { closeOnHolidays } from '@/lib/exchange';
import { compilePlan, findMissedWindows, freezeNear, previousBlocks, raisePlan, tellContradiction, type Compiled, type CompileInput, type SavedPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { check, repair, type Schedule, type Solution } from '@/lib/scheduling';
import { instant, type Instant } from '@/lib/units';
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
  /** End of the best so far; null before the first. */
  readonly finish: Instant | null;
  /** No plan of all the work ends before this moment. */
  readonly earliestFinish: Instant;
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

const cancelled = () => fail([issue('cancelled', 'Planning was stopped. Nothing was saved.', 'Plan again.')]);

/** Answers as soon as the signal is given. */
function whenAborted(signal: AbortSignal): Promise<ReturnType<typeof cancelled>> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve(cancelled());
    else signal.addEventListener('abort', () => resolve(cancelled()), { once: true });
  });
}

async function searchFor(compiled: Compiled, options: PlanOptions): Promise<Result<Solution>> {
  const { clock } = compiled.draft;
  const solving = solveInWorker(
    compiled.problem,
    { stop: { kind: 'time', milliseconds: options.milliseconds }, seed: options.seed },
    {
      ...(options.signal && { signal: options.signal }),
      onProgress: ({ share, schedulesTried, best, lowerBound }) => options.onProgress?.({
        share, schedulesTried, lateMinutes: best?.tardiness ?? null, unplaced: best?.unplaced ?? null,
        finish: best === null ? null : clock.moment(best.makespan), earliestFinish: clock.moment(lowerBound),
      }),
    },
  );
  // Whoever stops it wants nothing changed, and need not wait for the thread to notice.
  return options.signal === undefined ? solving : Promise.race([solving, whenAborted(options.signal)]);
}

function readSolution(compiled: Compiled, solution: Result<Solution>): Result<Solved> {
  if (!solution.ok) return solution;
  if (solution.value.status === 'infeasible') return fail(tellContradiction(compiled, solution.value.contradiction));
  if (solution.value.status === 'unknown') {
    return fail([issue('no-plan-in-time', 'No plan was found in the time allowed.', 'Allow more time and plan again.')]);
  }
  return ok(solution.value);
}

function compileFrozen(input: CompileInput): Result<Compiled> {
  const compiled = compilePlan(input);
  return compiled.ok ? ok(freezeNear(compiled.value)) : compiled;
}

/** How much of the plan's work a solution leaves out; all of it when there is none. */
const leftOut = (solution: Solution): number => ('schedule' in solution ? solution.schedule.unplaced.length : Infinity);

interface Answer {
  readonly compiled: Compiled;
  readonly solved: Solved;
}

/**
 * Compiles and solves; where recoat windows left coats without a place, once more with the work of a missed window before them, for
 * half the time. The answer that places more counts.
 */
async function findPlan(input: CompileInput, options: PlanOptions): Promise<Result<Answer>> {
  const compiled = compileFrozen(input);
  if (!compiled.ok) return compiled;
  const first = await searchFor(compiled.value, options);
  const missed = first.ok && options.signal?.aborted !== true ? findMissedWindows(compiled.value, first.value) : new Set<string>();
  if (first.ok && missed.size > 0) {
    const again = compileFrozen({ ...input, lateFor: missed });
    const second = again.ok ? await searchFor(again.value, { ...options, milliseconds: options.milliseconds / 2 }) : again;
    const solved = again.ok && second.ok && leftOut(second.value) < leftOut(first.value) ? readSolution(again.value, second) : null;
    if (again.ok && solved?.ok === true) return ok({ compiled: again.value, solved: solved.value });
  }
  const solved = readSolution(compiled.value, first);
  return solved.ok ? ok({ compiled: compiled.value, solved: solved.value }) : solved;
}

/**
 * Compiles, solves in a worker thread, has the independent checker look at the answer, and saves the draft.
 * Fails with every stop issue of the series, `plan-contradiction`, `no-sessions-ahead`, `nothing-to-plan`, `no-plan-in-time` or `cancelled`.
 * @throws Error when the checker finds a fault in the engine's answer: that is a bug, and nothing is saved.
 */
export function requestPlan(ctx: CommandContext, seriesId: string, options: PlanOptions): Promise<Result<{ readonly plan: SavedPlan }>> {
  return draftPlan(ctx, seriesId, (input) => findPlan(input, options), options.signal);
}

/**
 * As {@link requestPlan}, but mends the accepted plan with as little moved as there can be, in a moment. Fails besides with
 * `no-accepted-plan`.
 */
export async function requestRepair(ctx: CommandContext, seriesId: string): Promise<Result<{ readonly plan: SavedPlan }>> {
  if ((await ctx.storage.acceptedPlan(seriesId)) === null) return fail([issue('no-accepted-plan', 'There is no accepted plan to mend.', 'Make a plan.')]);
  return draftPlan(ctx, seriesId, async (input) => mendPlan(input));
}

function mendPlan(input: CompileInput): Result<Answer> {
  const compiled = compileFrozen(input);
  if (!compiled.ok) return compiled;
  const solved = readSolution(compiled.value, ok(repair(compiled.value.problem)));
  return solved.ok ? ok({ compiled: compiled.value, solved: solved.value }) : solved;
}

async function draftPlan(ctx: CommandContext, seriesId: string, find: (input: CompileInput) => Promise<Result<Answer>>, signal?: AbortSignal): Promise<Result<{ readonly plan: SavedPlan }>> {
  const document = await ctx.storage.loadSeries(seriesId);
  if (!document) return noSuchSeries(seriesId);
  const stops = listStops(document);
  if (stops.length > 0) return fail(stops);
  const now = ctx.now();
  const readings = await loadReadings(ctx.storage, document);
  const kept = await closeOnHolidays(document, now);
  const found = await find({ document: kept, now, previousBlocks: previousBlocks(await ctx.storage.acceptedPlan(seriesId)), readings });
  if (!found.ok) return found;
  const { compiled, solved } = found.value;
  // The thread hands over its best when it is stopped.
  if (signal?.aborted === true) return cancelled();
  const violations = check(compiled.problem, solved.schedule);
  if (violations.length > 0) throw new Error(`The plan breaks its own rules, so it was not saved: ${violations.slice(0, 3).map((violation) => violation.message).join(' ')}`);
  const result = raisePlan(compiled, solved, { solveTime: instant(ctx.now()) - now });
  const saved = await ctx.storage.savePlan(seriesId, { result, basedOnChange: document.changeNumber, madeAt: now });
  return saved.ok ? ok({ plan: saved.value }) : saved;
}
