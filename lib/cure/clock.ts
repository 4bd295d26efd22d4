/** A clock that runs with the temperature: time at the reference temperature that cures as far. */
import { momentOfMinute, minutesSinceOrigin, type HourlyClimate } from '@/lib/climate';
import type { Instant } from '@/lib/units';
import { rateAt, type RateLaw } from './rate';

export interface CureProfile {
  readonly law: RateLaw;
  /** °C */
  readonly reference: number;
  /** Below this surface temperature the clock stands still, °C; null: it never does. */
  readonly cutOff: number | null;
}

export interface CureClock {
  readonly climate: HourlyClimate;
  readonly profile: CureProfile;
  /** Rate in each step. */
  readonly rate: Float64Array;
  /** Equivalent minutes from the origin to the start of each step; one longer than the climate. */
  readonly age: Float64Array;
}

/** Equivalent minutes that count as nothing, so that rounding never costs a minute. */
const EPSILON = 1e-7;

const knownRates = new WeakMap<HourlyClimate, Map<string, Float64Array>>();

/** Rate in each step without a cut-off; materials of one law and reference share it. */
function ratesIn(climate: HourlyClimate, law: RateLaw, reference: number): Float64Array {
  const ofClimate = knownRates.get(climate) ?? new Map<string, Float64Array>();
  knownRates.set(climate, ofClimate);
  const key = `${JSON.stringify(law)} ${reference}`;
  const rates = ofClimate.get(key) ?? climate.surface.map((surface, k) => rateAt(law, reference, surface, climate.air[k]!, climate.humidity[k]!));
  ofClimate.set(key, rates);
  return rates;
}

/** Adds up the climate once; every question after that is a lookup. */
export function createCureClock(climate: HourlyClimate, profile: CureProfile): CureClock {
  const { cutOff } = profile;
  const free = ratesIn(climate, profile.law, profile.reference);
  const rate = cutOff === null ? free : free.map((value, k) => (climate.surface[k]! < cutOff ? 0 : value));
  const age = new Float64Array(rate.length + 1);
  for (let k = 0; k < rate.length; k += 1) age[k + 1] = age[k]! + rate[k]! * climate.step;
  return { climate, profile, rate, age };
}

/** Equivalent minutes from the origin to a minute after it; held at both ends of the climate. */
export function ageAtMinute(clock: CureClock, minute: number): number {
  const { step } = clock.climate;
  const last = clock.rate.length;
  const k = Math.floor(minute / step);
  if (k < 0) return 0;
  if (k >= last) return clock.age[last]!;
  return clock.age[k]! + clock.rate[k]! * (minute - k * step);
}

/** The first minute after the origin at which the clock shows an age; null when not before the end of the climate. */
export function minuteOfAge(clock: CureClock, wanted: number): number | null {
  const { age, rate, climate } = clock;
  const target = wanted - EPSILON;
  let [low, high] = [0, age.length - 1];
  if (target <= 0) return 0;
  if (age[high]! < target) return null;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (age[middle]! < target) low = middle + 1;
    else high = middle;
  }
  const k = low - 1;
  return k * climate.step + (target - age[k]!) / rate[k]!;
}

/** Equivalent minutes between two moments of the climate. */
export function equivalentMinutes(clock: CureClock, from: Instant, to: Instant): number {
  return ageAtMinute(clock, minutesSinceOrigin(clock.climate, to)) - ageAtMinute(clock, minutesSinceOrigin(clock.climate, from));
}

/**
 * Minute after the origin at which something laid at `from` has cured `wanted` equivalent minutes. Later starts are never ready
 * earlier. Null: not before the end of the climate, or `from` lies outside it.
 */
export function readyMinute(clock: CureClock, from: number, wanted: number): number | null {
  if (from < 0 || from > clock.rate.length * clock.climate.step) return null;
  if (wanted <= 0) return from;
  const ready = minuteOfAge(clock, ageAtMinute(clock, from) + wanted);
  return ready === null ? null : Math.max(from, ready);
}

/** {@link readyMinute} for sorted minutes, in one walk through the climate; NaN for null. */
export function readyMinutes(clock: CureClock, laid: Float64Array, wanted: number): Float64Array {
  const { age, rate, climate: { step } } = clock;
  const ready = new Float64Array(laid.length).fill(Number.NaN);
  const [length, oldest] = [rate.length * step, age[rate.length]!];
  let k = 0;
  for (let index = 0; index < laid.length; index += 1) {
    const from = laid[index]!;
    if (from < 0 || from > length) continue;
    const own = Math.floor(from / step);
    const target = (own >= rate.length ? oldest : age[own]! + rate[own]! * (from - own * step)) + wanted - EPSILON;
    if (wanted <= 0) ready[index] = from;
    else if (oldest >= target) {
      while (age[k + 1]! < target) k += 1;
      ready[index] = Math.max(from, k * step + (target - age[k]!) / rate[k]!);
    }
  }
  return ready;
}

/** As {@link readyMinute}, in moments. */
export function readyAt(clock: CureClock, from: Instant, wanted: number): Instant | null {
  const ready = readyMinute(clock, minutesSinceOrigin(clock.climate, from), wanted);
  return ready === null ? null : momentOfMinute(clock.climate, Math.ceil(ready - 1e-6));
}
