import { cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { copyDatabase } from '@/lib/storage/copy.mjs';
import { locateDatabase } from '@/lib/storage/location.mjs';
import { migrateDatabase, readMigrations } from '@/lib/storage/migrate.mjs';
import { openRaw } from '@/lib/storage/raw.mjs';

const COMMITTED = path.resolve('prisma/migrations');
const NOW = new Date('2026-11-30T18:00:00.000Z');

let folder = '';
let url = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'benchtake-migrate-'));
  url = `file:${path.join(folder, 'data', 'try.db')}`;
});
afterEach(() => rm(folder, { recursive: true }));

const query = async (sql: string, at = url) => {
  const database = await openRaw(at);
  const rows = await database.query(sql);
  await database.close();
  return rows;
};

/** The committed migrations and one more. */
async function withOneMore(sql: string): Promise<string> {
  const migrations = path.join(folder, 'migrations');
  await cp(COMMITTED, migrations, { recursive: true });
  await mkdir(path.join(migrations, '29991231000000_more'));
  await writeFile(path.join(migrations, '29991231000000_more', 'migration.sql'), sql);
  return migrations;
}

describe('migrating', () => {
  test('a new database applies every committed migration and records each with its checksum', async () => {
    const committed = await readMigrations(COMMITTED);
    expect(await migrateDatabase({ url })).toEqual({ applied: committed.map(({ name }) => name), backup: null });
    const recorded = await query('SELECT migration_name, checksum, finished_at, applied_steps_count FROM _prisma_migrations ORDER BY 1');
    expect(recorded.map(({ migration_name: name, checksum }) => ({ name, checksum }))).toEqual(committed.map(({ name, checksum }) => ({ name, checksum })));
    expect(recorded.every(({ finished_at: finished }) => finished !== null)).toBe(true);
  });

  test('a second time does nothing', async () => {
    await migrateDatabase({ url });
    expect(await migrateDatabase({ url })).toEqual({ applied: [], backup: null });
    expect(await readdir(path.join(folder, 'data'))).toEqual(['try.db']);
  });

  test('a file with tables in it keeps a copy of it as it was', async () => {
    await migrateDatabase({ url });
    const migrations = await withOneMore('CREATE TABLE "More" ("id" TEXT NOT NULL PRIMARY KEY);');
    const { applied, backup } = await migrateDatabase({ url, migrations, now: NOW });
    expect(applied).toEqual(['29991231000000_more']);
    expect(backup).toBe(path.join(folder, 'data', 'backups', 'try-20261130-180000-000-before-29991231000000_more.db'));
    const tables = "SELECT name FROM sqlite_master WHERE name IN ('More', 'Task') ORDER BY name";
    expect((await query(tables)).map(({ name }) => name)).toEqual(['More', 'Task']);
    expect((await query(tables, `file:${backup}`)).map(({ name }) => name)).toEqual(['Task']);
  });

  test('takes what is still in the write-ahead log into the copy', async () => {
    await migrateDatabase({ url });
    const writer = await openRaw(url);
    await writer.query('PRAGMA journal_mode = WAL');
    await writer.query(`INSERT INTO Series (id, revision, position, name, zone, cadenceDays, leadDays, fillLimit, workshopTemperature, runtimeTarget, runtimeMin, runtimeMax,
      frameRateNumerator, frameRateDenominator, changeNumber, createdAt) VALUES ('s', 1, 0, 'Kept', 'UTC', 14, 5, 0.7, 7, 22, 18, 30, 25, 1, 0, 0)`);
    const { backup } = await migrateDatabase({ url, migrations: await withOneMore('CREATE TABLE "More" ("id" TEXT);'), now: NOW });
    expect((await query('SELECT name FROM Series', `file:${backup}`)).map(({ name }) => name)).toEqual(['Kept']);
    await writer.close();
  });

  test('that fails says so and where the copy is', async () => {
    await migrateDatabase({ url });
    const migrations = await withOneMore('CREATE TABLE "Task" ("id" TEXT);');
    await expect(migrateDatabase({ url, migrations, now: NOW })).rejects.toThrow(/29991231000000_more or a later one failed[\s\S]*The database as it was before is .*try-20261130-180000-000-before/u);
    await expect(migrateDatabase({ url, migrations, now: NOW })).rejects.toThrow('stopped half-way earlier');
  });

  test('is refused when an applied migration was edited', async () => {
    const migrations = await withOneMore('CREATE TABLE "More" ("id" TEXT);');
    await migrateDatabase({ url, migrations });
    await writeFile(path.join(migrations, '29991231000000_more', 'migration.sql'), 'CREATE TABLE "Other" ("id" TEXT);');
    await expect(migrateDatabase({ url, migrations })).rejects.toThrow('was changed after it was applied');
  });

  test('is refused when the database is of a newer version', async () => {
    await migrateDatabase({ url, migrations: await withOneMore('CREATE TABLE "More" ("id" TEXT);') });
    await expect(migrateDatabase({ url })).rejects.toThrow('holds the migration 29991231000000_more, which this version does not have');
  });
});

describe('a database URL', () => {
  test.each([
    [undefined, '/p/.data/benchtake.db'],
    ['', '/p/.data/benchtake.db'],
    ['file:./try.db', '/p/try.db'],
    ['file:/var/a b.db', '/var/a b.db'],
    ['file:///var/a%20b.db', '/var/a b.db'],
  ])('%s is the file %s', (given, file) => {
    expect(locateDatabase(given, '/p')).toMatchObject({ kind: 'file', path: file });
  });

  test('of a server is left as it is', () => {
    expect(locateDatabase('libsql://db.example', '/p')).toEqual({ kind: 'server', url: 'libsql://db.example' });
  });

  test.each(['postgres://db', 'benchtake.db', 'file::memory:'])('%s is refused with the kinds that work', (given) => {
    expect(() => locateDatabase(given, '/p')).toThrow(`DATABASE_URL is "${given}". Use file:<path>`);
  });
});

test('a copy gets a name of its own each time', async () => {
  await migrateDatabase({ url });
  const location = locateDatabase(url, '/');
  if (location.kind !== 'file') throw new Error('not a file');
  const first = await copyDatabase(location, { now: NOW });
  expect(path.basename(first)).toBe('try-20261130-180000-000.db');
  await expect(copyDatabase(location, { now: NOW })).rejects.toThrow(/already exists/u);
});
