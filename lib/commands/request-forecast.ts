/** Simulates the accepted plan in worker threads and keeps the odds. The plan is not touched. */
import { listStops, type SeriesDocument } from '@/lib/build';
import { closeOnHolidays } from '@/lib/exchange';
import {
  checkAssumptions, continueSessions, DEFAULT_ASSUMPTIONS, findChances, findThreats, findTradeThreats, learnedFactors, tellAssumptions, tellResult, withDaySaved, withSaving, worthOf,
  type Assumptions, type ForecastResult, type SavedForecast, type Threat, type TradeThreat,
} from '@/lib/forecast';
import { compilePlan, lateTasksOf } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { ForecastInput, RunBlock } from '@/lib/simulation';
import { prepareSimulation, simulateInWorkers } from '@/lib/worker';
import type { CommandContext } from './context';
import { loadDocument } from './save-edited';

export interface ForecastOptions {
  readonly runs: number;
  readonly seed: number;
  readonly assumptions?: Assumptions;
  readonly signal?: AbortSignal;
  /** 0 to 1 of the runs. */
  readonly onProgress?: (share: number) => void;
}

/** Four weeks of sessions, so many times, after the last planned one. */
const REPEATS = 4;
/** Runs behind the worth of a saving, and threats it is worked out for. */
const WORTH_RUNS = 600;
const WORTH_FOR = 4;
const WORTH_FOR_TRADES = 2;

const tellLearned = (kinds: number): string => (kinds === 0
  ? 'Too little work is finished to learn from, so estimates are taken as typed, with that spread.'
  : `Factor and spread of ${kinds} ${kinds === 1 ? 'kind' : 'kinds'} of work are learned from the time logs of finished work.`);

/** Mean minutes that a saving brings the finish forward, under the same luck; null: stopped. */
async function weigh(saved: ForecastInput, block: RunBlock, signal: AbortSignal | undefined): Promise<number | null> {
  const runs = await simulateInWorkers(saved, Math.min(WORTH_RUNS, block.count), signal && { signal });
  return runs.ok ? worthOf(block, runs.value) : null;
}

/** What threatens the finish, work and trades, each with what a saving there is worth as far as it is looked at. */
async function findWorth(document: SeriesDocument, input: ForecastInput, block: RunBlock, signal: AbortSignal | undefined): Promise<Pick<ForecastResult, 'threats'> & { readonly trades: readonly TradeThreat[] }> {
  const threats: Threat[] = [];
  for (const threat of findThreats(input, block)) {
    threats.push(threats.length < WORTH_FOR ? { ...threat, worth: await weigh(withSaving(input, threat.subject), block, signal) } : threat);
  }
  const trades: TradeThreat[] = [];
  for (const trade of findTradeThreats(document, input, block)) {
    const isAsked = trades.length < WORTH_FOR_TRADES && trade.share > 0;
    const jobs = new Set(document.outsideJobs.filter(({ tradeId }) => tradeId === trade.tradeId).map(({ id }) => id));
    trades.push(isAsked ? { ...trade, worth: await weigh(withDaySaved(input, jobs), block, signal) } : trade);
  }
  return { threats, trades };
}

/**
 * Fails with the stops of the series, `no-accepted-plan`, `chance-out-of-range`, `assumption-below-zero`, `cancelled`, or what compiling
 * finds.
 */
export async function requestForecast(ctx: CommandContext, seriesId: string, options: ForecastOptions): Promise<Result<{ readonly forecast: SavedForecast }>> {
  const loaded = await loadDocument(ctx, seriesId);
  if (!loaded.ok) return loaded;
  const assumptions = checkAssumptions(options.assumptions ?? DEFAULT_ASSUMPTIONS);
  if (!assumptions.ok) return assumptions;
  const stops = listStops(loaded.value);
  if (stops.length > 0) return fail(stops);
  const plan = await ctx.storage.acceptedPlan(seriesId);
  if (plan === null) return fail([issue('no-accepted-plan', 'There is no accepted plan, so there is nothing to give odds on.', 'Make a plan and accept it.')]);
  prepareSimulation();
  const now = ctx.now();
  const { document, lastPlanned } = continueSessions(await closeOnHolidays(loaded.value, now), REPEATS);
  const compiled = compilePlan({ document, now, previousBlocks: new Map(), lateFor: lateTasksOf(plan.result) });
  if (!compiled.ok) return compiled;
  const factors = learnedFactors(loaded.value);
  const input = findChances(compiled.value, plan.result, { assumptions: assumptions.value, factors, seed: options.seed });
  const { onProgress, signal } = options;
  const simulated = await simulateInWorkers(input, options.runs, {
    ...(signal && { signal }),
    onProgress: (done) => onProgress?.(done / options.runs),
  });
  if (!simulated.ok) return simulated;
  const time = ctx.now() - now;
  const worth = await findWorth(document, input, simulated.value, signal);
  if (signal?.aborted === true) return fail([issue('cancelled', 'The forecast was stopped. Nothing was saved.', 'Start it again.')]);
  const told = tellResult(compiled.value, input, simulated.value, {
    time, lastPlanned, ...worth,
    assumptions: [...tellAssumptions(assumptions.value), tellLearned(factors.size), 'After the last planned session, those of the last four weeks go on.'],
  });
  const saved = await ctx.storage.saveForecast(seriesId, { kind: 'forecast', name: '', planNumber: plan.number, madeAt: now, result: told });
  return saved.ok ? ok({ forecast: saved.value }) : saved;
}
