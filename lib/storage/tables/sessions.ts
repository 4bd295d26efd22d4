import type { Session } from '@/lib/build';
import { celsius } from '@/lib/units';
import type { SessionModel } from '../generated/models';
import { readInstant, writeInstant } from '../column';
import { groupRows, tableWithChildren } from '../table';

interface Children {
  readonly placeIds: readonly string[];
  readonly crewIds: readonly string[];
}

const owner = (row: { readonly sessionId: string }) => row.sessionId;

export const sessions = tableWithChildren<Session, SessionModel, Children>({
  kind: 'session',
  model: (db) => db.session,
  toRow: ({ start, end, isRecording, hasDaylight, isNoiseAllowed, heating }, common) => ({
    ...common,
    start: writeInstant(start),
    end: writeInstant(end),
    isRecording,
    hasDaylight,
    isNoiseAllowed,
    heating,
  }),
  fromRow: (row, children) => ({
    kind: 'session',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    start: readInstant(row.start),
    end: readInstant(row.end),
    ...children,
    isRecording: row.isRecording,
    hasDaylight: row.hasDaylight,
    isNoiseAllowed: row.isNoiseAllowed,
    heating: row.heating === null ? null : celsius(row.heating),
  }),
  loadChildren: async (db, { seriesId, id }) => {
    const query = { where: id ? { seriesId, sessionId: id } : { seriesId }, orderBy: { position: 'asc' } } as const;
    const placeIds = groupRows(await db.sessionPlace.findMany(query), owner, (row) => row.placeId);
    const crewIds = groupRows(await db.sessionCrew.findMany(query), owner, (row) => row.personId);
    return (sessionId) => ({ placeIds: placeIds(sessionId), crewIds: crewIds(sessionId) });
  },
  insertChildren: async (db, seriesId, records) => {
    const places = records.flatMap((session) => session.placeIds.map((placeId, position) => ({ seriesId, sessionId: session.id, position, placeId })));
    const crew = records.flatMap((session) => session.crewIds.map((personId, position) => ({ seriesId, sessionId: session.id, position, personId })));
    if (places.length > 0) await db.sessionPlace.createMany({ data: places });
    if (crew.length > 0) await db.sessionCrew.createMany({ data: crew });
  },
  removeChildren: async (db, seriesId, sessionId) => {
    await db.sessionPlace.deleteMany({ where: { seriesId, sessionId } });
    await db.sessionCrew.deleteMany({ where: { seriesId, sessionId } });
  },
});
