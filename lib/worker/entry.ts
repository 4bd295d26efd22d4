/** Runs in the worker thread: solves the one problem it is started with, posts progress, then the answer. */
import { parentPort, workerData } from 'node:worker_threads';
import { afterTime, afterWork, solve } from '@/lib/scheduling';
import type { WorkerMessage, WorkerTask } from './protocol';

const PROGRESS_EVERY_MS = 100;

const clock = () => performance.now();

function runTask(task: WorkerTask, post: (message: WorkerMessage) => void): void {
  const { cancelCell, options, problem } = task;
  const cell = new Int32Array(cancelCell);
  let told = -Infinity;
  const result = solve(problem, {
    stop: options.stop.kind === 'work' ? afterWork(options.stop.schedules) : afterTime(clock, options.stop.milliseconds),
    seed: options.seed,
    signal: {
      get aborted() {
        return Atomics.load(cell, 0) === 1;
      },
    },
    onProgress: (progress) => {
      if (clock() - told < PROGRESS_EVERY_MS) return;
      told = clock();
      post({ kind: 'progress', progress });
    },
  });
  post({ kind: 'done', result });
}

const port = parentPort;
if (port !== null) runTask(workerData as WorkerTask, (message) => port.postMessage(message));
