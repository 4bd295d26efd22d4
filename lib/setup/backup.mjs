/** `npm run backup`: a consistent copy of the database in `backups` beside it, while the server may run. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { copyDatabase } from '../storage/copy.mjs';
import { PROJECT_ROOT, stop } from './console.mjs';
import { chooseDatabase } from './database.mjs';

const location = await chooseDatabase();
if (location.kind === 'server') stop('DATABASE_URL names a server; make the backup there.');
if (!existsSync(location.path)) stop(`There is no database at ${location.path}. Run npm start once; it makes one.`);
try {
  const copy = await copyDatabase(location, { now: new Date() });
  console.log(`Copied to ${path.relative(PROJECT_ROOT, copy)}`);
} catch (error) {
  stop(`The copy failed: ${error instanceof Error ? error.message : String(error)}`);
}
