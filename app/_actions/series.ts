'use server';

import { revalidatePath } from 'next/cache';
import { createSeries, openContext, removeSeries } from '@/lib/commands';
import { readRecordForm, type DraftObject } from '@/lib/views';
import type { Issue } from '@/lib/result';

export interface SeriesMade {
  readonly ok: true;
  readonly seriesId: string;
}

/** What making or removing a series answers; neither is a change within a series. */
export type SeriesOutcome = SeriesMade | { readonly ok: false; readonly issues: readonly Issue[] };

/** Makes an empty series from what stands in its form. */
export async function createSeriesAction(draft: DraftObject): Promise<SeriesOutcome> {
  const input = readRecordForm('series', draft);
  if (!input.ok) return { ok: false, issues: input.error };
  const made = await createSeries(await openContext(), input.value);
  if (!made.ok) return { ok: false, issues: made.error };
  revalidatePath('/');
  return { ok: true, seriesId: made.value.id };
}

/** Removes a series with its history and plans, for good, once its name has been typed. */
export async function removeSeriesAction(seriesId: string, typedName: string): Promise<SeriesOutcome> {
  const removed = await removeSeries(await openContext(), seriesId, typedName);
  if (!removed.ok) return { ok: false, issues: removed.error };
  revalidatePath('/');
  return { ok: true, seriesId };
}
