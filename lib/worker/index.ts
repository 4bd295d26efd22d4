export { solveInWorker, type WorkerHooks } from './client';
export type { StopSpec, WorkerOptions } from './protocol';
export { prepareSimulation, simulateInWorkers, type SimulationHooks } from './simulation';
