import type { SavedPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { CommandContext } from './context';

/** Puts a draft aside; it stays in the list of plans. Fails with `no-such-plan` or `plan-not-a-draft`. */
export async function discardPlan(ctx: CommandContext, seriesId: string, number: number): Promise<Result<{ readonly plan: SavedPlan }>> {
  const plan = await ctx.storage.getPlan(seriesId, number);
  if (!plan) return fail([issue('no-such-plan', `There is no plan ${number} of this series.`, 'Go back to the list of plans.')]);
  if (plan.status !== 'draft') {
    return fail([issue('plan-not-a-draft', `Plan ${number} is ${plan.status}; only a draft can be put aside.`, 'Leave it as it is.')]);
  }
  const saved = await ctx.storage.setPlanStatus(seriesId, number, 'discarded', ctx.now());
  return saved.ok ? ok({ plan: saved.value }) : saved;
}
