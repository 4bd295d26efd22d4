/** A room as one lump of mass behind its walls, with a heater. Every step is exact, so its length does not matter. */
import { fail, issue, ok, type Result } from '@/lib/result';
import type { HeatingPlan, HeatingRun } from './heating';

/** The room's own numbers. */
export interface Room {
  /** Hours in which a difference to outside falls to 1/e = 37 %. */
  readonly timeConstant: number;
  /** Heat lost per kelvin of difference, W/K. */
  readonly heatLoss: number;
  /** Kelvins the unheated room settles above the outside: sun, neighbours, a fridge. A difference, not a reading. */
  readonly offset: number;
  /** m3 */
  readonly volume: number;
  /** Air changes an hour. */
  readonly airChanges: number;
  /** Water given off in the room by people and wet things, kg an hour. */
  readonly moisture: number;
  /** Hours the surface of the work lags behind the air. */
  readonly surfaceLag: number;
}

/**
 * T = To + (T0 - To) exp(-t / tau). Hours, °C. Newton's law of cooling.
 * @example lumpedTemperature(20, 2, 6, 8) // 6.745
 */
export function lumpedTemperature(start: number, outside: number, timeConstant: number, hours: number): number {
  return outside + (start - outside) * Math.exp(-hours / timeConstant);
}

/**
 * Hours until a lump reaches a temperature on its way to the outside one; null when it never does.
 * @example hoursToTemperature(20, 2, 6, 10) // 4.866
 */
export function hoursToTemperature(start: number, outside: number, timeConstant: number, wanted: number): number | null {
  if (wanted === start) return 0;
  const share = (wanted - outside) / (start - outside);
  return share > 0 && share < 1 ? -timeConstant * Math.log(share) : null;
}

/**
 * Time constant from two readings and a steady outside.
 * @example timeConstantOf(66, 63, 32, 2) // 21.65, in any unit of temperature
 */
export function timeConstantOf(first: number, second: number, outside: number, hours: number): number {
  return hours / Math.log((first - outside) / (second - outside));
}

/** Mean over a stretch that starts `excess` above its goal. `share` is hours / time constant. */
const meanExcess = (excess: number, share: number): number => (share < 1e-9 ? excess : (excess * -Math.expm1(-share)) / share);

export interface RoomStretch {
  readonly end: number;
  readonly mean: number;
  /** Heat put in, kWh. */
  readonly heat: number;
}

/** A stretch without heating. `goal` is where it would settle, `hours` its length. */
export function coolRoom(start: number, goal: number, room: Pick<Room, 'timeConstant'>, hours: number): RoomStretch {
  const share = hours / room.timeConstant;
  return { end: goal + (start - goal) * Math.exp(-share), mean: goal + meanExcess(start - goal, share), heat: 0 };
}

/**
 * A stretch with a thermostat: full power up to the set point, then just enough to hold it; none while it is warmer.
 * Exact for a steady outside.
 */
export function heatRoom(
  start: number, goal: number, room: Pick<Room, 'timeConstant' | 'heatLoss'>, hours: number, setPoint: number, kilowatts: number,
): RoomStretch {
  const hottest = goal + (kilowatts * 1000) / room.heatLoss;
  let [at, left, heat, sum] = [start, hours, 0, 0];
  while (left > 0) {
    if (at === setPoint && goal <= setPoint && hottest >= setPoint) {
      heat += (left * room.heatLoss * (setPoint - goal)) / 1000;
      sum += setPoint * left;
      break;
    }
    const isFull = at < setPoint || (at === setPoint && hottest < setPoint);
    const reach = at === setPoint ? null : hoursToTemperature(at, isFull ? hottest : goal, room.timeConstant, setPoint);
    const length = Math.min(left, reach ?? left);
    const piece = coolRoom(at, isFull ? hottest : goal, room, length);
    sum += piece.mean * length;
    if (isFull) heat += kilowatts * length;
    at = length === reach ? setPoint : piece.end;
    left -= length;
  }
  return { end: at, mean: sum / hours, heat };
}

/** The heating of a plan inside one step, as pieces of it in order. `runs` are sorted; `from` is the first that may matter. */
export function eachPiece(
  plan: HeatingPlan, from: number, start: number, end: number, visit: (start: number, end: number, run: HeatingRun | null) => void,
): number {
  let first = from;
  while (first < plan.runs.length && plan.runs[first]!.end <= start) first += 1;
  let at = start;
  for (let k = first; k < plan.runs.length && plan.runs[k]!.start < end; k += 1) {
    const run = plan.runs[k]!;
    if (run.start > at) visit(at, run.start, null);
    at = Math.max(at, run.start);
    const until = Math.min(run.end, end);
    visit(at, until, run);
    at = until;
  }
  if (at < end) visit(at, end, null);
  return first;
}

/** Fails with `room-value` for each number that cannot be. */
export function checkRoom(room: Room): Result<Room> {
  const rules: readonly (readonly [keyof Room, number, number, string])[] = [
    ['timeConstant', 0.1, 1000, 'hours'], ['heatLoss', 1, 100_000, 'W/K'], ['offset', -20, 20, 'K'], ['volume', 1, 100_000, 'm3'],
    ['airChanges', 0.01, 100, 'an hour'], ['moisture', 0, 100, 'kg an hour'], ['surfaceLag', 0.01, 100, 'hours'],
  ];
  const issues = rules.flatMap(([field, low, high, unit]) => {
    const value = room[field];
    if (value >= low && value <= high) return [];
    const message = `The room's ${WORDS[field]} is ${value} ${unit}.`;
    return [issue('room-value', message, `Write a value from ${low} to ${high} ${unit}.`, { path: [field] })];
  });
  return issues.length > 0 ? fail(issues) : ok(room);
}

const WORDS: Readonly<Record<keyof Room, string>> = {
  timeConstant: 'time constant', heatLoss: 'heat loss', offset: 'offset above outside', volume: 'volume',
  airChanges: 'change of air', moisture: 'moisture from people and wet things', surfaceLag: 'lag of the surface',
};
