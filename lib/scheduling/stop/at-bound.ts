import type { StopRule } from './rule';

/**
 * Stops once everything is placed, nothing is late, short, moved or paid for, and no schedule can end earlier by more than
 * the gap: a share of the bound, 0 for a proof.
 */
export function atBound(gap = 0): StopRule {
  return {
    share: ({ best, lowerBound }) => {
      if (best === null || best.unplaced > 0 || best.tardiness > 0 || best.shortages > 0 || best.moved > 0 || best.cost > 0) return 0;
      return best.makespan <= lowerBound * (1 + gap) ? 1 : 0;
    },
  };
}
