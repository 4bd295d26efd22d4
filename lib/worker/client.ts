import { Worker } from 'node:worker_threads';
import { fail, issue, type Issue, type Result } from '@/lib/result';
import type { Problem, Progress, Solution } from '@/lib/scheduling';
import type { WorkerMessage, WorkerOptions, WorkerTask } from './protocol';

/** Time the thread gets to hand over its best after a cancel; it looks at the cell after each schedule. */
const GRACE_MS = 2000;

export interface WorkerHooks {
  /** Cancels: the promise resolves with the best found so far. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

/** Starts the thread. The bundler knows the first form; outside the bundle the thread has to load TypeScript itself. */
function startThread(task: WorkerTask): Worker {
  if (process.env.NEXT_RUNTIME !== undefined) return new Worker(new URL('./entry.ts', import.meta.url), { workerData: task });
  const root = import.meta.url.slice(0, import.meta.url.lastIndexOf('/lib/worker/') + 1);
  return new Worker(new URL(`${root}lib/worker/bootstrap.mjs`), {
    workerData: task,
    execArgv: [],
    // The loader finds the path alias there, wherever the process was started.
    env: { ...process.env, TSX_TSCONFIG_PATH: decodeURIComponent(new URL(`${root}tsconfig.json`).pathname) },
  });
}

/**
 * Solves in a worker thread of its own, so that pages stay quick meanwhile.
 * Errors: the issues of a problem that is not well formed; `cancelled` when the thread gave nothing after a cancel.
 * @throws Error (rejects) when the thread fails: a bug.
 */
export function solveInWorker(problem: Problem, options: WorkerOptions, hooks: WorkerHooks = {}): Promise<Result<Solution, readonly Issue[]>> {
  const cancelCell = new SharedArrayBuffer(4);
  const task: WorkerTask = { problem, options, cancelCell };
  const { onProgress, signal } = hooks;
  return new Promise((resolve, reject) => {
    const worker = startThread(task);
    let grace: NodeJS.Timeout | undefined;
    const cancel = () => {
      Atomics.store(new Int32Array(cancelCell), 0, 1);
      grace = setTimeout(() => {
        finish();
        resolve(fail([issue('cancelled', 'Planning was cancelled before a first plan was found.', 'Plan again.')]));
      }, GRACE_MS);
    };
    const finish = () => {
      clearTimeout(grace);
      signal?.removeEventListener('abort', cancel);
      void worker.terminate();
    };
    worker.on('message', (message: WorkerMessage) => {
      if (message.kind === 'progress') {
        onProgress?.(message.progress);
        return;
      }
      finish();
      resolve(message.result);
    });
    worker.on('error', (error) => {
      finish();
      reject(error);
    });
    worker.on('exit', (code) => {
      finish();
      reject(new Error(`The planning thread ended with code ${code} before it answered.`));
    });
    if (signal?.aborted === true) cancel();
    else signal?.addEventListener('abort', cancel, { once: true });
  });
}
