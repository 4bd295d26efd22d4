import type { SavedPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { z } from 'zod';
import type { CommandContext } from './context';

const LONGEST_WHY = 300;
const LONGEST_NAME = 80;

/** Who accepts, by name, and why; both may be left out. */
export interface AcceptedWords {
  readonly by: string;
  readonly why: string;
}

const said = (longest: number) => z.string().trim().max(longest).transform((text) => (text === '' ? null : text));
const wordsSchema = z.object({ by: said(LONGEST_NAME), why: said(LONGEST_WHY) });

/**
 * Makes a draft the plan that counts; the one accepted before is kept as superseded.
 * Fails with `no-such-plan`, `plan-not-a-draft`, `accepted-words` for words that are too long, or `plan-out-of-date` when what it is made from has changed since.
 */
export async function acceptPlan(ctx: CommandContext, seriesId: string, number: number, words: AcceptedWords = { by: '', why: '' }): Promise<Result<{ readonly plan: SavedPlan }>> {
  const read = wordsSchema.safeParse(words);
  if (!read.success) return fail([issue('accepted-words', `The reason may have ${LONGEST_WHY} characters and the name ${LONGEST_NAME}.`, 'Say it in fewer words.', { path: ['why'] })]);
  const [plan, document] = await Promise.all([ctx.storage.getPlan(seriesId, number), ctx.storage.loadSeries(seriesId)]);
  if (!plan || !document) return fail([issue('no-such-plan', `There is no plan ${number} of this series.`, 'Make a new plan.')]);
  if (plan.status !== 'draft') {
    return fail([issue('plan-not-a-draft', `Plan ${number} is ${plan.status}; only a draft can be accepted.`, 'Make a new plan.')]);
  }
  if (plan.basedOnChange < document.planChange) {
    const message = `Plan ${number} was made before a later change of what it is made from, so it may break what you changed.`;
    return fail([issue('plan-out-of-date', message, 'Re-plan, then accept the new draft.')]);
  }
  const saved = await ctx.storage.setPlanStatus(seriesId, number, 'accepted', ctx.now(), read.data);
  return saved.ok ? ok({ plan: saved.value }) : saved;
}
