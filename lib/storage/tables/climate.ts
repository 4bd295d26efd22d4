import type { CoatingSystem, HeatingRun, Readings, Weather } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import type { CoatingSystemModel, HeatingRunModel, ReadingsModel, WeatherModel } from '../generated/models';
import { readInstant, readJson, writeInstant } from '../column';
import { plainTable } from '../table';
import { layersShape, weatherShape } from './cure-values';

export const coatingSystems = plainTable<CoatingSystem, CoatingSystemModel>({
  kind: 'coatingSystem',
  model: (db) => db.coatingSystem,
  toRow: ({ layers, abrading }, common) => ({ ...common, layersJson: JSON.stringify(layers), abrading }),
  fromRow: ({ id, revision, position, name, layersJson, abrading }) => ({
    kind: 'coatingSystem', id, revision, order: position, name, abrading: minutes(abrading),
    layers: readJson(layersShape, layersJson, { table: 'CoatingSystem', row: id, column: 'layersJson' }),
  }),
});

export const heatingRuns = plainTable<HeatingRun, HeatingRunModel>({
  kind: 'heatingRun',
  model: (db) => db.heatingRun,
  toRow: ({ airZone, start, end, setPoint }, common) => ({ ...common, airZone, start: writeInstant(start), end: writeInstant(end), setPoint }),
  fromRow: ({ id, revision, position, name, airZone, start, end, setPoint }) => ({
    kind: 'heatingRun', id, revision, order: position, name, airZone, start: readInstant(start), end: readInstant(end), setPoint: celsius(setPoint),
  }),
});

export const weatherTables = plainTable<Weather, WeatherModel>({
  kind: 'weather',
  model: (db) => db.weather,
  toRow: ({ days }, common) => ({ ...common, daysJson: JSON.stringify(days) }),
  fromRow: ({ id, revision, position, name, daysJson }) => ({
    kind: 'weather', id, revision, order: position, name,
    days: readJson(weatherShape, daysJson, { table: 'Weather', row: id, column: 'daysJson' }),
  }),
});

export const readingSets = plainTable<Readings, ReadingsModel>({
  kind: 'readings',
  model: (db) => db.readings,
  toRow: ({ airZone, count, from, to }, common) => ({ ...common, airZone, count, from: writeInstant(from), to: writeInstant(to) }),
  fromRow: ({ id, revision, position, name, airZone, count, from, to }) => ({
    kind: 'readings', id, revision, order: position, name, airZone, count, from: readInstant(from), to: readInstant(to),
  }),
});
