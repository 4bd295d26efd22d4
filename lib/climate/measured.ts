/** Readings of a logger laid on the steps of a model. */
import { MS_PER_MINUTE, type Instant } from '@/lib/units';

/** One row of a logger. */
export interface Reading {
  readonly at: Instant;
  /** °C */
  readonly temperature: number;
  /** Percent; null: not measured. */
  readonly humidity: number | null;
}

/** NaN where nothing was measured. */
export interface MeasuredHours {
  /** Mean of what is covered of each step, °C. */
  readonly air: Float64Array;
  /** The latest measured value inside each step, °C. */
  readonly lastAir: Float64Array;
  /** Mean, percent. */
  readonly humidity: Float64Array;
}

/** Readings further apart than this are not joined by a line: between them the model speaks. */
export const LONGEST_JOINED_GAP_HOURS = 3;

interface Curve {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** Mean and last value of a curve in each step: straight lines between readings, a lone reading for its own step. */
function meanByStep(curve: Curve, originMs: number, stepMs: number, count: number): { mean: Float64Array; last: Float64Array } {
  const [sum, covered, last] = [new Float64Array(count), new Float64Array(count), new Float64Array(count).fill(Number.NaN)];
  const mean = new Float64Array(count).fill(Number.NaN);
  const joined = LONGEST_JOINED_GAP_HOURS * 60 * MS_PER_MINUTE;
  curve.at.forEach((at, index) => {
    const value = curve.value[index]!;
    const own = Math.floor((at - originMs) / stepMs);
    if (own >= 0 && own < count) {
      if (Number.isNaN(mean[own]!)) mean[own] = value;
      last[own] = value;
    }
    const [next, nextValue] = [curve.at[index + 1], curve.value[index + 1]];
    if (next === undefined || nextValue === undefined || next - at > joined) return;
    const slope = (nextValue - value) / (next - at);
    const final = Math.min(count - 1, Math.ceil((next - originMs) / stepMs) - 1);
    for (let k = Math.max(0, own); k <= final; k += 1) {
      const from = Math.max(at, originMs + k * stepMs);
      const to = Math.min(next, originMs + (k + 1) * stepMs);
      sum[k] = sum[k]! + (to - from) * (value + slope * ((from + to) / 2 - at));
      covered[k] = covered[k]! + to - from;
      last[k] = value + slope * (to - at);
    }
  });
  for (let k = 0; k < count; k += 1) if (covered[k]! > 0) mean[k] = sum[k]! / covered[k]!;
  return { mean, last };
}

/**
 * Readings as values of each step. `readings` are sorted, no two at the same moment; gaps of more than three hours stay open.
 */
export function measureHours(
  readings: readonly Reading[],
  grid: { readonly origin: Instant; readonly step: number; readonly count: number },
): MeasuredHours {
  const stepMs = grid.step * MS_PER_MINUTE;
  const air = meanByStep({ at: readings.map((r) => r.at), value: readings.map((r) => r.temperature) }, grid.origin, stepMs, grid.count);
  const damp = readings.flatMap(({ at, humidity }) => (humidity === null ? [] : [{ at, humidity }]));
  const humid = meanByStep({ at: damp.map((r) => r.at), value: damp.map((r) => r.humidity) }, grid.origin, stepMs, grid.count);
  return { air: air.mean, lastAir: air.last, humidity: humid.mean };
}
