/** A climate and a coat for tests: hourly values, a primer that reaches each stage at round hours at 20 °C. */
import { climateOfValues, type HourlyClimate } from '@/lib/climate';
import { findMaterial, type CoatMaterial } from '@/lib/cure';
import { addMinutes, instant, type Instant } from '@/lib/units';

export const ORIGIN = instant(Date.UTC(2026, 10, 30));

export const hour = (count: number): Instant => addMinutes(ORIGIN, count * 60);

/** Hours of the same temperature, one after the other. @example hourly([20, 5], [10, 3]) // 5 h at 20, then 3 h at 10 °C; 50 % */
export function hourly(...spans: readonly (readonly [temperature: number, hours: number])[]): HourlyClimate {
  const air = spans.flatMap(([temperature, hours]) => Array.from({ length: hours }, () => temperature));
  return climateOfValues(ORIGIN, { air });
}

export function libraryMaterial(id: string): CoatMaterial {
  const material = findMaterial(id);
  if (material === null) throw new Error(`No material ${id}`);
  return material;
}

/** Doubles per 10 K; hours at 20 °C: flash 1, touch dry 2, recoat 4 to 24, handle 8, cured 48. Pauses below 5 °C. */
export const COAT: CoatMaterial = {
  ...libraryMaterial('primer-single-pack'),
  id: 'coat', name: 'Test coat', minimumTemperature: 5, minimumUntilDry: 5,
  stages: { flashOff: 60, touchDry: 120, recoatFrom: 240, recoatUntil: 1440, handle: 480, fullCure: 2880 },
};
