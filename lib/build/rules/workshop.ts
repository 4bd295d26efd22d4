import { issue } from '@/lib/result';
import type { Workshop } from '../model';
import { formatNumber, subjectsOf } from '../words';
import type { Rule } from './rule';

const RANGES: readonly (readonly [keyof Workshop['room'], string, number, number, string])[] = [
  ['timeConstant', 'time constant', 0.1, 1000, 'h'], ['heatLoss', 'heat loss', 1, 100_000, 'W/K'], ['offset', 'offset above outside', -20, 20, 'K'],
  ['volume', 'volume', 1, 100_000, 'm3'], ['airChanges', 'change of air', 0.01, 100, 'an hour'], ['moisture', 'moisture', 0, 100, 'kg an hour'],
  ['surfaceLag', 'lag of the surface', 0.01, 100, 'h'],
];

/** The room and the heater have numbers that can be. */
export const checkWorkshop: Rule = ({ series }) => {
  const { workshop } = series;
  if (workshop === undefined) return [];
  const subjects = subjectsOf(series);
  const rooms = RANGES.filter(([field, , low, high]) => !(workshop.room[field] >= low && workshop.room[field] <= high)).map(([field, word, low, high, unit]) =>
    issue('room-value', `The ${word} of the workshop is ${formatNumber(workshop.room[field])} ${unit}.`, `Type ${low} to ${high} ${unit}.`, { path: ['workshop', 'room', field], subjects }));
  const { heater } = workshop;
  if (!(heater.kilowatts >= 0 && heater.kilowatts <= 1000)) {
    rooms.push(issue('heater-power', `The heater has ${formatNumber(heater.kilowatts)} kW.`, 'Type 0 to 1,000 kW.', { path: ['workshop', 'heater', 'kilowatts'], subjects }));
  }
  if (heater.kind !== 'electric' && heater.fuel === null) {
    rooms.push(issue('heater-fuel', 'The burner has no fuel.', 'Choose its fuel: it decides how much water it gives off.', { path: ['workshop', 'heater', 'fuel'], subjects }));
  }
  if (!(workshop.pricePerKwh >= 0)) {
    rooms.push(issue('energy-price', `A kWh costs ${formatNumber(workshop.pricePerKwh)}.`, 'Type 0 or more.', { path: ['workshop', 'pricePerKwh'], subjects }));
  }
  return rooms;
};
