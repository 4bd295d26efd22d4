/** The cure model by the hour: the workshop's climate made once over the horizon, its tables shared by all coats of a material. */
import type { DryingStage, Material, SeriesDocument } from '@/lib/build';
import { addDays, dateOf } from '@/lib/calendar';
import { minutesSinceOrigin, stepsSince, type WorkshopClimate } from '@/lib/climate';
import {
  ageAtMinute, coatClocks, coatMaterialOf, forecastCoat, longestRecoatWait, minuteOfAge, rateAt, readyTables, spoiltStarts, stageMinute, workshopAir,
  type CoatClock, type CoatMaterial, type CoatMoments, type ReadingRows, type WorkshopAir,
} from '@/lib/cure';
import { unwrap } from '@/lib/result';
import type { Interval } from '@/lib/scheduling';
import { addMinutes, celsius, MINUTES_PER_DAY, type Instant } from '@/lib/units';
import { steadyCure, warmerThan, type CureModel } from './cure-model';
import type { EngineClock } from './engine-clock';

/** Step of the tables, minutes: a coat is taken to be laid at the end of its step. */
const STEP = 15;
/** The room needs some days to forget where it started. */
const WARM_UP_DAYS = 3;
/** Coats laid longer ago than this are taken to be cured. */
const OLDEST_COAT_DAYS = 60;
/** The climate goes on past the last session, so that the last coats are seen to cure. */
const DAYS_AFTER = 60;

interface Frame {
  readonly document: SeriesDocument;
  readonly now: Instant;
  readonly clock: EngineClock;
  readonly horizon: number;
}

/** The first moment a coat that may still matter was laid. */
function firstCoat({ document, now }: Frame): Instant {
  const oldest = addMinutes(now, -OLDEST_COAT_DAYS * MINUTES_PER_DAY);
  return document.tasks.reduce<Instant>((first, { doneAt, coats }) => (doneAt !== null && coats.length > 0 && doneAt >= oldest && doneAt < first ? doneAt : first), now);
}

/** `6 to 9 °C`. */
function sayTemperatures(climate: WorkshopClimate, from: Instant, to: Instant): string {
  const [first, last] = [Math.max(0, Math.floor(stepsSince(climate, from))), Math.min(climate.surface.length, Math.ceil(stepsSince(climate, to)))];
  const held = climate.surface.subarray(first, Math.max(first + 1, last));
  const [low, high] = [Math.round(Math.min(...held)), Math.round(Math.max(...held))];
  return low === high ? `at ${low} °C` : `at ${low} to ${high} °C`;
}

function meanOf(values: Float64Array): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** One long function, as all of it asks the same clocks. */
function clockCure(frame: Frame, climate: WorkshopClimate): CureModel {
  const { clock, horizon } = frame;
  const clockOf = coatClocks(climate);
  const tables = readyTables(clockOf, { step: STEP, horizon, origin: clock.origin });
  const shift = minutesSinceOrigin(climate, clock.origin);
  const end = addMinutes(climate.origin, climate.air.length * climate.step);
  const coatOf = (material: Material): CoatClock => clockOf(coatMaterialOf(material));
  const spoilt = new Map<CoatMaterial, readonly Interval[]>();
  const hottest = new Map<CoatMaterial, number>();
  const reached = (material: Material, stage: DryingStage, laid: number): number => {
    // Laid before the climate begins: long ago.
    if (laid + shift < 0) return laid;
    const minute = stageMinute(coatOf(material), stage, laid + shift);
    return minute === null ? Infinity : Math.ceil(minute - shift - 1e-6);
  };
  return {
    wait: (material, stage) => ({ kind: 'table', step: STEP, ready: tables(coatMaterialOf(material), stage) }),
    reached,
    longest: (material) => {
      const coat = coatOf(material);
      const held = hottest.get(coat.material) ?? coat.held.subarray(Math.max(0, Math.floor(shift / climate.step))).reduce((most, value) => Math.max(most, value), -Infinity);
      hottest.set(coat.material, held);
      const wait = longestRecoatWait(coat.material, held);
      return wait === null ? null : Math.floor(wait);
    },
    spoilt: (material) => {
      const coat = coatOf(material);
      const found = spoilt.get(coat.material) ?? spoiltStarts(coat, STEP, horizon, clock.origin);
      spoilt.set(coat.material, found);
      return found;
    },
    moments: (material, laidAt): CoatMoments => {
      const forecast = forecastCoat(coatOf(material), laidAt);
      const at = (stage: DryingStage): Instant => {
        const minute = reached(material, stage, (laidAt - clock.origin) / 60_000);
        return Number.isFinite(minute) ? clock.moment(minute) : end;
      };
      return { touchDry: at('touchDry'), recoatFrom: at('recoatFrom'), recoatUntil: forecast.recoatUntil, handle: at('handle'), fullCure: at('fullCure') };
    },
    warmth: (from, to) => {
      const mean = meanOf(climate.surface.subarray(Math.max(0, Math.floor(stepsSince(climate, from))), Math.ceil(stepsSince(climate, to))));
      return mean === null ? null : celsius(Math.round(mean * 10) / 10);
    },
    heat: (from, to) => climate.heat.subarray(Math.max(0, Math.floor(stepsSince(climate, from))), Math.ceil(stepsSince(climate, to))).reduce((sum, kwh) => sum + kwh, 0),
    tell: (material, stage, until) => {
      const { clock: ages, material: coat } = coatOf(material);
      const ready = minutesSinceOrigin(climate, until);
      const laid = minuteOfAge(ages, ageAtMinute(ages, ready) - coat.stages[stage]) ?? ready;
      const laidAt = addMinutes(climate.origin, laid);
      const mean = meanOf(climate.surface.subarray(Math.floor(laid / climate.step), Math.ceil(ready / climate.step) + 1)) ?? coat.referenceTemperature;
      const warm = warmerThan(material, mean);
      const rate = rateAt(coat.law, coat.referenceTemperature, warm, warm, 50);
      return { length: Math.round(ready - laid), conditions: sayTemperatures(climate, laidAt, until), warm: { at: warm, length: coat.stages[stage] / rate } };
    },
  };
}

/**
 * How coats cure in each air: by the hour where weather is recorded, else at one steady temperature.
 * @throws Error when the weather breaks its rules, which a checked document cannot.
 */
export function cureModels(frame: Frame, rows: ReadingRows): (airZone: string) => CureModel {
  const { document, clock, horizon } = frame;
  const { zone } = document.series;
  const from = addDays(dateOf(firstCoat(frame), zone), -WARM_UP_DAYS);
  const to = addDays(dateOf(clock.moment(horizon), zone), DAYS_AFTER);
  const air: WorkshopAir | null = unwrap(workshopAir(document, { from, to }, rows));
  const steady = steadyCure(document);
  const made = new Map<string, CureModel>();
  return (airZone) => {
    if (air === null) return steady;
    const model = made.get(airZone) ?? clockCure(frame, air.climateOf(airZone));
    made.set(airZone, model);
    return model;
  };
}
