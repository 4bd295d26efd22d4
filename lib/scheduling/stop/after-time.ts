import type { StopRule } from './rule';

/** Stops after so many milliseconds of the given clock, counted from the first time it is asked. */
export function afterTime(clock: () => number, milliseconds: number): StopRule {
  let begin: number | null = null;
  return {
    share: () => {
      begin ??= clock();
      return milliseconds <= 0 ? 1 : Math.min(1, (clock() - begin) / milliseconds);
    },
  };
}
