import { issue, type Issue, type Subject } from '@/lib/result';
import type { Workshop } from '../model';
import { formatNumber, subjectsOf } from '../words';
import type { Rule } from './rule';

const RANGES: readonly (readonly [keyof Workshop['room'], string, number, number, string])[] = [
  ['timeConstant', 'time constant', 0.1, 1000, 'h'], ['heatLoss', 'heat loss', 1, 100_000, 'W/K'], ['offset', 'offset above outside', -20, 20, 'K'],
  ['volume', 'volume', 1, 100_000, 'm3'], ['airChanges', 'change of air', 0.01, 100, 'an hour'], ['moisture', 'moisture', 0, 100, 'kg an hour'],
  ['surfaceLag', 'lag of the surface', 0.01, 100, 'h'],
];

/** One room with its heater; `of` is where it stands, ` of the air “tent”`, and `path` leads to it. */
function checkRoom({ room, heater }: Pick<Workshop, 'room' | 'heater'>, of: string, path: readonly (string | number)[], subjects: readonly Subject[]): Issue[] {
  const rooms = RANGES.filter(([field, , low, high]) => !(room[field] >= low && room[field] <= high)).map(([field, word, low, high, unit]) =>
    issue('room-value', `The ${word}${of} is ${formatNumber(room[field])} ${unit}.`, `Type ${low} to ${high} ${unit}.`, { path: [...path, 'room', field], subjects }));
  if (!(heater.kilowatts >= 0 && heater.kilowatts <= 1000)) {
    rooms.push(issue('heater-power', `The heater${of} has ${formatNumber(heater.kilowatts)} kW.`, 'Type 0 to 1,000 kW.', { path: [...path, 'heater', 'kilowatts'], subjects }));
  }
  if (heater.kind !== 'electric' && heater.fuel === null) {
    rooms.push(issue('heater-fuel', `The burner${of} has no fuel.`, 'Choose its fuel: it decides how much water it gives off.', { path: [...path, 'heater', 'fuel'], subjects }));
  }
  return rooms;
}

/** The rooms and heaters have numbers that can be, and no air has two of them. */
export const checkWorkshop: Rule = ({ series }) => {
  const { workshop } = series;
  if (workshop === undefined) return [];
  const subjects = subjectsOf(series);
  const airs = workshop.airs ?? [];
  const issues = [
    ...checkRoom(workshop, ' of the workshop', ['workshop'], subjects),
    ...airs.flatMap((air, index) => checkRoom(air, ` of the air “${air.airZone}”`, ['workshop', 'airs', index], subjects)),
  ];
  airs.forEach(({ airZone }, index) => {
    if (airs.findIndex((air) => air.airZone === airZone) === index) return;
    issues.push(issue('air-twice', `The air “${airZone}” has two rooms.`, 'Remove one of the two.', { path: ['workshop', 'airs', index, 'airZone'], subjects }));
  });
  if (!(workshop.pricePerKwh >= 0)) {
    issues.push(issue('energy-price', `A kWh costs ${formatNumber(workshop.pricePerKwh)}.`, 'Type 0 or more.', { path: ['workshop', 'pricePerKwh'], subjects }));
  }
  return issues;
};
