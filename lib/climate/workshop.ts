/** The workshop by the hour: outside air, room, heating and what a logger measured. */
import { MS_PER_MINUTE } from '@/lib/units';
import { waterPerKwh, type HeatingPlan } from './heating';
import type { HourlyClimate } from './hourly';
import type { MeasuredHours } from './measured';
import type { OutsideSeries } from './outside';
import { coolRoom, eachPiece, heatRoom, type Room } from './room';
import { dewPoint, magnusPressure } from './vapour';

export interface WorkshopClimate extends HourlyClimate {
  /** Heat put in during each step, kWh; the model's, also where readings overrule its temperatures. */
  readonly heat: Float64Array;
  /** 1 where the air is measured, 0 where it is modelled. */
  readonly isMeasured: Uint8Array;
}

export interface WorkshopInput {
  readonly outside: OutsideSeries;
  readonly room: Room;
  /** Checked by `checkHeating`. */
  readonly heating: HeatingPlan;
  /** On the steps of `outside`; null: none. */
  readonly measured: MeasuredHours | null;
  /** Air at the start, °C; null: settled at the outside's first value. */
  readonly start: number | null;
}

/** Gas constant of water vapour, J/(kg K). */
const VAPOUR_CONSTANT = 461.5;
const KELVIN = 273.15;

/** Vapour pressure in hPa of a kg of water in a m3 of air. */
const pressureOfDensity = (density: number, temperature: number): number => (density * VAPOUR_CONSTANT * (temperature + KELVIN)) / 100;

/** Decay over a step, and the share of the difference at its start that its mean still has. */
function stepDecay(share: number): { readonly decay: number; readonly meanShare: number } {
  return { decay: Math.exp(-share), meanShare: share < 1e-9 ? 1 : -Math.expm1(-share) / share };
}

interface RoomState {
  /** Air at the end of the step, °C. */
  at: number;
  mean: number;
  /** kWh in the step. */
  heat: number;
  nextRun: number;
}

/** One step with heating in it, piece by piece. */
function stepHeated(state: RoomState, input: WorkshopInput, goal: number, start: number, end: number): void {
  let [sum, heat] = [0, 0];
  state.nextRun = eachPiece(input.heating, state.nextRun, start, end, (from, to, run) => {
    const hours = (to - from) / MS_PER_MINUTE / 60;
    const piece = run === null
      ? coolRoom(state.at, goal, input.room, hours)
      : heatRoom(state.at, goal, input.room, hours, run.setPoint, input.heating.heater.kilowatts);
    state.at = piece.end;
    sum += piece.mean * hours;
    heat += piece.heat;
  });
  state.mean = sum / ((end - start) / MS_PER_MINUTE / 60);
  state.heat = heat;
}

/**
 * Air, surface, humidity and heat of a room for every step of the outside series. Every value is the mean of its step; the
 * outside is held over a step, and inside it the room, the vapour and the surface follow their exact exponential.
 * Where readings exist they replace the model, and the model goes on from the last of them.
 * Vapour above saturation is taken to condense. One long function, as the state of the room runs through all of it.
 */
export function workshopClimate(input: WorkshopInput): WorkshopClimate {
  const { outside, room, heating, measured } = input;
  const count = outside.air.length;
  const hours = outside.step / 60;
  const stepMs = outside.step * MS_PER_MINUTE;
  const [air, surface, humidity, heat] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const isMeasured = new Uint8Array(count);
  const water = waterPerKwh(heating.heater);
  const [ofRoom, ofVapour, ofSurface] = [stepDecay(hours / room.timeConstant), stepDecay(room.airChanges * hours), stepDecay(hours / room.surfaceLag)];
  const begin = input.start ?? (outside.air[0] ?? 0) + room.offset;
  const state: RoomState = { at: begin, mean: begin, heat: 0, nextRun: 0 };
  let onSurface = begin;
  let vapour = outside.vapour[0] ?? 0;
  for (let k = 0; k < count; k += 1) {
    const stepStart = outside.origin + k * stepMs;
    const goal = outside.air[k]! + room.offset;
    while (state.nextRun < heating.runs.length && heating.runs[state.nextRun]!.end <= stepStart) state.nextRun += 1;
    if (state.nextRun < heating.runs.length && heating.runs[state.nextRun]!.start < stepStart + stepMs) {
      stepHeated(state, input, goal, stepStart, stepStart + stepMs);
    } else {
      state.heat = 0;
      state.mean = goal + (state.at - goal) * ofRoom.meanShare;
      state.at = goal + (state.at - goal) * ofRoom.decay;
    }
    const reading = measured === null ? Number.NaN : measured.air[k]!;
    if (!Number.isNaN(reading)) {
      state.mean = reading;
      state.at = measured!.lastAir[k]!;
      isMeasured[k] = 1;
    }
    const { mean } = state;
    const settled = outside.vapour[k]! + pressureOfDensity((room.moisture + (state.heat / hours) * water) / (room.airChanges * room.volume), mean);
    const saturated = magnusPressure(mean);
    const meanVapour = Math.min(saturated, settled + (vapour - settled) * ofVapour.meanShare);
    vapour = Math.min(saturated, settled + (vapour - settled) * ofVapour.decay);
    humidity[k] = Math.min(100, (100 * meanVapour) / saturated);
    const reported = measured === null ? Number.NaN : measured.humidity[k]!;
    if (!Number.isNaN(reported)) {
      humidity[k] = reported;
      vapour = (saturated * reported) / 100;
    }
    surface[k] = mean + (onSurface - mean) * ofSurface.meanShare;
    onSurface = mean + (onSurface - mean) * ofSurface.decay;
    air[k] = mean;
    heat[k] = state.heat;
  }
  return { origin: outside.origin, step: outside.step, air, surface, humidity, heat, isMeasured };
}

/** Kelvins between surface and dew point in each step: under 3 a coat may sweat. */
export function dewMargins(climate: HourlyClimate): Float64Array {
  return climate.surface.map((surface, k) => surface - dewPointOfStep(climate, k));
}

function dewPointOfStep(climate: HourlyClimate, k: number): number {
  return dewPoint(climate.air[k]!, climate.humidity[k]!);
}
