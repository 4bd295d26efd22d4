import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import {
  dewMargin, dewPoint, freshAirHeat, heatedHumidity, humidityFromWetBulb, humidityRatioFromWetBulb, magnusPressure, moistAirEnthalpy,
  saturationPressure, SEA_LEVEL_PRESSURE, fahrenheitReading,
} from '@/lib/climate';

psychrolib.SetUnitSystem(psychrolib.SI);

// ASHRAE Handbook Fundamentals 2017, ch. 1, Table 3 (as in the tests of psychrolib), within 300 parts per million.
test.each([[-20, 103.24], [-5, 401.74], [5, 872.6], [25, 3169.7], [50, 12351.3]])(
  'ASHRAE 2017 ch. 1 Table 3: water vapour saturates at %d °C at %d Pa',
  (temperature, pressure) => {
    expect(Math.abs(saturationPressure(temperature) - pressure)).toBeLessThan(pressure * 300e-6);
  },
);

test('psychrolib agrees on saturation pressure from -40 to 60 °C, over ice and over water', () => {
  for (let t = -40; t <= 60; t += 0.5) {
    expect(saturationPressure(t) / psychrolib.GetSatVapPres(t)).toBeCloseTo(1, 9);
  }
});

// ASHRAE Handbook Fundamentals 2017, ch. 1, Example 1: 40 °C dry bulb, 20 °C wet bulb, 101325 Pa.
test('ASHRAE 2017 ch. 1 Example 1: 40 °C dry and 20 °C wet bulb', () => {
  const ratio = humidityRatioFromWetBulb(40, 20, SEA_LEVEL_PRESSURE);
  const humidity = humidityFromWetBulb(40, 20, SEA_LEVEL_PRESSURE);
  expect(Math.abs(ratio - 0.0065)).toBeLessThan(1.01e-4);
  expect(Math.abs(humidity - 14)).toBeLessThan(1);
  expect(Math.abs(dewPoint(40, humidity) - 7)).toBeLessThan(0.5);
  expect(Math.abs(moistAirEnthalpy(40, ratio) - 56_700)).toBeLessThan(100);
});

test('psychrolib agrees on the heat that fresh air takes, over a grid of cold and damp', () => {
  for (let outside = -10; outside <= 15; outside += 5) {
    for (const humidity of [30, 60, 90]) {
      const vapour = (saturationPressure(outside) * humidity) / 10_000;
      const ratio = psychrolib.GetHumRatioFromRelHum(outside, humidity / 100, SEA_LEVEL_PRESSURE);
      // 400 m3 of outside air an hour.
      const dryAir = 400 / 3600 / psychrolib.GetMoistAirVolume(outside, ratio, SEA_LEVEL_PRESSURE);
      const theirs = (dryAir * (psychrolib.GetMoistAirEnthalpy(18, ratio) - psychrolib.GetMoistAirEnthalpy(outside, ratio))) / 1000;
      expect(freshAirHeat({ volume: 200, airChanges: 2 }, { air: outside, vapour }, 18)).toBeCloseTo(theirs, 4);
    }
  }
});

test('psychrolib agrees on wet bulb humidity over a grid, ice below 0 °C', () => {
  for (let dry = -10; dry <= 40; dry += 2.5) {
    for (const spread of [0, 1, 2, 4]) {
      const wet = dry - spread;
      const theirs = psychrolib.GetHumRatioFromTWetBulb(dry, wet, SEA_LEVEL_PRESSURE);
      if (theirs <= 1e-6) continue;
      const ours = humidityRatioFromWetBulb(dry, wet, SEA_LEVEL_PRESSURE);
      expect(ours / theirs).toBeCloseTo(1, 6);
      expect(humidityFromWetBulb(dry, wet, SEA_LEVEL_PRESSURE)).toBeCloseTo(100 * psychrolib.GetRelHumFromTWetBulb(dry, wet, SEA_LEVEL_PRESSURE), 6);
      expect(moistAirEnthalpy(dry, ours)).toBeCloseTo(psychrolib.GetMoistAirEnthalpy(dry, theirs), 3);
    }
  }
});

// Magnus formula against the ASHRAE formulation, where both are over water. The two formulas themselves differ most, by 0.039 K,
// in dry warm air with a dew point just above 0 °C.
test('Magnus dew points agree with psychrolib to 0.03 K from 5 °C and 40 % up, and to 0.04 K wherever the dew point is above 0 °C', () => {
  let compared = 0;
  for (let t = 1; t <= 40; t += 1) {
    for (let humidity = 10; humidity <= 100; humidity += 5) {
      const theirs = psychrolib.GetTDewPointFromRelHum(t, humidity / 100);
      if (theirs <= 0.01) continue;
      compared += 1;
      expect(Math.abs(dewPoint(t, humidity) - theirs)).toBeLessThan(humidity >= 40 && theirs >= 5 ? 0.03 : 0.04);
    }
  }
  expect(compared).toBeGreaterThan(500);
});

// Convention below 0 °C: ours is over water (WMO No. 8), psychrolib gives the frost point, over ice.
test('below 0 °C the dew point is over water, and so lower than the frost point of the same vapour', () => {
  for (const t of [-2, -5, -10, -20]) {
    expect(dewPoint(t, 100)).toBeCloseTo(t, 9);
    const vapour = magnusPressure(t) * 100;
    let frostPoint = t;
    while (saturationPressure(frostPoint) < vapour) frostPoint += 0.001;
    expect(frostPoint).toBeGreaterThan(t + 0.1);
    expect(frostPoint).toBeLessThan(0.02);
    // The same percentage over ice is less vapour, so psychrolib's point of it is the temperature itself too.
    expect(psychrolib.GetTDewPointFromRelHum(t, 1)).toBeCloseTo(t, 2);
    expect(saturationPressure(t)).toBeLessThan(vapour);
  }
});

// WMO No. 8 / Sonntag Magnus form, computed values to a thousandth.
test.each([
  [5, 85, 2.686], [8, 85, 5.63], [10, 60, 2.584], [15, 70, 9.569], [20, 50, 9.255], [20, 85, 17.399], [25, 60, 16.693],
])('Magnus (WMO No. 8): the dew point at %d °C, %d percent, is %f °C', (t, humidity, expected) => {
  expect(Math.abs(dewPoint(t, humidity) - expected)).toBeLessThan(0.0006);
});

// MetPy test tables, whole degrees.
test.each([[30, 30, 11], [25, 45, 12], [10, 55, 1], [20, 80, 16], [25, 85, 22]])(
  'MetPy tables: the dew point at %d °C, %d percent, is about %d °C',
  (t, humidity, expected) => {
    expect(Math.abs(dewPoint(t, humidity) - expected)).toBeLessThan(0.6);
  },
);

test('coatings glossary: 30 °C and 55 % give a dew point of 20 °C', () => {
  expect(Math.abs(dewPoint(30, 55) - 20)).toBeLessThan(0.1);
});

test('painting inspection guide: air 16 °C, 71 %, surface 13 °C leaves 2.25 K', () => {
  // The guide's 10.75 by the ASHRAE formulation; Magnus gives 10.74.
  expect(Math.abs(psychrolib.GetTDewPointFromRelHum(16, 0.71) - 10.75)).toBeLessThan(0.005);
  expect(Math.abs(dewPoint(16, 71) - 10.75)).toBeLessThan(0.01);
  expect(Math.abs(dewMargin(16, 71, 13) - 2.25)).toBeLessThan(0.01);
});

test('painting inspection guide: dry bulb 21, wet bulb 17, surface 19 °C leaves 4.3 K', () => {
  const humidity = humidityFromWetBulb(21, 17);
  expect(dewPoint(21, humidity)).toBeCloseTo(14.73, 1);
  expect(dewMargin(21, humidity, 19)).toBeCloseTo(4.3, 1);
});

test('dew chart: 70 °F and 65 % give a dew point of 57.7 °F, and a lowest surface of 62 °F within 1 °F', () => {
  const point = dewPoint(fahrenheitReading(70), 65);
  const inFahrenheit = point * 1.8 + 32;
  expect(Math.abs(inFahrenheit - 57.7)).toBeLessThan(0.1);
  expect(Math.abs((point + 3) * 1.8 + 32 - 62)).toBeLessThan(1.2);
});

// From the Magnus formula: how much of the winter air's moisture is left in heated air.
test('air of 5 °C and 85 % has 32 % once it is heated to 20 °C', () => {
  expect(Math.round(heatedHumidity(5, 85, 20))).toBe(32);
});
