/** The list of all series, and what the frame round the pages of one says. */
import { formatIsoWeek, formatMoment, isoWeekOf, dateOf, isZone } from '@/lib/calendar';
import type { SeriesDocument } from '@/lib/build';
import type { Instant } from '@/lib/units';
import type { ViewContext } from './context';

export interface SeriesRow {
  readonly id: string;
  readonly name: string;
  readonly changeNumber: number;
  /** `plan 3, accepted, made Tue 1 Dec 18:30`; null while there is no plan. */
  readonly lastPlan: string | null;
  /** What the plan is made from has changed since. */
  readonly isPlanStale: boolean;
}

export interface SeriesFrame {
  readonly id: string;
  readonly name: string;
  /** The ISO week of now in the zone of the series, `2026-W49`. */
  readonly week: string;
}

/** Every series in its order, with its last plan. */
export async function viewSeriesList({ storage }: ViewContext): Promise<readonly SeriesRow[]> {
  const series = await storage.listSeries();
  return Promise.all(
    series.map(async ({ id, name, changeNumber, planChange }) => {
      const [plan] = await storage.listPlans(id);
      if (plan === undefined) return { id, name, changeNumber, lastPlan: null, isPlanStale: false };
      const zone = (await storage.loadSeries(id))?.series.zone ?? 'UTC';
      return {
        id,
        name,
        changeNumber,
        lastPlan: `plan ${plan.number}, ${plan.status}, made ${formatMoment(plan.madeAt, zone)}`,
        isPlanStale: plan.basedOnChange < planChange,
      };
    }),
  );
}

/** What the frame of a series says at a moment. */
export function viewSeriesFrame({ series }: SeriesDocument, now: Instant): SeriesFrame {
  const zone = isZone(series.zone) ? series.zone : 'UTC';
  return { id: series.id, name: series.name, week: formatIsoWeek(isoWeekOf(dateOf(now, zone))) };
}
