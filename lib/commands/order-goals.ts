import { changeRecords, GOAL_NAMES, goalsOf, moveGoal, PLAN_GOALS } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/** Moves a goal of plans one place up (-1) or down (1). Fails with `unknown-goal`, `stale-record`, or `nothing-changed` at either end. */
export async function moveGoalBy(context: SeriesContext, seriesId: string, revision: number, goalText: string, by: -1 | 1): Promise<Result<Saved>> {
  const goal = PLAN_GOALS.find((known) => known === goalText);
  if (goal === undefined) return fail([issue('unknown-goal', `Plans know no goal “${goalText.slice(0, 40)}”.`, `Choose one of: ${PLAN_GOALS.join(', ')}.`)]);
  return editSeries(context, seriesId, (document) =>
    changeRecords(document, [{ ...document.series, revision, goals: moveGoal(goalsOf(document.series), goal, by) }], by < 0 ? `Plans: ${GOAL_NAMES[goal]} counts more` : `Plans: ${GOAL_NAMES[goal]} counts less`));
}
