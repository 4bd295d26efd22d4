/**
 * The temperature through a day from its low and high, by published shapes. Hours are hours of the day, 0 to 24, temperatures °C.
 */

/**
 * Fraction of the daily range below the maximum at hours 1 to 24.
 * ASHRAE Handbook Fundamentals 2021, ch. 14, Table 6.
 */
const BELOW_MAXIMUM = [
  0.88, 0.92, 0.95, 0.98, 1, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0, 0, 0.06, 0.14, 0.24, 0.39, 0.5, 0.59, 0.68, 0.75, 0.82,
] as const;

/** Hour of the day with the low and the last hour with the high in that table. */
export const HOUR_OF_LOW = 5;
export const HOUR_OF_HIGH = 15;

const fractionAtHour = (hour: number): number => BELOW_MAXIMUM[(hour + 23) % 24] ?? 0;

/**
 * Fraction of the daily range below the maximum, straight lines between the hours of the table.
 * @example fractionBelowHigh(5) // 1
 */
export function fractionBelowHigh(hour: number): number {
  const wrapped = ((hour % 24) + 24) % 24;
  const before = Math.floor(wrapped);
  const share = wrapped - before;
  return share === 0 ? fractionAtHour(before) : fractionAtHour(before) * (1 - share) + fractionAtHour(before + 1) * share;
}

/** @example profileTemperature(5, 4, 14) // 4 */
export function profileTemperature(hour: number, low: number, high: number): number {
  return high - (high - low) * fractionBelowHigh(hour);
}

export interface DayLight {
  readonly sunrise: number;
  readonly sunset: number;
}

/**
 * Sine by day, exponential decay by night. Parton and Logan 1981; lags and decay by default as for air at 1.5 m.
 * @example partonLogan(11, 10, 30, { sunrise: 6, sunset: 18 }) // 23.92
 */
export function partonLogan(hour: number, low: number, high: number, light: DayLight, lag = { a: 2.59, b: 1.55, c: 2.2 }): number {
  const { sunrise, sunset } = light;
  const day = sunset - sunrise;
  const bySun = (at: number): number => low + (high - low) * Math.sin((Math.PI * (at - sunrise - lag.b)) / (day + 2 * (lag.a - lag.b)));
  if (hour > sunrise + lag.b && hour < sunset) return bySun(hour);
  const sinceSunset = hour >= sunset ? hour - sunset : hour + 24 - sunset;
  return low + (bySun(sunset) - low) * Math.exp((-lag.c * sinceSunset) / (24 - day + lag.b));
}

/**
 * Two harmonics. Campbell and Norman 1998, eq. 2.2 and 2.3.
 * @example campbellNorman(11, 10, 30) // 25.09
 */
export function campbellNorman(hour: number, low: number, high: number): number {
  const turn = (Math.PI / 12) * hour;
  const weight = 0.44 - 0.46 * Math.sin(0.9 + turn) + 0.11 * Math.sin(0.9 + 2 * turn);
  return high * weight + low * (1 - weight);
}

/**
 * Sine by day, another to sunset, a square root by night towards the next low. Cesaraccio et al. 2001.
 * @example cesaraccio(8, 10, 30, 12, { sunrise: 6, sunset: 18 }) // 17.65
 */
export function cesaraccio(hour: number, low: number, high: number, nextLow: number, light: DayLight): number {
  const { sunrise, sunset } = light;
  const hourOfHigh = sunset - 4;
  const atSunset = high - 0.39 * (high - nextLow);
  const night = (nextLow - atSunset) / Math.sqrt(sunrise + 24 - sunset);
  if (hour <= sunrise) return atSunset + night * Math.sqrt(hour - (sunset - 24));
  if (hour <= hourOfHigh) return low + (high - low) * Math.sin((((hour - sunrise) / (hourOfHigh - sunrise)) * Math.PI) / 2);
  if (hour < sunset) return atSunset + (high - atSunset) * Math.sin(Math.PI / 2 + ((hour - hourOfHigh) / 4) * (Math.PI / 2));
  return atSunset + night * Math.sqrt(hour - sunset);
}
