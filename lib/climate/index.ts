/** The workshop's air by the hour: weather, room, heating and logger readings. Knows no coat. */
export { campbellNorman, cesaraccio, fractionBelowHigh, partonLogan, profileTemperature, type DayLight } from './daily-shape';
export { fitRoom, type RoomFit } from './fit';
export {
  checkHeating, NO_HEATING, WATER_PER_KWH, type Fuel, type Heater, type HeaterKind, type HeatingPlan, type HeatingRun,
} from './heating';
export {
  climateAt, climateOfValues, endOfClimate, minutesSinceOrigin, momentOfMinute, momentOfStep, stepAt, stepsSince, steadyClimate,
  type ClimateValues, type HourlyClimate,
} from './hourly';
export { measureHours, type MeasuredHours, type Reading } from './measured';
export { outsideSeries, type DailyWeather, type OutsideSeries } from './outside';
export type { DateOrder } from './reading-time';
export { readReadings, type ReadingsImport, type ReadingsOptions } from './readings';
export { checkRoom, coolRoom, heatRoom, hoursToTemperature, lumpedTemperature, timeConstantOf, type Room, type RoomStretch } from './room';
export { fahrenheitDifference, fahrenheitReading } from './temperature-units';
export {
  dewMargin, dewPoint, freshAirHeat, heatedHumidity, humidityFromWetBulb, humidityRatioFromWetBulb, magnusPressure,
  moistAirEnthalpy, saturationPressure, SEA_LEVEL_PRESSURE, vapourPressure,
} from './vapour';
export { dewMargins, workshopClimate, type WorkshopClimate, type WorkshopInput } from './workshop';
