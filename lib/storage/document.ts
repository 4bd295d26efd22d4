/** Whole series: listed, read, made and removed. */
import type { Series, SeriesDocument } from '@/lib/build';
import type { Instant } from '@/lib/units';
import { readInstant, writeInstant } from './column';
import type { Db } from './connection';
import { readSeries, seriesRow } from './tables/series';
import { TABLES } from './tables/all';

/** A series in a list of series. */
export interface SeriesSummary {
  readonly id: string;
  readonly name: string;
  /** Number of its last change, 0 for a new one. */
  readonly changeNumber: number;
  /** Number of the last one that touched what a plan is made from. */
  readonly planChange: number;
  readonly createdAt: Instant;
}

/** In their order. */
export async function listSeries(db: Db): Promise<readonly SeriesSummary[]> {
  const rows = await db.series.findMany({ orderBy: [{ position: 'asc' }, { createdAt: 'asc' }, { id: 'asc' }] });
  return rows.map(({ id, name, changeNumber, planChange, createdAt }) => ({ id, name, changeNumber, planChange, createdAt: readInstant(createdAt) }));
}

/** The last document read of each series. Every write of a series gives it another change number in the same transaction. */
export type DocumentCache = Map<string, { readonly createdAt: Instant; readonly document: SeriesDocument }>;

/**
 * A series as it is now: from the cache while its change number stands, else read inside one transaction.
 * @param read runs a query in a transaction
 */
export async function loadDocument(
  db: Db,
  seriesId: string,
  cache: DocumentCache,
  read: (query: (db: Db) => Promise<SeriesDocument | null>) => Promise<SeriesDocument | null>,
): Promise<SeriesDocument | null> {
  const row = await db.series.findUnique({ where: { id: seriesId }, select: { changeNumber: true, createdAt: true } });
  if (!row) return null;
  const createdAt = readInstant(row.createdAt);
  const held = cache.get(seriesId);
  if (held?.createdAt === createdAt && held.document.changeNumber === row.changeNumber) return held.document;
  const document = await read((transaction) => readDocument(transaction, seriesId));
  if (document) cache.set(seriesId, { createdAt, document });
  return document;
}

/** Reads a whole series inside one transaction of the caller, so that its parts fit together. */
export async function readDocument(db: Db, seriesId: string): Promise<SeriesDocument | null> {
  const row = await db.series.findUnique({ where: { id: seriesId } });
  if (!row) return null;
  return {
    series: readSeries(row),
    changeNumber: row.changeNumber,
    planChange: row.planChange,
    people: await TABLES.person.list(db, seriesId),
    places: await TABLES.place.list(db, seriesId),
    equipment: await TABLES.equipment.list(db, seriesId),
    parts: await TABLES.part.list(db, seriesId),
    materials: await TABLES.material.list(db, seriesId),
    trades: await TABLES.trade.list(db, seriesId),
    outsideJobs: await TABLES.outsideJob.list(db, seriesId),
    tasks: await TABLES.task.list(db, seriesId),
    links: await TABLES.link.list(db, seriesId),
    sessions: await TABLES.session.list(db, seriesId),
    episodes: await TABLES.episode.list(db, seriesId),
    segments: await TABLES.segment.list(db, seriesId),
    timeLogs: await TABLES.timeLog.list(db, seriesId),
    sponsorships: await TABLES.sponsorship.list(db, seriesId),
    hazards: await TABLES.hazard.list(db, seriesId),
    statements: await TABLES.statement.list(db, seriesId),
    coatingSystems: await TABLES.coatingSystem.list(db, seriesId),
    heatingRuns: await TABLES.heatingRun.list(db, seriesId),
    weather: await TABLES.weather.list(db, seriesId),
    readings: await TABLES.readings.list(db, seriesId),
    cameras: await TABLES.camera.list(db, seriesId),
    promises: await TABLES.promise.list(db, seriesId),
  };
}

/** Makes an empty series. Its history starts with change 1, the first that is applied to it. */
export async function insertSeries(db: Db, series: Series, at: Instant): Promise<void> {
  await db.series.create({ data: { ...seriesRow(series), createdAt: writeInstant(at) } });
}

/** Removes a series with all its records, changes and plans; false when there was none. Cannot be undone. */
export async function deleteSeries(db: Db, seriesId: string): Promise<boolean> {
  const { count } = await db.series.deleteMany({ where: { id: seriesId } });
  return count > 0;
}
