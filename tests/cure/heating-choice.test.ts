import { expect, test } from 'vitest';
import { NO_HEATING, outsideSeries, type Heater, type HeatingRun, type WorkshopInput } from '@/lib/climate';
import { addHeatingRun, cheapestHeating, compareHeating, findIgnitionConflicts, heatingCurve, steadyOptions, heaterCautions, type WaitingCoat } from '@/lib/cure';
import { unwrap } from '@/lib/result';
import { COAT, hour } from './sample-coats';

const HEATER: Heater = { kilowatts: 6, kind: 'electric', fuel: null, isIgnitionSafe: false };
const outside = unwrap(outsideSeries([{ date: '2026-11-30', low: 2, high: 8, humidity: 80 }], { from: '2026-11-30', to: '2026-12-20' }, 'UTC'));
const BASE: WorkshopInput = {
  outside, heating: NO_HEATING, measured: null, start: 7,
  room: { timeConstant: 8, heatLoss: 200, offset: 1, volume: 150, airChanges: 0.5, moisture: 0, surfaceLag: 1 },
};
const COATS: readonly WaitingCoat[] = [{ material: COAT, laidAt: hour(20), stage: 'handle' }];
const outcomes = compareHeating(BASE, COATS, steadyOptions(hour(20), [12, 18, 24], [6, 12, 24, 48]), HEATER, 0.3);

test('more heat is never ready later, and costs its kWh', () => {
  expect(outcomes.length).toBe(13);
  const [none] = outcomes;
  expect([none!.kwh, none!.hours, none!.cost]).toEqual([0, 0, 0]);
  for (const outcome of outcomes.slice(1)) {
    expect(outcome.readyAt!).toBeLessThanOrEqual(none!.readyAt!);
    expect(outcome.kwh).toBeGreaterThan(0);
    expect(outcome.cost).toBeCloseTo(outcome.kwh * 0.3, 9);
    expect(outcome.kwh).toBeLessThanOrEqual(outcome.hours * HEATER.kilowatts + 1e-9);
  }
});

test('the curve buys an earlier moment with every further kWh', () => {
  const curve = heatingCurve(outcomes);
  expect(curve.length).toBeGreaterThan(2);
  for (let k = 1; k < curve.length; k += 1) {
    expect(curve[k]!.kwh).toBeGreaterThan(curve[k - 1]!.kwh);
    expect(curve[k]!.readyAt!).toBeLessThan(curve[k - 1]!.readyAt!);
  }
});

test('the cheapest plan that meets a moment meets it, and no cheaper one does', () => {
  const wish = heatingCurve(outcomes).at(-1)!.readyAt!;
  const chosen = cheapestHeating(outcomes, wish)!;
  expect(chosen.readyAt!).toBeLessThanOrEqual(wish);
  expect(outcomes.filter(({ readyAt, kwh }) => readyAt !== null && readyAt <= wish && kwh < chosen.kwh)).toEqual([]);
  expect(cheapestHeating(outcomes, hour(21))).toBeNull();
  expect(cheapestHeating(outcomes, hour(400))!.kwh).toBe(0);
});

test('several coats are ready when the last of them is', () => {
  const later: WaitingCoat = { material: COAT, laidAt: hour(60), stage: 'touchDry' };
  const [alone, both] = [COATS, [...COATS, later]].map((coats) => compareHeating(BASE, coats, steadyOptions(hour(20), [], []), HEATER, 1)[0]!);
  expect(both!.readyAt!).toBeGreaterThan(alone!.readyAt!);
});

test('a coat spoilt by cold is saved by heat', () => {
  const coats: WaitingCoat[] = [{ material: { ...COAT, belowMinimum: 'never forms', minimumTemperature: 10, minimumUntilDry: 10 }, laidAt: hour(20), stage: 'handle' }];
  const [none, heated] = compareHeating(BASE, coats, steadyOptions(hour(16), [18], [24]), HEATER, 1);
  expect([none!.isSpoilt, none!.readyAt]).toEqual([true, null]);
  expect(heated!.isSpoilt).toBe(false);
  expect(heated!.readyAt).not.toBeNull();
});

const run = (start: number, end: number, setPoint: number): HeatingRun => ({ start: hour(start), end: hour(end), setPoint });

test('an added run joins those there are, and the higher set point holds where they overlap', () => {
  expect(addHeatingRun([run(2, 6, 18), run(10, 12, 14)], run(4, 11, 16))).toEqual([run(2, 4, 18), run(4, 6, 18), run(6, 10, 16), run(10, 11, 16), run(11, 12, 14)]);
  expect(addHeatingRun([], run(1, 2, 9))).toEqual([run(1, 2, 9)]);
  expect(addHeatingRun([run(5, 6, 18)], run(1, 2, 9))).toEqual([run(1, 2, 9), run(5, 6, 18)]);
});

test('solvent and an unprotected heater in the same air and hours is a conflict', () => {
  const solvents = [
    { name: 'Primer', airZone: 'arch', start: hour(5), end: hour(9) },
    { name: 'Paint', airZone: 'tent', start: hour(5), end: hour(9) },
  ];
  const conflicts = findIgnitionConflicts(HEATER, [run(0, 6, 18), run(8, 20, 18)], 'arch', solvents);
  expect(conflicts).toEqual([
    { name: 'Primer', heaterKind: 'electric', overlap: { start: hour(5), end: hour(6) } },
    { name: 'Primer', heaterKind: 'electric', overlap: { start: hour(8), end: hour(9) } },
  ]);
  expect(findIgnitionConflicts({ ...HEATER, isIgnitionSafe: true }, [run(0, 6, 18)], 'arch', solvents)).toEqual([]);
  expect(findIgnitionConflicts(HEATER, [run(0, 5, 18)], 'arch', solvents)).toEqual([]);
  expect(heaterCautions({ ...HEATER, kind: 'flueless burner', fuel: 'propane' }).join(' ')).toContain('carbon monoxide');
});
