import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkHeating, fitRoom, measureHours, NO_HEATING, workshopClimate, type HeatingRun, type OutsideSeries, type Reading, type Room } from '@/lib/climate';
import { unwrap } from '@/lib/result';
import { addMinutes, instant } from '@/lib/units';

const ORIGIN = instant(Date.UTC(2026, 10, 30));
const minute = (at: number) => addMinutes(ORIGIN, at);
const anyOutside: fc.Arbitrary<OutsideSeries> = fc.array(fc.tuple(fc.integer({ min: -150, max: 300 }), fc.integer({ min: 10, max: 200 })), { minLength: 24, maxLength: 72 })
  .map((rows) => ({ origin: ORIGIN, step: 60, air: Float64Array.from(rows, ([t]) => t / 10), vapour: Float64Array.from(rows, ([, e]) => e / 10), filledDays: [] }));
const anyRoom: fc.Arbitrary<Room> = fc.record({
  timeConstant: fc.integer({ min: 1, max: 40 }), heatLoss: fc.integer({ min: 50, max: 600 }), offset: fc.integer({ min: 0, max: 4 }), volume: fc.constant(120),
  airChanges: fc.constantFrom(0.1, 0.5, 3), moisture: fc.constantFrom(0, 0.2), surfaceLag: fc.constantFrom(0.2, 2, 6),
});
const heater = { kilowatts: 5, kind: 'flueless burner', fuel: 'paraffin', isIgnitionSafe: false } as const;
const anyRuns: fc.Arbitrary<HeatingRun[]> = fc.array(fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 500 }), fc.integer({ min: 5, max: 25 })), { maxLength: 5 })
  .map((rows) => {
    let at = 0;
    return rows.map(([pause, length, setPoint]) => {
      const start = at + pause;
      at = start + length;
      return { start: minute(start), end: minute(at), setPoint };
    });
  });

test('an unheated room stays between the coldest and the warmest it is driven to', () => {
  fc.assert(fc.property(anyOutside, anyRoom, (outside, room) => {
    const { air, surface, humidity } = workshopClimate({ outside, room, heating: NO_HEATING, measured: null, start: null });
    const [low, high] = [Math.min(...outside.air) + room.offset - 1e-9, Math.max(...outside.air) + room.offset + 1e-9];
    for (const values of [air, surface]) expect(values.every((t) => t >= low && t <= high)).toBe(true);
    expect(humidity.every((percent) => percent >= 0 && percent <= 100)).toBe(true);
  }));
});

test('heat is never negative, never above the power of the heater, and nought where nothing is switched on', () => {
  fc.assert(fc.property(anyOutside, anyRoom, anyRuns, (outside, room, runs) => {
    const { heat } = workshopClimate({ outside, room, heating: { heater, runs }, measured: null, start: null });
    heat.forEach((kwh, k) => {
      const on = runs.reduce((sum, run) => sum + Math.max(0, Math.min(run.end, minute((k + 1) * 60)) - Math.max(run.start, minute(k * 60))), 0) / 3_600_000;
      expect(kwh).toBeGreaterThanOrEqual(0);
      expect(kwh).toBeLessThanOrEqual(on * heater.kilowatts + 1e-9);
    });
  }));
});

test('the step is exact: cutting a heating run in two changes nothing', () => {
  fc.assert(fc.property(anyOutside, anyRoom, anyRuns, fc.integer({ min: 1, max: 99 }), (outside, room, runs, percent) => {
    const cut = runs.flatMap((run) => {
      const middle = instant(Math.round(run.start + ((run.end - run.start) * percent) / 100));
      return [{ ...run, end: middle }, { ...run, start: middle }];
    });
    const [whole, halves] = [runs, cut].map((list) => workshopClimate({ outside, room, heating: unwrap(checkHeating({ heater, runs: list })), measured: null, start: null }));
    whole!.air.forEach((t, k) => expect(halves!.air[k]).toBeCloseTo(t, 9));
    whole!.heat.forEach((kwh, k) => expect(halves!.heat[k]).toBeCloseTo(kwh, 9));
  }), { numRuns: 60 });
});

test('where readings cover an hour the climate is what was read', () => {
  fc.assert(fc.property(anyOutside, anyRoom, fc.array(fc.integer({ min: 0, max: 250 }), { minLength: 3, maxLength: 20 }), (outside, room, tenths) => {
    const readings: Reading[] = tenths.map((tenth, k) => ({ at: minute(120 + k * 60), temperature: tenth / 10, humidity: 50 }));
    const measured = measureHours(readings, { origin: ORIGIN, step: 60, count: outside.air.length });
    const climate = workshopClimate({ outside, room, heating: NO_HEATING, measured, start: null });
    for (let k = 0; k + 1 < tenths.length; k += 1) {
      expect(climate.air[2 + k]).toBeCloseTo((readings[k]!.temperature + readings[k + 1]!.temperature) / 2, 9);
      expect(climate.isMeasured[2 + k]).toBe(1);
    }
    expect(climate.isMeasured[1]).toBe(0);
  }));
});

test('a fit never leaves more error than the room it was asked to find', () => {
  const outside: OutsideSeries = {
    origin: ORIGIN, step: 60, air: Float64Array.from({ length: 120 }, (_, k) => 6 + 5 * Math.sin(k / 3.8) + 2 * Math.sin(k / 19)), vapour: new Float64Array(120).fill(7), filledDays: [],
  };
  fc.assert(fc.property(fc.integer({ min: 2, max: 40 }), fc.integer({ min: -2, max: 4 }), fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 119, maxLength: 119 }), (tau, offset, noise) => {
    let inside = 8;
    const readings: Reading[] = noise.map((tenth, k) => {
      const goal = outside.air[k]! + offset;
      inside = goal + (inside - goal) * Math.exp(-1 / tau);
      return { at: minute((k + 1) * 60), temperature: inside + tenth / 10, humidity: null };
    });
    const fit = fitRoom(readings, outside);
    const truth = Math.sqrt(noise.reduce((sum, tenth) => sum + (tenth / 10) ** 2, 0) / noise.length);
    if (fit.ok) expect(fit.value.error).toBeLessThanOrEqual(truth + 1e-6);
    else expect(tau).toBeGreaterThan(25);
  }), { numRuns: 40 });
});
