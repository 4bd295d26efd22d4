'use server';

import { revalidatePath } from 'next/cache';
import { correctEntry, importTakes, markFlashback, openContext, planPickup, waiveFinding, withdrawEntry, type CommandContext, type Correction } from '@/lib/commands';
import type { Issue, Result } from '@/lib/result';
import { runAction } from '@/app/_actions/run';
import type { Outcome } from '@/app/_actions/outcome';

/** What an action on the log answers: it adds to the log, so there is nothing to undo. */
export type LogOutcome = { readonly ok: true; readonly words: string } | { readonly ok: false; readonly issues: readonly Issue[] };

async function onLog<T>(seriesId: string, run: (context: CommandContext) => Promise<Result<T>>, say: (value: T) => string): Promise<LogOutcome> {
  const result = await run(await openContext());
  if (!result.ok) return { ok: false, issues: result.error };
  revalidatePath(`/s/${seriesId}/log`, 'layout');
  return { ok: true, words: say(result.value) };
}

export async function correctEntryAction(seriesId: string, entryId: string, author: string, correction: Correction): Promise<LogOutcome> {
  return onLog(seriesId, (context) => correctEntry(context, seriesId, entryId, author, correction), ({ warnings }) => ['Corrected. The entry as it was stays in the log.', ...warnings.map(({ message }) => message)].join(' '));
}

export async function withdrawEntryAction(seriesId: string, entryId: string, author: string): Promise<LogOutcome> {
  return onLog(seriesId, (context) => withdrawEntry(context, seriesId, entryId, author), () => 'Taken back. It stays in the log and counts no more.');
}

export async function waiveFindingAction(seriesId: string, finding: { readonly check: number; readonly key: string }, author: string, reason: string): Promise<LogOutcome> {
  return onLog(seriesId, (context) => waiveFinding(context, seriesId, { check: finding.check, key: finding.key }, author, reason), () => 'Let pass, with the reason in the log.');
}

export async function importTakesAction(seriesId: string, text: string, author: string): Promise<LogOutcome> {
  return onLog(seriesId, (context) => importTakes(context, seriesId, text, author), ({ added, known, warnings }) =>
    [`${added} ${added === 1 ? 'take' : 'takes'} added, ${known} there already.`, ...warnings.slice(0, 3).map(({ message }) => message)].join(' '));
}

export async function markFlashbackAction(seriesId: string, segmentId: string, revision: number): Promise<Outcome> {
  return runAction(seriesId, (context) => markFlashback(context, seriesId, segmentId, revision));
}

export async function planPickupAction(seriesId: string, key: string): Promise<Outcome> {
  return runAction(seriesId, (context) => planPickup(context, seriesId, key));
}
