/** The climate of each air of a series' workshop: its weather, room, heating and readings put together. */
import { roomOf, type SeriesDocument } from '@/lib/build';
import type { CivilSpan } from '@/lib/calendar';
import {
  measureHours, outsideSeries, workshopClimate, type DailyWeather, type HeatingRun, type OutsideSeries, type Reading, type WorkshopClimate, type WorkshopInput,
} from '@/lib/climate';
import { ok, type Result } from '@/lib/result';
import { addHeatingRun } from './heating-choice';

/** Rows of the loggers by the id of their `readings` record. */
export type ReadingRows = ReadonlyMap<string, readonly Reading[]>;

export interface WorkshopAir {
  readonly outside: OutsideSeries;
  /** What the climate of an air is made from; the same every time. */
  readonly inputOf: (airZone: string) => WorkshopInput;
  /** Made once for each air. */
  readonly climateOf: (airZone: string) => WorkshopClimate;
}

/** The days of all weather tables, sorted; where two tables have a day, the later table counts. */
function mergeWeather(document: SeriesDocument): readonly DailyWeather[] {
  const days = new Map(document.weather.flatMap((table) => table.days.map((day) => [day.date, day] as const)));
  return [...days.values()].toSorted((a, b) => a.date.localeCompare(b.date));
}

/** When an air is heated: by its sessions and by runs of its own. Where two overlap, the higher set point holds. Sorted, disjoint. */
export function heatingOf(document: SeriesDocument, airZone: string): readonly HeatingRun[] {
  const places = new Set(document.places.filter((place) => place.airZone === airZone).map((place) => place.id));
  const sessions = document.sessions.flatMap(({ start, end, heating, placeIds }): readonly HeatingRun[] =>
    (heating !== null && end > start && placeIds.some((id) => places.has(id)) ? [{ start, end, setPoint: heating }] : []));
  const own = document.heatingRuns.filter((run) => run.airZone === airZone && run.end > run.start);
  // Sessions are many and seldom overlap: they are laid side by side first, and only what overlaps is merged.
  const all = [...sessions, ...own.map(({ start, end, setPoint }) => ({ start, end, setPoint }))].toSorted((a, b) => a.start - b.start);
  const merged: HeatingRun[] = [];
  for (const run of all) {
    const last = merged.at(-1);
    if (last === undefined || last.end <= run.start) {
      merged.push(run);
      continue;
    }
    const touched = merged.findIndex((one) => one.end > run.start);
    merged.push(...addHeatingRun(merged.splice(touched), run));
  }
  return merged;
}

/**
 * When a heater that can light solvent is on in an air; empty where it is made for such air. While nobody has said which heater there
 * is nothing is guessed: the pages warn.
 */
export function ignitingHours(document: SeriesDocument, airZone: string): readonly HeatingRun[] {
  const { heater } = roomOf(document.series, airZone);
  return document.series.workshop === undefined || heater.isIgnitionSafe || heater.kilowatts <= 0 ? [] : heatingOf(document, airZone);
}

/** Readings of an air in order of time; where two imports have a moment, the later import counts. */
export function readingsOf(document: SeriesDocument, rows: ReadingRows, airZone: string): readonly Reading[] {
  const sets = document.readings.filter((set) => set.airZone === airZone).map((set) => rows.get(set.id) ?? []);
  if (sets.length < 2) return sets[0] ?? [];
  const byMoment = new Map(sets.flat().map((reading) => [reading.at, reading]));
  return [...byMoment.values()].toSorted((a, b) => a.at - b.at);
}

/**
 * The air of the workshop over some dates, null while no weather is recorded: then nothing better than one steady temperature is
 * known. Fails with the issues of the weather.
 */
export function workshopAir(document: SeriesDocument, over: CivilSpan, rows: ReadingRows = new Map()): Result<WorkshopAir | null> {
  const days = mergeWeather(document);
  if (days.length === 0) return ok(null);
  const outside = outsideSeries(days, over, document.series.zone);
  if (!outside.ok) return outside;
  const grid = { origin: outside.value.origin, step: outside.value.step, count: outside.value.air.length };
  const makeInput = (airZone: string): WorkshopInput => {
    const readings = readingsOf(document, rows, airZone);
    const { room, heater } = roomOf(document.series, airZone);
    return {
      outside: outside.value, room, heating: { heater, runs: heatingOf(document, airZone) }, start: null,
      measured: readings.length === 0 ? null : measureHours(readings, grid),
    };
  };
  const inputs = new Map<string, WorkshopInput>();
  const inputOf = (airZone: string): WorkshopInput => {
    const input = inputs.get(airZone) ?? makeInput(airZone);
    inputs.set(airZone, input);
    return input;
  };
  const climates = new Map<string, WorkshopClimate>();
  const climateOf = (airZone: string): WorkshopClimate => {
    const climate = climates.get(airZone) ?? workshopClimate(inputOf(airZone));
    climates.set(airZone, climate);
    return climate;
  };
  return ok({ outside: outside.value, inputOf, climateOf });
}
