import { describe, expect, it } from 'vitest';
import { solveCore, type CoreInstance } from '@/lib/scheduling/proof';
import { listCliques } from '@/lib/scheduling/proof/cliques';
import { closeRelations } from '@/lib/scheduling/proof/closure';

/** Three pieces of work of which each two meet at another machine, and a fourth that needs none. */
const triangle: CoreInstance = {
  durations: [4, 5, 6, 2],
  capacities: [1, 1, 1],
  demands: [[1, 1, 0], [0, 1, 1], [1, 0, 1], [0, 0, 0]],
  relations: [],
  horizon: 40,
};

const cliquesOf = (instance: CoreInstance) => listCliques(instance, closeRelations(instance));

describe('work that never runs at the same time', () => {
  it('is found across resources, although no resource holds all of it', () => {
    expect(cliquesOf(triangle)).toEqual([[0, 1, 2]]);
  });

  it('bounds the whole before anything is decided', () => {
    expect(solveCore(triangle, { seed: 1, stop: () => true })).toMatchObject({ lowerBound: 15, conflicts: 0 });
    const apart = { ...triangle, capacities: [2, 1, 1] };
    expect(solveCore(apart, { seed: 1, stop: () => true }).lowerBound).toBeLessThan(15);
  });

  it('counts work that lags keep apart', () => {
    const relations = [{ from: 0, to: 3, lag: 4 }, { from: 3, to: 1, lag: 2 }, { from: 3, to: 2, lag: 2 }];
    expect(cliquesOf({ ...triangle, relations })).toEqual([[0, 1, 2, 3]]);
  });

  it('is left aside where a lag is a minute too short to keep it apart', () => {
    const relations = [{ from: 0, to: 3, lag: 3 }, { from: 3, to: 1, lag: 2 }, { from: 3, to: 2, lag: 2 }];
    expect(cliquesOf({ ...triangle, relations })).not.toContainEqual([0, 1, 2, 3]);
  });

  it('is not looked for in what fills less than half of the shortest plan', () => {
    const lone = { ...triangle, durations: [4, 5, 6, 31] };
    expect(cliquesOf(lone)).toEqual([]);
    expect(cliquesOf({ ...lone, durations: [4, 5, 6, 30] })).toEqual([[0, 1, 2]]);
  });
});
