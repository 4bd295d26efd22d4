/** One Prisma client per process and database, with the settings of SQLite that must be in force. */
import { existsSync } from 'node:fs';
import { PrismaLibSql } from '@prisma/adapter-libsql';
import { PrismaClient } from './generated/client';
import type { Prisma } from './generated/client';
import { locateDatabase } from './location.mjs';
import type { DatabaseLocation } from './location.mjs';
import { OneConnectionLibSql } from './one-connection';

/** What a query may be put to: the client, or a transaction of it. */
export type Db = Prisma.TransactionClient;

/** Milliseconds a write waits for another process before it gives up. */
const BUSY_TIMEOUT = 5000;

declare global {
  /** Clients by URL. On globalThis, because development reloads this module and must not open the file again. */
  var benchtakeClients: Map<string, Promise<PrismaClient>> | undefined;
}

/** @param url as in DATABASE_URL; without it, DATABASE_URL itself, else `.data/benchtake.db` */
export function findDatabase(url: string | undefined): DatabaseLocation {
  return locateDatabase(url ?? process.env['DATABASE_URL'], process.cwd());
}

/**
 * The client for a database, opened once.
 * @throws Error when there is no such database, no tables in it, or a setting could not be brought into force
 */
export function connect(location: DatabaseLocation): Promise<PrismaClient> {
  const clients = (globalThis.benchtakeClients ??= new Map());
  const held = clients.get(location.url);
  if (held) return held;
  const opening = openClient(location).catch((error: unknown) => {
    clients.delete(location.url);
    throw error;
  });
  clients.set(location.url, opening);
  return opening;
}

/** Closes the client of a database and forgets it. */
export async function disconnect(client: PrismaClient): Promise<void> {
  for (const [url, held] of globalThis.benchtakeClients ?? []) {
    if ((await held) === client) globalThis.benchtakeClients?.delete(url);
  }
  await client.$disconnect();
}

async function openClient(location: DatabaseLocation): Promise<PrismaClient> {
  if (location.kind === 'file' && !existsSync(location.path)) {
    throw new Error(`There is no database at ${location.path}. Run npm start once; it makes one.`);
  }
  const client = new PrismaClient({ adapter: makeAdapter(location) });
  try {
    if (location.kind === 'file') await client.$queryRawUnsafe('PRAGMA journal_mode = WAL');
    await checkSettings(client, location);
    const tables = await client.$queryRawUnsafe<unknown[]>("SELECT 1 AS found FROM sqlite_master WHERE type = 'table' AND name = 'Series'");
    if (tables.length === 0) throw new Error(`The database at ${location.url} has no tables yet. Run npm start once; it makes them.`);
    return client;
  } catch (error) {
    await client.$disconnect();
    throw error;
  }
}

function makeAdapter(location: DatabaseLocation): PrismaLibSql {
  if (location.kind === 'file') return new OneConnectionLibSql({ url: location.url, timeout: BUSY_TIMEOUT });
  return new PrismaLibSql({ url: location.url, authToken: process.env['DATABASE_AUTH_TOKEN'] });
}

/** Values that SQLite reports for its settings. A server has no WAL or busy timeout of ours to look at: null. */
export interface Settings {
  readonly foreignKeys: boolean;
  readonly journalMode: string | null;
  readonly busyTimeout: number | null;
}

/** Reads the settings back from the database, over the connection that every query uses. */
export async function readSettings(db: Db, location: DatabaseLocation): Promise<Settings> {
  const isFile = location.kind === 'file';
  return {
    foreignKeys: Number(await readPragma(db, 'foreign_keys')) === 1,
    journalMode: isFile ? String(await readPragma(db, 'journal_mode')) : null,
    busyTimeout: isFile ? Number(await readPragma(db, 'busy_timeout')) : null,
  };
}

async function readPragma(db: Db, name: string): Promise<unknown> {
  const [row] = await db.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
  return row && Object.values(row)[0];
}

async function checkSettings(client: PrismaClient, location: DatabaseLocation): Promise<void> {
  const { foreignKeys, journalMode, busyTimeout } = await readSettings(client, location);
  if (!foreignKeys) throw new Error(`The database at ${location.url} does not enforce foreign keys. Use another server, or a file.`);
  if (location.kind === 'file' && (journalMode !== 'wal' || busyTimeout !== BUSY_TIMEOUT)) {
    throw new Error(`The database at ${location.url} did not take its settings: journal_mode ${journalMode}, busy_timeout ${busyTimeout}.`);
  }
}
