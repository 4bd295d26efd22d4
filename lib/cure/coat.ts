/** One material in one climate: when a coat laid at a moment reaches its stages, and what goes wrong on the way. */
import { dewPoint, momentOfMinute, minutesSinceOrigin, type HourlyClimate } from '@/lib/climate';
import type { Instant } from '@/lib/units';
import { createCureClock, readyMinute, readyMinutes, type CureClock } from './clock';
import { CURE_STAGES, type BelowMinimum, type CoatMaterial, type CureStage } from './coat-material';
import { longestRecoatWait, tableRecoatWait } from './recoat';

/** Set up once for a material and a climate, then asked many times. */
export interface CoatClock {
  readonly material: CoatMaterial;
  readonly climate: HourlyClimate;
  readonly clock: CureClock;
  /** Surface temperature held through the hour that ends with each step. */
  readonly held: Float64Array;
  /** Kelvins between surface and dew point in each step. */
  readonly margin: Float64Array;
  /** First step from each on with a surface below the minimum; the number of steps when there is none. */
  readonly nextCold: Int32Array;
  /** The same for a dew margin or humidity outside its limits. */
  readonly nextDamp: Int32Array;
}

export type CoatFault =
  /** Cold, resumable: the clock stood still. */
  | { readonly kind: 'paused'; readonly from: Instant; readonly minutes: number; readonly temperature: number; readonly limit: number }
  /** Cold, irreversible: strip it. */
  | { readonly kind: 'never forms'; readonly from: Instant; readonly temperature: number; readonly limit: number }
  /** Clean before the next coat. */
  | { readonly kind: 'surface fault'; readonly from: Instant; readonly why: 'cold' | 'dew' | 'humidity'; readonly value: number; readonly limit: number };

export interface CoatForecast {
  readonly laidAt: Instant;
  /** null: not before the end of the climate, or never when the coat is spoilt. */
  readonly reached: Readonly<Record<CureStage, Instant | null>>;
  /** null: the window does not close. */
  readonly recoatUntil: Instant | null;
  /** True: it closes before it opens, so that the next coat needs the late work in any case. */
  readonly isWindowEmpty: boolean;
  /** True: the film never formed and must be stripped. */
  readonly isSpoilt: boolean;
  readonly faults: readonly CoatFault[];
}

function nextSteps(count: number, isHit: (k: number) => boolean): Int32Array {
  const next = new Int32Array(count + 1).fill(count);
  for (let k = count - 1; k >= 0; k -= 1) next[k] = isHit(k) ? k : next[k + 1]!;
  return next;
}

/** For each step the lowest surface of the hour that ends with it. */
function heldSurface(climate: HourlyClimate): Float64Array {
  const steps = Math.max(1, Math.ceil(60 / climate.step));
  if (steps === 1) return climate.surface;
  return climate.surface.map((surface, k) => {
    let lowest = surface;
    for (let back = 1; back < steps && k - back >= 0; back += 1) lowest = Math.min(lowest, climate.surface[k - back]!);
    return lowest;
  });
}

/** Worked out once for a climate: all materials in it share it. */
function sharedIn(make: (climate: HourlyClimate) => Float64Array): (climate: HourlyClimate) => Float64Array {
  const known = new WeakMap<HourlyClimate, Float64Array>();
  return (climate) => {
    const found = known.get(climate) ?? make(climate);
    known.set(climate, found);
    return found;
  };
}

const heldIn = sharedIn(heldSurface);
const marginIn = sharedIn((climate) => climate.surface.map((surface, k) => surface - dewPoint(climate.air[k]!, climate.humidity[k]!)));

function once<T>(make: () => T): () => T {
  let made: T | null = null;
  return () => (made ??= make());
}

const isHumidityOut = (material: CoatMaterial, humidity: number): boolean =>
  (material.humidity.high !== null && humidity > material.humidity.high) || (material.humidity.low !== null && humidity < material.humidity.low);

/**
 * Adds up a climate for a material. The temperature is the surface's, not the air's.
 * What does not follow the workshop (law `steady`) has no cold and no damp to fear there.
 */
export function createCoatClock(climate: HourlyClimate, material: CoatMaterial): CoatClock {
  const count = climate.air.length;
  const isExposed = material.law.kind !== 'steady';
  const cutOff = isExposed && material.belowMinimum === 'pauses' ? material.minimumUntilDry : null;
  const clock = createCureClock(climate, { law: material.law, reference: material.referenceTemperature, cutOff });
  // A plan asks for neither damp nor cold of most materials, so they are worked out on first use.
  const nextCold = once(() => nextSteps(count, (k) => isExposed && climate.surface[k]! < material.minimumUntilDry));
  const nextDamp = once(() => {
    const margin = marginIn(climate);
    return nextSteps(count, (k) => isExposed && (margin[k]! < material.dewMargin || isHumidityOut(material, climate.humidity[k]!)));
  });
  return {
    material, climate, clock,
    get held() { return heldIn(climate); },
    get margin() { return marginIn(climate); },
    get nextCold() { return nextCold(); },
    get nextDamp() { return nextDamp(); },
  };
}

/** Makes each material's clock for a climate once, and only when asked for. */
export function coatClocks(climate: HourlyClimate): (material: CoatMaterial) => CoatClock {
  const made = new Map<string, CoatClock>();
  return (material) => {
    let coat = made.get(material.id);
    if (coat === undefined || coat.material !== material) {
      coat = createCoatClock(climate, material);
      made.set(material.id, coat);
    }
    return coat;
  };
}

/** Minute after the origin at which a stage is reached, ignoring spoiling; null: not before the end of the climate. */
export function stageMinute(coat: CoatClock, stage: CureStage, laidMinute: number): number | null {
  const ready = readyMinute(coat.clock, laidMinute, coat.material.stages[stage]);
  if (ready === null || stage !== 'recoatFrom' || coat.material.recoatRows.length === 0) return ready;
  return Math.max(ready, laidMinute + tableRecoatWait(coat.material, hottestHeld(coat, laidMinute, ready)));
}

/** {@link stageMinute} for sorted minutes, NaN for null. */
export function stageMinutes(coat: CoatClock, stage: CureStage, laid: Float64Array): Float64Array {
  const ready = readyMinutes(coat.clock, laid, coat.material.stages[stage]);
  if (stage !== 'recoatFrom' || coat.material.recoatRows.length === 0) return ready;
  return ready.map((minute, index) => (Number.isNaN(minute) ? minute : Math.max(minute, laid[index]! + tableRecoatWait(coat.material, hottestHeld(coat, laid[index]!, minute)))));
}

/** Hottest held hour that touches a stretch of minutes. */
function hottestHeld(coat: CoatClock, from: number, to: number): number {
  const { step } = coat.climate;
  const last = Math.min(coat.held.length - 1, Math.ceil(to / step) - 1);
  let hottest = Number.NEGATIVE_INFINITY;
  for (let k = Math.max(0, Math.floor(from / step)); k <= last; k += 1) hottest = Math.max(hottest, coat.held[k]!);
  return hottest;
}

/**
 * Minute after the origin at which the recoat window closes, null: never. A warmer hour shortens it for the whole wait as soon
 * as it begins; a cold one never lengthens it.
 */
export function closingMinute(coat: CoatClock, laidMinute: number): number | null {
  const { step } = coat.climate;
  let hottest = Number.NEGATIVE_INFINITY;
  let closing = Number.POSITIVE_INFINITY;
  for (let k = Math.max(0, Math.floor(laidMinute / step)); k < coat.held.length; k += 1) {
    const start = Math.max(laidMinute, k * step);
    if (closing <= start) return closing;
    if (coat.held[k]! <= hottest) continue;
    hottest = coat.held[k]!;
    const wait = longestRecoatWait(coat.material, hottest);
    if (wait === null) return null;
    closing = Math.max(start, laidMinute + wait);
  }
  return Number.isFinite(closing) ? closing : null;
}

/** First step in [from, to) minutes at which something is hit; null when there is none. `to` null: to the end. */
function firstHit(next: Int32Array, step: number, from: number, to: number | null): number | null {
  const count = next.length - 1;
  const first = Math.floor(from / step);
  if (first < 0 || first >= count) return null;
  const k = next[first]!;
  return k < count && (to === null || k * step < to) ? k : null;
}

function dampFault(coat: CoatClock, k: number, from: Instant): CoatFault {
  const { margin, material, climate } = coat;
  if (margin[k]! < material.dewMargin) return { kind: 'surface fault', from, why: 'dew', value: margin[k]!, limit: material.dewMargin };
  const humidity = climate.humidity[k]!;
  const limit = (material.humidity.high !== null && humidity > material.humidity.high ? material.humidity.high : material.humidity.low) ?? 0;
  return { kind: 'surface fault', from, why: 'humidity', value: humidity, limit };
}

function coldFault(coat: CoatClock, k: number, from: Instant, laid: number, until: number | null): CoatFault {
  const { climate, material } = coat;
  const cold = { temperature: climate.surface[k]!, limit: material.minimumUntilDry };
  const kind: BelowMinimum = material.belowMinimum;
  if (kind === 'never forms') return { kind, from, ...cold };
  if (kind === 'surface fault') return { kind, from, why: 'cold', value: cold.temperature, limit: cold.limit };
  const end = Math.min(until ?? Number.POSITIVE_INFINITY, climate.surface.length * climate.step);
  let minutes = 0;
  for (let step = k; step * climate.step < end; step += 1) {
    if (climate.surface[step]! >= material.minimumUntilDry) continue;
    minutes += Math.min(end, (step + 1) * climate.step) - Math.max(laid, step * climate.step);
  }
  return { kind: 'paused', from, minutes, ...cold };
}

/**
 * Stages, window and faults of a coat laid at a moment. The minimum temperature, the dew margin and the humidity are watched from
 * application until touch dry, not only at application; a paused cure is counted to full cure.
 */
export function forecastCoat(coat: CoatClock, laidAt: Instant): CoatForecast {
  const { climate, material } = coat;
  const laid = minutesSinceOrigin(climate, laidAt);
  const moment = (minute: number | null): Instant | null => (minute === null ? null : momentOfMinute(climate, Math.ceil(minute - 1e-6)));
  const dry = stageMinute(coat, 'touchDry', laid);
  const faults: CoatFault[] = [];
  const startOf = (k: number): Instant => momentOfMinute(climate, Math.max(laid, k * climate.step));
  const watched = material.belowMinimum === 'pauses' ? stageMinute(coat, 'fullCure', laid) : dry;
  const cold = firstHit(coat.nextCold, climate.step, laid, watched);
  if (cold !== null) faults.push(coldFault(coat, cold, startOf(cold), laid, watched));
  const damp = firstHit(coat.nextDamp, climate.step, laid, dry);
  if (damp !== null) faults.push(dampFault(coat, damp, startOf(damp)));
  const spoiltAt = faults.find((fault) => fault.kind === 'never forms')?.from ?? null;
  const reach = (stage: CureStage): Instant | null => {
    const at = moment(stageMinute(coat, stage, laid));
    return at !== null && (spoiltAt === null || at <= spoiltAt) ? at : null;
  };
  const [flashOff, touchDry, recoatFrom, handle, fullCure] = CURE_STAGES.map(reach);
  const closing = closingMinute(coat, laid);
  const recoatUntil = closing === null ? null : momentOfMinute(climate, Math.floor(closing + 1e-6));
  const opening = moment(stageMinute(coat, 'recoatFrom', laid));
  return {
    laidAt,
    reached: { flashOff: flashOff ?? null, touchDry: touchDry ?? null, recoatFrom: recoatFrom ?? null, handle: handle ?? null, fullCure: fullCure ?? null },
    recoatUntil,
    isWindowEmpty: recoatUntil !== null && (opening === null || opening > recoatUntil),
    isSpoilt: spoiltAt !== null,
    faults,
  };
}
