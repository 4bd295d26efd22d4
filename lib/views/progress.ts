/** The progress pages: load, then compute. */
import type { SeriesDocument } from '@/lib/build';
import type { ViewContext } from './context';
import type { ProgressView } from './progress-model';
import { computeProgress } from './progress-plan';

/** Past plans shown as ghosts, and past forecasts that are judged. */
const MOST_GHOSTS = 3;
const MOST_FORECASTS = 60;

/** How build and series stand, with the latest forecast. `sure`: a confidence in percent, as typed, that a date is wanted for. */
export async function viewProgress({ storage, now }: ViewContext, document: SeriesDocument, sure: string | null = null): Promise<ProgressView> {
  const { id } = document.series;
  const [accepted, plans, kept] = await Promise.all([storage.acceptedPlan(id), storage.listPlans(id), storage.listForecasts(id, 'forecast', MOST_FORECASTS)]);
  const counted = plans.filter((plan) => plan.status === 'superseded');
  const oldest = counted.at(-1);
  const baseline = oldest === undefined ? accepted : await storage.getPlan(id, oldest.number);
  const forecasts = kept.filter((one) => one.kind === 'forecast');
  return computeProgress({ document, accepted, baseline, ghosts: counted.slice(0, MOST_GHOSTS), forecasts, sure, now });
}
