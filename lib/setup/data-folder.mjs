/** The folder the database lives in: there, and open for writing. */
import { access, constants, mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { codeOf } from './stale.mjs';

/**
 * @param {string} file the database file
 * @returns {Promise<string | null>} one line on what is wrong and what to do, null when it can be written
 */
export async function findDataProblem(file) {
  const folder = path.dirname(file);
  try {
    await mkdir(folder, { recursive: true });
    const probe = path.join(folder, `.write-test-${process.pid}`);
    await writeFile(probe, '');
    await rm(probe);
  } catch (error) {
    return describeDataProblem(`The data folder ${folder}`, codeOf(error));
  }
  try {
    await access(file, constants.W_OK);
  } catch (error) {
    const code = codeOf(error);
    if (code !== 'ENOENT') return describeDataProblem(`The database file ${file}`, code);
  }
  return null;
}

/**
 * @param {string} what `The data folder /srv/data`
 * @param {string} code of the error
 */
export function describeDataProblem(what, code) {
  const fix = 'Make it writable, or choose another file: DATABASE_URL=file:/path/to/benchtake.db npm start';
  if (code === 'ENOSPC') return `${what} cannot be written: the disk is full. Free some space and start again.`;
  if (code === 'EROFS') return `${what} is on a read-only disk. ${fix}`;
  if (code === 'EACCES' || code === 'EPERM') return `${what} is read-only for you. ${fix}`;
  return `${what} cannot be written (${code}). ${fix}`;
}
