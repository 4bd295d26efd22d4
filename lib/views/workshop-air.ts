/** The air of the workshop and the coats in it, as the pages of climate and waits ask for them. */
import type { Material, SeriesDocument, Task } from '@/lib/build';
import { addDays, dateOf, type CivilSpan } from '@/lib/calendar';
import { steadyClimate, type HourlyClimate } from '@/lib/climate';
import { coatClocks, coatMaterialOf, forecastCoat, workshopAir, type CoatClock, type CoatForecast, type CoatMaterial, type ReadingRows, type WorkshopAir } from '@/lib/cure';
import type { SavedPlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import type { Storage } from '@/lib/storage';
import { minutesBetween, MINUTES_PER_HOUR, type Instant } from '@/lib/units';

/** The room needs some days to forget where it started. */
const WARM_UP_DAYS = 3;

/** Rows of every set of readings of a series. */
export async function loadReadings(storage: Pick<Storage, 'listReadings'>, document: SeriesDocument): Promise<ReadingRows> {
  return new Map(await Promise.all(document.readings.map(async (set) => [set.id, await storage.listReadings(document.series.id, set.id, set)] as const)));
}

/** What is known of the air between two dates: by the hour, or one steady temperature. */
export interface Air {
  /** null: no weather is recorded. */
  readonly hourly: WorkshopAir | null;
  readonly climateOf: (airZone: string) => HourlyClimate;
  readonly coatOf: (airZone: string, material: Material) => CoatClock;
}

/** @throws Error when the weather breaks its rules; `checkDocument` tells of it before. */
export function breatheAir(document: SeriesDocument, over: CivilSpan, rows: ReadingRows): Air {
  const { workshopTemperature } = document.series;
  const span = { from: addDays(over.from, -WARM_UP_DAYS), to: over.to };
  const hourly = unwrap(workshopAir(document, span, rows));
  const [origin, end] = [Date.parse(span.from), Date.parse(addDays(span.to, 1))];
  const steady = steadyClimate(origin as Instant, Math.max(1, Math.round((end - origin) / 3_600_000)), { air: workshopTemperature, surface: workshopTemperature, humidity: 60 });
  const clocks = new Map<string, (material: CoatMaterial) => CoatClock>();
  const climateOf = (airZone: string): HourlyClimate => hourly?.climateOf(airZone) ?? steady;
  return {
    hourly, climateOf,
    coatOf: (airZone, material) => {
      const key = hourly === null ? '' : airZone;
      const clockOf = clocks.get(key) ?? coatClocks(climateOf(airZone));
      clocks.set(key, clockOf);
      return clockOf(coatMaterialOf(material));
    },
  };
}

/** {@link breatheAir} for pages that must stand whatever is typed: weather that breaks its rules counts as none. */
export function breatheSound(document: SeriesDocument, over: CivilSpan, rows: ReadingRows = new Map()): Air {
  const isSound = workshopAir(document, { from: over.from, to: over.from }, new Map()).ok;
  return breatheAir(isSound ? document : { ...document, weather: [] }, over, rows);
}

/** The span of dates that coats of the last weeks and the next ones lie in. */
export function spanAround(now: Instant, zone: string, before: number, after: number): CivilSpan {
  const today = dateOf(now, zone);
  return { from: addDays(today, -before), to: addDays(today, after) };
}

/** A coat that was laid, or that the accepted plan lays. */
export interface LaidCoat {
  readonly key: string;
  readonly task: Task;
  readonly material: Material;
  readonly airZone: string;
  readonly laidAt: Instant;
  /** False: planned. */
  readonly isLaid: boolean;
  readonly coat: CoatClock;
  readonly forecast: CoatForecast;
}

/** Every coat that is laid, and those that the accepted plan lays, in order of time. */
export function listCoats(document: SeriesDocument, plan: SavedPlan | null, air: Air): readonly LaidCoat[] {
  const blocks = new Map((plan?.result.blocks ?? []).map((block) => [block.id, block]));
  return document.tasks.flatMap((task): readonly LaidCoat[] => {
    const laidAt = task.doneAt ?? blocks.get(`task:${task.id}`)?.end ?? null;
    const airZone = document.places.find((place) => place.id === task.placeId)?.airZone;
    if (laidAt === null || airZone === undefined) return [];
    return task.coats.flatMap((laid) => {
      const material = document.materials.find((one) => one.id === laid.materialId);
      if (material === undefined) return [];
      const coat = air.coatOf(airZone, material);
      return [{ key: laid.id, task, material, airZone, laidAt, isLaid: task.doneAt !== null, coat, forecast: forecastCoat(coat, laidAt) }];
    });
  }).toSorted((a, b) => a.laidAt - b.laidAt);
}

/** Hours between two moments, for axes. */
export const hoursBetween = (from: Instant, to: Instant): number => minutesBetween(from, to) / MINUTES_PER_HOUR;
