/** Copies of a database file. */
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { copyPhotos } from './photo-folder.mjs';
import { openRaw } from './raw.mjs';

/**
 * Writes a consistent copy of a database file and its photos into `backups` beside it, while others may read and write.
 * @param {import('./location.mjs').DatabaseFile} location
 * @param {{ now: Date, note?: string }} options `note`: why it was made, for the file's name
 * @returns {Promise<string>} path of the copy
 */
export async function copyDatabase(location, { now, note }) {
  const folder = path.join(path.dirname(location.path), 'backups');
  await mkdir(folder, { recursive: true });
  const stamp = now.toISOString().replaceAll(/[-:]/g, '').replace('T', '-').replace(/\.(\d+)Z$/, '-$1');
  const name = [path.basename(location.path, path.extname(location.path)), stamp, ...(note ? [note] : [])].join('-');
  const target = path.join(folder, `${name}.db`);
  const database = await openRaw(location.url);
  try {
    await database.query('VACUUM INTO ?', [target]);
  } finally {
    await database.close();
  }
  await copyPhotos(location.path, target);
  return target;
}
