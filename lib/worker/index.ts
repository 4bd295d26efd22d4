export { solveInWorker, type WorkerHooks } from './client';
export type { StopSpec, WorkerOptions } from './protocol';
export { simulateInWorkers, type SimulationHooks } from './simulation';
