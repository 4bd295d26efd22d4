/** Vapour in a room: from millilitres to ppm, build-up, decay and the wait after spraying. At 25 °C, where a mole of gas takes 24.45 l. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { checkDuration, checkMagnitude } from './amount';

const LITRES_PER_MOLE = 24.45;

/** Least wait after isocyanate spraying, minutes: HSE found that a room may need up to this. */
const ISOCYANATE_WAIT = 30;
/** Air in a room mixes badly; the effective air changes are divided by this. Judgement. */
const DEFAULT_MIXING = 3;

/** @example toMilligrams(100, 106.17) // 434.2 mg/m3 of xylene */
export function toMilligrams(ppm: number, molarMass: number): number {
  return (ppm * molarMass) / LITRES_PER_MOLE;
}

/** @example toPpm(435, 106.17) // 100.2 ppm of xylene */
export function toPpm(milligrams: number, molarMass: number): number {
  return (milligrams * LITRES_PER_MOLE) / molarMass;
}

/** ppm when all of a liquid has evaporated into a closed room. Litres of room, kg/l, g/mol. */
export function evaporatedPpm(liquid: { readonly millilitres: number; readonly density: number; readonly molarMass: number }, roomLitres: number): number {
  return (liquid.millilitres * liquid.density * LITRES_PER_MOLE * 1e6) / (liquid.molarMass * roomLitres);
}

/** ppm after a time of steady release: G and Q in the same volume unit a minute, V in that unit. */
export function buildUpPpm(release: number, ventilation: number, volume: number, minutes: number): number {
  return ventilation === 0 ? (release * minutes * 1e6) / volume : (release / ventilation) * (1 - Math.exp((-ventilation * minutes) / volume)) * 1e6;
}

/** Minutes until a share of what was there is left. @example minutesToShare(6, 0.01) // 46.05 */
export function minutesToShare(airChanges: number, share: number): number {
  return (Math.log(1 / share) / airChanges) * 60;
}

/** Mean ppm over the time of a steady release, from nothing: the integral of {@link buildUpPpm}. */
export function meanPpm(release: number, ventilation: number, volume: number, minutes: number): number {
  const turns = (ventilation * minutes) / volume;
  // A series for almost no air: the difference below would be lost to rounding.
  return turns < 1e-6 ? (release * minutes * 1e6) / (2 * volume) : (release / ventilation) * (1 - (1 - Math.exp(-turns)) / turns) * 1e6;
}

export interface SprayedVapour {
  /** Paint as sprayed, ml, and the share of it that evaporates. */
  readonly sprayed: number;
  readonly solventShare: number;
  readonly density: number;
  readonly molarMass: number;
  /** m3. */
  readonly volume: number;
  /** An hour, extraction running. */
  readonly airChanges: number;
  /** Minutes over which it is sprayed. */
  readonly minutes: number;
  /** Exposure limit over eight hours, ppm. */
  readonly limit: number;
}

export interface VapourCourse {
  /** At the end of spraying, ppm: the highest. */
  readonly peak: number;
  /** Mean over the spraying, ppm. */
  readonly mean: number;
  /** The same as the peak, in mg/m3. */
  readonly peakMilligrams: number;
  /** As if no air moved, ppm. */
  readonly closedRoom: number;
  /** Minutes after spraying until it is below the limit; null: never without air changes. */
  readonly belowLimitAfter: number | null;
}

function checkSprayed(vapour: SprayedVapour): readonly Issue[] {
  return [
    ...checkMagnitude(vapour.sprayed, 'The amount sprayed', { low: 0, high: 100_000, unit: 'ml' }, ['sprayed']),
    ...checkMagnitude(vapour.solventShare, 'The share that evaporates', { low: 0, high: 1, unit: '' }, ['solventShare']),
    ...checkMagnitude(vapour.density, 'The density', { low: 0.3, high: 3, unit: 'kg/l' }, ['density']),
    ...checkMagnitude(vapour.molarMass, 'The molar mass', { low: 10, high: 1000, unit: 'g/mol' }, ['molarMass']),
    ...checkMagnitude(vapour.volume, 'The volume of the room', { low: 1, high: 100_000, unit: 'm3' }, ['volume']),
    ...checkMagnitude(vapour.airChanges, 'The air changes', { low: 0, high: 600, unit: 'an hour' }, ['airChanges']),
    ...checkMagnitude(vapour.limit, 'The limit', { low: 0.0001, high: 10_000, unit: 'ppm' }, ['limit']),
    ...checkDuration(vapour.minutes, 'The spraying', ['minutes']),
  ];
}

/**
 * How much vapour a sprayed coat puts into the air, taken to evaporate evenly while it is sprayed, and how long it stays.
 * Air changes are divided by {@link DEFAULT_MIXING}. A figure for planning: it measures nothing.
 * Fails with `exposure-out-of-range` or `exposure-without-duration`, all of them.
 */
export function followVapour(vapour: SprayedVapour): Result<VapourCourse> {
  const issues = checkSprayed(vapour);
  if (issues.length > 0) return fail(issues);
  const { density, molarMass, minutes, limit } = vapour;
  const litres = vapour.volume * 1000;
  const closedRoom = evaporatedPpm({ millilitres: vapour.sprayed * vapour.solventShare, density, molarMass }, litres);
  const changes = vapour.airChanges / DEFAULT_MIXING;
  const release = (closedRoom * litres) / 1e6 / minutes;
  const peak = buildUpPpm(release, (changes * litres) / 60, litres, minutes);
  const wait = changes === 0 ? null : Math.max(0, minutesToShare(changes, limit / Math.max(peak, limit)));
  const mean = meanPpm(release, (changes * litres) / 60, litres, minutes);
  return ok({ peak, mean, peakMilligrams: toMilligrams(peak, molarMass), closedRoom, belowLimitAfter: peak <= limit ? 0 : wait });
}

/**
 * Minutes that a place stays shut after isocyanate spraying: until 1 % is left, at least {@link ISOCYANATE_WAIT}.
 * Fails with `clearance-unknown` when no air moves or nobody knows how much.
 */
export function isocyanateWait(airChanges: number | null): Result<number> {
  if (airChanges === null || !Number.isFinite(airChanges) || airChanges <= 0) {
    return fail([issue('clearance-unknown', 'Nobody knows how long the air of this place takes to clear: it has no air changes.', 'Measure the clearance time with smoke, or enter the air changes of the extraction.')]);
  }
  return ok(Math.ceil(Math.max(ISOCYANATE_WAIT, minutesToShare(airChanges, 0.01))));
}
