import { expect, test } from 'vitest';
import {
  campbellNorman, cesaraccio, coolRoom, fahrenheitDifference, fahrenheitReading, fractionBelowHigh, hoursToTemperature, lumpedTemperature,
  partonLogan, profileTemperature, timeConstantOf,
} from '@/lib/climate';

const LIGHT = { sunrise: 6, sunset: 18 };

// Reference tests of the TrenchR package (Parton and Logan 1981).
test.each([[11, 23.91954], [20, 20.46866], [3, 13.35971]])('Parton-Logan: %d h between 10 and 30 °C is %d °C', (hour, expected) => {
  expect(partonLogan(hour, 10, 30, LIGHT)).toBeCloseTo(expected, 4);
});

// Reference tests of the TrenchR package (Campbell and Norman 1998).
test('Campbell-Norman: 11 h between 10 and 30 °C is 25.08958 °C', () => {
  expect(campbellNorman(11, 10, 30)).toBeCloseTo(25.08958, 4);
});

// Reference tests of the TrenchR package (Cesaraccio et al. 2001).
test.each([[8, 17.65367], [2, 14.01487], [16, 27.94389], [20, 18.49743]])(
  'Cesaraccio: %d h between 10 and 30 °C, 12 °C the next morning, is %d °C',
  (hour, expected) => {
    expect(cesaraccio(hour, 10, 30, 12, LIGHT)).toBeCloseTo(expected, 4);
  },
);

// ASHRAE Handbook Fundamentals 2021, ch. 14, Table 6.
test('ASHRAE 2021 ch. 14 Table 6: the fractions add up to 12.87, with the low at hour 5 and a mean of 8.6375 °C between 4 and 14', () => {
  const hours = Array.from({ length: 24 }, (_, index) => index + 1);
  expect(hours.reduce((sum, hour) => sum + fractionBelowHigh(hour), 0)).toBeCloseTo(12.87, 10);
  const day = hours.map((hour) => profileTemperature(hour, 4, 14));
  expect(day.indexOf(Math.min(...day)) + 1).toBe(5);
  expect(day.reduce((sum, t) => sum + t, 0) / 24).toBeCloseTo(8.6375, 10);
});

// Kreyszig, Advanced Engineering Mathematics, ex. 1.3 (°F).
test('Newton cooling: 66 °F falls to 63 in 2 h with 32 outside, so to 53.42 after 10 h, with a time constant of 21.65 h', () => {
  const tau = timeConstantOf(66, 63, 32, 2);
  expect(1 / tau).toBeCloseTo(0.046187, 6);
  expect(tau).toBeCloseTo(21.65, 2);
  expect(lumpedTemperature(66, 32, tau, 10)).toBeCloseTo(53.42, 2);
});

// Calculus textbook exercise: 68 °F falls to 57 °F in 9 min at 10 °F, asked after 18 min.
test('Newton cooling: 68 °F falls to 57 in 9 min with 10 around it, so to 48.09 after 18 min', () => {
  expect(lumpedTemperature(68, 10, timeConstantOf(68, 57, 10, 9), 18)).toBeCloseTo(48.09, 2);
});

// Building cooling exercise: the difference halves every 2 h.
test('Newton cooling: 70 °F falls to 40 in 2 h with 10 outside, so to 25 after 4 h', () => {
  expect(lumpedTemperature(70, 10, timeConstantOf(70, 40, 10, 2), 4)).toBeCloseTo(25, 9);
});

// The lumped room, computed from its formula.
test('a room with a time constant of 6 h, 20 °C inside and 2 outside, is at 10 °C after 4.866 h and at 5 °C after 10.751 h', () => {
  expect(hoursToTemperature(20, 2, 6, 10)).toBeCloseTo(4.866, 3);
  expect(hoursToTemperature(20, 2, 6, 5)).toBeCloseTo(10.751, 3);
  expect(coolRoom(20, 2, { timeConstant: 6 }, 8).end).toBeCloseTo(6.745, 3);
});

test('5 °F of gap is 2.8 K, and a reading of 5 °F is -15 °C', () => {
  expect(fahrenheitDifference(5)).toBeCloseTo(2.8, 1);
  expect(fahrenheitReading(5)).toBeCloseTo(-15, 10);
});
