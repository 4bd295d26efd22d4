import { array, assert, double, integer, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countNoise, countVibration, toMilligrams, toPpm } from '@/lib/safety';
import { unwrap } from '@/lib/result';

const pieces = array(record({ level: integer({ min: 60, max: 120 }), minutes: integer({ min: 1, max: 200 }) }), { maxLength: 6 });

describe('exposure', () => {
  it('does not depend on the order or on how a piece is cut in two', () => {
    assert(property(pieces, (list) => {
      const whole = unwrap(countNoise(list));
      const halves = unwrap(countNoise(list.toReversed().flatMap(({ level, minutes }) => [{ level, minutes: minutes / 2 }, { level, minutes: minutes / 2 }])));
      expect(halves.oshaDose).toBeCloseTo(whole.oshaDose, 6);
      expect(halves.nioshDose).toBeCloseTo(whole.nioshDose, 6);
      expect(halves.dailyLevel ?? 0).toBeCloseTo(whole.dailyLevel ?? 0, 6);
    }), { numRuns: 60 });
  });

  it('never falls when something is added', () => {
    assert(property(pieces, integer({ min: 60, max: 120 }), (list, level) => {
      const [before, after] = [unwrap(countNoise(list)), unwrap(countNoise([...list, { level, minutes: 30 }]))];
      expect(after.nioshDose).toBeGreaterThanOrEqual(before.nioshDose);
      expect(after.dailyLevel ?? 0).toBeGreaterThanOrEqual(before.dailyLevel ?? 0);
    }), { numRuns: 60 });
  });

  it('adds the points of vibration, and A(8) is the root of their sixteenth', () => {
    assert(property(array(record({ magnitude: double({ min: 0, max: 30, noNaN: true }), minutes: integer({ min: 1, max: 400 }) }), { minLength: 1, maxLength: 5 }), (list) => {
      const sum = list.reduce((points, one) => points + unwrap(countVibration([one])).points, 0);
      const day = unwrap(countVibration(list));
      expect(day.points).toBeCloseTo(sum, 6);
      expect(day.dailyValue ** 2 * 16).toBeCloseTo(day.points, 6);
    }), { numRuns: 60 });
  });

  it('turns ppm to mg/m3 and back', () => {
    assert(property(double({ min: 0, max: 1e4, noNaN: true }), double({ min: 10, max: 500, noNaN: true }), (ppm, molarMass) => {
      expect(toPpm(toMilligrams(ppm, molarMass), molarMass)).toBeCloseTo(ppm, 6);
    }), { numRuns: 60 });
  });
});
