'use server';

import { revalidatePath } from 'next/cache';
import type { Outcome } from '@/app/_actions/outcome';
import { runAction } from '@/app/_actions/run';
import { acceptPlan, discardPlan, moveGoalBy, openContext, requestRepair, type AcceptedWords } from '@/lib/commands';
import type { Issue } from '@/lib/result';

/** What a decision on a plan answers: the issues that refuse it, none when it is done. */
export interface PlanOutcome {
  readonly issues: readonly Issue[];
}

/** Makes a draft the plan that counts. */
export async function acceptPlanAction(seriesId: string, number: number, words: AcceptedWords): Promise<PlanOutcome> {
  const result = await acceptPlan(await openContext(), seriesId, number, words);
  if (!result.ok) return { issues: result.error };
  revalidatePath(`/s/${seriesId}`, 'layout');
  return { issues: [] };
}

/** Mends the accepted plan as a draft. */
export async function mendPlanAction(seriesId: string): Promise<PlanOutcome> {
  const result = await requestRepair(await openContext(), seriesId);
  if (!result.ok) return { issues: result.error };
  revalidatePath(`/s/${seriesId}`, 'layout');
  return { issues: [] };
}

/** Puts a draft aside. */
export async function discardPlanAction(seriesId: string, number: number): Promise<PlanOutcome> {
  const result = await discardPlan(await openContext(), seriesId, number);
  if (!result.ok) return { issues: result.error };
  revalidatePath(`/s/${seriesId}`, 'layout');
  return { issues: [] };
}

/** Has a goal of plans count more (-1) or less (1) than its neighbour. */
export async function moveGoalAction(seriesId: string, revision: number, goal: string, by: -1 | 1): Promise<Outcome> {
  return runAction(seriesId, (context) => moveGoalBy(context, seriesId, revision, goal, by < 0 ? -1 : 1));
}
