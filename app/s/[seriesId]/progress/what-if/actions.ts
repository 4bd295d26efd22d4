'use server';

import { revalidatePath } from 'next/cache';
import type { Outcome } from '@/app/_actions/outcome';
import { runAction } from '@/app/_actions/run';
import { acceptWhatIf, keepVariant, openContext, removeVariant, requestPlan, type WhatIfInput } from '@/lib/commands';
import type { Issue } from '@/lib/result';

const PLAN_MS = 3000;

/** Saves what happened and the change chosen, and makes a draft plan from it. The accepted plan stays until the draft is accepted. */
export async function acceptWhatIfAction(seriesId: string, input: WhatIfInput): Promise<Outcome> {
  const outcome = await runAction(seriesId, (context) => acceptWhatIf(context, seriesId, input));
  if (!outcome.ok) return outcome;
  const planned = await requestPlan(await openContext(), seriesId, { milliseconds: PLAN_MS, seed: 1 });
  revalidatePath(`/s/${seriesId}`, 'layout');
  // The change stands without a draft too; the plans page offers to plan again.
  return planned.ok ? outcome : { ok: true, saved: { ...outcome.saved, warnings: [...outcome.saved.warnings, ...planned.error.map(({ message }) => message)] } };
}

/** Keeps the what-if under a name. Empty: done. */
export async function keepVariantAction(seriesId: string, name: string, input: WhatIfInput): Promise<readonly Issue[]> {
  const result = await keepVariant(await openContext(), seriesId, name, input);
  if (!result.ok) return result.error;
  revalidatePath(`/s/${seriesId}/progress/what-if`);
  return [];
}

/** Takes a kept variant out. Empty: done. */
export async function removeVariantAction(seriesId: string, number: number): Promise<readonly Issue[]> {
  const result = await removeVariant(await openContext(), seriesId, number);
  if (!result.ok) return result.error;
  revalidatePath(`/s/${seriesId}/progress/what-if`);
  return [];
}
