import type { Episode } from '@/lib/build';
import type { EpisodeModel } from '../generated/models';
import { oneOf, readJson, readValue } from '../column';
import { plainTable } from '../table';
import { cutChecksShape } from './hazard-values';

const statuses = oneOf<Episode['status']>({ planned: true, recorded: true, cut: true, cleared: true, released: true });

export const episodes = plainTable<Episode, EpisodeModel>({
  kind: 'episode',
  model: (db) => db.episode,
  toRow: ({ releaseDate, isEvergreen, status, checks }, common) => ({ ...common, releaseDate, isEvergreen, status, checksJson: checks === undefined ? null : JSON.stringify(checks) }),
  fromRow: ({ id, revision, position, name, releaseDate, isEvergreen, status, checksJson }) => ({
    kind: 'episode',
    id,
    revision,
    order: position,
    name,
    releaseDate,
    isEvergreen,
    status: readValue(statuses, status, { table: 'Episode', row: id, column: 'status' }),
    ...(checksJson === null ? {} : { checks: readJson(cutChecksShape, checksJson, { table: 'Episode', row: id, column: 'checksJson' }) }),
  }),
});
