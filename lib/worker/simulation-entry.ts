/** Runs in a simulation thread: its share of the runs, in blocks, with progress; looks at the cancel cell between blocks. */
import { parentPort, workerData } from 'node:worker_threads';
import { Simulation } from '@/lib/forecast';
import type { SimulationMessage, SimulationTask } from './protocol';
import { gatherTables } from './shared-tables';

/** Runs between two looks at the cell: about a twentieth of a second. */
const BLOCK = 100;

function runShare(task: SimulationTask, post: (message: SimulationMessage) => void): void {
  const cell = new Int32Array(task.cancelCell);
  const simulation = new Simulation(gatherTables(task.shared));
  for (let done = 0; done < task.count; done += BLOCK) {
    if (Atomics.load(cell, 0) === 1) break;
    post({ kind: 'block', block: simulation.runMany(task.first + done, Math.min(BLOCK, task.count - done)) });
  }
  post({ kind: 'done' });
}

const port = parentPort;
if (port !== null) runShare(workerData as SimulationTask, (message) => port.postMessage(message));
