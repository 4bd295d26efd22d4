/** Runs in a simulation thread: takes block after block that no other thread has, with progress; looks at the cancel cell between blocks. Then it waits for more. */
import { parentPort } from 'node:worker_threads';
import { Simulation } from '@/lib/simulation';
import type { SimulationMessage, SimulationTask } from './protocol';
import { gatherTables } from './shared-tables';

/** Runs between two looks at the cell: about a twentieth of a second. */
const BLOCK = 100;

/** The problem worked last, ready to run. */
let simulation: Simulation | null = null;

function runShare(task: SimulationTask, post: (message: SimulationMessage) => void): void {
  const cancel = new Int32Array(task.cancelCell);
  const next = new Int32Array(task.nextCell);
  if (task.shared !== null) simulation = new Simulation(gatherTables(task.shared));
  if (simulation === null) throw new Error('A simulation thread was asked to go on with a forecast it never had.');
  simulation.setLuck(task.luck);
  for (;;) {
    if (Atomics.load(cancel, 0) === 1) break;
    const first = Atomics.add(next, 0, BLOCK);
    if (first >= task.runs) break;
    post({ kind: 'block', block: simulation.runMany(first, Math.min(BLOCK, task.runs - first)) });
  }
  post({ kind: 'done' });
}

const port = parentPort;
port?.on('message', (task: SimulationTask) => runShare(task, (message) => port.postMessage(message)));
