/** The cure model by the hour: the workshop's climate made once over the horizon, its tables shared by all coats of a material. */
import { roomOf, type DryingStage, type Material, type SeriesDocument } from '@/lib/build';
import { addDays, dateOf, mergeOverlappingAndTouching } from '@/lib/calendar';
import { minutesSinceOrigin, stepsSince, type WorkshopClimate } from '@/lib/climate';
import {
  ageAtMinute, coatClocks, coatMaterialOf, forecastCoat, heatingOf, longestRecoatWait, minuteOfAge, rateAt, readyTables, spoiltStarts, stageMinute, workshopAir,
  type CoatClock, type CoatMaterial, type CoatMoments, type ReadingRows, type TableGrid, type WorkshopAir,
} from '@/lib/cure';
import { unwrap } from '@/lib/result';
import type { Interval } from '@/lib/scheduling';
import { addMinutes, celsius, MINUTES_PER_DAY, type Celsius, type Instant } from '@/lib/units';
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

/** Where tables are read: coats are laid in sessions, the rest of the time is passed over. */
function gridOf({ clock, document, horizon }: Frame): TableGrid {
  const sessions = document.sessions.map(({ start, end }) => ({ start: Math.max(0, clock.down(start)), end: clock.up(end) })).filter(({ start, end }) => end > start);
  return { step: STEP, horizon, origin: clock.origin, within: mergeOverlappingAndTouching(sessions) };
}

/** One long function, as all of it asks the same clocks. */
function clockCure({ clock }: Frame, climate: WorkshopClimate, grid: TableGrid): CureModel {
  const clockOf = coatClocks(climate);
  const tables = readyTables(clockOf, grid);
  const shift = minutesSinceOrigin(climate, clock.origin);
  const end = addMinutes(climate.origin, climate.air.length * climate.step);
  const coatOf = (material: Material): CoatClock => clockOf(coatMaterialOf(material));
  const spoilt = new Map<CoatMaterial, readonly Interval[]>();
  const hottest = new Map<CoatMaterial, number>();
  // Many tasks ask about the same sessions.
  const warmths = new Map<string, Celsius | null>();
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
      const found = spoilt.get(coat.material) ?? spoiltStarts(coat, grid);
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
      const key = `${from} ${to}`;
      const known = warmths.get(key);
      if (known !== undefined) return known;
      const mean = meanOf(climate.surface.subarray(Math.max(0, Math.floor(stepsSince(climate, from))), Math.ceil(stepsSince(climate, to))));
      const warmth = mean === null ? null : celsius(Math.round(mean * 10) / 10);
      warmths.set(key, warmth);
      return warmth;
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

/** Models made already, by the weather and the loggers they stand on, which never change. Plans of one moment differ in little else. */
const known = new WeakMap<SeriesDocument['weather'], WeakMap<ReadingRows, Map<string, CureModel>>>();
/** Models kept of one weather; a changed evening of heating makes another. */
const MOST_MODELS = 12;
const NO_ROWS: ReadingRows = new Map();

/** All else that a model is made from, in words that compare. */
function modelKey({ document, clock, horizon }: Frame, airZone: string, span: { readonly from: string; readonly to: string }, { within }: TableGrid): string {
  const sets = document.readings.filter((set) => set.airZone === airZone).map(({ id }) => id);
  return JSON.stringify([airZone, document.series.zone, span, clock.origin, horizon, roomOf(document.series, airZone), heatingOf(document, airZone), sets, within]);
}

/**
 * How coats cure in each air: by the hour where weather is recorded, else at one steady temperature.
 * @throws Error when the weather breaks its rules, which a checked document cannot.
 */
export function cureModels(frame: Frame, rows: ReadingRows): (airZone: string) => CureModel {
  const { document, clock, horizon } = frame;
  const steady = steadyCure(document);
  if (document.weather.every(({ days }) => days.length === 0)) return () => steady;
  const { zone } = document.series;
  const span = { from: addDays(dateOf(firstCoat(frame), zone), -WARM_UP_DAYS), to: addDays(dateOf(clock.moment(horizon), zone), DAYS_AFTER) };
  const held = document.readings.length === 0 ? NO_ROWS : rows;
  const byRows = known.get(document.weather) ?? new WeakMap<ReadingRows, Map<string, CureModel>>();
  known.set(document.weather, byRows);
  const models = byRows.get(held) ?? new Map<string, CureModel>();
  byRows.set(held, models);
  const grid = gridOf(frame);
  let air: WorkshopAir | null = null;
  const made = new Map<string, CureModel>();
  const make = (airZone: string): CureModel => {
    const key = modelKey(frame, airZone, span, grid);
    const found = models.get(key);
    if (found !== undefined) return found;
    air ??= unwrap(workshopAir(document, span, rows));
    const model = air === null ? steady : clockCure(frame, air.climateOf(airZone), grid);
    if (models.size >= MOST_MODELS) models.clear();
    models.set(key, model);
    return model;
  };
  return (airZone) => {
    const model = made.get(airZone) ?? make(airZone);
    made.set(airZone, model);
    return model;
  };
}
