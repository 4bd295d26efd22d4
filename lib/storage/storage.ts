/** What the rest of the program may ask of the database. */
import type { Change, SavedChange, Series, SeriesDocument } from '@/lib/build';
import type { Reading } from '@/lib/climate';
import type { NewForecast, SavedForecast } from '@/lib/forecast';
import type { LogEntry, LogKind } from '@/lib/footage';
import type { PlanStatus, SavedPlan } from '@/lib/plan';
import { fail, issue, ok } from '@/lib/result';
import type { Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { writeChange } from './change';
import { connect, disconnect, findDatabase, readSettings } from './connection';
import type { Db, Settings } from './connection';
import { deleteSeries, insertSeries, listSeries, loadDocument, readDocument } from './document';
import type { DocumentCache, SeriesSummary } from './document';
import { Prisma } from './generated/client';
import type { PrismaClient } from './generated/client';
import { deleteForecast, insertForecast, listForecasts } from './forecasts';
import { getChange, listChanges } from './history';
import { findEntry, insertEntries, listEntries, measureLog, searchEntries } from './log';
import type { KeptEntry, LogExtent, LogFilter, NewLogEntry } from './log';
import { keepPhoto, listPhotos, loadPhoto, removePhotos } from './photos';
import type { LogPhoto, PhotoSize } from './photos';
import { photoFolder } from './photo-folder.mjs';
import { findLatest, findPlan, insertPlan, listPlans, updatePlanStatus } from './plans';
import type { Acceptance, NewPlan, PlanSummary } from './plans';
import { findReadingRows, insertReadingRows } from './reading-rows';
import { describeBrokenReferences, Refusal } from './refusal';

/**
 * The database. Every method is one transaction. Refusals are results; a damaged file, or a database
 * that cannot be reached, throws.
 */
export interface Storage {
  /** In their order. */
  listSeries(): Promise<readonly SeriesSummary[]>;
  /** A whole series with its lists in order, null when there is none of that id. */
  loadSeries(seriesId: string): Promise<SeriesDocument | null>;
  /** Makes an empty series. Issues: `series-exists`. */
  createSeries(series: Series, at: Instant): Promise<Result<void>>;
  /** Removes a series with its history and plans, for good; false when there was none. */
  removeSeries(seriesId: string): Promise<boolean>;
  /**
   * Writes all edits of a change, its place in the history and the series' next change number, or nothing.
   * Issues: `stale-record`, `reference-missing`, `still-used`, `already-undone`, `no-such-change`,
   * `no-such-series`, `database-busy`.
   */
  applyChange(seriesId: string, change: Change, at: Instant): Promise<Result<SavedChange>>;
  /** The latest changes, newest first. */
  listChanges(seriesId: string, limit: number): Promise<readonly SavedChange[]>;
  getChange(seriesId: string, number: number): Promise<SavedChange | null>;
  /** Keeps the rows of one import of a logger; they count once a `readings` record of that id is in the series. Issues: `database-busy`. */
  saveReadings(seriesId: string, readingsId: string, readings: readonly Reading[]): Promise<Result<void>>;
  /** Rows of one import between two moments, both included, in order of time. */
  listReadings(seriesId: string, readingsId: string, between: { readonly from: Instant; readonly to: Instant }): Promise<readonly Reading[]>;
  /** Saves the next plan as the draft; the draft before it is discarded. Issues: `no-such-series`, `database-busy`. */
  savePlan(seriesId: string, plan: NewPlan): Promise<Result<SavedPlan>>;
  getPlan(seriesId: string, number: number): Promise<SavedPlan | null>;
  latestDraft(seriesId: string): Promise<SavedPlan | null>;
  acceptedPlan(seriesId: string): Promise<SavedPlan | null>;
  /** Newest first, without their blocks. */
  listPlans(seriesId: string): Promise<readonly PlanSummary[]>;
  /** Accepting supersedes the plan accepted before. Issues: `no-such-plan`, `database-busy`. */
  setPlanStatus(seriesId: string, number: number, status: PlanStatus, at: Instant, said?: Acceptance): Promise<Result<SavedPlan>>;
  /** Keeps a forecast or a variant under the next number. Issues: `no-such-series`, `database-busy`. */
  saveForecast(seriesId: string, forecast: NewForecast): Promise<Result<SavedForecast>>;
  /** The latest of a kind, newest first. */
  listForecasts(seriesId: string, kind: SavedForecast['kind'], most: number): Promise<readonly SavedForecast[]>;
  /** Takes a kept forecast or variant out; false when there was none. */
  removeForecast(seriesId: string, number: number): Promise<boolean>;
  /**
   * Adds entries to the log in their order, all or none; one whose id is there already is answered as it is kept.
   * Issues: `no-such-series`, `database-busy`.
   */
  addLogEntries(seriesId: string, entries: readonly NewLogEntry[]): Promise<Result<readonly KeptEntry[]>>;
  /** Entries, newest first. */
  listLogEntries(seriesId: string, filter: LogFilter): Promise<readonly LogEntry[]>;
  getLogEntry(seriesId: string, id: string): Promise<LogEntry | null>;
  measureLog(seriesId: string): Promise<LogExtent>;
  /** Entries that hold every word, or a word that begins with it, newest first. */
  searchLog(seriesId: string, text: string, limit: number, kind?: LogKind): Promise<readonly LogEntry[]>;
  /** Keeps a photo once. Issues: `no-such-entry`, `photo-empty`, `photo-too-heavy`, `photo-too-large`, `photo-unreadable`. */
  keepLogPhoto(seriesId: string, photo: { readonly entryId: string; readonly id: string; readonly bytes: Uint8Array }, at: Instant): Promise<Result<LogPhoto>>;
  listLogPhotos(seriesId: string): Promise<readonly LogPhoto[]>;
  /** JPEG bytes; null when there is no such photo. */
  loadLogPhoto(seriesId: string, id: string, size: PhotoSize): Promise<Uint8Array | null>;
  /** The settings in force, read from the database. */
  readSettings(): Promise<Settings>;
  /** Closes the file. For scripts and tests; a server keeps it open. */
  close(): Promise<void>;
}

/** Waits of one transaction: for its turn in this process, and from begin to commit. Milliseconds. */
const TRANSACTION = { maxWait: 10_000, timeout: 30_000 };

const caches = new WeakMap<PrismaClient, DocumentCache>();

function cacheOf(client: PrismaClient): DocumentCache {
  const held = caches.get(client) ?? new Map();
  caches.set(client, held);
  return held;
}

/**
 * Opens the database; the same client is used again for the same URL.
 * @param url `file:…` or the address of a libsql server; without it DATABASE_URL, else `.data/benchtake.db`
 * @throws Error when there is no such database or it has no tables, saying what to do
 * @example
 * const storage = await openStorage();
 * const document = await storage.loadSeries('s1');
 */
export async function openStorage(url?: string): Promise<Storage> {
  const location = findDatabase(url);
  const client = await connect(location);
  const cache = cacheOf(client);
  const photos = photoFolder(location, process.cwd());
  const read = <T>(query: (db: Db) => Promise<T>) => client.$transaction(query, TRANSACTION);
  return {
    listSeries: () => listSeries(client),
    loadSeries: (seriesId) => loadDocument(client, seriesId, cache, read),
    createSeries: (series, at) => createSeries(client, series, at),
    removeSeries: async (seriesId) => {
      const removed = await deleteSeries(client, seriesId);
      await removePhotos(photos, seriesId);
      return removed;
    },
    applyChange: (seriesId, change, at) => applyChange(client, seriesId, change, at),
    listChanges: (seriesId, limit) => listChanges(client, seriesId, limit),
    getChange: (seriesId, number) => getChange(client, seriesId, number),
    saveReadings: (seriesId, readingsId, readings) => write(client, (db) => insertReadingRows(db, seriesId, readingsId, readings)),
    listReadings: (seriesId, readingsId, between) => findReadingRows(client, seriesId, readingsId, between),
    savePlan: (seriesId, plan) => write(client, (db) => insertPlan(db, seriesId, plan)),
    getPlan: (seriesId, number) => findPlan(client, seriesId, number),
    latestDraft: (seriesId) => findLatest(client, seriesId, 'draft'),
    acceptedPlan: (seriesId) => findLatest(client, seriesId, 'accepted'),
    listPlans: (seriesId) => listPlans(client, seriesId),
    setPlanStatus: (seriesId, number, status, at, said) => write(client, (db) => updatePlanStatus(db, seriesId, number, status, at, said)),
    saveForecast: (seriesId, forecast) => write(client, (db) => insertForecast(db, seriesId, forecast)),
    listForecasts: (seriesId, kind, most) => listForecasts(client, seriesId, kind, most),
    removeForecast: (seriesId, number) => deleteForecast(client, seriesId, number),
    addLogEntries: (seriesId, entries) => write(client, (db) => insertEntries(db, seriesId, entries)),
    listLogEntries: (seriesId, filter) => listEntries(client, seriesId, filter),
    getLogEntry: (seriesId, id) => findEntry(client, seriesId, id),
    measureLog: (seriesId) => measureLog(client, seriesId),
    searchLog: (seriesId, text, limit, kind) => searchEntries(client, seriesId, text, limit, kind),
    keepLogPhoto: (seriesId, photo, at) => keepPhoto(client, photos, { seriesId, ...photo, at }),
    listLogPhotos: (seriesId) => listPhotos(client, seriesId),
    loadLogPhoto: (seriesId, id, size) => loadPhoto(client, photos, seriesId, id, size),
    readSettings: () => readSettings(client, location),
    close: () => disconnect(client),
  };
}

async function createSeries(client: PrismaClient, series: Series, at: Instant): Promise<Result<void>> {
  try {
    return await write(client, (db) => insertSeries(db, series, at));
  } catch (error) {
    if (!isPrismaError(error, 'P2002')) throw error;
    return fail([issue('series-exists', `There is a series with the id ${series.id} already.`, 'Start again; the new series then gets another id.', { path: ['id'] })]);
  }
}

async function applyChange(client: PrismaClient, seriesId: string, change: Change, at: Instant): Promise<Result<SavedChange>> {
  try {
    return await write(client, (db) => writeChange(db, seriesId, change, at));
  } catch (error) {
    if (!isPrismaError(error, 'P2003')) throw error;
    const stored = await client.$transaction((db) => readDocument(db, seriesId), TRANSACTION);
    const issues = stored ? describeBrokenReferences(stored, change.edits) : [];
    // No broken reference to be named means the foreign key failed for another reason: a bug.
    if (issues.length === 0) throw error;
    return fail(issues);
  }
}

/** One writing transaction. A refusal inside it takes everything back and becomes the result. */
async function write<T>(client: PrismaClient, work: (db: Db) => Promise<T>): Promise<Result<T>> {
  try {
    return ok(await client.$transaction(work, TRANSACTION));
  } catch (error) {
    if (error instanceof Refusal) return fail(error.issues);
    if (isPrismaError(error, 'P1008')) {
      return fail([issue('database-busy', 'Another program has been writing to the database for more than five seconds.', 'Try again.')]);
    }
    throw error;
  }
}

function isPrismaError(error: unknown, code: string): boolean {
  return error instanceof Prisma.PrismaClientKnownRequestError && error.code === code;
}
