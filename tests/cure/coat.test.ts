import { expect, test } from 'vitest';
import { climateOfValues } from '@/lib/climate';
import {
  checkCoatMaterial, coatClocks, createCoatClock, cureDepth, depthAt, forecastCoat, MATERIAL_LIBRARY, minutesToDepth, outgasBake, ovenTime, potWindow, readyAt, createCureClock,
  readyTable, readyTables, spoiltStarts, steelTimeConstant, unsourcedFields, cautionsOf, type CoatMaterial,
} from '@/lib/cure';
import { addMinutes } from '@/lib/units';
import { COAT, hour, hourly, libraryMaterial, ORIGIN } from './sample-coats';

test('a coat laid on Friday night in a 6 °C workshop is not ready on Saturday', () => {
  const forecast = forecastCoat(createCoatClock(hourly([6, 200]), COAT), hour(20));
  expect(forecast.reached.recoatFrom! - hour(20)).toBeGreaterThan(10 * 3_600_000);
  expect(forecast.isWindowEmpty).toBe(false);
  expect(forecast.faults).toEqual([]);
});

test('in a shop cold enough the window closes before it opens', () => {
  const material: CoatMaterial = { ...COAT, stages: { ...COAT.stages, recoatUntil: 300 } };
  const forecast = forecastCoat(createCoatClock(hourly([10, 200]), material), ORIGIN);
  expect(forecast.isWindowEmpty).toBe(true);
  expect(forecast.recoatUntil).toBe(hour(5));
  expect(forecast.reached.recoatFrom).toBe(hour(8));
});

test('a recoat table holds its shortest wait even where the film is ready sooner', () => {
  const quick: CoatMaterial = { ...libraryMaterial('paint-polyurethane'), stages: { ...COAT.stages, recoatFrom: 120 } };
  const opening = (temperature: number) => forecastCoat(createCoatClock(hourly([temperature, 200]), quick), ORIGIN).reached.recoatFrom;
  expect([opening(20), opening(24), opening(30)]).toEqual([hour(8), hour(6), hour(4)]);
});

test('a pause stops the clock for its hours and no more', () => {
  const coat = createCoatClock(hourly([20, 1], [3, 7], [20, 100]), COAT);
  const { reached, faults } = forecastCoat(coat, ORIGIN);
  expect([reached.flashOff, reached.touchDry, reached.recoatFrom]).toEqual([hour(1), hour(9), hour(11)]);
  expect(faults).toEqual([{ kind: 'paused', from: hour(1), minutes: 420, temperature: 3, limit: 5 }]);
});

test('a pause counts from the moment the coat is laid, inside an hour too', () => {
  const { faults } = forecastCoat(createCoatClock(hourly([3, 2], [20, 100]), COAT), addMinutes(ORIGIN, 30));
  expect(faults).toMatchObject([{ kind: 'paused', minutes: 90, from: addMinutes(ORIGIN, 30) }]);
});

const dampFrom = (from: number) => Array.from({ length: 50 }, (_, k) => (k >= from ? 95 : 50));
const laidIn = (from: number) => forecastCoat(createCoatClock(climateOfValues(ORIGIN, { air: Array.from({ length: 50 }, () => 20), humidity: dampFrom(from) }), COAT), ORIGIN);

test('damp air before touch dry leaves a surface fault, afterwards it does not', () => {
  expect(laidIn(1).faults).toMatchObject([{ kind: 'surface fault', why: 'dew', from: hour(1), limit: 3 }]);
  expect(laidIn(2).faults).toEqual([]);
});

test('humidity alone is a fault where the dew margin holds', () => {
  const climate = climateOfValues(ORIGIN, { air: Array.from({ length: 50 }, () => 20), surface: Array.from({ length: 50 }, () => 24), humidity: Array.from({ length: 50 }, () => 88) });
  expect(forecastCoat(createCoatClock(climate, COAT), ORIGIN).faults).toEqual([{ kind: 'surface fault', from: ORIGIN, why: 'humidity', value: 88, limit: 85 }]);
});

test('beyond the end of the climate nothing is known', () => {
  const { reached, isSpoilt } = forecastCoat(createCoatClock(hourly([20, 10]), COAT), ORIGIN);
  expect(reached.handle).toBe(hour(8));
  expect(reached.fullCure).toBeNull();
  expect(isSpoilt).toBe(false);
});

test('a table gives the ready minute of the end of each step, and the horizon where nothing is known', () => {
  const ready = readyTable(createCoatClock(hourly([20, 10]), COAT), 'handle', { step: 60, horizon: 600, origin: ORIGIN });
  expect(ready.slice(0, 4)).toEqual([480, 540, 600, 600]);
  expect(ready.at(-1)).toBe(600);
});

test('starts that would spoil a coat are told as spans', () => {
  const material: CoatMaterial = { ...COAT, belowMinimum: 'never forms' };
  const coat = createCoatClock(hourly([20, 10], [3, 5], [20, 20]), material);
  expect(spoiltStarts(coat, { step: 30, horizon: 24 * 60, origin: ORIGIN })).toEqual([{ start: 510, end: 900 }]);
  expect(spoiltStarts(createCoatClock(hourly([3, 50]), COAT), { step: 30, horizon: 600, origin: ORIGIN })).toEqual([]);
});

test('clocks are made once for a material, and again when it was edited', () => {
  const clockOf = coatClocks(hourly([20, 10]));
  expect(clockOf(COAT)).toBe(clockOf(COAT));
  expect(clockOf({ ...COAT })).not.toBe(clockOf({ ...COAT }));
});

test('a table is made once for a material and a stage', () => {
  const tables = readyTables(coatClocks(hourly([20, 10])), { step: 60, horizon: 600, origin: ORIGIN });
  expect(tables(COAT, 'handle')).toBe(tables(COAT, 'handle'));
  expect(tables(COAT, 'handle')).toEqual(readyTable(createCoatClock(hourly([20, 10]), COAT), 'handle', { step: 60, horizon: 600, origin: ORIGIN }));
  expect(tables(COAT, 'touchDry')).not.toBe(tables(COAT, 'handle'));
});

test('what was baked elsewhere does not mind a cold damp workshop', () => {
  const climate = climateOfValues(ORIGIN, { air: Array.from({ length: 50 }, () => 2), humidity: Array.from({ length: 50 }, () => 99) });
  const forecast = forecastCoat(createCoatClock(climate, libraryMaterial('powder')), ORIGIN);
  expect(forecast.faults).toEqual([]);
  expect(forecast.reached.fullCure).toBe(hour(1));
});

test('a moisture curing bead follows the vapour in the air: dry winter air takes longer than damp summer air', () => {
  const law = { kind: 'moisture', humidity: 50 } as const;
  const clock = (air: number, damp: number) => createCureClock(
    climateOfValues(ORIGIN, { air: Array.from({ length: 2000 }, () => air), humidity: Array.from({ length: 2000 }, () => damp) }), { law, reference: 23, cutOff: null },
  );
  const days = (air: number, damp: number) => (readyAt(clock(air, damp), ORIGIN, minutesToDepth(3, 6))! - ORIGIN) / 86_400_000;
  expect(days(23, 50)).toBeCloseTo(4, 3);
  expect(days(20, 32)).toBeGreaterThan(7);
  expect(days(23, 80)).toBeLessThan(2.6);
  expect(cureDepth(3, 4)).toBe(6);
  expect(depthAt(clock(23, 50), 3, ORIGIN, hour(96))).toBeCloseTo(6, 9);
});

test('thick steel takes longer to come up to the oven, and a cool oven never gets it there', () => {
  const bake = { metalTemperature: 180, hold: 10 };
  const thin = ovenTime(bake, 200, 20, steelTimeConstant(2))!;
  const thick = ovenTime(bake, 200, 20, steelTimeConstant(10))!;
  expect(thick.bringUp / thin.bringUp).toBeCloseTo(5, 9);
  expect(ovenTime(bake, 180, 20, 5)).toBeNull();
  expect(ovenTime(bake, 200, 190, 5)).toEqual({ bringUp: 0, hold: 10, total: 10 });
  expect(outgasBake(bake, 10).oven).toBe(210);
});

test('a hot day can leave nothing of a pot after its induction', () => {
  const pot = { minutes: 60, at: 21, halvesPer: 10, induction: 20, isInductionIncluded: true };
  expect(potWindow(pot, 41)).toEqual({ usableFrom: 20, usableUntil: 20 });
});

test('every material of the library makes sense, with a caution, a name of its own and no source that is empty', () => {
  const names = new Set<string>();
  for (const material of MATERIAL_LIBRARY) {
    expect(checkCoatMaterial(material), material.name).toMatchObject({ ok: true });
    expect(names.has(material.name)).toBe(false);
    names.add(material.name);
    expect(cautionsOf(material)[0]).toContain('data sheet');
    for (const source of Object.values(material.sources)) expect(source.text).not.toBe('');
  }
  expect(MATERIAL_LIBRARY.map((material) => material.sort)).toEqual(expect.arrayContaining([
    'primer', 'paint', 'filler', 'sealer', 'adhesive', 'thread locker', 'powder', 'galvanizing wash', 'release',
  ]));
});

test('values without a source are named, and read ones are not', () => {
  const material = libraryMaterial('paint-polyurethane');
  expect(unsourcedFields(material)).toContain('stages');
  expect(unsourcedFields(material)).not.toContain('recoatRows');
  expect(unsourcedFields({ ...material, sources: {} })).toContain('recoatRows');
});

test('cautions go by content, not by the number of packs', () => {
  const single: CoatMaterial = { ...libraryMaterial('paint-single-pack-enamel'), hasIsocyanate: true };
  expect(cautionsOf(single).some((text) => text.includes('isocyanate: filters are not enough'))).toBe(true);
  expect(cautionsOf(libraryMaterial('primer-epoxy')).some((text) => text.includes('isocyanate: filters'))).toBe(false);
  expect(cautionsOf(libraryMaterial('primer-epoxy')).some((text) => text.includes('No flame'))).toBe(true);
});

test('a material that cannot be is refused with every reason and where it stands', () => {
  const wrong: CoatMaterial = {
    ...COAT, minimumTemperature: 40, minimumUntilDry: 45, maximumTemperature: 30, dewMargin: -1, humidity: { low: 90, high: 80 },
    stages: { flashOff: 200, touchDry: 120, recoatFrom: 240, recoatUntil: 100, handle: 60, fullCure: -5 },
    recoatRows: [{ from: 16, to: 21, min: 9, max: 8 }, { from: 20, to: 25, min: 1, max: 2 }],
    potLife: { minutes: 20, at: 20, halvesPer: 10, induction: 30, isInductionIncluded: true }, thinner: { low: 15, high: 10 }, law: { kind: 'doubling', per: 0 },
  };
  const result = checkCoatMaterial(wrong);
  expect(result.ok ? [] : result.error.map((found) => `${found.code} ${found.path.join('.')}`)).toEqual([
    'stage-negative stages.fullCure', 'stage-order stages.touchDry', 'stage-order stages.handle', 'stage-order stages.fullCure', 'stage-order stages.fullCure',
    'window-closed stages.recoatUntil', 'row-window recoatRows.0.max', 'row-order recoatRows.1.from', 'temperature-limits maximumTemperature',
    'dry-minimum minimumUntilDry', 'humidity-limits humidity', 'dew-margin dewMargin', 'pot-life-induction potLife', 'thinner-range thinner', 'law-value law',
  ]);
});
