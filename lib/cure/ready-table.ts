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

/** Where the table is read. */
export interface TableGrid {
  readonly step: number;
  readonly horizon: number;
  /** Minutes count from here. */
  readonly origin: Instant;
  /** Minutes in which a coat may be laid, sorted; left out: all. */
  readonly within?: readonly MinuteSpan[] | undefined;
}

/** A grid worked out once for all tables on it. */
interface Places {
  /** The end of each step: a table of no waits, copied by those that have some. */
  readonly steps: readonly number[];
  /** Places of the grid at which a coat may be laid, in order, and their minutes. */
  readonly asked: Int32Array;
  readonly minutes: Float64Array;
}

const known = new WeakMap<TableGrid, Places>();

function placesOf(grid: TableGrid): Places {
  const found = known.get(grid);
  if (found !== undefined) return found;
  const { horizon, step, within = [{ start: 0, end: horizon }] } = grid;
  const steps: number[] = [];
  for (let minute = 0; minute < horizon + step; minute += step) steps.push(minute);
  const asked: number[] = [];
  for (const { start, end } of within) {
    const last = Math.min(steps.length - 1, Math.ceil(end / step));
    for (let k = Math.max((asked.at(-1) ?? -1) + 1, Math.floor(start / step)); k <= last; k += 1) asked.push(k);
  }
  const places = { steps, asked: Int32Array.from(asked), minutes: Float64Array.from(asked, (k) => k * step) };
  known.set(grid, places);
  return places;
}

/** When a coat laid at each of the places has reached a stage, minutes from the start of the climate; NaN where never. */
function askAll(coat: CoatClock, stage: CureStage, { minutes }: Places, shift: number): Float64Array {
  return stageMinutes(coat, stage, minutes.map((minute) => minute + shift));
}

/**
 * `ready[k]` is the earliest minute at which a coat laid in ((k-1) * step, k * step] has reached a stage; it never decreases and
 * is never under k * step. Minutes count from `origin`; a coat not ready by the horizon, or by the end of the climate, is ready
 * at the horizon, where nothing happens any more. Outside the minutes in which a coat may be laid it is only no nonsense: it never
 * decreases there either. Says nothing of spoilt coats: see {@link spoiltStarts}.
 * @throws RangeError for a step that is not positive.
 */
export function readyTable(coat: CoatClock, stage: CureStage, grid: TableGrid): number[] {
  const { step, horizon, origin } = grid;
  if (!(step > 0)) throw new RangeError(`A table needs a positive step, got ${step}`);
  const shift = minutesSinceOrigin(coat.climate, origin);
  const places = placesOf(grid);
  const { asked, steps } = places;
  const ready = steps.slice();
  const minutes = askAll(coat, stage, places, shift);
  let latest = 0;
  for (let index = 0; index < asked.length; index += 1) {
    const [k, next] = [asked[index]!, asked[index + 1] ?? ready.length];
    // Not ready in the time that is known: NaN fails every comparison.
    const at = Math.ceil(minutes[index]! - shift - 1e-6);
    latest = Math.max(latest, at < horizon ? at : horizon, k * step);
    ready[k] = latest;
    // Nothing is laid before the next place: there it only must not decrease.
    for (let between = k + 1; between < next && ready[between]! < latest; between += 1) ready[between] = latest;
  }
  return ready;
}

/** Makes each table once, however many coats of a material wait for the same stage. */
export function readyTables(
  clockOf: (material: CoatMaterial) => CoatClock, grid: TableGrid,
): (material: CoatMaterial, stage: CureStage) => readonly number[] {
  const made = new Map<CoatClock, Map<CureStage, readonly number[]>>();
  return (material, stage) => {
    const coat = clockOf(material);
    const ofCoat = made.get(coat) ?? new Map<CureStage, readonly number[]>();
    made.set(coat, ofCoat);
    const ready = ofCoat.get(stage) ?? readyTable(coat, stage, grid);
    ofCoat.set(stage, ready);
    return ready;
  };
}

/**
 * Minutes from `origin` at which a coat that never forms in the cold must not be laid, since its surface falls below the minimum
 * before it is touch dry. Tried every `step` minutes; each hit closes the step that begins there. Empty for materials that only pause.
 */
export function spoiltStarts(coat: CoatClock, grid: TableGrid): MinuteSpan[] {
  const { step, horizon, origin } = grid;
  if (coat.material.belowMinimum !== 'never forms') return [];
  const shift = minutesSinceOrigin(coat.climate, origin);
  const { step: stepOfClimate } = coat.climate;
  const count = coat.nextCold.length - 1;
  const spans: MinuteSpan[] = [];
  const places = placesOf(grid);
  const dries = askAll(coat, 'touchDry', places, shift);
  places.minutes.forEach((start, index) => {
    const first = Math.floor((start + shift) / stepOfClimate);
    if (start >= horizon || first < 0 || first >= count) return;
    const cold = coat.nextCold[first]!;
    if (cold >= count || cold * stepOfClimate >= dries[index]!) return;
    const last = spans.at(-1);
    const end = Math.min(horizon, start + step);
    if (last !== undefined && last.end >= start) spans[spans.length - 1] = { start: last.start, end };
    else spans.push({ start, end });
  });
  return spans;
}
