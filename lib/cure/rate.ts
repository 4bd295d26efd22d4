/** How fast a coat cures, against its data sheet's reference temperature. Temperatures in °C, converted to kelvins inside. */
import { vapourPressure } from '@/lib/climate';

const KELVIN = 273.15;

/**
 * - `arrhenius`: exp(-Q (1/T - 1/Ts)) in kelvins, the form of ASTM C1074 (from memory).
 * - `doubling`: doubles for each `per` kelvins; a rule of thumb for rooms, never for an oven.
 * - `maturity`: Nurse-Saul, (T - datum) / (Ts - datum), never below nought.
 * - `moisture`: cures with water from the air; the rate is vapour pressure against that of the reference.
 * - `steady`: does not follow the workshop (baked, or held between metal).
 */
export type RateLaw =
  /** Q in kelvins, activation energy over gas constant. `kelvin` is the offset to kelvins, 273.15 where not said. */
  | { readonly kind: 'arrhenius'; readonly activation: number; readonly kelvin?: number }
  | { readonly kind: 'doubling'; readonly per: number }
  | { readonly kind: 'maturity'; readonly datum: number }
  /** Humidity in percent at the reference temperature. */
  | { readonly kind: 'moisture'; readonly humidity: number }
  | { readonly kind: 'steady' };

/** J/(mol K). */
const GAS_CONSTANT = 8.314462618;

/** @example arrheniusRate(10, 20, 5000) // 0.5475 */
export function arrheniusRate(temperature: number, reference: number, activation: number, kelvin = KELVIN): number {
  return Math.exp(-activation * (1 / (temperature + kelvin) - 1 / (reference + kelvin)));
}

/** @example doublingRate(0, 20, 10) // 0.25 */
export function doublingRate(temperature: number, reference: number, per: number): number {
  return Math.exp((Math.LN2 * (temperature - reference)) / per);
}

/** Nothing is lost below the datum. @example maturityRate(0, 20, -10) // 0.3333 */
export function maturityRate(temperature: number, reference: number, datum: number): number {
  return Math.max(0, temperature - datum) / (reference - datum);
}

/**
 * Q of an Arrhenius law that doubles between two temperatures.
 * @example activationOfDoubling(20, 30) // 6160 K
 */
export function activationOfDoubling(from: number, to: number): number {
  return Math.log(2) / (1 / (from + KELVIN) - 1 / (to + KELVIN));
}

/** Q in kelvins as kJ/mol. @example activationEnergy(6160) // 51.2 */
export function activationEnergy(activation: number): number {
  return (activation * GAS_CONSTANT) / 1000;
}

/** Rate at a surface and in air, against the reference temperature. 1 there. */
export function rateAt(law: RateLaw, reference: number, surface: number, air: number, humidity: number): number {
  switch (law.kind) {
    case 'arrhenius': return arrheniusRate(surface, reference, law.activation, law.kelvin);
    case 'doubling': return doublingRate(surface, reference, law.per);
    case 'maturity': return maturityRate(surface, reference, law.datum);
    case 'moisture': return vapourPressure(air, humidity) / vapourPressure(reference, law.humidity);
    case 'steady': return 1;
  }
}

/** A length of time at one temperature. */
export interface TemperatureSpan {
  /** In any unit; the result is in the same. */
  readonly time: number;
  readonly temperature: number;
}

/**
 * Temperature-adjusted concrete age, sum of dt exp(13.65 - 4000 / (273 + T)): fib Model Code 2020, the form of EN 1992-1-1
 * eq. B.10, with 273 as it stands there.
 * @example modelCodeAge([{ time: 10, temperature: 30 }]) // 15.662
 */
export function modelCodeAge(spans: readonly TemperatureSpan[]): number {
  return spans.reduce((sum, { time, temperature }) => sum + time * Math.exp(13.65 - 4000 / (273 + temperature)), 0);
}

/** Equivalent age of spans: time at the reference temperature that cures as far. */
export function equivalentAge(spans: readonly TemperatureSpan[], law: Exclude<RateLaw, { kind: 'moisture' }>, reference: number): number {
  return spans.reduce((sum, { time, temperature }) => sum + time * rateAt(law, reference, temperature, temperature, 0), 0);
}

/**
 * Nurse-Saul maturity: degrees above the datum times time. Time below the datum adds nothing and takes nothing away.
 * @example nurseSaulMaturity([{ time: 28, temperature: 15 }], -11) // 728
 */
export function nurseSaulMaturity(spans: readonly TemperatureSpan[], datum: number): number {
  return spans.reduce((sum, { time, temperature }) => sum + time * Math.max(0, temperature - datum), 0);
}

/** Time to a maturity at a steady temperature; infinite at or below the datum. @example timeToMaturity(3500, 23, 0) // 152.2 */
export function timeToMaturity(maturity: number, temperature: number, datum: number): number {
  return temperature > datum ? maturity / (temperature - datum) : Number.POSITIVE_INFINITY;
}

/** Steady temperature that reaches a maturity in a time. @example temperatureForMaturity(3500, 72, 0) // 48.6 */
export function temperatureForMaturity(maturity: number, time: number, datum: number): number {
  return datum + maturity / time;
}
