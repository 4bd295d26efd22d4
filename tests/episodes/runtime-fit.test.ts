import { expect, test } from 'vitest';
import { fitRuntime } from '@/lib/episodes';

const BOUNDS = { min: 10, target: 14, max: 18 };
const list = (...lengths: readonly number[]) => lengths.map((length, index) => ({ id: `${index}`, length }));

test('a runtime inside its bounds, both of them included, needs nothing', () => {
  for (const minutes of [10, 14, 18]) expect(fitRuntime(minutes, BOUNDS, list(5, 5), list(3))).toEqual([]);
});

test('too long: one segment goes rather than two, the one that comes closest to the wish first', () => {
  expect(fitRuntime(20, BOUNDS, list(1, 2, 5, 7), [])).toEqual([
    { kind: 'take out', segmentIds: ['2'], minutes: 15 }, { kind: 'take out', segmentIds: ['3'], minutes: 13 }, { kind: 'take out', segmentIds: ['1'], minutes: 18 },
  ]);
  expect(fitRuntime(24, BOUNDS, list(4, 4, 4), [])[0]).toEqual({ kind: 'take out', segmentIds: ['0', '1'], minutes: 16 });
});

test('too short: segments come in; where none or all would be needed there is no answer', () => {
  expect(fitRuntime(8, BOUNDS, list(7.5), list(1, 3, 30))).toEqual([
    { kind: 'bring in', segmentIds: ['1'], minutes: 11 }, { kind: 'bring in', segmentIds: ['0', '1'], minutes: 12 },
  ]);
  expect(fitRuntime(8, BOUNDS, list(7.5), [])).toEqual([]);
  expect(fitRuntime(40, BOUNDS, list(39.5), [])).toEqual([]);
});
