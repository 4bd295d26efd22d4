/** The database before the server opens it: migrated, and with the demo series when it is empty. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { locateDatabase } from '../storage/location.mjs';
import { migrateDatabase } from '../storage/migrate.mjs';
import { openRaw } from '../storage/raw.mjs';
import { PROJECT_ROOT, stop } from './console.mjs';
import { findDataProblem } from './data-folder.mjs';
import { runNode } from './run.mjs';

const DEMO = 'seed/load.ts';

/** The database that DATABASE_URL names. Stops the program when it names none, or the folder cannot be written. */
export async function chooseDatabase() {
  const location = tryLocate();
  if (location.kind === 'file') {
    const problem = await findDataProblem(location.path);
    if (problem) stop(problem);
  }
  return location;
}

function tryLocate() {
  try {
    return locateDatabase(process.env.DATABASE_URL, PROJECT_ROOT);
  } catch (error) {
    return stop(error instanceof Error ? error.message : String(error));
  }
}

/**
 * Applies pending migrations. Stops the program when the database does not fit.
 * @param {import('../storage/location.mjs').DatabaseLocation} location
 */
export async function migrateIfBehind(location) {
  try {
    const { applied, backup } = await migrateDatabase({ url: location.url, root: PROJECT_ROOT });
    if (backup) console.log(`Copied the database to ${path.relative(PROJECT_ROOT, backup)} first.`);
    if (applied.length > 0) console.log(`Brought the database up to date (${applied.join(', ')}).`);
  } catch (error) {
    stop(error instanceof Error ? error.message : String(error));
  }
}

/**
 * Loads the demo series into a database that holds no series.
 * @param {import('../storage/location.mjs').DatabaseLocation} location
 */
export async function loadDemoIfEmpty(location) {
  if (await hasSeries(location.url)) return;
  if (!existsSync(path.join(PROJECT_ROOT, DEMO))) {
    console.log(`There is no ${DEMO}, so the database stays empty.`);
    return;
  }
  const code = await runNode(['--import', 'tsx', DEMO], { env: { DATABASE_URL: location.url } });
  if (code !== 0) console.error('The demo series could not be loaded; the database stays empty. Make a series of your own, or start again.');
}

/** @param {string} url */
async function hasSeries(url) {
  const database = await openRaw(url);
  try {
    return (await database.query('SELECT 1 AS found FROM Series LIMIT 1')).length > 0;
  } finally {
    await database.close();
  }
}
