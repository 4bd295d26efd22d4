/**
 * Water vapour in air. Humidity is in percent, 0 to 100.
 *
 * Below 0 °C: relative humidity and dew point are over liquid water at every temperature (WMO No. 8), as weather services and
 * loggers state them; so a dew point below 0 °C is a dew point, not a frost point. {@link saturationPressure} alone follows
 * ASHRAE and is over ice below the triple point.
 */

const KELVIN = 273.15;
const TRIPLE_POINT = 0.01;
/** Ratio of the molar masses of water and dry air. */
const MASS_RATIO = 0.621945;
export const SEA_LEVEL_PRESSURE = 101_325;

const MAGNUS_BASE = 6.112;
const MAGNUS_SLOPE = 17.62;
const MAGNUS_SHIFT = 243.12;

/**
 * Saturation vapour pressure in Pa at -100 to 200 °C, over ice below 0.01 °C and over water above.
 * ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6 (Hyland and Wexler 1983).
 * @example saturationPressure(25) // 3169.2
 */
export function saturationPressure(temperature: number): number {
  const t = temperature + KELVIN;
  if (temperature <= TRIPLE_POINT) {
    return Math.exp(
      -5.6745359e3 / t + 6.3925247 - 9.677843e-3 * t + 6.2215701e-7 * t ** 2
        + 2.0747825e-9 * t ** 3 - 9.484024e-13 * t ** 4 + 4.1635019 * Math.log(t),
    );
  }
  return Math.exp(
    -5.8002206e3 / t + 1.3914993 - 4.8640239e-2 * t + 4.1764768e-5 * t ** 2 - 1.4452093e-8 * t ** 3 + 6.5459673 * Math.log(t),
  );
}

/**
 * Saturation vapour pressure over water in hPa: 6.112 exp(17.62 t / (243.12 + t)). WMO No. 8, annex 4.B; good from -45 to 60 °C.
 * @example magnusPressure(0) // 6.112
 */
export function magnusPressure(temperature: number): number {
  return MAGNUS_BASE * Math.exp((MAGNUS_SLOPE * temperature) / (MAGNUS_SHIFT + temperature));
}

/** Dew point of a vapour pressure in hPa; minus infinity for none. */
function dewPointOfPressure(pressure: number): number {
  if (pressure <= 0) return Number.NEGATIVE_INFINITY;
  const log = Math.log(pressure / MAGNUS_BASE);
  return (MAGNUS_SHIFT * log) / (MAGNUS_SLOPE - log);
}

/** Vapour pressure in hPa of air at a temperature and humidity. */
export function vapourPressure(temperature: number, humidity: number): number {
  return (magnusPressure(temperature) * humidity) / 100;
}

/** Humidity in percent of air with a vapour pressure in hPa, not above 100. */
function humidityOf(temperature: number, pressure: number): number {
  return Math.min(100, (100 * pressure) / magnusPressure(temperature));
}

/**
 * The temperature a surface must stay above to stay dry, over water at any temperature.
 * @example dewPoint(20, 50) // 9.255
 */
export function dewPoint(temperature: number, humidity: number): number {
  return dewPointOfPressure(vapourPressure(temperature, humidity));
}

/**
 * Kelvins the surface is above the dew point of the air; negative means dew.
 * @example dewMargin(16, 71, 13) // 2.26
 */
export function dewMargin(air: number, humidity: number, surface: number): number {
  return surface - dewPoint(air, humidity);
}

/** Humidity of the same air, with the same moisture, at another temperature. @example heatedHumidity(5, 85, 20) // 31.7 */
export function heatedHumidity(temperature: number, humidity: number, at: number): number {
  return humidityOf(at, vapourPressure(temperature, humidity));
}

/** kg of water per kg of dry air at saturation, by {@link saturationPressure}. */
function saturatedRatio(temperature: number, pressure: number): number {
  const e = saturationPressure(temperature);
  return (MASS_RATIO * e) / (pressure - e);
}

/**
 * kg of water per kg of dry air from a dry and a wet bulb. ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33 and 35.
 * @example humidityRatioFromWetBulb(40, 20) // 0.0064
 */
export function humidityRatioFromWetBulb(dryBulb: number, wetBulb: number, pressure = SEA_LEVEL_PRESSURE): number {
  const saturated = saturatedRatio(wetBulb, pressure);
  const ratio = wetBulb >= 0
    ? ((2501 - 2.326 * wetBulb) * saturated - 1.006 * (dryBulb - wetBulb)) / (2501 + 1.86 * dryBulb - 4.186 * wetBulb)
    : ((2830 - 0.24 * wetBulb) * saturated - 1.006 * (dryBulb - wetBulb)) / (2830 + 1.86 * dryBulb - 2.1 * wetBulb);
  return Math.max(0, ratio);
}

/**
 * Relative humidity in percent from a dry and a wet bulb, ASHRAE convention (over ice below 0.01 °C).
 * @example humidityFromWetBulb(40, 20) // 14
 */
export function humidityFromWetBulb(dryBulb: number, wetBulb: number, pressure = SEA_LEVEL_PRESSURE): number {
  const ratio = humidityRatioFromWetBulb(dryBulb, wetBulb, pressure);
  const e = (pressure * ratio) / (MASS_RATIO + ratio);
  return (100 * e) / saturationPressure(dryBulb);
}

/** Gas constant of dry air, J/(kg K). */
const DRY_AIR_CONSTANT = 287.042;

/**
 * kW that the fresh air of a room takes to come from outside to the temperature inside, its water left as it is.
 * `vapour` in hPa, volume in m3, air changes an hour.
 * @example freshAirHeat({ volume: 150, airChanges: 1 }, { air: 0, vapour: 5 }, 20) // 1.08
 */
export function freshAirHeat(room: { readonly volume: number; readonly airChanges: number }, outside: { readonly air: number; readonly vapour: number }, inside: number): number {
  const e = outside.vapour * 100;
  const ratio = (MASS_RATIO * e) / (SEA_LEVEL_PRESSURE - e);
  const dryAir = (room.volume * room.airChanges * (SEA_LEVEL_PRESSURE - e)) / (DRY_AIR_CONSTANT * (outside.air + KELVIN)) / 3600;
  return (dryAir * (moistAirEnthalpy(inside, ratio) - moistAirEnthalpy(outside.air, ratio))) / 1000;
}

/** Enthalpy of moist air in J per kg of dry air. ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30. */
export function moistAirEnthalpy(dryBulb: number, humidityRatio: number): number {
  return (1.006 * dryBulb + humidityRatio * (2501 + 1.86 * dryBulb)) * 1000;
}
