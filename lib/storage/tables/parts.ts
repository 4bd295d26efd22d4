import type { Part } from '@/lib/build';
import type { PartModel } from '../generated/models';
import { readJson } from '../column';
import { plainTable } from '../table';
import { partStates } from './values';

export const parts = plainTable<Part, PartModel>({
  kind: 'part',
  model: (db) => db.part,
  toRow: ({ assembly, states, whereabouts }, common) => ({
    ...common,
    assembly,
    statesJson: JSON.stringify(states),
    placeId: whereabouts.kind === 'place' ? whereabouts.id : null,
    tradeId: whereabouts.kind === 'trade' ? whereabouts.id : null,
  }),
  fromRow: ({ id, revision, position, name, assembly, statesJson, placeId, tradeId }) => ({
    kind: 'part',
    id,
    revision,
    order: position,
    name,
    assembly,
    states: readJson(partStates, statesJson, { table: 'Part', row: id, column: 'statesJson' }),
    whereabouts: readWhereabouts(placeId, tradeId),
  }),
});

function readWhereabouts(placeId: string | null, tradeId: string | null): Part['whereabouts'] {
  if (placeId !== null) return { kind: 'place', id: placeId };
  if (tradeId !== null) return { kind: 'trade', id: tradeId };
  return { kind: 'store', id: null };
}
