/** Copies of a database file. */
import { mkdir } from 'node:fs/promises';
import path from 'node:path';

/**
 * Writes a consistent copy of a database file into `backups` beside it, while others may read and write.
 * @param {import('./location.mjs').DatabaseFile} location
 * @param {{ now: Date, note?: string }} options `note`: why it was made, for the file's name
 * @returns {Promise<string>} path of the copy
 */
export async function copyDatabase(location, { now, note }) {
  const { createClient } = await import('@libsql/client');
  const folder = path.join(path.dirname(location.path), 'backups');
  await mkdir(folder, { recursive: true });
  const stamp = now.toISOString().replaceAll(/[-:]/g, '').replace('T', '-').replace(/\.(\d+)Z$/, '-$1');
  const name = [path.basename(location.path, path.extname(location.path)), stamp, ...(note ? [note] : [])].join('-');
  const target = path.join(folder, `${name}.db`);
  const client = createClient({ url: location.url, timeout: 5000 });
  try {
    await client.execute({ sql: 'VACUUM INTO ?', args: [target] });
  } finally {
    client.close();
  }
  return target;
}
