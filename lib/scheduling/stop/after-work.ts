import type { StopRule } from './rule';

/** Stops after so many schedules: the same answer on every machine. */
export function afterWork(schedules: number): StopRule {
  return { share: (state) => (schedules <= 0 ? 1 : Math.min(1, state.schedulesTried / schedules)) };
}
