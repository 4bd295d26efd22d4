/** What a colder week does to what dries in it, by the law of its own material. */
import type { Material } from '@/lib/build';
import { coatMaterialOf, rateAt } from '@/lib/cure';

/** A wait in the cold lasts no longer than so many times the planned one: by then somebody heats. Our choice. */
const MOST = 8;
const HUMIDITY = 50;

/**
 * How many times longer a coat takes at `drop` kelvins below `temperature`: its rate there against its rate in the cold. A material that
 * is planned at its minimum, as the temperature is below it, is as slow as the cold makes it from that minimum on.
 * @returns 1 or more
 * @example coldRatio(materialThatDoublesPer10, 12, 10) // 2
 */
export function coldRatio(material: Material, temperature: number, drop: number): number {
  const { law, minimumTemperature, referenceTemperature } = coatMaterialOf(material);
  const rate = (at: number) => rateAt(law, referenceTemperature, at, at, HUMIDITY);
  const planned = rate(Math.max(temperature, minimumTemperature));
  const cold = rate(Math.max(temperature, minimumTemperature) - drop);
  return cold <= planned / MOST ? MOST : Math.max(1, planned / cold);
}
