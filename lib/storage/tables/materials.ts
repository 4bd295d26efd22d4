import type { Material } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import type { MaterialModel } from '../generated/models';
import { oneOf, readJson, readValue } from '../column';
import { plainTable } from '../table';
import { readVapour } from './hazard-values';
import { cureShape } from './cure-values';

const sorts = oneOf<Material['sort']>({
  primer: true, paint: true, filler: true, sealer: true, adhesive: true, 'thread locker': true, powder: true, 'galvanizing wash': true, release: true, other: true,
});

export const materials = plainTable<Material, MaterialModel>({
  kind: 'material',
  model: (db) => db.material,
  toRow: (material, common) => ({
    ...common,
    ...material.stages,
    sort: material.sort,
    referenceTemperature: material.referenceTemperature,
    minimumTemperature: material.minimumTemperature,
    doublingPer: material.doublingPer,
    potLife: material.potLife,
    hasSolvent: material.hasSolvent,
    hasIsocyanate: material.hasIsocyanate,
    vapourJson: JSON.stringify(material.vapour),
    source: material.source,
    usableUntil: material.usableUntil ?? null,
    cureJson: material.cure === undefined ? null : JSON.stringify(material.cure),
  }),
  fromRow: (row) => ({
    kind: 'material',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    sort: readValue(sorts, row.sort, { table: 'Material', row: row.id, column: 'sort' }),
    stages: {
      touchDry: minutes(row.touchDry),
      recoatFrom: minutes(row.recoatFrom),
      recoatUntil: row.recoatUntil === null ? null : minutes(row.recoatUntil),
      handle: minutes(row.handle),
      fullCure: minutes(row.fullCure),
    },
    referenceTemperature: celsius(row.referenceTemperature),
    minimumTemperature: celsius(row.minimumTemperature),
    doublingPer: row.doublingPer,
    potLife: row.potLife === null ? null : minutes(row.potLife),
    hasSolvent: row.hasSolvent,
    hasIsocyanate: row.hasIsocyanate,
    vapour: readVapour(row.vapourJson, { table: 'Material', row: row.id, column: 'vapourJson' }),
    source: row.source,
    ...(row.usableUntil === null ? {} : { usableUntil: row.usableUntil }),
    ...(row.cureJson === null ? {} : { cure: readJson(cureShape, row.cureJson, { table: 'Material', row: row.id, column: 'cureJson' }) }),
  }),
});
