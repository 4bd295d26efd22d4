/** Decisions on a what-if: make it so, or keep it under a name. */
import { changeBetween } from '@/lib/build';
import { closeOnHolidays } from '@/lib/exchange';
import { changeFor, findOutcome, isRemedyKind, isWhatIfKind, type RemedyKind, type SavedForecast, type Situation, type WhatIf } from '@/lib/forecast';
import { openPlan } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { z } from 'zod';
import type { CommandContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { loadReadings } from './standing-plan';

/** What happened, and the small change chosen. */
export interface WhatIfInput {
  readonly whatIfs: readonly { readonly kind: string; readonly target: string }[];
  readonly remedy: string | null;
}

const LONGEST_NAME = 80;

function readInput(input: WhatIfInput): Result<{ readonly whatIfs: readonly WhatIf[]; readonly remedy: RemedyKind | null }> {
  const whatIfs: WhatIf[] = [];
  for (const { kind, target } of input.whatIfs) {
    if (!isWhatIfKind(kind)) return fail([issue('what-if-unknown', `There is no what-if "${kind}".`, 'Choose one from the list.')]);
    whatIfs.push({ kind, target });
  }
  if (whatIfs.length === 0) return fail([issue('what-if-missing', 'Nothing was chosen.', 'Choose what happened.')]);
  if (input.remedy === null) return ok({ whatIfs, remedy: null });
  if (!isRemedyKind(input.remedy)) return fail([issue('remedy-unknown', `There is no change "${input.remedy}".`, 'Choose one from the list.')]);
  return ok({ whatIfs, remedy: input.remedy });
}

async function readSituation(ctx: CommandContext, seriesId: string): Promise<Result<Situation & { readonly planNumber: number }>> {
  const loaded = await loadDocument(ctx, seriesId);
  if (!loaded.ok) return loaded;
  const plan = await ctx.storage.acceptedPlan(seriesId);
  return ok({ document: loaded.value, plan: plan === null ? null : openPlan(loaded.value, plan.result), planNumber: plan?.number ?? 0, now: ctx.now(), readings: await loadReadings(ctx.storage, loaded.value) });
}

/**
 * Saves what happened and the change chosen as one change of the series, which can be undone. The plan stays as it is until the next one
 * is accepted. Fails with the reasons of the what-if or the stops that it brings.
 */
export async function acceptWhatIf(ctx: CommandContext, seriesId: string, input: WhatIfInput): Promise<Result<Saved>> {
  const read = readInput(input);
  if (!read.ok) return read;
  const at = await readSituation(ctx, seriesId);
  if (!at.ok) return at;
  const changed = changeFor(at.value, read.value.whatIfs, read.value.remedy);
  if (!changed.ok) return changed;
  const label = changed.value.words.join('; ').slice(0, 200);
  return saveEdited(ctx, at.value.document, changeBetween(at.value.document, changed.value.document, label));
}

const nameSchema = z.string().trim().min(1).max(LONGEST_NAME);

/** Keeps a what-if with what came of it. Fails with `variant-name` or the reasons of the what-if. */
export async function keepVariant(ctx: CommandContext, seriesId: string, name: string, input: WhatIfInput): Promise<Result<{ readonly variant: SavedForecast }>> {
  const named = nameSchema.safeParse(name);
  if (!named.success) return fail([issue('variant-name', name.trim() === '' ? 'The variant has no name.' : `The name is longer than ${LONGEST_NAME} characters.`, 'Type a short name.', { path: ['name'] })]);
  const read = readInput(input);
  if (!read.ok) return read;
  const at = await readSituation(ctx, seriesId);
  if (!at.ok) return at;
  const effect = findOutcome({ ...at.value, document: await closeOnHolidays(at.value.document, at.value.now) }, read.value.whatIfs, read.value.remedy);
  if (!effect.ok) return effect;
  const { diff, plan, standing, words } = effect.value;
  const saved = await ctx.storage.saveForecast(seriesId, {
    kind: 'variant', name: named.data, planNumber: at.value.planNumber, madeAt: at.value.now,
    variant: { ...read.value, words, standing, episodes: plan.episodes, summary: diff.summary, changes: diff.changes.map(({ text, title }) => ({ text, title })) },
  });
  return saved.ok ? ok({ variant: saved.value }) : saved;
}

/** Takes a kept variant out. Fails with `no-such-variant`. */
export async function removeVariant(ctx: CommandContext, seriesId: string, number: number): Promise<Result<void>> {
  if (await ctx.storage.removeForecast(seriesId, number)) return ok(undefined);
  return fail([issue('no-such-variant', `There is no variant ${number} of this series.`, 'Load the page again.')]);
}
