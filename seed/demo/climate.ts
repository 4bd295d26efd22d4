/** The arch's air: usual lows and highs, a cold forecast, the room, a night of heating, and a coating system. All invented. */
import { addDays } from '@/lib/calendar';
import type { CivilDate, CoatingSystem, HeatingRun, Weather, WeatherDay, Workshop } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import { momentOf, type Frame } from './raise';

/** A brick arch with a room-sealed gas heater: its flame draws from outside and burns behind a case, so that it may be on while paint is wet. */
export const workshop: Workshop = {
  room: { timeConstant: 30, heatLoss: 350, offset: 3.5, volume: 380, airChanges: 0.7, moisture: 0.15, surfaceLag: 1.5 },
  heater: { kilowatts: 9, kind: 'flued burner', fuel: 'natural gas', isIgnitionSafe: true },
  pricePerKwh: 0.11, currency: 'GBP', dustSettles: minutes(60),
};

/** Low, high and mean humidity in the middle of each month, January first. */
const MONTHS: readonly (readonly [low: number, high: number, humidity: number])[] = [
  [1, 6, 86], [1, 7, 83], [3, 10, 78], [5, 13, 74], [8, 16, 72], [11, 19, 73], [13, 21, 74], [13, 21, 76], [10, 18, 79], [7, 14, 83], [4, 9, 86], [2, 7, 87],
];

/** How far each day of the forecast lies from the first, K: mild, then a frost. */
const FORECAST: readonly (readonly [low: number, high: number])[] = [[4, 9], [3, 8], [2, 7], [0, 5], [-2, 3], [-3, 2], [-2, 3], [0, 5], [2, 7], [3, 8]];

function usualDays(frame: Frame): readonly WeatherDay[] {
  const year = Number(frame.monday.slice(0, 4));
  return [year - 1, year, year + 1].flatMap((y) => MONTHS.map(([low, high, humidity], month): WeatherDay => ({
    date: `${y}-${String(month + 1).padStart(2, '0')}-15`, low, high, dewPoint: null, humidity,
  })));
}

const isWinter = (date: CivilDate): boolean => ['11', '12', '01', '02'].includes(date.slice(5, 7));

/** The usual weather, and in winter a forecast with a frost in it. */
export function raiseWeather(frame: Frame): readonly Weather[] {
  const usual: Weather = { kind: 'weather', id: 'weather-usual', revision: 1, order: 0, name: 'Usual lows and highs of the month', days: usualDays(frame) };
  if (!isWinter(frame.monday)) return [usual];
  const days = FORECAST.map(([low, high], day): WeatherDay => ({ date: addDays(frame.monday, day), low, high, dewPoint: null, humidity: 84 }));
  return [usual, { kind: 'weather', id: 'weather-forecast', revision: 1, order: 1, name: 'Forecast of the first ten days', days }];
}

export function raiseHeating(frame: Frame): readonly HeatingRun[] {
  return [{
    kind: 'heatingRun', id: 'heating-tent-night', revision: 1, order: 0, name: 'Tent kept warm over Saturday night', airZone: 'paint tent',
    start: momentOf(frame, { day: 12, at: '17:00' }), end: momentOf(frame, { day: 13, at: '09:00' }), setPoint: celsius(12),
  }];
}

export const coatingSystems: readonly CoatingSystem[] = [{
  kind: 'coatingSystem', id: 'system-tin', revision: 1, order: 0, name: 'Tinware: high-build primer and coach enamel', abrading: minutes(75),
  layers: [
    { materialId: 'mat-high-build', coats: 2, work: minutes(40), between: 'wet on wet', isAbradedBefore: false },
    { materialId: 'mat-coach-enamel', coats: 2, work: minutes(60), between: 'recoat', isAbradedBefore: true },
  ],
}];
