/** The climate page: load, then compute. */
import { listStops, DEFAULT_WORKSHOP, roomOf, type SeriesDocument } from '@/lib/build';
import { addDays, dateOf, eachDate, formatClock, formatDay, formatMoment, isCivilDate, startOfDay, type CivilDate } from '@/lib/calendar';
import { dewPoint, fitRoom, freshAirHeat, momentOfStep, stepsSince, type WorkshopClimate } from '@/lib/climate';
import { heaterCautions, heatingOf, readingsOf, type ReadingRows } from '@/lib/cure';
import type { SavedPlan } from '@/lib/plan';
import { fail, issue, type Issue } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';
import type { ClimateCurve, ClimateDay, ClimateHour, ClimateView, FitView } from './climate-model';
import type { ViewContext } from './context';
import { listZoneChoices } from './record-form-choices';
import { breatheAir, hoursBetween, listCoats, loadReadings, type Air, type LaidCoat } from './workshop-air';

/** Days on one page. */
const DAYS = 7;
const DAMP = 3;

export interface ClimateInput {
  readonly document: SeriesDocument;
  readonly plan: SavedPlan | null;
  readonly now: Instant;
  readonly rows: ReadingRows;
  /** As chosen on the page; what does not exist is passed over. */
  readonly airZone: string | null;
  readonly from: string | null;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
const one = (value: number): string => tenth(value).toFixed(1);

interface Window {
  readonly climate: WorkshopClimate;
  readonly outside: Float64Array;
  readonly first: number;
  readonly count: number;
  readonly start: Instant;
  readonly zone: string;
}

const pick = (values: Float64Array, { first, count }: Window): number[] => Array.from(values.subarray(first, first + count), tenth);
const dewPointAt = ({ climate }: Window, k: number): number => dewPoint(climate.air[k]!, climate.humidity[k]!);
const marginAt = (window: Window, k: number): number => window.climate.surface[k]! - dewPointAt(window, k);

/** Where something lies in the window, in hours; null outside. */
function clip(window: Window, from: Instant, to: Instant): { from: number; to: number } | null {
  const [a, b] = [Math.max(0, hoursBetween(window.start, from)), Math.min(window.count, hoursBetween(window.start, to))];
  return a < b ? { from: a, to: b } : null;
}

function listFloors(window: Window, coats: readonly LaidCoat[], airZone: string): ClimateCurve['floors'] {
  return coats.filter((coat) => coat.airZone === airZone && coat.coat.material.law.kind !== 'steady').flatMap(({ laidAt, forecast, coat }) => {
    const end = forecast.reached.touchDry ?? addMinutes(window.start, window.count * 60);
    const span = clip(window, laidAt, end);
    return span === null ? [] : [{ ...span, at: coat.material.minimumUntilDry, label: coat.material.name }];
  });
}

function drawCurve(window: Window, input: ClimateInput, airZone: string, coats: readonly LaidCoat[], dates: readonly CivilDate[]): ClimateCurve {
  const { document, now } = input;
  const steps = Array.from({ length: window.count }, (_, k) => window.first + k);
  const places = new Set(document.places.filter((place) => place.airZone === airZone).map(({ id }) => id));
  const at = hoursBetween(window.start, now);
  return {
    hours: window.count,
    air: pick(window.climate.air, window), surface: pick(window.climate.surface, window), outside: pick(window.outside, window),
    dewPoint: steps.map((k) => tenth(dewPointAt(window, k))), margin: steps.map((k) => tenth(marginAt(window, k))),
    isMeasured: steps.map((k) => window.climate.isMeasured[k] === 1),
    days: dates.map((date) => ({ hour: hoursBetween(window.start, startOfDay(date, window.zone)), label: formatDay(date) })),
    sessions: document.sessions.filter(({ placeIds }) => placeIds.some((id) => places.has(id))).flatMap((session) => {
      const span = clip(window, session.start, session.end);
      return span === null ? [] : [{ ...span, label: `${session.name} ${formatMoment(session.start, window.zone)}`, isHeated: session.heating !== null }];
    }),
    heating: heatingOf(document, airZone).flatMap((run) => {
      const span = clip(window, run.start, run.end);
      return span === null ? [] : [{ ...span, label: `${run.setPoint} °C` }];
    }),
    floors: listFloors(window, coats, airZone),
    now: at >= 0 && at <= window.count ? at : null,
  };
}

function range(values: readonly number[], unit: string): string {
  return `${one(Math.min(...values))} to ${one(Math.max(...values))} ${unit}`;
}

function describeDay(window: Window, date: CivilDate): ClimateDay {
  const { climate, zone } = window;
  const first = Math.max(window.first, Math.floor(stepsSince(climate, startOfDay(date, zone))));
  const last = Math.min(climate.air.length, Math.floor(stepsSince(climate, startOfDay(addDays(date, 1), zone))));
  const steps = Array.from({ length: Math.max(1, last - first) }, (_, k) => first + k);
  const margin = Math.min(...steps.map((k) => marginAt(window, k)));
  const measured = steps.filter((k) => climate.isMeasured[k] === 1).length;
  return {
    date, label: formatDay(date),
    air: range(steps.map((k) => climate.air[k]!), '°C'), surface: range(steps.map((k) => climate.surface[k]!), '°C'),
    margin: `${one(margin)} K`, isDamp: margin < DAMP,
    humidity: `${Math.round(steps.reduce((sum, k) => sum + climate.humidity[k]!, 0) / steps.length)} %`,
    heat: `${one(steps.reduce((sum, k) => sum + climate.heat[k]!, 0))} kWh`,
    measured: measured === 0 ? 'model' : measured === steps.length ? 'measured' : `${measured} h measured`,
  };
}

function describeHours(window: Window): readonly ClimateHour[] {
  return Array.from({ length: window.count }, (_, k) => window.first + k).map((k) => {
    const at = addMinutes(window.climate.origin, k * window.climate.step);
    return {
      label: `${formatDay(dateOf(at, window.zone))} ${formatClock(at, window.zone)}`,
      air: one(window.climate.air[k]!), surface: one(window.climate.surface[k]!), dewPoint: one(dewPointAt(window, k)), margin: one(marginAt(window, k)),
      humidity: String(Math.round(window.climate.humidity[k]!)), isMeasured: window.climate.isMeasured[k] === 1,
    };
  });
}

/** What the readings of an air say of its room; null without readings or weather. */
function fitAir(input: ClimateInput, airZone: string): { readonly fit: FitView | null; readonly issues: readonly Issue[] } {
  const { document, rows } = input;
  const readings = readingsOf(document, rows, airZone);
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return { fit: null, issues: [] };
  const { zone } = document.series;
  const air = breatheAir(document, { from: dateOf(first.at, zone), to: dateOf(last.at, zone) }, new Map());
  const found = air.hourly === null
    ? fail([issue('fit-no-weather', 'Without weather of these days the readings cannot tell how the room follows the outside.', 'Add the lows and highs of the days of the readings.', { severity: 'warn' })])
    : fitRoom(readings, air.hourly.outside, heatingOf(document, airZone));
  if (!found.ok) return { fit: null, issues: found.error.map((wrong) => ({ ...wrong, severity: 'warn' as const })) };
  const { timeConstant, offset, error, count } = found.value;
  const { room } = roomOf(document.series, airZone);
  return {
    fit: {
      timeConstant, offset,
      text: `A time constant of ${one(timeConstant)} h and ${one(offset)} K warmer than outside fit ${count.toLocaleString('en-GB')} unheated readings best; they lie ${error.toFixed(2)} K from the model on average (root mean square).`,
      isInUse: tenth(room.timeConstant) === tenth(timeConstant) && tenth(room.offset) === tenth(offset),
    },
    issues: [],
  };
}

function describeRoom(document: SeriesDocument, airZone: string): string {
  const { pricePerKwh, currency, airs = [] } = document.series.workshop ?? DEFAULT_WORKSHOP;
  const { room, heater } = roomOf(document.series, airZone);
  const own = airs.some((air) => air.airZone === airZone) ? `${airZone} has numbers of its own. ` : '';
  const known = document.series.workshop === undefined ? ' (assumed: the room is not described yet)' : '';
  return `${own}Time constant ${room.timeConstant} h, ${room.offset} K warmer than outside, ${room.heatLoss} W/K, ${room.volume} m³, ${room.airChanges} air changes an hour; ${heater.kind}, ${heater.kilowatts} kW, ${pricePerKwh} ${currency} a kWh${known}.`;
}

/** What the air that comes in costs in heat, in the coldest hour shown. */
function describeFreshAir({ document }: ClimateInput, airZone: string, air: Air, window: Window | null): string | null {
  if (window === null || air.hourly === null || window.count === 0) return null;
  const { outside } = air.hourly;
  let coldest = window.first;
  for (let k = window.first; k < window.first + window.count; k += 1) if (outside.air[k]! < outside.air[coldest]!) coldest = k;
  const [out, inside] = [outside.air[coldest]!, window.climate.air[coldest]!];
  const heat = freshAirHeat(roomOf(document.series, airZone).room, { air: out, vapour: outside.vapour[coldest]! }, inside);
  const when = formatMoment(momentOfStep(window.climate, coldest), window.zone);
  return `The air that comes in takes ${heat.toFixed(1)} kW to warm in the coldest hour shown (${when}: ${one(out)} °C outside, ${one(inside)} °C inside); twice the ventilation takes twice that.`;
}

function chooseFrom(input: ClimateInput): CivilDate {
  const { from, now, document } = input;
  return from !== null && isCivilDate(from) && from > '1990-01-01' && from < '2090-01-01' ? from : addDays(dateOf(now, document.series.zone), -1);
}

function openWindow(air: Air, airZone: string, from: CivilDate, zone: string): Window | null {
  if (air.hourly === null) return null;
  const climate = air.hourly.climateOf(airZone);
  const start = startOfDay(from, zone);
  const first = Math.max(0, Math.round(stepsSince(climate, start)));
  const count = Math.min(climate.air.length - first, Math.round(hoursBetween(start, startOfDay(addDays(from, DAYS), zone))));
  return { climate, outside: air.hourly.outside.air, first, count, start, zone };
}

/** The air, the surface and the dew margin over a week, what is wet and when somebody is in, and what readings say. Pure. */
function computeClimate(input: ClimateInput): ClimateView {
  const { document, plan, now, rows } = input;
  const { series, places } = document;
  const names = [...new Set(places.map((place) => place.airZone))];
  const airZone = names.find((name) => name === input.airZone) ?? names[0] ?? '';
  const from = chooseFrom(input);
  const to = addDays(from, DAYS - 1);
  const isBroken = listStops(document).some(({ code }) => code.startsWith('weather-'));
  const shown = isBroken ? { ...document, weather: [] } : document;
  const today = dateOf(now, series.zone);
  const air = breatheAir(shown, { from: from < today ? from : today, to: to > today ? to : today }, rows);
  const window = openWindow(air, airZone, from, series.zone);
  const dates = eachDate(from, to);
  const filled = (air.hourly?.outside.filledDays ?? []).filter((date) => date >= from && date <= to);
  const { fit, issues } = isBroken ? { fit: null, issues: [] } : fitAir(input, airZone);
  return {
    seriesId: series.id, revision: series.revision, zone: series.zone, airZone,
    airZones: names.map((name) => ({ value: name, label: name })), zones: listZoneChoices(),
    span: `${formatDay(from)} to ${formatDay(to)} ${to.slice(0, 4)}`, before: addDays(from, -DAYS), after: addDays(from, DAYS), from,
    curve: window === null ? null : drawCurve(window, input, airZone, listCoats(shown, plan, air), dates),
    days: window === null ? [] : dates.map((date) => describeDay(window, date)),
    hours: window === null ? [] : describeHours(window),
    filled: filled.length === 0 ? null : `${filled.length} of ${DAYS} days have no weather of their own and lie on a line between their neighbours.`,
    readings: document.readings.filter((set) => set.airZone === airZone).map((set) => ({
      id: set.id, name: set.name, facts: `${set.count.toLocaleString('en-GB')} rows, ${formatMoment(set.from, series.zone)} to ${formatMoment(set.to, series.zone)}`,
    })),
    fit, fitIssues: issues, room: describeRoom(document, airZone), freshAir: describeFreshAir(input, airZone, air, window), cautions: heaterCautions(roomOf(series, airZone).heater),
  };
}

/** {@link computeClimate} with what the database holds. */
export async function viewClimate({ storage, now }: ViewContext, document: SeriesDocument, chosen: Pick<ClimateInput, 'airZone' | 'from'>): Promise<ClimateView> {
  const [plan, rows] = await Promise.all([storage.acceptedPlan(document.series.id), loadReadings(storage, document)]);
  return computeClimate({ document, plan, now, rows, ...chosen });
}
