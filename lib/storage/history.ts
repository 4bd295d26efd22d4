/** Changes as they were applied. */
import { NO_ROOM_AIR, NO_TASK_HAZARDS, NO_TOOL_EXPOSURE, NO_VAPOUR } from '@/lib/build';
import type { RecordEdit, RecordKind, SavedChange, SeriesRecord } from '@/lib/build';
import { z } from 'zod';
import { oneOf, readInstant, readJson } from './column';
import type { Db } from './connection';
import type { ChangeModel } from './generated/models';

const kinds = oneOf<RecordKind>({
  series: true, person: true, place: true, equipment: true, part: true, material: true, trade: true, outsideJob: true, task: true,
  link: true, session: true, episode: true, segment: true, timeLog: true, sponsorship: true, hazard: true, statement: true,
  coatingSystem: true, heatingRun: true, weather: true, readings: true, camera: true, promise: true,
});

/** The common fields are checked; the rest was written from a whole record, and older records keep the fields of their day. */
const recordShape = z.looseObject({ kind: kinds, id: z.string(), revision: z.number(), order: z.number(), name: z.string() });
const record = z.custom<SeriesRecord>((value) => recordShape.safeParse(value).success, { error: 'is not a record' }).transform(withLaterFields).nullable();

/** Fields that came to a kind later; a record of an earlier day gets them empty. */
const LATER_FIELDS: Readonly<Partial<Record<RecordKind, object>>> = {
  place: { air: NO_ROOM_AIR }, equipment: { exposure: NO_TOOL_EXPOSURE }, material: { vapour: NO_VAPOUR }, task: { hazards: NO_TASK_HAZARDS },
};

function withLaterFields(old: SeriesRecord): SeriesRecord {
  return { ...LATER_FIELDS[old.kind], ...old };
}

const edits: z.ZodType<readonly RecordEdit[]> = z.array(z.object({ kind: kinds, id: z.string(), before: record, after: record }));

function readChange(row: ChangeModel): SavedChange {
  return {
    number: row.number,
    at: readInstant(row.at),
    label: row.label,
    edits: readJson(edits, row.editsJson, { table: 'Change', row: String(row.number), column: 'editsJson' }),
    undoes: row.undoes,
    undoneBy: row.undoneBy,
  };
}

/** The latest changes, newest first. */
export async function listChanges(db: Db, seriesId: string, limit: number): Promise<readonly SavedChange[]> {
  const rows = await db.change.findMany({ where: { seriesId }, orderBy: { number: 'desc' }, take: limit });
  return rows.map(readChange);
}

export async function getChange(db: Db, seriesId: string, number: number): Promise<SavedChange | null> {
  const row = await db.change.findUnique({ where: { seriesId_number: { seriesId, number } } });
  return row ? readChange(row) : null;
}

/** The edits of one record, newest first, each with the change it was part of. */
export async function listEditsOf(
  db: Db,
  seriesId: string,
  kind: RecordKind,
  id: string,
): Promise<readonly { readonly change: SavedChange; readonly edit: RecordEdit }[]> {
  // The text search only narrows it down; which edit it is, is decided on the parsed change.
  const rows = await db.change.findMany({
    where: { seriesId, editsJson: { contains: JSON.stringify(id) } },
    orderBy: { number: 'desc' },
    take: 50,
  });
  return rows.map(readChange).flatMap((change) =>
    change.edits.filter((edit) => edit.kind === kind && edit.id === id).map((edit) => ({ change, edit })),
  );
}
