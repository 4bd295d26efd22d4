import { expect, test } from 'vitest';
import { climateOfValues, profileTemperature } from '@/lib/climate';
import {
  activationEnergy, activationOfDoubling, arrheniusRate, createCureClock, doublingRate, equivalentAge, equivalentMinutes, maturityRate, modelCodeAge,
  nurseSaulMaturity, potLifeAt, readyAt, temperatureForMaturity, timeToMaturity, type PotLife,
} from '@/lib/cure';
import { addMinutes, instant } from '@/lib/units';

// fib Model Code 2020 / EN 1992-1-1 Annex B, eq. B.10: days at °C, Q = 4000 K, offset 273 as printed there.
test.each([
  [[[5, 20], [10, 15], [7, 25]], 21.651],
  [[[1, 0], [2, 5], [1, -5]], 1.602],
  [[[10, 30]], 15.662],
] as const)('fib Model Code 2020: temperature-adjusted age of %j is %f days', (spans, expected) => {
  expect(Math.abs(modelCodeAge(spans.map(([time, temperature]) => ({ time, temperature }))) - expected)).toBeLessThan(0.001);
});

// Examination problem, Nurse-Saul with datum -11 °C.
test('Nurse-Saul: 28 days at 15 °C with a datum of -11 °C are 728 °C days, not 112', () => {
  expect(nurseSaulMaturity([{ time: 28, temperature: 15 }], -11)).toBe(728);
});

// Maturity worked example, datum 0 °C.
test('Nurse-Saul: 3500 °C hours take 152 h at 23 °C, and 48.6 °C to be reached in 72 h', () => {
  expect(timeToMaturity(3500, 23, 0)).toBeCloseTo(152.17, 2);
  expect(temperatureForMaturity(3500, 72, 0)).toBeCloseTo(48.6, 1);
});

// ASTM C1074 form, from memory; rates to 20 °C with 273.15, computed from the formula.
test.each([
  [0, 0.2868, 0.3682, 0.25, 0.3333],
  [5, 0.3986, 0.4791, 0.3536, 0.5],
  [8, 0.4829, 0.5586, 0.4353, 0.6],
  [10, 0.5475, 0.6176, 0.5, 0.6667],
  [15, 0.7438, 0.7892, 0.7071, 0.8333],
  [23, 1.1886, 1.1482, 1.2311, 1.1],
  [25, 1.3311, 1.2571, 1.4142, 1.1667],
  [30, 1.7553, 1.5685, 2, 1.3333],
])('rates at %f °C against 20 °C are %f (Q 5000), %f (Q 4000), %f (doubling) and %f (Nurse-Saul)', (t, q5, q4, doubling, maturity) => {
  expect(arrheniusRate(t, 20, 5000)).toBeCloseTo(q5, 4);
  expect(arrheniusRate(t, 20, 4000)).toBeCloseTo(q4, 4);
  expect(doublingRate(t, 20, 10)).toBeCloseTo(doubling, 4);
  expect(maturityRate(t, 20, -10)).toBeCloseTo(maturity, 4);
});

const HALF_DAYS = [{ time: 12, temperature: 25 }, { time: 12, temperature: 5 }];
const MEAN_DAY = [{ time: 24, temperature: 15 }];

test('12 h at 25 and 12 h at 5 °C are 20.757 equivalent hours, not the 17.852 of their mean (Q 5000, 20 °C)', () => {
  const law = { kind: 'arrhenius', activation: 5000 } as const;
  expect(equivalentAge(HALF_DAYS, law, 20)).toBeCloseTo(20.757, 3);
  expect(equivalentAge(MEAN_DAY, law, 20)).toBeCloseTo(17.852, 3);
});

test('the same by doubling per 10 °C: 21.213 against 16.971', () => {
  const law = { kind: 'doubling', per: 10 } as const;
  expect(equivalentAge(HALF_DAYS, law, 20)).toBeCloseTo(21.213, 3);
  expect(equivalentAge(MEAN_DAY, law, 20)).toBeCloseTo(16.971, 3);
});

test('doubling from 20 to 30 °C is Q = 6160 K, 51.2 kJ/mol', () => {
  expect(activationOfDoubling(20, 30)).toBeCloseTo(6160, -1);
  expect(activationEnergy(activationOfDoubling(20, 30))).toBeCloseTo(51.2, 1);
});

test('Q = 5000 K gives 1.83 from 10 to 20 °C, but only 1.27 from 180 to 190 °C', () => {
  expect(arrheniusRate(20, 10, 5000)).toBeCloseTo(1.83, 2);
  expect(arrheniusRate(190, 180, 5000)).toBeCloseTo(1.27, 2);
});

// ASHRAE 2021 ch. 14 Table 6 with 14 °C at most and a range of 10 K; the value of hour h holds until the next hour.
const ORIGIN = instant(Date.UTC(2026, 2, 1));
const DAYS = climateOfValues(ORIGIN, { air: Array.from({ length: 24 * 8 }, (_, hour) => profileTemperature(hour, 4, 14)) });
const clockWith = (cutOff: number | null) => createCureClock(DAYS, { law: { kind: 'arrhenius', activation: 5000 }, reference: 20, cutOff });

test.each([[null, 12.331], [5, 10.025], [10, 6.363]])('a day between 4 and 14 °C, cut off below %s °C, is %f equivalent hours', (cutOff, expected) => {
  expect(equivalentMinutes(clockWith(cutOff), ORIGIN, addMinutes(ORIGIN, 1440)) / 60).toBeCloseTo(expected, 3);
});

test.each([[null, 29.96], [5, 41.18], [10, 67.18]])('16 equivalent hours from 15:00, cut off below %s °C, take %f h', (cutOff, expected) => {
  const laidAt = addMinutes(ORIGIN, 15 * 60);
  const ready = readyAt(clockWith(cutOff), laidAt, 16 * 60);
  expect(Math.abs((ready! - laidAt) / 3_600_000 - expected)).toBeLessThan(0.05);
});

// UFGS 09 97 1x, 3.7.1.3: base 4 h at 21 °C, halves for every 10 K.
test.each([[31, 2], [11, 8], [16, 5.66], [21, 4]])('UFGS 09 97 1x, 3.7.1.3: a pot life of 4 h at 21 °C at %f °C is %f h', (t, hours) => {
  const pot: PotLife = { minutes: 240, at: 21, halvesPer: 10, induction: 0, isInductionIncluded: false };
  expect(potLifeAt(pot, t) / 60).toBeCloseTo(hours, 2);
});
