import type { Segment } from '@/lib/build';
import type { SegmentModel } from '../generated/models';
import { oneOf, readValue } from '../column';
import { groupRows, tableWithChildren } from '../table';

const roles = oneOf<Segment['role']>({ opening: true, work: true, teaching: true, trouble: true, result: true, talk: true, sponsor: true, closing: true });
const endings = oneOf<Segment['ending']>({ free: true, 'ends the episode': true, 'never ends it': true });

const owner = (row: { readonly segmentId: string }) => row.segmentId;

export const segments = tableWithChildren<Segment, SegmentModel, readonly string[]>({
  kind: 'segment',
  model: (db) => db.segment,
  toRow: ({ episodeId, role, length, isResult, hook, hang, thread, isEvergreen, isFlashback, storyDate, ending, cutStart }, common) => ({
    ...common, episodeId, role, length, isResult, hook, hang, thread, isEvergreen, isFlashback, storyDate, ending, cutStart: cutStart ?? null,
  }),
  fromRow: ({ id, revision, position, seriesId: _seriesId, role, ending, cutStart, ...row }, taskIds) => ({
    kind: 'segment',
    id,
    revision,
    order: position,
    ...row,
    role: readValue(roles, role, { table: 'Segment', row: id, column: 'role' }),
    ending: readValue(endings, ending, { table: 'Segment', row: id, column: 'ending' }),
    taskIds,
    ...(cutStart === null ? {} : { cutStart }),
  }),
  loadChildren: async (db, { seriesId, id }) => groupRows(
    await db.segmentTask.findMany({ where: id ? { seriesId, segmentId: id } : { seriesId }, orderBy: { position: 'asc' } }), owner, (row) => row.taskId,
  ),
  insertChildren: async (db, seriesId, records) => {
    const tasks = records.flatMap((segment) => segment.taskIds.map((taskId, position) => ({ seriesId, segmentId: segment.id, position, taskId })));
    if (tasks.length > 0) await db.segmentTask.createMany({ data: tasks });
  },
  removeChildren: async (db, seriesId, segmentId) => {
    await db.segmentTask.deleteMany({ where: { seriesId, segmentId } });
  },
});
