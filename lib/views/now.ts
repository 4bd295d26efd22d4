/** The now page: load, then compute. */
import type { SeriesDocument } from '@/lib/build';
import type { ViewContext } from './context';
import type { NowView } from './now-model';
import { computeNow } from './now-plan';
import { loadReadings } from './workshop-air';

/** What to do at this moment, next, and what not to forget. */
export async function viewNow({ storage, now }: ViewContext, document: SeriesDocument): Promise<NowView> {
  // The list has no blocks in it, so the draft's number costs little.
  const [plan, plans, rows] = await Promise.all([storage.acceptedPlan(document.series.id), storage.listPlans(document.series.id), loadReadings(storage, document)]);
  const draft = plans.find((one) => one.status === 'draft');
  return computeNow({ document, plan, now, draft: draft?.number ?? null, rows });
}
