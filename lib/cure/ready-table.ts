/** The cure clock as a lag of the engine: ready moments by the moment of application. */
import { minutesSinceOrigin } from '@/lib/climate';
import type { Instant } from '@/lib/units';
import { stageMinutes, type CoatClock } from './coat';
import type { CoatMaterial, CureStage } from './coat-material';

/** Half-open minutes. */
export interface MinuteSpan {
  readonly start: number;
  readonly end: number;
}

/**
 * `ready[k]` is the earliest minute at which a coat laid in ((k-1) * step, k * step] has reached a stage; it never decreases and
 * is never under k * step. Minutes count from `origin`; a coat not ready by the horizon, or by the end of the climate, is ready
 * at the horizon, where nothing happens any more. Says nothing of spoilt coats: see {@link spoiltStarts}.
 * @throws RangeError for a step that is not positive.
 */
export function readyTable(coat: CoatClock, stage: CureStage, step: number, horizon: number, origin: Instant = coat.climate.origin): number[] {
  if (!(step > 0)) throw new RangeError(`A table needs a positive step, got ${step}`);
  const shift = minutesSinceOrigin(coat.climate, origin);
  const minutes = stageMinutes(coat, stage, { first: shift, step, count: Math.max(0, Math.ceil(horizon / step) + 1) });
  const ready: number[] = [];
  let latest = 0;
  for (let k = 0; k < minutes.length; k += 1) {
    // Not ready in the time that is known: NaN fails every comparison.
    const at = Math.ceil(minutes[k]! - shift - 1e-6);
    latest = Math.max(latest, at < horizon ? at : horizon, k * step);
    ready.push(latest);
  }
  return ready;
}

/** Makes each table once, however many coats of a material wait for the same stage. */
export function readyTables(
  clockOf: (material: CoatMaterial) => CoatClock, grid: { readonly step: number; readonly horizon: number; readonly origin: Instant },
): (material: CoatMaterial, stage: CureStage) => readonly number[] {
  const made = new Map<CoatClock, Map<CureStage, readonly number[]>>();
  return (material, stage) => {
    const coat = clockOf(material);
    const ofCoat = made.get(coat) ?? new Map<CureStage, readonly number[]>();
    made.set(coat, ofCoat);
    const ready = ofCoat.get(stage) ?? readyTable(coat, stage, grid.step, grid.horizon, grid.origin);
    ofCoat.set(stage, ready);
    return ready;
  };
}

/**
 * Minutes from `origin` at which a coat that never forms in the cold must not be laid, since its surface falls below the minimum
 * before it is touch dry. Tried every `step` minutes; each hit closes the step before it. Empty for materials that only pause.
 */
export function spoiltStarts(coat: CoatClock, step: number, horizon: number, origin: Instant = coat.climate.origin): MinuteSpan[] {
  if (coat.material.belowMinimum !== 'never forms') return [];
  const shift = minutesSinceOrigin(coat.climate, origin);
  const { step: stepOfClimate } = coat.climate;
  const count = coat.nextCold.length - 1;
  const spans: MinuteSpan[] = [];
  const dries = stageMinutes(coat, 'touchDry', { first: shift, step, count: Math.max(0, Math.ceil(horizon / step)) });
  for (let k = 0; k * step < horizon; k += 1) {
    const laid = k * step + shift;
    const first = Math.floor(laid / stepOfClimate);
    if (first < 0 || first >= count) continue;
    const cold = coat.nextCold[first]!;
    const dry = dries[k]!;
    if (cold >= count || cold * stepOfClimate >= dry) continue;
    const last = spans.at(-1);
    const end = Math.min(horizon, (k + 1) * step);
    if (last !== undefined && last.end >= k * step) spans[spans.length - 1] = { start: last.start, end };
    else spans.push({ start: k * step, end });
  }
  return spans;
}
