import type { RunBlock } from '@/lib/simulation';
import type { Issue, Result } from '@/lib/result';
import type { Problem, Progress, Solution } from '@/lib/scheduling';
import type { Luck, SharedInput } from './shared-tables';

/** When to stop, as data: after so many schedules, or after so many milliseconds. */
export type StopSpec =
  | { readonly kind: 'work'; readonly schedules: number }
  | { readonly kind: 'time'; readonly milliseconds: number };

export interface WorkerOptions {
  readonly stop: StopSpec;
  /** A whole number. With a stop by work, the same seed gives the same answer on any machine. */
  readonly seed: number;
}

/** What the thread is started with. */
export interface WorkerTask {
  readonly problem: Problem;
  readonly options: WorkerOptions;
  /** One 32-bit cell; set to 1 to ask for the best so far. */
  readonly cancelCell: SharedArrayBuffer;
}

/** What the thread posts. */
export type WorkerMessage =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'done'; readonly result: Result<Solution, readonly Issue[]> };

/** What a simulation thread is asked for: runs, as long as there are any that no thread has taken. */
export interface SimulationTask {
  /** Null: the forecast it worked on last. */
  readonly shared: SharedInput | null;
  readonly luck: Luck;
  /** Runs asked for of all threads together. */
  readonly runs: number;
  /** One 32-bit cell: the first run that nobody has taken. */
  readonly nextCell: SharedArrayBuffer;
  /** One 32-bit cell; set to 1 to stop. */
  readonly cancelCell: SharedArrayBuffer;
}

/** What a simulation thread posts. */
export type SimulationMessage = { readonly kind: 'block'; readonly block: RunBlock } | { readonly kind: 'done' };
