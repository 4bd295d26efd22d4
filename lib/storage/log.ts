/** The running log: rows are added and never changed, and an entry that comes twice is kept once. */
import { LOG_KINDS, type LogEntry, type LogKind } from '@/lib/footage';
import { instant, type Instant } from '@/lib/units';
import { z } from 'zod';
import { readInstant, readJson, writeInstant } from './column';
import type { Db } from './connection';
import { Prisma } from './generated/client';
import { noSuchSeries, Refusal } from './refusal';

/** An entry that has not been numbered yet, with the words it can be found by. */
export interface NewLogEntry {
  readonly entry: Omit<LogEntry, 'number'>;
  readonly words: string;
}

export interface KeptEntry {
  readonly entry: LogEntry;
  /** False: it was there already, and nothing was written. */
  readonly isNew: boolean;
}

/** Which entries; newest first. */
export interface LogFilter {
  /** Only from this moment on, and before this one. */
  readonly from?: Instant;
  readonly until?: Instant;
  readonly limit?: number;
}

const moment = z.number().transform(instant);
const nullable = z.string().nullable();
const rate = z.object({ numerator: z.number(), denominator: z.number() });
const take = z.object({
  cameraId: nullable, format: z.object({ rate, isDropFrame: z.boolean() }).nullable(), startFrame: z.number().nullable(), endFrame: z.number().nullable(), number: z.number(),
  size: z.enum(['wide', 'medium', 'close']).nullable(), verdict: z.enum(['good', 'no good', 'unsure']), media: z.string(), isReenacted: z.boolean(), reenactmentLabel: z.string(), isFailedAttempt: z.boolean(),
});
const whereabouts = z.object({ kind: z.enum(['place', 'trade', 'store']), id: nullable });
const shape: z.ZodType<Omit<LogEntry, 'number'>> = z.object({
  id: z.string(), kind: z.enum(LOG_KINDS), at: moment, deviceAt: moment, receivedAt: moment, device: z.string(), author: z.string(), taskId: nullable, shotId: nullable, text: z.string(),
  take: take.nullable(), observed: z.array(z.object({ partId: z.string(), stateId: nullable, whereabouts: whereabouts.nullable() })),
  look: z.object({ clothes: z.string(), equipment: z.string(), light: z.string(), whiteBalance: z.string(), lens: z.string(), tools: z.string() }).nullable(),
  departure: z.object({ manualValue: z.string(), ownValue: z.string(), reason: z.string(), warning: z.string(), isSpoken: z.boolean(), isCaptioned: z.boolean() }).nullable(),
  card: z.object({ card: z.string(), what: z.enum(['copied', 'copy verified', 'reformatted']) }).nullable(),
  waiver: z.object({ check: z.number(), key: z.string() }).nullable(), supersedes: nullable, isWithdrawn: z.boolean(),
});

interface Row {
  readonly number: number | bigint;
  readonly entryJson: string;
}

function readEntry({ number, entryJson }: Row): LogEntry {
  return { ...readJson(shape, entryJson, { table: 'LogEntry', row: String(number), column: 'entryJson' }), number: Number(number) };
}

/**
 * Adds entries in their order, inside a transaction of the caller. One whose id is there already is left alone.
 * @throws Refusal when the series is gone
 */
export async function insertEntries(db: Db, seriesId: string, entries: readonly NewLogEntry[]): Promise<readonly KeptEntry[]> {
  // A write comes first, so that the transaction holds the write lock before it reads what it decides on.
  const { count } = await db.series.updateMany({ where: { id: seriesId }, data: { id: seriesId } });
  if (count === 0) throw new Refusal([noSuchSeries(seriesId)]);
  const kept: KeptEntry[] = [];
  for (const { entry, words } of entries) {
    const known = await db.logEntry.findUnique({ where: { seriesId_id: { seriesId, id: entry.id } } });
    if (known) {
      kept.push({ entry: readEntry(known), isNew: false });
      continue;
    }
    const row = await db.logEntry.create({
      data: {
        seriesId, id: entry.id, kind: entry.kind, at: writeInstant(entry.at), receivedAt: writeInstant(entry.receivedAt), taskId: entry.taskId, supersedes: entry.supersedes,
        entryJson: JSON.stringify(entry), words,
      },
    });
    kept.push({ entry: readEntry(row), isNew: true });
  }
  return kept;
}

/** The whole log, or a part of it, newest first. */
export async function listEntries(db: Db, seriesId: string, { from, until, limit }: LogFilter): Promise<readonly LogEntry[]> {
  const rows = await db.logEntry.findMany({
    where: { seriesId, at: { ...(from === undefined ? {} : { gte: writeInstant(from) }), ...(until === undefined ? {} : { lt: writeInstant(until) }) } },
    orderBy: [{ at: 'desc' }, { number: 'desc' }],
    ...(limit === undefined ? {} : { take: limit }),
    select: { number: true, entryJson: true },
  });
  return rows.map(readEntry);
}

export async function findEntry(db: Db, seriesId: string, id: string): Promise<LogEntry | null> {
  const row = await db.logEntry.findUnique({ where: { seriesId_id: { seriesId, id } } });
  return row ? readEntry(row) : null;
}

/** How many entries a log has, and the moments of the newest one and of the first. */
export interface LogExtent {
  readonly count: number;
  readonly first: Instant | null;
  readonly last: Instant | null;
}

export async function measureLog(db: Db, seriesId: string): Promise<LogExtent> {
  const { _count: count, _min: min, _max: max } = await db.logEntry.aggregate({ where: { seriesId }, _count: true, _min: { at: true }, _max: { at: true } });
  return { count, first: min.at === null ? null : readInstant(min.at), last: max.at === null ? null : readInstant(max.at) };
}

/** Words as an expression of FTS5: each must be there, the last ones may be begun only. Null: nothing to look for. */
function matchOf(text: string): string | null {
  const words = text.normalize('NFC').match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.length === 0 ? null : words.slice(0, 12).map((word) => `"${word}"*`).join(' ');
}

/** Entries in which every word is found or begun, newest first. */
export async function searchEntries(db: Db, seriesId: string, text: string, limit: number, kind?: LogKind): Promise<readonly LogEntry[]> {
  const match = matchOf(text);
  if (match === null) return [];
  const rows = await db.$queryRaw<Row[]>(Prisma.sql`
    SELECT entry."number" AS "number", entry."entryJson" AS "entryJson"
    FROM "LogSearch" CROSS JOIN "LogEntry" AS entry ON entry."number" = "LogSearch"."rowid"
    WHERE "LogSearch" MATCH ${match} AND entry."seriesId" = ${seriesId} ${kind === undefined ? Prisma.empty : Prisma.sql`AND entry."kind" = ${kind}`}
    ORDER BY "LogSearch"."rowid" DESC LIMIT ${limit}`);
  return rows.map(readEntry);
}
