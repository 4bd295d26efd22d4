/** The plans page: load, then compute. */
import type { SeriesDocument } from '@/lib/build';
import type { ViewContext } from './context';
import type { PlansView } from './plans-model';
import { computePlans } from './plans-plan';

/** The draft against the accepted plan, and every plan there was. */
export async function viewPlans({ storage, now }: ViewContext, document: SeriesDocument): Promise<PlansView> {
  const { id } = document.series;
  const [accepted, draft, plans] = await Promise.all([storage.acceptedPlan(id), storage.latestDraft(id), storage.listPlans(id)]);
  return computePlans({ document, accepted, draft, plans, now });
}
