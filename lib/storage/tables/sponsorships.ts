import type { Sponsorship } from '@/lib/build';
import type { SponsorshipModel } from '../generated/models';
import { oneOf, readValue } from '../column';
import { plainTable } from '../table';

const parts = oneOf<Sponsorship['part']>({ anywhere: true, 'first third': true, 'second third': true, 'last third': true });

export const sponsorships = plainTable<Sponsorship, SponsorshipModel>({
  kind: 'sponsorship',
  model: (db) => db.sponsorship,
  toRow: ({ id: _id, kind: _kind, revision: _revision, order: _order, name: _name, ...fields }, common) => ({ ...common, ...fields }),
  fromRow: ({ id, revision, position, seriesId: _seriesId, part, ...row }) => ({
    kind: 'sponsorship',
    id,
    revision,
    order: position,
    ...row,
    part: readValue(parts, part, { table: 'Sponsorship', row: id, column: 'part' }),
  }),
});
