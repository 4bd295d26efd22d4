import type { OutsideJob, PartUse } from '@/lib/build';
import type { OutsideJobModel } from '../generated/models';
import { readJson, readOptionalInstant, writeOptionalInstant } from '../column';
import { processShape } from './cure-values';
import { groupRows, tableWithChildren } from '../table';

export const outsideJobs = tableWithChildren<OutsideJob, OutsideJobModel, readonly PartUse[]>({
  kind: 'outsideJob',
  model: (db) => db.outsideJob,
  toRow: (job, common) => ({
    ...common,
    tradeId: job.tradeId,
    episodeId: job.episodeId,
    quoteLow: job.quote.low,
    quoteLikely: job.quote.likely,
    quoteHigh: job.quote.high,
    crew: job.crew,
    droppedOffAt: writeOptionalInstant(job.droppedOffAt),
    promisedFor: job.promisedFor,
    collectedAt: writeOptionalInstant(job.collectedAt),
    processJson: job.process === undefined ? null : JSON.stringify(job.process),
  }),
  fromRow: (row, parts) => ({
    kind: 'outsideJob',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    tradeId: row.tradeId,
    episodeId: row.episodeId,
    parts,
    quote: { low: row.quoteLow, likely: row.quoteLikely, high: row.quoteHigh },
    crew: row.crew,
    droppedOffAt: readOptionalInstant(row.droppedOffAt),
    promisedFor: row.promisedFor,
    collectedAt: readOptionalInstant(row.collectedAt),
    ...(row.processJson === null ? {} : { process: readJson(processShape, row.processJson, { table: 'OutsideJob', row: row.id, column: 'processJson' }) }),
  }),
  loadChildren: async (db, { seriesId, id }) =>
    groupRows(
      await db.outsideJobPart.findMany({ where: id ? { seriesId, jobId: id } : { seriesId }, orderBy: { position: 'asc' } }),
      (row) => row.jobId,
      ({ partId, fromState: from, toState: to }) => ({ partId, from, to }),
    ),
  insertChildren: async (db, seriesId, records) => {
    const data = records.flatMap((job) =>
      job.parts.map(({ partId, from, to }, position) => ({ seriesId, jobId: job.id, position, partId, fromState: from, toState: to })),
    );
    if (data.length > 0) await db.outsideJobPart.createMany({ data });
  },
  removeChildren: async (db, seriesId, jobId) => {
    await db.outsideJobPart.deleteMany({ where: { seriesId, jobId } });
  },
});
