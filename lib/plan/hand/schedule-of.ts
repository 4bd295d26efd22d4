/** A saved plan back as the engine's schedule, for questions about it as it stands. */
import type { Placement, Schedule } from '@/lib/scheduling';
import type { Compiled } from '../compile/compile';
import { errandResource, isWorkshopWork, personResource } from '../compile/names';
import type { PlanBlock, PlanResult } from '../model';

const TRIPS: readonly string[] = ['drop-off', 'collection'];

/** The work of a plan that is still to begin. What has begun, or is done, is in nobody's way; waits follow from the work. */
export function scheduleOf({ draft, problem }: Compiled, plan: PlanResult): Schedule {
  const known = new Set(problem.activities.map(({ id }) => id));
  const toPlacement = (block: PlanBlock): Placement => ({
    activity: block.id,
    start: draft.clock.down(block.start),
    end: draft.clock.up(block.end),
    pieces: block.pieces.map((piece) => ({ start: draft.clock.down(piece.start), end: draft.clock.up(piece.end) })),
    crew: block.crewIds.map(isWorkshopWork(block.kind) ? personResource : errandResource),
  });
  const placements = plan.blocks
    .filter((block) => (isWorkshopWork(block.kind) || TRIPS.includes(block.kind)) && known.has(block.id) && block.start >= draft.now)
    .map(toPlacement);
  const placed = new Set(placements.map(({ activity }) => activity));
  const unplaced = problem.activities.filter(({ id }) => !placed.has(id)).map(({ id }) => ({ activity: id, because: [], waitsFor: [] }));
  const score = { unplaced: unplaced.length, tardiness: 0, shortages: 0, moved: 0, makespan: Math.max(0, ...placements.map(({ end }) => end)), cost: 0, sumOfEnds: placements.reduce((sum, { end }) => sum + end, 0) };
  return { placements, unplaced, score };
}
