/** What a new plan puts first. Work without a place always comes before all of these. */
/**
 * `lateness`: episodes recorded after they are due. `bank`: weeks with too few finished episodes in hand.
 * `changes`: work moved against the accepted plan. `finish`: end of the build. `heating`: cost of heated sessions.
 */
export const PLAN_GOALS = ['lateness', 'bank', 'changes', 'finish', 'heating'] as const;
export type PlanGoal = (typeof PLAN_GOALS)[number];

/** What each goal is called within a sentence. */
export const GOAL_NAMES: Readonly<Record<PlanGoal, string>> = {
  lateness: 'nothing late', bank: 'episodes in hand', changes: 'few changes', finish: 'early finish', heating: 'little heating',
};

/** The goals of a series, the first outweighs all after it. */
export function goalsOf(series: { readonly goals?: readonly PlanGoal[] | undefined }): readonly PlanGoal[] {
  return series.goals ?? PLAN_GOALS;
}

/** The order with one goal a place further up (-1) or down (1); the same order where there is no such place. */
export function moveGoal(goals: readonly PlanGoal[], goal: PlanGoal, by: -1 | 1): readonly PlanGoal[] {
  const at = goals.indexOf(goal);
  const other = goals[at + by];
  if (at < 0 || other === undefined) return goals;
  return goals.map((each) => (each === goal ? other : each === other ? goal : each));
}
