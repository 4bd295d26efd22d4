import type { SavedPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { CommandContext } from './context';

/**
 * Makes a draft the plan that counts; the one accepted before is kept as superseded.
 * Fails with `no-such-plan`, `plan-not-a-draft`, or `plan-out-of-date` when what it is made from has changed since.
 */
export async function acceptPlan(ctx: CommandContext, seriesId: string, number: number): Promise<Result<{ readonly plan: SavedPlan }>> {
  const [plan, document] = await Promise.all([ctx.storage.getPlan(seriesId, number), ctx.storage.loadSeries(seriesId)]);
  if (!plan || !document) return fail([issue('no-such-plan', `There is no plan ${number} of this series.`, 'Make a new plan.')]);
  if (plan.status !== 'draft') {
    return fail([issue('plan-not-a-draft', `Plan ${number} is ${plan.status}; only a draft can be accepted.`, 'Make a new plan.')]);
  }
  if (plan.basedOnChange < document.planChange) {
    const message = `Plan ${number} was made before a later change of what it is made from, so it may break what you changed.`;
    return fail([issue('plan-out-of-date', message, 'Re-plan, then accept the new draft.')]);
  }
  const saved = await ctx.storage.setPlanStatus(seriesId, number, 'accepted', ctx.now());
  return saved.ok ? ok({ plan: saved.value }) : saved;
}
