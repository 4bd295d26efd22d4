import { expect, test } from 'vitest';
import { coatClocks, layCoats, unfoldSystem, type CoatingSystem, type CoatMaterial } from '@/lib/cure';
import { unwrap } from '@/lib/result';
import { COAT, hour, hourly, libraryMaterial, ORIGIN } from './sample-coats';

const TOP: CoatMaterial = { ...COAT, id: 'top', name: 'Top coat', lateWork: 'abrade' };
const MATERIALS = new Map([[COAT.id, COAT], [TOP.id, TOP], ['paint-polyurethane', libraryMaterial('paint-polyurethane')]]);
const SYSTEM: CoatingSystem = {
  id: 'chassis', name: 'Chassis system', lateWorkMinutes: 30,
  steps: [
    { materialId: 'coat', coats: 1, work: 60, between: 'recoat', isAbradedBefore: false },
    { materialId: 'top', coats: 2, work: 60, between: 'recoat', isAbradedBefore: false },
  ],
};
const sessionsAt = (...spans: readonly (readonly [number, number])[]) => spans.map(([start, end]) => ({ start: hour(start), end: hour(end) }));

test('a system unfolds into coats with a wait and a longest wait each', () => {
  const coats = unwrap(unfoldSystem(SYSTEM, MATERIALS, 30));
  expect(coats.map(({ key, lag }) => [key, lag?.after ?? null, lag?.stage ?? null, lag?.max ?? null])).toEqual([
    ['coat-1', null, null, null], ['top-2', 'coat-1', 'recoatFrom', 720], ['top-3', 'top-2', 'recoatFrom', 720],
  ]);
  expect(unwrap(unfoldSystem(SYSTEM, MATERIALS, 5))[1]?.lag?.max).toBe(1440);
});

test('wet on wet waits for the flash-off, and planned abrading for a coat fit to handle, with no longest wait', () => {
  const steps = [SYSTEM.steps[0]!, { ...SYSTEM.steps[1]!, between: 'wet on wet' as const, isAbradedBefore: true }];
  const coats = unwrap(unfoldSystem({ ...SYSTEM, steps }, MATERIALS, 20));
  expect(coats.map(({ lag }) => lag && [lag.stage, lag.max])).toEqual([null, ['handle', null], ['flashOff', 1440]]);
  expect(coats.map(({ isAbradedBefore }) => isAbradedBefore)).toEqual([false, true, false]);
});

test('coats laid within their windows need no abrading', () => {
  const climate = hourly([20, 400]);
  const coats = unwrap(unfoldSystem(SYSTEM, MATERIALS, 20));
  const laid = layCoats(SYSTEM, coats, coatClocks(climate), sessionsAt([0, 20], [24, 40]), ORIGIN);
  expect(laid.map(({ start, before }) => [start, before])).toEqual([[hour(0), 'none'], [hour(5), 'none'], [hour(10), 'none']]);
});

test('a window that closes between sessions costs an abrading before the next coat', () => {
  const climate = hourly([20, 400]);
  const coats = unwrap(unfoldSystem(SYSTEM, MATERIALS, 20));
  const laid = layCoats(SYSTEM, coats, coatClocks(climate), sessionsAt([0, 3], [48, 50], [60, 62]), ORIGIN);
  expect(laid.map(({ start, laidAt, before, isLate }) => [start, laidAt, before, isLate])).toEqual([
    [hour(0), hour(1), 'none', false], [hour(48), hour(49.5), 'abrade', true], [hour(60), hour(61), 'none', false],
  ]);
});

test('a coat that never forms ends the system there', () => {
  const materials = new Map(MATERIALS).set('coat', { ...COAT, belowMinimum: 'never forms' as const });
  const coats = unwrap(unfoldSystem(SYSTEM, materials, 20));
  const laid = layCoats(SYSTEM, coats, coatClocks(hourly([20, 2], [2, 20], [20, 100])), sessionsAt([0, 100]), ORIGIN);
  expect(laid.map(({ key, forecast }) => [key, forecast.isSpoilt])).toEqual([['coat-1', true]]);
});

const codes = (system: CoatingSystem) => {
  const result = unfoldSystem(system, MATERIALS, 20);
  return result.ok ? [] : result.error.map((found) => found.code);
};

test('a system without coats, with half a coat or an unknown material is refused', () => {
  const steps = [{ ...SYSTEM.steps[0]!, materialId: 'gone', coats: 0.5 }];
  expect(codes({ ...SYSTEM, steps })).toEqual(['system-material', 'system-coats']);
  expect(codes({ ...SYSTEM, steps: [] })).toEqual(['system-empty']);
});
