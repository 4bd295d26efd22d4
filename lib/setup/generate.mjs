/** Code made from other files: the database client, and the built pages. */
import path from 'node:path';
import { PROJECT_ROOT, stop } from './console.mjs';
import { runNode } from './run.mjs';
import { fingerprint, hasMark, writeMark } from './stale.mjs';

const CLIENT = 'lib/storage/generated';
const DIST = process.env.BENCHTAKE_DIST_DIR ?? '.next';

/** Generates the Prisma client when the schema has changed. Stops the program on failure. */
export async function generateIfStale() {
  const stampFile = path.join(PROJECT_ROOT, CLIENT, '.made-from');
  const mark = await fingerprint(PROJECT_ROOT, ['prisma/schema.prisma', 'node_modules/prisma/package.json']);
  if (await hasMark(stampFile, mark)) return;
  console.log('Generating the database client …');
  const code = await runNode(['node_modules/prisma/build/index.js', 'generate', '--no-hints'], {
    isQuiet: true,
    // Any executable will do: Prisma looks for the engine before it notices that this command needs none.
    env: { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' },
  });
  if (code !== 0) stop('The database client could not be generated; the message above says why. Correct prisma/schema.prisma and start again.');
  await writeMark(stampFile, mark);
}

/** Builds the pages when something they are made of has changed. Stops the program on failure. */
export async function buildIfStale() {
  const stampFile = path.join(PROJECT_ROOT, DIST, 'benchtake-build');
  const mark = await fingerprint(PROJECT_ROOT, ['app', 'lib', 'prisma/schema.prisma', 'public', 'next.config.js', 'package-lock.json', 'tsconfig.json'], [CLIENT, 'lib/setup']);
  if (await hasMark(stampFile, mark)) return;
  console.log('Building the pages …');
  const code = await runNode(['node_modules/next/dist/bin/next', 'build'], { isQuiet: true, env: { NEXT_TELEMETRY_DISABLED: '1' } });
  if (code !== 0) stop('The pages could not be built; the message above says why.');
  await writeMark(stampFile, mark);
}
