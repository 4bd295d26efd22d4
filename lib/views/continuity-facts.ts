/** What the pages of the log are computed from. */
import type { SeriesDocument } from '@/lib/build';
import { gatherFacts, type Facts } from '@/lib/continuity';
import { closeOnHolidays } from '@/lib/exchange';
import type { ViewContext } from './context';

/** The facts of a series at this moment, with the plan that counts. */
export async function loadFacts({ storage, now }: ViewContext, document: SeriesDocument): Promise<Facts> {
  const [entries, plan] = await Promise.all([storage.listLogEntries(document.series.id, {}), storage.acceptedPlan(document.series.id)]);
  return gatherFacts({ document: await closeOnHolidays(document, now), entries, blocks: plan?.result.blocks ?? [], now });
}
