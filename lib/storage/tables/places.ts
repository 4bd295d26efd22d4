import type { Equipment, Place } from '@/lib/build';
import type { EquipmentModel, PlaceModel } from '../generated/models';
import { plainTable } from '../table';
import { readRoomAir, readToolExposure } from './hazard-values';

export const places = plainTable<Place, PlaceModel>({
  kind: 'place',
  model: (db) => db.place,
  toRow: ({ capacity, airZone, air }, common) => ({ ...common, capacity, airZone, airJson: JSON.stringify(air) }),
  fromRow: ({ id, revision, position, name, capacity, airZone, airJson }) => ({
    kind: 'place', id, revision, order: position, name, capacity, airZone, air: readRoomAir(airJson, { table: 'Place', row: id, column: 'airJson' }),
  }),
});

export const equipment = plainTable<Equipment, EquipmentModel>({
  kind: 'equipment',
  model: (db) => db.equipment,
  toRow: ({ count, exposure }, common) => ({ ...common, count, exposureJson: JSON.stringify(exposure) }),
  fromRow: ({ id, revision, position, name, count, exposureJson }) => ({
    kind: 'equipment', id, revision, order: position, name, count, exposure: readToolExposure(exposureJson, { table: 'Equipment', row: id, column: 'exposureJson' }),
  }),
});
