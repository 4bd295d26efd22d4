import type { Episode } from '@/lib/build';
import type { EpisodeModel } from '../generated/models';
import { oneOf, readValue } from '../column';
import { plainTable } from '../table';

const statuses = oneOf<Episode['status']>({ planned: true, recorded: true, cut: true, cleared: true, released: true });

export const episodes = plainTable<Episode, EpisodeModel>({
  kind: 'episode',
  model: (db) => db.episode,
  toRow: ({ releaseDate, isEvergreen, status }, common) => ({ ...common, releaseDate, isEvergreen, status }),
  fromRow: ({ id, revision, position, name, releaseDate, isEvergreen, status }) => ({
    kind: 'episode',
    id,
    revision,
    order: position,
    name,
    releaseDate,
    isEvergreen,
    status: readValue(statuses, status, { table: 'Episode', row: id, column: 'status' }),
  }),
});
