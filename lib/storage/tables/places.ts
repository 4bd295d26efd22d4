import type { Equipment, Place } from '@/lib/build';
import type { EquipmentModel, PlaceModel } from '../generated/models';
import { plainTable } from '../table';

export const places = plainTable<Place, PlaceModel>({
  kind: 'place',
  model: (db) => db.place,
  toRow: ({ capacity, airZone }, common) => ({ ...common, capacity, airZone }),
  fromRow: ({ id, revision, position, name, capacity, airZone }) => ({ kind: 'place', id, revision, order: position, name, capacity, airZone }),
});

export const equipment = plainTable<Equipment, EquipmentModel>({
  kind: 'equipment',
  model: (db) => db.equipment,
  toRow: ({ count }, common) => ({ ...common, count }),
  fromRow: ({ id, revision, position, name, count }) => ({ kind: 'equipment', id, revision, order: position, name, count }),
});
