/** Baking: the time counts at metal temperature, never at oven temperature. */
import { hoursToTemperature } from '@/lib/climate';
import type { OvenBake } from './coat-material';

/** kg/m3 and J/(kg K) of steel, from memory. */
const STEEL_DENSITY = 7850;
const STEEL_HEAT = 490;

/**
 * Minutes in which plate takes up 63 % of a difference, heated from both faces: density * heat * thickness / (2 h).
 * `transfer` in W/(m2 K); 25 for a fan oven is common practice, no source.
 * @example steelTimeConstant(4) // 5.1 min
 */
export function steelTimeConstant(thickness: number, transfer = 25): number {
  return (STEEL_DENSITY * STEEL_HEAT * (thickness / 1000)) / (2 * transfer) / 60;
}

export interface OvenTime {
  /** Minutes until the metal is at its temperature. */
  readonly bringUp: number;
  readonly hold: number;
  readonly total: number;
}

/**
 * Oven time of a part: bring-up of its heaviest metal, then the hold. Null when the oven is not hotter than the metal must get.
 * @param timeConstant minutes, see {@link steelTimeConstant}
 */
export function ovenTime(bake: OvenBake, oven: number, start: number, timeConstant: number): OvenTime | null {
  if (start >= bake.metalTemperature) return { bringUp: 0, hold: bake.hold, total: bake.hold };
  const bringUp = hoursToTemperature(start, oven, timeConstant, bake.metalTemperature);
  return bringUp === null ? null : { bringUp, hold: bake.hold, total: bringUp + bake.hold };
}

export interface MetalReading {
  /** Minutes since the part went in. */
  readonly minute: number;
  /** °C on the metal. */
  readonly temperature: number;
}

/**
 * Minutes a measured metal curve spent at or above a temperature, straight lines between readings.
 * @example minutesAtMetal([{ minute: 0, temperature: 100 }, { minute: 10, temperature: 200 }], 180) // 2
 */
export function minutesAtMetal(curve: readonly MetalReading[], temperature: number): number {
  let sum = 0;
  for (let k = 1; k < curve.length; k += 1) {
    const [a, b] = [curve[k - 1]!, curve[k]!];
    const [low, high] = a.temperature <= b.temperature ? [a.temperature, b.temperature] : [b.temperature, a.temperature];
    const share = low >= temperature ? 1 : high < temperature || high === low ? 0 : (high - temperature) / (high - low);
    sum += (b.minute - a.minute) * share;
  }
  return sum;
}

/** Kelvins above the cure that galvanised parts are baked at before powder, to drive gas out. Galvanizers' association. */
const OUTGAS_ABOVE_CURE = 30;

/**
 * Pre-bake of a galvanised part before powder, at the cure temperature + 30 K: until it is at oven temperature, or an hour.
 * Galvanizers' association; the longer of the two is taken here. `bringUp` in minutes.
 */
export function outgasBake(bake: OvenBake, bringUp: number): { readonly oven: number; readonly minutes: number } {
  return { oven: bake.metalTemperature + OUTGAS_ABOVE_CURE, minutes: Math.max(60, bringUp) };
}
