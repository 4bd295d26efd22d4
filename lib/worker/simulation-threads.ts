/** Simulation threads that stay a while: a second forecast, or what a saving is worth, need not wait for one to start. */
import { Worker } from 'node:worker_threads';
import type { RunBlock } from '@/lib/simulation';
import type { SimulationMessage, SimulationTask } from './protocol';
import type { SharedForecast } from './shared-tables';

/** How long a thread waits for more work. */
const IDLE_MS = 60_000;

interface Thread {
  readonly worker: Worker;
  /** What it worked on last, which need not cross again. */
  held: SharedForecast | null;
  timer: NodeJS.Timeout | null;
}

const idle: Thread[] = [];

/** Starts a thread. The bundler knows the first form; outside the bundle the thread has to load TypeScript itself. */
function startWorker(): Worker {
  if (process.env.NEXT_RUNTIME !== undefined) return new Worker(new URL('./simulation-entry.ts', import.meta.url));
  const root = import.meta.url.slice(0, import.meta.url.lastIndexOf('/lib/worker/') + 1);
  return new Worker(new URL(`${root}lib/worker/simulation-bootstrap.mjs`), {
    execArgv: [],
    env: { ...process.env, TSX_TSCONFIG_PATH: decodeURIComponent(new URL(`${root}tsconfig.json`).pathname) },
  });
}

/** A thread that waits, if possible one that knows the forecast; else a new one. */
function takeThread(forecast: SharedForecast): Thread {
  const known = idle.findIndex(({ held }) => held === forecast);
  const [found] = idle.splice(Math.max(0, known), 1);
  if (found === undefined) return { worker: startWorker(), held: null, timer: null };
  if (found.timer !== null) clearTimeout(found.timer);
  found.worker.ref();
  return found;
}

/** Keeps a thread for a while. It holds up nobody who wants to end the program. */
function leaveThread(thread: Thread): void {
  thread.worker.unref();
  thread.timer = setTimeout(() => {
    idle.splice(idle.indexOf(thread), 1);
    void thread.worker.terminate();
  }, IDLE_MS).unref();
  idle.push(thread);
}

/** Starts threads that will be needed soon, unless they wait already: they load what they run while the caller gets it ready. */
export function prepareThreads(count: number): void {
  while (idle.length < count) leaveThread({ worker: startWorker(), held: null, timer: null });
}

/** Waits for what a thread tells. @throws Error (rejects) when it fails */
function hear({ worker }: Thread, onBlock: (block: RunBlock) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const onMessage = (message: SimulationMessage): void => {
      if (message.kind === 'block') onBlock(message.block);
      else settle(resolve);
    };
    const onError = (error: unknown): void => settle(() => reject(error));
    const onExit = (code: number): void => settle(() => reject(new Error(`A simulation thread ended with code ${code} before it was done.`)));
    const settle = (end: () => void): void => {
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
      end();
    };
    worker.on('message', onMessage).on('error', onError).on('exit', onExit);
  });
}

/** Runs a share in a thread. @throws Error (rejects) when the thread fails: a bug. */
export async function runInThread(forecast: SharedForecast, share: Omit<SimulationTask, 'shared'>, onBlock: (block: RunBlock) => void): Promise<void> {
  const thread = takeThread(forecast);
  const heard = hear(thread, onBlock);
  const task: SimulationTask = { ...share, shared: thread.held === forecast ? null : forecast.shared };
  thread.worker.postMessage(task, []);
  thread.held = forecast;
  await heard;
  leaveThread(thread);
}
