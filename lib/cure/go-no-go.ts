/** May we paint? Every reason with its number, from application until touch dry. */
import { formatMoment, type InstantInterval } from '@/lib/calendar';
import { dewPoint, endOfClimate, minutesSinceOrigin, momentOfMinute, momentOfStep, stepAt, type ClimateValues } from '@/lib/climate';
import { addMinutes, type Instant } from '@/lib/units';
import { stageMinute, type CoatClock } from './coat';
import type { CoatMaterial } from './coat-material';

export type GoCode =
  | 'surface-too-cold' | 'surface-too-warm' | 'air-too-damp' | 'air-too-dry' | 'dew-margin' | 'dust-not-settled' | 'margin-falling'
  | 'cold-before-dry' | 'dew-before-dry' | 'damp-before-dry' | 'forecast-too-short' | 'heater-on';

/** One thing that was looked at. */
export interface GoCheck {
  readonly code: GoCode;
  readonly isMet: boolean;
  /** `warn` does not stop a session. */
  readonly severity: 'stop' | 'warn';
  readonly value: number;
  readonly limit: number;
  readonly unit: '°C' | 'K' | '%' | 'min';
  /** A sentence with the number in it, whether met or not. */
  readonly message: string;
}

export interface GoVerdict {
  readonly isGo: boolean;
  readonly at: Instant;
  /** null: the forecast ends before. */
  readonly dryAt: Instant | null;
  readonly checks: readonly GoCheck[];
}

const number = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);

function atLeast(code: GoCode, value: number, limit: number, unit: GoCheck['unit'], what: string): GoCheck {
  const isMet = value >= limit;
  return { code, isMet, severity: 'stop', value, limit, unit, message: `${what} is ${number(value)} ${unit}, ${isMet ? 'at least' : 'below'} ${limit} ${unit}.` };
}

function atMost(code: GoCode, value: number, limit: number, unit: GoCheck['unit'], what: string): GoCheck {
  const isMet = value <= limit;
  return { code, isMet, severity: 'stop', value, limit, unit, message: `${what} is ${number(value)} ${unit}, ${isMet ? 'at most' : 'above'} ${limit} ${unit}.` };
}

type Limits = Pick<CoatMaterial, 'minimumTemperature' | 'maximumTemperature' | 'humidity' | 'dewMargin'>;

/**
 * The checks of one moment, as taken with instruments: surface, humidity and dew margin, each by itself, for 85 % does not
 * imply the margin. MIL-HDBK-1110 9.6.6; IMO guideline 3.3.4.
 */
export function judgeReadings(values: ClimateValues, limits: Limits): GoCheck[] {
  const { humidity } = limits;
  const checks = [
    atLeast('surface-too-cold', values.surface, limits.minimumTemperature, '°C', 'The surface'),
    atMost('surface-too-warm', values.surface, limits.maximumTemperature, '°C', 'The surface'),
    atLeast('dew-margin', values.surface - dewPoint(values.air, values.humidity), limits.dewMargin, 'K', 'The surface above the dew point'),
  ];
  if (humidity.high !== null) checks.push(atMost('air-too-damp', values.humidity, humidity.high, '%', 'Humidity'));
  if (humidity.low !== null) checks.push(atLeast('air-too-dry', values.humidity, humidity.low, '%', 'Humidity'));
  return checks;
}

export interface GoOptions {
  /** Minutes the application takes. */
  readonly length: number;
  /** When dust raised in that air has settled; null: none was raised. */
  readonly dustSettledAt: Instant | null;
  /** When a heater that can light solvent is on in that air, in order; left out: never. */
  readonly ignitingHours?: readonly InstantInterval[] | undefined;
  /** For the moments in the sentences. */
  readonly zone: string;
}

interface Extremes {
  readonly cold: number;
  readonly margin: number;
  readonly damp: number;
  readonly coldStep: number;
  readonly marginStep: number;
  readonly dampStep: number;
}

function extremesUntil(coat: CoatClock, from: number, endMinute: number): Extremes {
  const { climate, margin } = coat;
  let found: Extremes = { cold: Infinity, margin: Infinity, damp: -Infinity, coldStep: from, marginStep: from, dampStep: from };
  for (let k = from; k < climate.air.length && k * climate.step < endMinute; k += 1) {
    if (climate.surface[k]! < found.cold) found = { ...found, cold: climate.surface[k]!, coldStep: k };
    if (margin[k]! < found.margin) found = { ...found, margin: margin[k]!, marginStep: k };
    if (climate.humidity[k]! > found.damp) found = { ...found, damp: climate.humidity[k]!, dampStep: k };
  }
  return found;
}

function untilDry(coat: CoatClock, step: number, endMinute: number, zone: string): GoCheck[] {
  const { material, climate } = coat;
  const found = extremesUntil(coat, step, endMinute);
  const when = (k: number): string => formatMoment(momentOfStep(climate, k), zone);
  const checks = [
    atLeast('cold-before-dry', found.cold, material.minimumUntilDry, '°C', `Until touch dry the coldest surface (${when(found.coldStep)})`),
    atLeast('dew-before-dry', found.margin, material.dewMargin, 'K', `Until touch dry the smallest dew margin (${when(found.marginStep)})`),
  ];
  const { high } = material.humidity;
  if (high !== null) checks.push(atMost('damp-before-dry', found.damp, high, '%', `Until touch dry the highest humidity (${when(found.dampStep)})`));
  return checks;
}

function dustCheck(at: Instant, settledAt: Instant | null, zone: string): GoCheck[] {
  if (settledAt === null) return [];
  const wait = Math.max(0, (settledAt - at) / 60_000);
  const message = wait > 0 ? `Dust has settled only at ${formatMoment(settledAt, zone)}, ${Math.round(wait)} min later.` : 'The dust has settled.';
  return [{ code: 'dust-not-settled', isMet: wait === 0, severity: 'stop', value: wait, limit: 0, unit: 'min', message }];
}

/** Solvent and a heater that can light it never share an air, from the opening of the tin to touch dry (29 CFR 1910.107(c)). */
function heaterCheck({ material }: CoatClock, at: Instant, dryAt: Instant, { ignitingHours: hours, zone }: GoOptions): GoCheck[] {
  if (hours === undefined || hours.length === 0 || !material.hasSolvent) return [];
  const met = hours.find(({ start, end }) => start < dryAt && at < end);
  const check = { code: 'heater-on', severity: 'stop', limit: 0, unit: 'min' } as const;
  if (met === undefined) return [{ ...check, isMet: true, value: 0, message: 'No heater that can light solvent is on until touch dry.' }];
  const value = (Math.min(dryAt, met.end) - Math.max(at, met.start)) / 60_000;
  return [{ ...check, isMet: false, value, message: `A heater that can light solvent is on from ${formatMoment(met.start, zone)} to ${formatMoment(met.end, zone)}: ${Math.round(value)} min of that before the coat is touch dry.` }];
}

/** The margin should rise, not fall, while a coat is laid (MIL-HDBK-1110 9.6.6): a warning, since a workshop cools every evening. */
function fallingCheck(coat: CoatClock, step: number): GoCheck {
  const change = (coat.margin[step + 1] ?? coat.margin[step]!) - coat.margin[step]!;
  const message = change < 0 ? `The dew margin falls by ${number(-change)} K in the next hour: measure again.` : 'The dew margin does not fall in the next hour.';
  return { code: 'margin-falling', isMet: change >= 0, severity: 'warn', value: change, limit: 0, unit: 'K', message };
}

/**
 * Whether a coat may be started at a moment: readings then, dust, heaters, and everything until it is touch dry. All checks are returned,
 * met or not. A climate that ends before the coat is dry is a stop of its own.
 */
export function judgeCoating(coat: CoatClock, at: Instant, options: GoOptions): GoVerdict {
  const { climate } = coat;
  const step = stepAt(climate, at);
  const dust = dustCheck(at, options.dustSettledAt, options.zone);
  const laid = minutesSinceOrigin(climate, at) + options.length;
  const dry = step === null ? null : stageMinute(coat, 'touchDry', laid);
  const end = momentOfMinute(climate, Math.ceil((dry ?? climate.air.length * climate.step) - 1e-6));
  const checks = [...dust, ...heaterCheck(coat, at, end, options)];
  if (step !== null) {
    const values = { air: climate.air[step]!, surface: climate.surface[step]!, humidity: climate.humidity[step]! };
    checks.push(...judgeReadings(values, coat.material), fallingCheck(coat, step), ...untilDry(coat, step, minutesSinceOrigin(climate, end), options.zone));
  }
  if (dry === null) {
    const message = `The known climate ends at ${formatMoment(endOfClimate(climate), options.zone)}, before the coat is touch dry.`;
    const known = Math.max(0, (endOfClimate(climate) - at) / 60_000);
    checks.push({ code: 'forecast-too-short', isMet: false, severity: 'stop', value: known, limit: coat.material.stages.touchDry, unit: 'min', message });
  }
  const isGo = checks.every((check) => check.isMet || check.severity === 'warn');
  return { isGo, at, dryAt: dry === null ? null : end, checks };
}

export interface EarliestGo {
  /** Index of the session. */
  readonly session: number;
  readonly verdict: GoVerdict;
}

/** Every moment of a session at which the climate changes, its start first, that leaves room for the work. */
function triesIn(coat: CoatClock, session: InstantInterval, length: number): Instant[] {
  const latest = addMinutes(session.end, -length);
  const tries: Instant[] = session.start <= latest ? [session.start] : [];
  const first = Math.floor(minutesSinceOrigin(coat.climate, session.start) / coat.climate.step) + 1;
  for (let k = first; momentOfStep(coat.climate, k) <= latest; k += 1) tries.push(momentOfStep(coat.climate, k));
  return tries;
}

/** The first moment in the sessions that is a go; null when there is none. `sessions` in order. */
export function earliestGo(coat: CoatClock, sessions: readonly InstantInterval[], options: GoOptions): EarliestGo | null {
  for (const [session, interval] of sessions.entries()) {
    const dust = options.dustSettledAt;
    const tries = triesIn(coat, interval, options.length);
    if (dust !== null && dust > interval.start && dust <= addMinutes(interval.end, -options.length)) tries.push(dust);
    // A heater that goes off within a session leaves the rest of it.
    for (const { end } of options.ignitingHours ?? []) if (end > interval.start && end <= addMinutes(interval.end, -options.length)) tries.push(end);
    for (const at of tries.toSorted((a, b) => a - b)) {
      const verdict = judgeCoating(coat, at, options);
      if (verdict.isGo) return { session, verdict };
    }
  }
  return null;
}
