/** A climate by even steps of time, as arrays. */
import { addMinutes, instant, MS_PER_MINUTE, type Instant } from '@/lib/units';

/**
 * Value k stands for the whole step from `origin + k * step` to the next. Where a model made it, it is the mean of that step.
 * The three arrays are equally long.
 */
export interface HourlyClimate {
  readonly origin: Instant;
  /** Minutes, 60 as a rule. */
  readonly step: number;
  /** Air of the room, °C. */
  readonly air: Float64Array;
  /** The painted surface, °C: it lags behind the air. */
  readonly surface: Float64Array;
  /** Relative humidity of the air over water, percent. */
  readonly humidity: Float64Array;
}

/** Steps that a moment lies after the origin, with fraction. */
export function stepsSince(climate: Pick<HourlyClimate, 'origin' | 'step'>, at: Instant): number {
  return (at - climate.origin) / (climate.step * MS_PER_MINUTE);
}

/** Start of step k. */
export function momentOfStep(climate: Pick<HourlyClimate, 'origin' | 'step'>, k: number): Instant {
  return instant(climate.origin + k * climate.step * MS_PER_MINUTE);
}

/** The first moment the climate says nothing about. */
export function endOfClimate(climate: HourlyClimate): Instant {
  return momentOfStep(climate, climate.air.length);
}

/** The step a moment lies in; null outside. */
export function stepAt(climate: HourlyClimate, at: Instant): number | null {
  const k = Math.floor(stepsSince(climate, at) + 1e-9);
  return k >= 0 && k < climate.air.length ? k : null;
}

export interface ClimateValues {
  readonly air: number;
  readonly surface: number;
  readonly humidity: number;
}

/** What it is like at a moment; null outside. */
export function climateAt(climate: HourlyClimate, at: Instant): ClimateValues | null {
  const k = stepAt(climate, at);
  return k === null ? null : valuesOfStep(climate, k);
}

/** @throws RangeError outside. */
function valuesOfStep(climate: HourlyClimate, k: number): ClimateValues {
  const [air, surface, humidity] = [climate.air[k], climate.surface[k], climate.humidity[k]];
  if (air === undefined || surface === undefined || humidity === undefined) throw new RangeError(`The climate has no step ${k}`);
  return { air, surface, humidity };
}

/**
 * The same all the time: for examples and for a heated cabinet.
 * @example steadyClimate(origin, 60 * 24, { air: 20, surface: 20, humidity: 50 })
 */
export function steadyClimate(origin: Instant, hours: number, values: ClimateValues): HourlyClimate {
  return {
    origin, step: 60,
    air: new Float64Array(hours).fill(values.air),
    surface: new Float64Array(hours).fill(values.surface),
    humidity: new Float64Array(hours).fill(values.humidity),
  };
}

/** Hourly values as given, surface as the air where none is given. @throws RangeError when the lists differ in length. */
export function climateOfValues(
  origin: Instant,
  values: { readonly air: readonly number[]; readonly surface?: readonly number[]; readonly humidity?: readonly number[] },
): HourlyClimate {
  const { air, surface = air, humidity = air.map(() => 50) } = values;
  if (surface.length !== air.length || humidity.length !== air.length) throw new RangeError('The three lists must be equally long');
  return { origin, step: 60, air: Float64Array.from(air), surface: Float64Array.from(surface), humidity: Float64Array.from(humidity) };
}

/** Minutes from the origin to a moment. */
export function minutesSinceOrigin(climate: Pick<HourlyClimate, 'origin'>, at: Instant): number {
  return (at - climate.origin) / MS_PER_MINUTE;
}

/** A moment from minutes since the origin. */
export function momentOfMinute(climate: Pick<HourlyClimate, 'origin'>, minute: number): Instant {
  return addMinutes(climate.origin, minute);
}
