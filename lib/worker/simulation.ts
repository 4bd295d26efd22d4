import { fail, issue, ok, type Result } from '@/lib/result';
import { joinBlocks, type ForecastInput, type RunBlock } from '@/lib/simulation';
import { SharedForecast } from './shared-tables';
import { prepareThreads, runInThread } from './simulation-threads';

/** Threads at once; more than the machine has cores would only wait for each other. */
const MOST_THREADS = 4;

/** Threads, when nothing else is said. */
const THREADS = 2;

/** To be called when a forecast is about to be asked for: its threads start meanwhile. */
export const prepareSimulation = (): void => prepareThreads(THREADS);

export interface SimulationHooks {
  readonly signal?: AbortSignal;
  /** Runs done so far, of all. */
  readonly onProgress?: (done: number) => void;
  /** Threads; left out: two. */
  readonly threads?: number;
}

/** Forecasts laid out already, by their problem: another luck on the same one crosses alone. */
const laidOut = new WeakMap<ForecastInput['problem'], SharedForecast>();

/**
 * Runs 0 to `runs` of a forecast in threads of their own. The answer does not depend on how many there are.
 * Fails with `cancelled` when the signal fires: the runs so far are thrown away.
 * @throws Error (rejects) when a thread fails: a bug.
 */
export async function simulateInWorkers(input: ForecastInput, runs: number, { onProgress, signal, threads = THREADS }: SimulationHooks = {}): Promise<Result<RunBlock>> {
  const cancelCell = new SharedArrayBuffer(4);
  const nextCell = new SharedArrayBuffer(4);
  const cancel = () => {
    Atomics.store(new Int32Array(cancelCell), 0, 1);
  };
  if (signal?.aborted === true) cancel();
  else signal?.addEventListener('abort', cancel, { once: true });
  const count = Math.max(1, Math.min(MOST_THREADS, threads, runs));
  const forecast = laidOut.get(input.problem) ?? new SharedForecast(input);
  laidOut.set(input.problem, forecast);
  const luck = forecast.luckOf(input);
  const blocks: RunBlock[] = [];
  let done = 0;
  try {
    await Promise.all(Array.from({ length: count }, () => runInThread(forecast, { luck, runs, nextCell, cancelCell }, (block) => {
      blocks.push(block);
      done += block.count;
      onProgress?.(done);
    })));
  } finally {
    signal?.removeEventListener('abort', cancel);
  }
  if (signal?.aborted === true) return fail([issue('cancelled', 'The forecast was stopped. Nothing was saved.', 'Start it again.')]);
  return ok(joinBlocks(blocks));
}
