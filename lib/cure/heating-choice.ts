/** What heating would buy: the ready moment against hours, kWh and cost. */
import { workshopClimate, type HeatingPlan, type HeatingRun, type Heater, type WorkshopInput } from '@/lib/climate';
import { addMinutes, type Instant } from '@/lib/units';
import { createCoatClock, forecastCoat } from './coat';
import type { CoatMaterial, CureStage } from './coat-material';

/** A coat that waits. */
export interface WaitingCoat {
  readonly material: CoatMaterial;
  readonly laidAt: Instant;
  readonly stage: CureStage;
}

export interface HeatingOption {
  readonly name: string;
  readonly runs: readonly HeatingRun[];
}

export interface HeatingOutcome {
  readonly option: HeatingOption;
  /** Hours the heater is switched on beyond the plan as it stands. */
  readonly hours: number;
  /** Heat beyond the plan as it stands, kWh. */
  readonly kwh: number;
  /** In the money of the price. */
  readonly cost: number;
  /** When the last of the coats is ready; null: not within the climate, or spoilt. */
  readonly readyAt: Instant | null;
  readonly isSpoilt: boolean;
}

const latest = (a: Instant, b: Instant): Instant => (a >= b ? a : b);
const earliest = (a: Instant, b: Instant): Instant => (a <= b ? a : b);

/** A heating plan with one more run; where it overlaps others, the higher set point holds. */
export function addHeatingRun(runs: readonly HeatingRun[], added: HeatingRun): HeatingRun[] {
  const pieces: HeatingRun[] = [];
  let at = added.start;
  for (const run of runs.toSorted((a, b) => a.start - b.start)) {
    if (run.end <= added.start || run.start >= added.end) {
      pieces.push(run);
      continue;
    }
    if (run.start < added.start) pieces.push({ ...run, end: added.start });
    if (run.start > at) pieces.push({ ...added, start: at, end: run.start });
    const [start, end] = [latest(run.start, added.start), earliest(run.end, added.end)];
    pieces.push({ start, end, setPoint: Math.max(run.setPoint, added.setPoint) });
    at = end;
    if (run.end > added.end) pieces.push({ ...run, start: added.end });
  }
  if (at < added.end) pieces.push({ ...added, start: at });
  return pieces.toSorted((a, b) => a.start - b.start);
}

/** Heating without a break from a moment on: every set point for every number of hours; the first option is none at all. */
export function steadyOptions(from: Instant, setPoints: readonly number[], hours: readonly number[]): HeatingOption[] {
  const options: HeatingOption[] = [{ name: 'no more heating', runs: [] }];
  for (const setPoint of setPoints) {
    for (const length of hours) {
      if (length <= 0) continue;
      options.push({ name: `${setPoint} °C for ${length} h`, runs: [{ start: from, end: addMinutes(from, length * 60), setPoint }] });
    }
  }
  return options;
}

const switchedOn = (runs: readonly HeatingRun[]): number => runs.reduce((sum, run) => sum + (run.end - run.start) / 3_600_000, 0);
const totalHeat = (heat: Float64Array): number => heat.reduce((sum, kwh) => sum + kwh, 0);

/**
 * The outcome of each option for all coats together, on top of the heating that is planned already. `heater` is used for all of it.
 * Cost = kWh x price; fuel priced by the kWh of heat.
 */
export function compareHeating(
  base: WorkshopInput, coats: readonly WaitingCoat[], options: readonly HeatingOption[], heater: Heater, pricePerKwh: number,
): HeatingOutcome[] {
  const planned: HeatingPlan = { heater, runs: base.heating.runs };
  const usual = totalHeat(workshopClimate({ ...base, heating: planned }).heat);
  return options.map((option) => {
    const runs = option.runs.reduce(addHeatingRun, [...planned.runs]);
    const climate = workshopClimate({ ...base, heating: { heater, runs } });
    const kwh = Math.max(0, totalHeat(climate.heat) - usual);
    const forecasts = coats.map((coat) => ({ coat, forecast: forecastCoat(createCoatClock(climate, coat.material), coat.laidAt) }));
    const ready = forecasts.map(({ coat, forecast }) => forecast.reached[coat.stage]);
    const isReady = ready.every((at) => at !== null);
    return {
      option, kwh,
      hours: switchedOn(runs) - switchedOn(planned.runs),
      cost: kwh * pricePerKwh,
      readyAt: isReady ? ready.reduce<Instant | null>((last, at) => (last === null || (at !== null && at > last) ? at : last), null) : null,
      isSpoilt: forecasts.some(({ forecast }) => forecast.isSpoilt),
    };
  });
}

/** The curve worth showing: cheapest first, and each next one ready earlier than all before it. */
export function heatingCurve(outcomes: readonly HeatingOutcome[]): HeatingOutcome[] {
  const sorted = outcomes.filter(({ readyAt }) => readyAt !== null).toSorted((a, b) => a.kwh - b.kwh || a.readyAt! - b.readyAt!);
  const curve: HeatingOutcome[] = [];
  for (const outcome of sorted) {
    const last = curve.at(-1);
    if (last === undefined || outcome.readyAt! < last.readyAt!) curve.push(outcome);
  }
  return curve;
}

/** The cheapest option with every coat ready by a moment; null when none is. Equal cost: the earlier ready. */
export function cheapestHeating(outcomes: readonly HeatingOutcome[], by: Instant): HeatingOutcome | null {
  return heatingCurve(outcomes).find(({ readyAt }) => readyAt! <= by) ?? null;
}
