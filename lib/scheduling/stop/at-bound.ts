import type { StopRule } from './rule';

/** Stops once everything is placed, nothing is late or moved, and no schedule can end earlier. */
export function atBound(): StopRule {
  return {
    share: ({ best, lowerBound }) => {
      if (best === null || best.unplaced > 0 || best.tardiness > 0 || best.moved > 0) return 0;
      return best.makespan <= lowerBound ? 1 : 0;
    },
  };
}
