import { Worker } from 'node:worker_threads';
import { joinBlocks, type ForecastInput, type RunBlock } from '@/lib/forecast';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { SimulationMessage, SimulationTask } from './protocol';
import { shareTables } from './shared-tables';

/** Threads at once; more than the machine has cores would only wait for each other. */
const MOST_THREADS = 4;

export interface SimulationHooks {
  readonly signal?: AbortSignal;
  /** Runs done so far, of all. */
  readonly onProgress?: (done: number) => void;
  /** Threads; left out: two. */
  readonly threads?: number;
}

/** Starts a thread. The bundler knows the first form; outside the bundle the thread has to load TypeScript itself. */
function startThread(task: SimulationTask): Worker {
  if (process.env.NEXT_RUNTIME !== undefined) return new Worker(new URL('./simulation-entry.ts', import.meta.url), { workerData: task });
  const root = import.meta.url.slice(0, import.meta.url.lastIndexOf('/lib/worker/') + 1);
  return new Worker(new URL(`${root}lib/worker/simulation-bootstrap.mjs`), {
    workerData: task,
    execArgv: [],
    env: { ...process.env, TSX_TSCONFIG_PATH: decodeURIComponent(new URL(`${root}tsconfig.json`).pathname) },
  });
}

function runThread(task: SimulationTask, onBlock: (block: RunBlock) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = startThread(task);
    worker.on('message', (message: SimulationMessage) => {
      if (message.kind === 'block') onBlock(message.block);
      else {
        resolve();
        void worker.terminate();
      }
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`A simulation thread ended with code ${code} before it was done.`)));
  });
}

/**
 * Runs 0 to `runs` of a forecast in threads of their own. The answer does not depend on how many there are.
 * Fails with `cancelled` when the signal fires: the runs so far are thrown away.
 * @throws Error (rejects) when a thread fails: a bug.
 */
export async function simulateInWorkers(input: ForecastInput, runs: number, { onProgress, signal, threads = 2 }: SimulationHooks = {}): Promise<Result<RunBlock>> {
  const cancelCell = new SharedArrayBuffer(4);
  const cancel = () => {
    Atomics.store(new Int32Array(cancelCell), 0, 1);
  };
  if (signal?.aborted === true) cancel();
  else signal?.addEventListener('abort', cancel, { once: true });
  const count = Math.max(1, Math.min(MOST_THREADS, threads, runs));
  const shared = shareTables(input);
  const blocks: RunBlock[] = [];
  let done = 0;
  try {
    await Promise.all(Array.from({ length: count }, (_, k) => {
      const first = Math.floor((runs * k) / count);
      return runThread({ shared, first, count: Math.floor((runs * (k + 1)) / count) - first, cancelCell }, (block) => {
        blocks.push(block);
        done += block.count;
        onProgress?.(done);
      });
    }));
  } finally {
    signal?.removeEventListener('abort', cancel);
  }
  if (signal?.aborted === true) return fail([issue('cancelled', 'The forecast was stopped. Nothing was saved.', 'Start it again.')]);
  return ok(joinBlocks(blocks));
}
