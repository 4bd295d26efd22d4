/**
 * Writes the SQL that takes the committed migrations to the current `prisma/schema.prisma`:
 *
 *     npm run migration -- add-takes
 *
 * makes `prisma/migrations/<time>_add_takes/migration.sql`. Read it, correct it where data must be
 * carried over, and commit it; `npm start` applies it. Needs no download: see lib/storage/schema-engine.mjs.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describeMigrations, readMigrations } from '../storage/migrate.mjs';
import { TABLE_FILTERS, openSchemaEngine, readSchema } from '../storage/schema-engine.mjs';
import { PROJECT_ROOT, stop } from './console.mjs';

const name = (process.argv[2] ?? '').toLowerCase().replaceAll(/[^a-z0-9]+/g, '_').replaceAll(/^_|_$/g, '');
if (!name) stop('The migration needs a name. Run: npm run migration -- add-something');

const folder = path.join(PROJECT_ROOT, 'prisma', 'migrations');
await mkdir(folder, { recursive: true });
const migrations = await readMigrations(folder);
const [schemaPath, schemaText] = await readSchema(PROJECT_ROOT);
const engine = await openSchemaEngine(':memory:', PROJECT_ROOT);
const { stdout } = await engine.diff({
  from: migrations.length === 0 ? { tag: 'empty' } : { tag: 'migrations', ...describeMigrations(PROJECT_ROOT, migrations) },
  to: { tag: 'schemaDatamodel', files: [{ path: schemaPath, content: schemaText }] },
  script: true,
  exitCode: null,
  filters: TABLE_FILTERS,
});
engine.free();

const sql = stdout ?? '';
if (sql.trim() === '' || sql.includes('This is an empty migration')) {
  console.log('The committed migrations already make this schema; nothing to write.');
} else {
  const stamp = new Date().toISOString().replaceAll(/\D/g, '').slice(0, 14);
  const target = path.join(folder, `${stamp}_${name}`);
  await mkdir(target);
  await writeFile(path.join(target, 'migration.sql'), sql);
  await writeFile(path.join(folder, 'migration_lock.toml'), '# Which database the migrations are written for.\nprovider = "sqlite"\n');
  console.log(`Wrote ${path.relative(PROJECT_ROOT, target)}/migration.sql`);
}
