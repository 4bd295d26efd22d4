/** Where the photos of a database lie: in a folder beside it, named after it. Plain JavaScript, because the backup reads it too. */
import { cp, mkdir } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import path from 'node:path';

/**
 * @param {import('./location.mjs').DatabaseLocation} location
 * @param {string} root folder of the project, for databases on a server
 * @returns {string}
 */
export function photoFolder(location, root) {
  if (location.kind === 'server') return path.join(root, '.data', 'photos');
  return photosBeside(location.path);
}

/**
 * The folder of photos that belongs to a database file.
 * @param {string} file
 */
export function photosBeside(file) {
  return path.join(path.dirname(file), `${path.basename(file, path.extname(file))}-photos`);
}

/**
 * Copies the photos of a database beside a copy of it. Photos are written once and never changed, so others may write meanwhile.
 * @param {string} from database file
 * @param {string} to copy of it
 */
export async function copyPhotos(from, to) {
  const source = photosBeside(from);
  if (!existsSync(source)) return;
  await mkdir(path.dirname(to), { recursive: true });
  await cp(source, photosBeside(to), { recursive: true, filter: (name) => !name.endsWith('.part') });
}
