import type { HazardRecord, Statement } from '@/lib/build';
import type { HazardModel, StatementModel } from '../generated/models';
import { readInstant, readJson, writeInstant } from '../column';
import { plainTable } from '../table';
import { hazardFields, statementAbout } from './hazard-values';

export const hazards = plainTable<HazardRecord, HazardModel>({
  kind: 'hazard',
  model: (db) => db.hazard,
  toRow: ({ kind: _kind, id: _id, revision: _revision, order: _order, name: _name, ...fields }, common) => ({ ...common, fieldsJson: JSON.stringify(fields) }),
  fromRow: ({ id, revision, position, name, fieldsJson }) => ({
    kind: 'hazard', id, revision, order: position, name, ...readJson(hazardFields, fieldsJson, { table: 'Hazard', row: id, column: 'fieldsJson' }),
  }),
});

export const statements = plainTable<Statement, StatementModel>({
  kind: 'statement',
  model: (db) => db.statement,
  toRow: ({ about, personId, signedBy, at, reason }, common) => ({ ...common, aboutJson: JSON.stringify(about), personId, signedBy, at: writeInstant(at), reason }),
  fromRow: ({ id, revision, position, name, aboutJson, personId, signedBy, at, reason }) => ({
    kind: 'statement', id, revision, order: position, name, personId, signedBy, at: readInstant(at), reason,
    about: readJson(statementAbout, aboutJson, { table: 'Statement', row: id, column: 'aboutJson' }),
  }),
});
