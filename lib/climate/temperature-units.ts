/** A reading and a difference convert differently: 5 °F warm is -15 °C, but 5 °F of gap is 2.8 K. */
import { celsius, kelvins, type Celsius, type Kelvins } from '@/lib/units';

/** @example fahrenheitReading(50) // 10 °C */
export function fahrenheitReading(reading: number): Celsius {
  return celsius(((reading - 32) * 5) / 9);
}

/** @example fahrenheitDifference(5) // 2.8 K */
export function fahrenheitDifference(difference: number): Kelvins {
  return kelvins((difference * 5) / 9);
}
