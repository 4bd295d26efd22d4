/** The week page: load, then compute. */
import type { SeriesDocument } from '@/lib/build';
import type { IsoWeek } from '@/lib/calendar';
import type { ViewContext } from './context';
import type { WeekView } from './week-model';
import { computeWeek } from './week-plan';
import { loadReadings } from './workshop-air';

/** One week of a series with its accepted plan. */
export async function viewWeek({ storage, now }: ViewContext, document: SeriesDocument, week: IsoWeek): Promise<WeekView> {
  // The list has no blocks in it, so the draft's number costs little.
  const [plan, plans, rows] = await Promise.all([storage.acceptedPlan(document.series.id), storage.listPlans(document.series.id), loadReadings(storage, document)]);
  const draft = plans.find((one) => one.status === 'draft');
  return computeWeek({ document, plan, now, week, draft: draft?.number ?? null, rows });
}
