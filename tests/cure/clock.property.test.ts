import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { climateOfValues } from '@/lib/climate';
import {
  ageAtMinute, closingMinute, createCoatClock, createCureClock, forecastCoat, minuteOfAge, rateAt, readyMinute, readyTable, spoiltStarts, stageMinute, type BelowMinimum,
  type CoatMaterial, type RateLaw,
} from '@/lib/cure';
import { addMinutes } from '@/lib/units';
import { COAT, libraryMaterial, ORIGIN } from './sample-coats';

const anyLaw: fc.Arbitrary<RateLaw> = fc.oneof(
  fc.constant<RateLaw>({ kind: 'doubling', per: 10 }),
  fc.constant<RateLaw>({ kind: 'arrhenius', activation: 5000 }),
  fc.constant<RateLaw>({ kind: 'maturity', datum: -10 }),
  fc.constant<RateLaw>({ kind: 'moisture', humidity: 50 }),
);
const temperatures = fc.array(fc.integer({ min: -50, max: 350 }).map((tenth) => tenth / 10), { minLength: 30, maxLength: 120 });
const anyClimate = temperatures.map((air) => climateOfValues(ORIGIN, { air, surface: air.map((t, k) => t - (k % 3)), humidity: air.map((_, k) => 30 + (k % 60)) }));
const anyCutOff = fc.constantFrom(null, 5, 10);
const anyClock = fc.record({ climate: anyClimate, law: anyLaw, cutOff: anyCutOff }).map(({ climate, law, cutOff }) => createCureClock(climate, { law, reference: 20, cutOff }));

test('prefix sums equal a minute by minute integration', () => {
  fc.assert(fc.property(anyClock, fc.nat(1500), fc.nat(1500), (clock, a, b) => {
    const [from, to] = [Math.min(a, b), Math.max(a, b)];
    const { climate, profile } = clock;
    let sum = 0;
    for (let minute = from; minute < to; minute += 1) {
      const k = Math.floor(minute / 60);
      const surface = climate.surface[k]!;
      if (profile.cutOff !== null && surface < profile.cutOff) continue;
      sum += rateAt(profile.law, 20, surface, climate.air[k]!, climate.humidity[k]!);
    }
    expect(ageAtMinute(clock, to) - ageAtMinute(clock, from)).toBeCloseTo(sum, 6);
  }), { numRuns: 60 });
});

test('the minute of an age is the first with that age', () => {
  fc.assert(fc.property(anyClock, fc.nat(2000), (clock, wanted) => {
    const minute = minuteOfAge(clock, wanted);
    if (minute === null) {
      expect(clock.age.at(-1)).toBeLessThan(wanted);
      return;
    }
    expect(ageAtMinute(clock, minute)).toBeCloseTo(wanted, 5);
    if (minute > 1) expect(ageAtMinute(clock, minute - 0.5)).toBeLessThan(wanted);
  }), { numRuns: 200 });
});

test('first in, first out: what is laid later is never ready earlier, and never before it is laid', () => {
  fc.assert(fc.property(anyClock, fc.nat(1600), fc.nat(200), fc.nat(1500), (clock, from, later, wanted) => {
    const [first, second] = [readyMinute(clock, from, wanted), readyMinute(clock, from + later, wanted)];
    if (first !== null) expect(first).toBeGreaterThanOrEqual(from);
    if (second === null) return;
    expect(first).not.toBeNull();
    expect(second).toBeGreaterThanOrEqual(first! - 1e-6);
  }), { numRuns: 300 });
});

test('a warmer workshop is never ready later', () => {
  fc.assert(fc.property(temperatures, fc.integer({ min: 0, max: 10 }), fc.nat(900), (air, warmer, from) => {
    const clockOf = (by: number) => createCureClock(climateOfValues(ORIGIN, { air: air.map((t) => t + by) }), { law: { kind: 'doubling', per: 10 }, reference: 20, cutOff: 5 });
    const [cold, warm] = [readyMinute(clockOf(0), from, 600), readyMinute(clockOf(warmer), from, 600)];
    if (cold === null) return;
    expect(warm).not.toBeNull();
    expect(warm!).toBeLessThanOrEqual(cold + 1e-6);
  }), { numRuns: 200 });
});

const POLYURETHANE = libraryMaterial('paint-polyurethane');
const anyMaterial: fc.Arbitrary<CoatMaterial> = fc.tuple(fc.constantFrom<BelowMinimum>('pauses', 'never forms', 'surface fault'), fc.constantFrom(COAT, POLYURETHANE))
  .map(([belowMinimum, material]) => ({ ...material, belowMinimum }));

test('a ready table never decreases, never promises too early, and says the truth at the end of each step', () => {
  fc.assert(fc.property(anyClimate, anyMaterial, fc.constantFrom('touchDry', 'recoatFrom', 'handle') as fc.Arbitrary<'touchDry' | 'recoatFrom' | 'handle'>, fc.constantFrom(15, 60, 7), fc.integer({ min: -30, max: 600 }), (climate, material, stage, step, shift) => {
    const coat = createCoatClock(climate, material);
    const horizon = 1200;
    const ready = readyTable(coat, stage, { step, horizon, origin: addMinutes(ORIGIN, shift) });
    expect((ready.length - 1) * step).toBeGreaterThanOrEqual(horizon);
    ready.forEach((at, k) => {
      expect(Number.isInteger(at)).toBe(true);
      expect(at).toBeGreaterThanOrEqual(k * step);
      if (k > 0) expect(at).toBeGreaterThanOrEqual(ready[k - 1]!);
    });
    for (const start of [0, 1, 59, 60, 200, 777]) {
      const k = Math.ceil(start / step);
      const truth = stageMinute(coat, stage, start + shift);
      const told = ready[k]!;
      if (truth === null) expect(told).toBeGreaterThanOrEqual(horizon);
      else expect(told).toBeGreaterThanOrEqual(Math.min(horizon, truth - shift - 1e-6));
    }
  }), { numRuns: 100 });
});

test('a table of the hours in which a coat may be laid is the whole table there, and never decreases between them', () => {
  fc.assert(fc.property(anyClimate, anyMaterial, fc.constantFrom(15, 60, 7), fc.array(fc.tuple(fc.nat(1100), fc.integer({ min: 1, max: 90 })), { maxLength: 4 }), (climate, material, step, spans) => {
    const coat = createCoatClock(climate, material);
    const grid = { step, horizon: 1200, origin: ORIGIN };
    const within = spans.map(([start, length]) => ({ start, end: start + length })).toSorted((a, b) => a.start - b.start);
    const [whole, part] = [readyTable(coat, 'recoatFrom', grid), readyTable(coat, 'recoatFrom', { ...grid, within })];
    expect(part).toHaveLength(whole.length);
    for (const { start, end } of within) for (let minute = start; minute <= end && minute <= 1200; minute += 1) expect(part[Math.ceil(minute / step)]).toBe(whole[Math.ceil(minute / step)]);
    part.forEach((at, k) => {
      expect(at).toBeGreaterThanOrEqual(Math.max(k * step, part[k - 1] ?? 0));
      expect(at).toBeLessThanOrEqual(whole[k]!);
    });
    const isIn = (minute: number) => within.some(({ start, end }) => start <= minute && minute < end);
    const spoilt = (spansOf: typeof within) => Array.from({ length: 1200 }, (_, minute) => isIn(minute) && spansOf.some(({ start, end }) => start <= minute && minute < end));
    expect(spoilt(spoiltStarts(coat, { ...grid, within }))).toEqual(spoilt(spoiltStarts(coat, grid)));
  }), { numRuns: 100 });
});

test('a table of single minutes is the clock itself, rounded up', () => {
  fc.assert(fc.property(anyClimate, (climate) => {
    const coat = createCoatClock(climate, COAT);
    readyTable(coat, 'touchDry', { step: 1, horizon: 600, origin: ORIGIN }).slice(0, 600).forEach((at, k) => {
      const truth = stageMinute(coat, 'touchDry', k);
      expect(at).toBe(truth === null ? 600 : Math.min(600, Math.ceil(truth - 1e-6)));
    });
  }), { numRuns: 20 });
});

test('the window closes the sooner the warmer it gets, and never later than the data sheet says', () => {
  fc.assert(fc.property(temperatures, fc.nat(12), fc.nat(600), (air, warmer, laid) => {
    const closing = (by: number) => closingMinute(createCoatClock(climateOfValues(ORIGIN, { air: air.map((t) => t + by) }), COAT), laid)!;
    expect(closing(warmer)).toBeLessThanOrEqual(closing(0) + 1e-9);
    expect(closing(0) - laid).toBeLessThanOrEqual(COAT.stages.recoatUntil! + 1e-9);
  }), { numRuns: 200 });
});

test('stages come in their order, whatever the weather', () => {
  fc.assert(fc.property(anyClimate, anyMaterial, fc.nat(1000), (climate, material, laid) => {
    const { reached } = forecastCoat(createCoatClock(climate, material), addMinutes(ORIGIN, laid));
    const known = [reached.flashOff, reached.touchDry, reached.handle, reached.fullCure].filter((at) => at !== null);
    expect(known).toEqual(known.toSorted((a, b) => a - b));
    if (reached.touchDry === null) expect(reached.handle).toBeNull();
  }), { numRuns: 200 });
});
