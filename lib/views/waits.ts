/** The waits page: load, then compute. */
import { listStops, type SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { climateAt } from '@/lib/climate';
import type { ReadingRows } from '@/lib/cure';
import { closeOnHolidays } from '@/lib/exchange';
import type { ViewContext } from './context';
import { listJobs } from './waits-away';
import { listCuring } from './waits-curing';
import { judgeNext } from './waits-go';
import { weighHeating, type HeatingChoice } from './waits-heating';
import type { Waiting } from './waits-holds';
import type { WaitsView } from './waits-model';
import { breatheAir, listCoats, loadReadings, spanAround } from './workshop-air';

const DAYS_BACK = 60;
const DAYS_AHEAD = 90;

export interface WaitsInput extends Waiting {
  readonly rows: ReadingRows;
  readonly heating: HeatingChoice;
  /** Wanted confidence of a return, percent; what is no such number is 80. */
  readonly confidence: number;
}

/** Everything that waits at a moment: coats, parts that are away, the next coating session, and what heating would buy. Pure. */
function computeWaits(input: WaitsInput): WaitsView {
  const { document, plan, now, rows } = input;
  const { zone, id } = document.series;
  const isBroken = listStops(document).some(({ code }) => code.startsWith('weather-'));
  const shown = isBroken ? { ...document, weather: [] } : document;
  const air = breatheAir(shown, spanAround(now, zone, DAYS_BACK, DAYS_AHEAD), rows);
  const coats = listCoats(shown, plan, air);
  const waiting: Waiting = { document: shown, plan, now };
  const confidence = input.confidence >= 50 && input.confidence <= 99 ? Math.round(input.confidence) : 80;
  const jobs = listJobs(waiting, confidence / 100);
  const [first] = document.places;
  const here = first === undefined ? null : climateAt(air.climateOf(first.airZone), now);
  return {
    seriesId: id, clock: formatMoment(now, zone), isHourly: air.hourly !== null,
    temperature: here === null || air.hourly === null
      ? `Counted at ${document.series.workshopTemperature} °C all the time: no weather is recorded.`
      : `In ${first?.airZone ?? 'the workshop'} it is about ${here.air.toFixed(1)} °C, surfaces ${here.surface.toFixed(1)} °C, ${Math.round(here.humidity)} % humidity.`,
    curing: listCuring(waiting, coats), away: jobs.filter(({ isAway }) => isAway), ahead: jobs.filter(({ isAway }) => !isAway),
    go: judgeNext(waiting, air), heating: weighHeating({ ...waiting, air, coats }, input.heating), confidence,
  };
}

/** {@link computeWaits} with what the database holds. */
export async function viewWaits({ storage, now }: ViewContext, document: SeriesDocument, chosen: Pick<WaitsInput, 'heating' | 'confidence'>): Promise<WaitsView> {
  const [plan, rows] = await Promise.all([storage.acceptedPlan(document.series.id), loadReadings(storage, document)]);
  return computeWaits({ document: await closeOnHolidays(document, now), plan, now, rows, ...chosen });
}
