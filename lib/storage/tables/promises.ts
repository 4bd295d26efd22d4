import type { SpokenPromise } from '@/lib/build';
import type { SpokenPromiseModel } from '../generated/models';
import { oneOf, readValue } from '../column';
import { plainTable } from '../table';

const closures = oneOf<SpokenPromise['closure']>({ open: true, kept: true, replaced: true, 'withdrawn on screen': true });

export const promises = plainTable<SpokenPromise, SpokenPromiseModel>({
  kind: 'promise',
  model: (db) => db.spokenPromise,
  toRow: ({ saidInId, where, dueId, closure, reason, closedInId }, common) => ({ ...common, saidInId, where, dueId, closure, reason, closedInId }),
  fromRow: ({ id, revision, position, name, saidInId, where, dueId, closure, reason, closedInId }) => ({
    kind: 'promise', id, revision, order: position, name, saidInId, where, dueId, reason, closedInId,
    closure: readValue(closures, closure, { table: 'SpokenPromise', row: id, column: 'closure' }),
  }),
});
