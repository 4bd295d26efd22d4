/** The room's time constant and offset from what a logger measured. */
import { fail, issue, ok, type Result } from '@/lib/result';
import { MS_PER_MINUTE } from '@/lib/units';
import type { HeatingRun } from './heating';
import { LONGEST_JOINED_GAP_HOURS, type Reading } from './measured';
import type { OutsideSeries } from './outside';

export interface RoomFit {
  /** Hours. */
  readonly timeConstant: number;
  /** Kelvins above outside. */
  readonly offset: number;
  /** Root mean square of what is left between readings and model, K. */
  readonly error: number;
  /** Readings used. */
  readonly count: number;
}

const SHORTEST_HOURS = 0.5;
const LONGEST_HOURS = 240;
const FEWEST_READINGS = 24;
const GRID_POINTS = 25;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Readings that follow each other without a gap and without heat. */
function unheatedStretches(readings: readonly Reading[], outside: OutsideSeries, runs: readonly HeatingRun[]): Reading[][] {
  const end = outside.origin + outside.air.length * outside.step * MS_PER_MINUTE;
  const stretches: Reading[][] = [];
  let current: Reading[] = [];
  let last: Reading | null = null;
  const close = (): void => {
    if (current.length > 2) stretches.push(current);
    current = [];
  };
  for (const reading of readings) {
    if (reading.at < outside.origin || reading.at > end) continue;
    const isFar = last !== null && reading.at - last.at > LONGEST_JOINED_GAP_HOURS * 60 * MS_PER_MINUTE;
    const before = last?.at ?? reading.at;
    const isHeated = runs.some((run) => run.start < reading.at && run.end > before);
    if (isFar || isHeated) close();
    current.push(reading);
    last = reading;
  }
  close();
  return stretches;
}

/** Squared error and best offset for a time constant. Each stretch has its own start, taken out by projection. */
function tryTimeConstant(stretches: readonly Reading[][], outside: OutsideSeries, tau: number): { error: number; offset: number } {
  const stepMs = outside.step * MS_PER_MINUTE;
  const rows: { y: number; g: number; stretch: number }[] = [];
  const sums = stretches.map(() => ({ gg: 0, gy: 0, gh: 0 }));
  stretches.forEach((stretch, index) => {
    let at: number = stretch[0]!.at;
    let [base, g] = [0, 1];
    for (const reading of stretch) {
      while (at < reading.at) {
        const k = Math.min(outside.air.length - 1, Math.floor((at - outside.origin) / stepMs));
        const to = Math.min(reading.at, outside.origin + (k + 1) * stepMs);
        const decay = Math.exp(-(to - at) / MS_PER_MINUTE / 60 / tau);
        base = outside.air[k]! + (base - outside.air[k]!) * decay;
        g *= decay;
        at = to > at ? to : reading.at;
      }
      const y = reading.temperature - base;
      const sum = sums[index]!;
      sum.gg += g * g;
      sum.gy += g * y;
      sum.gh += g * (1 - g);
      rows.push({ y, g, stretch: index });
    }
  });
  let [hh, hy, yy] = [0, 0, 0];
  for (const { y, g, stretch } of rows) {
    const { gg, gy, gh } = sums[stretch]!;
    const [restY, restH] = [y - (g * gy) / gg, 1 - g - (g * gh) / gg];
    hh += restH * restH;
    hy += restH * restY;
    yy += restY * restY;
  }
  const offset = hh > 1e-12 ? hy / hh : 0;
  return { error: Math.max(0, yy - offset * hy), offset };
}

/** The least of a function between two values, by golden section; exact enough for a time constant. */
function findLeast(from: number, to: number, value: (x: number) => number): number {
  let [low, high] = [from, to];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [value(a), value(b)];
  for (let round = 0; round < 40; round += 1) {
    if (atA <= atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = value(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = value(b);
    }
  }
  return (low + high) / 2;
}

/**
 * Time constant (0.5 to 240 h) and offset that make the lumped room follow the readings best, by least squares, from the hours
 * without heating. `readings` sorted. Fails with `fit-few-readings` under 24 readings without heat, or `fit-unclear` when the best
 * lies at the edge of the range: the outside moved too little, or the readings are not of this room.
 */
export function fitRoom(readings: readonly Reading[], outside: OutsideSeries, runs: readonly HeatingRun[] = []): Result<RoomFit> {
  const stretches = unheatedStretches(readings, outside, runs);
  const count = stretches.reduce((sum, stretch) => sum + stretch.length, 0);
  if (count < FEWEST_READINGS) {
    const message = `Only ${count} readings fall into hours without heating and with known weather; a fit needs ${FEWEST_READINGS}.`;
    return fail([issue('fit-few-readings', message, 'Leave the logger in the unheated room for a day or two.')]);
  }
  const [low, high] = [Math.log(SHORTEST_HOURS), Math.log(LONGEST_HOURS)];
  const error = (x: number): number => tryTimeConstant(stretches, outside, Math.exp(x)).error;
  const grid = Array.from({ length: GRID_POINTS }, (_, index) => low + ((high - low) * index) / (GRID_POINTS - 1));
  const errors = grid.map(error);
  const best = errors.indexOf(Math.min(...errors));
  const found = findLeast(grid[Math.max(0, best - 1)]!, grid[Math.min(GRID_POINTS - 1, best + 1)]!, error);
  if (found > high - 0.02 || found < low + 0.02) {
    const message = 'The readings do not tell how fast the room follows the outside.';
    return fail([issue('fit-unclear', message, 'Use readings over days with a clear difference between night and day.')]);
  }
  const timeConstant = Math.exp(found);
  const { error: squares, offset } = tryTimeConstant(stretches, outside, timeConstant);
  return ok({ timeConstant, offset, error: Math.sqrt(squares / count), count });
}
