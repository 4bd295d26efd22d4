/**
 * Brings a database to the committed migrations of `prisma/migrations` and records them in
 * `_prisma_migrations` as Prisma does. Nothing pending is found with one query, without the engine.
 */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { copyDatabase } from './copy.mjs';
import { locateDatabase } from './location.mjs';
import { openRaw } from './raw.mjs';
import { TABLE_FILTERS, openSchemaEngine } from './schema-engine.mjs';

/**
 * @typedef {{ name: string, sql: string, checksum: string }} Migration
 * @typedef {{ applied: string[], backup: string | null }} Migrated
 */

/**
 * Applies what is pending. A file that already holds tables is copied to `backups` beside it first.
 * @param {{ url?: string, root?: string, migrations?: string, now?: Date }} [options] `url` as in DATABASE_URL; `root`: folder of
 *   the project; `migrations`: folder to read them from, for tests; `now`: stamp of the backup
 * @returns {Promise<Migrated>} names just applied and the backup, null where none was needed
 * @throws {Error} when the database does not fit the committed migrations, with what to do about it
 */
export async function migrateDatabase(options = {}) {
  const root = options.root ?? process.cwd();
  const location = locateDatabase(options.url, root);
  const migrations = await readMigrations(options.migrations ?? path.join(root, 'prisma', 'migrations'));
  const isNewFile = location.kind === 'file' && !existsSync(location.path);
  const recorded = isNewFile ? null : await readRecorded(location.url);
  const pending = findPending(migrations, recorded?.migrations ?? []);
  const first = pending[0];
  if (!first) return { applied: [], backup: null };
  if (location.kind === 'file') await mkdir(path.dirname(location.path), { recursive: true });
  const backup = location.kind === 'file' && recorded && !recorded.isEmpty
    ? await copyDatabase(location, { now: options.now ?? new Date(), note: `before-${first.name}` })
    : null;
  try {
    return { applied: await applyMigrations(location.url, root, migrations), backup };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const way = backup ? ` The database as it was before is ${backup}.` : '';
    throw new Error(`The migration ${first.name} or a later one failed: ${reason}${way}`, { cause: error });
  }
}

/**
 * The committed migrations, oldest first.
 * @param {string} folder
 * @returns {Promise<Migration[]>}
 */
export async function readMigrations(folder) {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name).toSorted();
  return Promise.all(names.map(async (name) => {
    const sql = await readFile(path.join(folder, name, 'migration.sql'), 'utf8');
    return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
  }));
}

/**
 * What the schema engine wants to know about the migrations folder.
 * @param {string} root
 * @param {Migration[]} migrations
 */
export function describeMigrations(root, migrations) {
  const baseDir = path.join(root, 'prisma', 'migrations');
  return {
    baseDir,
    lockfile: { path: path.join(baseDir, 'migration_lock.toml'), content: 'provider = "sqlite"\n' },
    shadowDbInitScript: '',
    migrationDirectories: migrations.map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: /** @type {const} */ ('ok'), value: sql } },
    })),
  };
}

/**
 * @param {string} url
 * @returns {Promise<{ isEmpty: boolean, migrations: { name: string, checksum: string, isFinished: boolean }[] }>}
 */
async function readRecorded(url) {
  const database = await openRaw(url);
  try {
    const tables = await database.query("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
    if (!tables.some((row) => row.name === '_prisma_migrations')) return { isEmpty: tables.length === 0, migrations: [] };
    const rows = await database.query(
      'SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY migration_name',
    );
    const migrations = rows.map((row) => ({
      name: String(row.migration_name),
      checksum: String(row.checksum),
      isFinished: row.finished_at !== null,
    }));
    return { isEmpty: false, migrations };
  } finally {
    await database.close();
  }
}

/**
 * @param {Migration[]} migrations
 * @param {{ name: string, checksum: string, isFinished: boolean }[]} recorded
 * @returns {Migration[]}
 */
function findPending(migrations, recorded) {
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const { name, checksum, isFinished } of recorded) {
    const migration = known.get(name);
    if (!migration) throw new Error(`The database holds the migration ${name}, which this version does not have. Start the newer version that made it.`);
    if (!isFinished) throw new Error(`The migration ${name} stopped half-way earlier. Put the copy from the backups folder back and start again.`);
    if (migration.checksum !== checksum) throw new Error(`The migration ${name} was changed after it was applied. Put prisma/migrations/${name} back as it was.`);
  }
  const done = new Set(recorded.map(({ name }) => name));
  return migrations.filter(({ name }) => !done.has(name));
}

/**
 * @param {string} url
 * @param {string} root
 * @param {Migration[]} migrations
 * @returns {Promise<string[]>}
 */
async function applyMigrations(url, root, migrations) {
  const engine = await openSchemaEngine(url, root);
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: describeMigrations(root, migrations),
      filters: TABLE_FILTERS,
    });
    return appliedMigrationNames;
  } finally {
    engine.free();
  }
}
