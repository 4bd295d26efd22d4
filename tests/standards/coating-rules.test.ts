import { expect, test } from 'vitest';
import { climateOfValues, dewMargin, dewPoint, fahrenheitDifference, fahrenheitReading, NO_HEATING, workshopClimate } from '@/lib/climate';
import {
  ABRASIVE, arrheniusRate, createCoatClock, cureDepth, doublingRate, equivalentAge, forecastCoat, judgeCoating, judgeReadings, longestRecoatWait, MATERIAL_LIBRARY,
  minutesAtMetal, minutesToDepth, NUT_FACTOR, preloadRatio, tighteningTorque, nurseSaulMaturity, outgasBake, ovenTime, POLYURETHANE_ROWS, potLifeAt, potWindow, recoatRow, type CoatMaterial,
} from '@/lib/cure';
import { checkVentHoles, galvanizedPreparation } from '@/lib/outwork';
import { instant } from '@/lib/units';
import { COAT, hour, hourly, libraryMaterial, ORIGIN } from '../cure/sample-coats';

const LIMITS = { minimumTemperature: 7, maximumTemperature: 32, humidity: { low: null, high: 85 }, dewMargin: 3 };
const failing = (air: number, humidity: number, surface: number): string[] =>
  judgeReadings({ air, humidity, surface }, LIMITS).filter((check) => !check.isMet).map((check) => check.code);

// Painting inspection guide.
test('painting inspection guide: air 16 °C, 71 %, surface 13 °C is a stop', () => {
  expect(failing(16, 71, 13)).toEqual(['dew-margin']);
});

test('painting inspection guide: dry bulb 21, wet bulb 17, surface 19 °C is a go', () => {
  expect(dewPoint(21, 67.4)).toBeCloseTo(14.7, 1);
  expect(failing(21, 67.4, 19)).toEqual([]);
});

// MIL-HDBK-1110, 9.6.6: 3 °C above the dew point.
test.each([[10, 82, 10, false], [10, 80, 10, true], [20, 50, 12.2, false], [20, 50, 12.3, true]])(
  'MIL-HDBK-1110, 9.6.6: air %f °C, %f percent, surface %f °C: go %s',
  (air, humidity, surface, isGo) => {
    expect(failing(air, humidity, surface).includes('dew-margin')).toBe(!isGo);
  },
);

test('at 10 °C the largest humidity that leaves 3 K is 81.6 %', () => {
  expect(dewMargin(10, 81.6, 10)).toBeGreaterThan(2.99);
  expect(dewMargin(10, 81.7, 10)).toBeLessThan(3);
});

// MIL-HDBK-1110 / UFC 3-190-06, 7.4.1.
test('MIL-HDBK-1110, 7.4.1: laid at 7 to 32 °C, and not when less than 4.4 °C comes before it is dry', () => {
  expect(failing(6.9, 40, 6.9)).toEqual(['surface-too-cold']);
  expect(failing(32.1, 40, 32.1)).toEqual(['surface-too-warm']);
  const material = libraryMaterial('primer-single-pack');
  const verdict = (later: number) => judgeCoating(createCoatClock(hourly([8, 1], [later, 100]), material), ORIGIN, { length: 30, dustSettledAt: null, zone: 'UTC' });
  expect(verdict(4.4).checks.find((check) => check.code === 'cold-before-dry')?.isMet).toBe(true);
  expect(verdict(4.3).checks.find((check) => check.code === 'cold-before-dry')?.isMet).toBe(false);
});

// UFGS 09 97 1x, p. 28: polyurethane on polyurethane, hours.
test.each([[18, 8, 48], [24, 6, 48], [30, 4, 36], [35, 3, 24], [41, 2, 12], [46, 1, 2]])(
  'UFGS 09 97 1x, p. 28: at %i °C polyurethane is recoated after %i to %i h',
  (t, min, max) => {
    expect(recoatRow(POLYURETHANE_ROWS, t)).toMatchObject({ min, max });
  },
);

const POLYURETHANE = libraryMaterial('paint-polyurethane');

// UFGS 09 97 1x, p. 28: the hottest surface held for an hour decides for the whole interval.
test('UFGS 09 97 1x, p. 28: 20 h at 18 °C, then 2 h at 30 °C: the window of the whole interval is 4 to 36 h', () => {
  const coat = createCoatClock(hourly([18, 20], [30, 2], [18, 60]), POLYURETHANE);
  expect(forecastCoat(coat, ORIGIN).recoatUntil).toBe(hour(36));
  const steady = createCoatClock(hourly([18, 80]), POLYURETHANE);
  expect(forecastCoat(steady, ORIGIN).recoatUntil).toBe(hour(48));
});

test('UFGS 09 97 1x, p. 28: a hot hour after the shorter window has passed closes it at once', () => {
  const coat = createCoatClock(hourly([18, 40], [30, 2], [18, 60]), POLYURETHANE);
  expect(forecastCoat(coat, ORIGIN).recoatUntil).toBe(hour(40));
});

// TO 1-1-8, 5.6.2, primer at 24 °C.
test('TO 1-1-8, 5.6.2: the epoxy primer waits 5 h at 24 °C and closes after 8 h, then it is abraded', () => {
  const material = libraryMaterial('primer-epoxy');
  const forecast = forecastCoat(createCoatClock(hourly([24, 400]), material), ORIGIN);
  expect([forecast.reached.recoatFrom, forecast.recoatUntil]).toEqual([hour(5), hour(8)]);
  expect(material.lateWork).toBe('abrade');
});

// TO 1-1-8, 6.12.19.
test('TO 1-1-8, 6.12.19: single-pack ladder of 15 min, 30 to 45 min, 6 h and 24 h', () => {
  expect(libraryMaterial('paint-single-pack-fast').stages).toMatchObject({ touchDry: 15, recoatFrom: 30, recoatUntil: 45, handle: 360, fullCure: 1440 });
});

// Galvanizers' association.
test('galvanised parts are baked at cure + 30 K for an hour or until they are at oven temperature before powder', () => {
  expect(outgasBake({ metalTemperature: 180, hold: 10 }, 25)).toEqual({ oven: 210, minutes: 60 });
  expect(outgasBake({ metalTemperature: 180, hold: 10 }, 80).minutes).toBe(80);
});

// Fastener torque note: 3/8 in, 4940 lbf.
test('torque T = K D F: 3/8 in and 4940 lbf take 30.9 lb ft dry and 23.2 lubricated, so the same torque gives 1.33 x the preload', () => {
  const [dry, wet] = [NUT_FACTOR.dry, NUT_FACTOR.lubricated].map((factor) => tighteningTorque(factor, 0.375 / 12, 4940));
  expect([dry!.toFixed(1), wet!.toFixed(1)]).toEqual(['30.9', '23.2']);
  expect(preloadRatio(NUT_FACTOR.dry, NUT_FACTOR.lubricated)).toBeCloseTo(4 / 3, 9);
});

// Common practice, no source: a floor of 5 to 8 °C, 20 °C ideal, 10 to 15 % thinner, two weeks before tyres.
test('practice values are marked as such: 20 °C, a floor of 5 to 10 °C, 10 to 15 % thinner, two weeks before tyres, a red pad of P320 to P400', () => {
  const enamel = libraryMaterial('paint-single-pack-enamel');
  expect(enamel.referenceTemperature).toBe(20);
  expect(enamel.thinner).toEqual({ low: 10, high: 15 });
  expect(enamel.sources.thinner?.kind).toBe('none');
  expect(enamel.stages.fullCure).toBe(14 * 1440);
  for (const material of MATERIAL_LIBRARY) expect(material.minimumTemperature, material.name).toBeGreaterThanOrEqual(5);
  expect(ABRASIVE).toMatch(/^red .*P320 to P400 \(common practice, no source\)$/);
});

// Commonly got wrong, one test each.

test('wrong 1a: wall-clock hours are not cure hours: 4 h at 20 °C become 8 h at 10 °C', () => {
  const forecast = forecastCoat(createCoatClock(hourly([10, 100]), COAT), ORIGIN);
  expect(forecast.reached.recoatFrom).toBe(hour(8));
});

test('wrong 1b: the mean temperature is not used: 4 h at 25 and 4 h at 5 °C cure further than 8 h at 15 °C', () => {
  const law = { kind: 'doubling', per: 10 } as const;
  const mixed = equivalentAge([{ time: 4, temperature: 25 }, { time: 4, temperature: 5 }], law, 20);
  expect(mixed).toBeGreaterThan(equivalentAge([{ time: 8, temperature: 15 }], law, 20) * 1.2);
});

const KINDS = ['pauses', 'never forms', 'surface fault'] as const;
test('wrong 2: there is not one kind of stall but three', () => {
  const climate = hourly([8, 1], [2, 10], [20, 200]);
  const [paused, dead, dirty] = KINDS.map((belowMinimum) => forecastCoat(createCoatClock(climate, { ...COAT, belowMinimum }), ORIGIN));
  expect(paused!.faults[0]).toMatchObject({ kind: 'paused', minutes: 600, temperature: 2, limit: 5 });
  expect(paused!.reached.fullCure).not.toBeNull();
  expect(dead!.faults[0]).toMatchObject({ kind: 'never forms', temperature: 2 });
  expect([dead!.isSpoilt, dead!.reached.touchDry, dead!.reached.fullCure]).toEqual([true, null, null]);
  expect(dirty!.faults[0]).toMatchObject({ kind: 'surface fault', why: 'cold', value: 2 });
  expect([dirty!.isSpoilt, dirty!.reached.touchDry === null]).toEqual([false, false]);
});

test('wrong 3: the minimum temperature is watched until dry, not only at application', () => {
  const material: CoatMaterial = { ...COAT, belowMinimum: 'never forms' };
  expect(forecastCoat(createCoatClock(hourly([20, 1], [2, 50]), material), ORIGIN).isSpoilt).toBe(true);
  expect(forecastCoat(createCoatClock(hourly([20, 3], [2, 50]), material), ORIGIN).isSpoilt).toBe(false);
});

test('wrong 4: the recoat maximum is neither ignored nor stretched by a cold week, while the minimum scales', () => {
  const cold = forecastCoat(createCoatClock(hourly([10, 200]), COAT), ORIGIN);
  expect([cold.reached.recoatFrom, cold.recoatUntil]).toEqual([hour(8), hour(24)]);
  const warm = forecastCoat(createCoatClock(hourly([30, 200]), COAT), ORIGIN);
  expect([warm.reached.recoatFrom, warm.recoatUntil]).toEqual([hour(2), hour(12)]);
  expect(longestRecoatWait(COAT, -20)).toBe(1440);
});

test('wrong 5: 85 % or less does not imply the dew margin', () => {
  expect(failing(10, 84, 10)).toEqual(['dew-margin']);
});

test('wrong 6: the surface, not the air, decides: steel lags, and is colder than the air of a room being heated', () => {
  expect(failing(20, 50, 12)).toEqual(['dew-margin']);
  const outside = { origin: instant(0), step: 60, air: Float64Array.from({ length: 48 }, (_, h) => (h < 24 ? 0 : 15)), vapour: new Float64Array(48).fill(5), filledDays: [] };
  const room = { timeConstant: 3, heatLoss: 200, offset: 0, volume: 100, airChanges: 1, moisture: 0, surfaceLag: 4 };
  const climate = workshopClimate({ outside, room, heating: NO_HEATING, measured: null, start: 0 });
  expect(climate.air[27]! - climate.surface[27]!).toBeGreaterThan(3);
  const coat = createCoatClock(climateOfValues(ORIGIN, { air: Array.from({ length: 99 }, () => 20), surface: Array.from({ length: 99 }, () => 10) }), COAT);
  expect(forecastCoat(coat, ORIGIN).reached.recoatFrom).toBe(hour(8));
});

test('wrong 7: 5 °F of gap is 2.8 K, not -15 °C', () => {
  expect(fahrenheitDifference(5)).toBeCloseTo(2.78, 2);
  expect(fahrenheitReading(5)).toBeCloseTo(-15, 9);
});

test('wrong 8: kelvins in Arrhenius; 273 or 273.15 and 20 or 23 °C are said, and make a difference', () => {
  const celsiusSlip = Math.exp(-5000 * (1 / 10 - 1 / 20));
  expect(arrheniusRate(10, 20, 5000)).toBeGreaterThan(celsiusSlip * 1e6);
  expect(arrheniusRate(10, 20, 5000, 273)).not.toBeCloseTo(arrheniusRate(10, 20, 5000), 4);
  expect(arrheniusRate(10, 23, 5000)).toBeLessThan(arrheniusRate(10, 20, 5000) * 0.9);
});

test('wrong 9: time below the Nurse-Saul datum takes nothing away', () => {
  expect(nurseSaulMaturity([{ time: 10, temperature: 10 }, { time: 10, temperature: -20 }], -10)).toBe(200);
});

test('wrong 10: touch dry is not recoatable, fit to handle or cured', () => {
  const { reached } = forecastCoat(createCoatClock(hourly([20, 100]), COAT), ORIGIN);
  expect([reached.flashOff, reached.touchDry, reached.recoatFrom, reached.handle, reached.fullCure]).toEqual([1, 2, 4, 8, 48].map(hour));
});

test('wrong 11: oven air time is not metal time', () => {
  const time = ovenTime({ metalTemperature: 180, hold: 10 }, 200, 20, 10)!;
  expect(time.bringUp).toBeCloseTo(10 * Math.log(180 / 20), 9);
  expect(time.total).toBeGreaterThan(30);
  const curve = [{ minute: 0, temperature: 20 }, { minute: 20, temperature: 180 }, { minute: 30, temperature: 190 }];
  expect(minutesAtMetal(curve, 180)).toBe(10);
});

test('wrong 11b: a doubling rule has no place in an oven', () => {
  expect(doublingRate(190, 180, 10)).toBe(2);
  expect(arrheniusRate(190, 180, 5000)).toBeLessThan(1.3);
});

// TB 43-0144: 6 h at 21 °C, induction included.
test('wrong 12: an induction is not added to a pot life that includes it', () => {
  const pot = { minutes: 360, at: 21, halvesPer: 10, induction: 30, isInductionIncluded: true };
  expect(potLifeAt(pot, 21)).toBe(360);
  expect(potWindow(pot, 21)).toEqual({ usableFrom: 30, usableUntil: 360 });
  expect(potLifeAt({ ...pot, isInductionIncluded: false }, 21)).toBe(390);
});

// Comyn 1998 (abstract), the law from memory.
test('wrong 13: moisture cure does not grow linearly: four days cure twice the depth of one', () => {
  expect(cureDepth(3, 4)).toBe(2 * cureDepth(3, 1));
  expect(minutesToDepth(3, 6)).toBe(4 * 1440);
});

// Galvanizers' association.
test('wrong 14a: vent holes are drilled before galvanizing, at least 10 mm and a quarter of the diagonal', () => {
  const section = { width: 60, height: 40 };
  const codes = (diameter: number, drilled: 'before' | 'after') => checkVentHoles('Frame', section, { diameter, drilled }).map((found) => found.code);
  expect(codes(20, 'before')).toEqual([]);
  expect(codes(20, 'after')).toEqual(['vent-after-galvanizing']);
  expect(codes(17, 'before')).toEqual(['vent-too-small']);
  expect(checkVentHoles('Bracket', { width: 20, height: 20 }, { diameter: 9, drilled: 'before' }).map((found) => found.code)).toEqual(['vent-too-small']);
});

// State DOT memo; galvanizers' association.
test('wrong 14b: galvanizing of day three is not painted as new', () => {
  expect(galvanizedPreparation(47, false)).toBe('paint as it is');
  expect(galvanizedPreparation(72, false)).toBe('clean and profile');
  expect(galvanizedPreparation(24, true)).toBe('clean and profile');
  expect(galvanizedPreparation(400 * 24, false)).toBe('clean');
});
