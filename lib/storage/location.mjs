/** Where the database is. Plain JavaScript, because the start-up scripts read it before anything is built. */
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/**
 * @typedef {{ kind: 'file', path: string, url: string }} DatabaseFile
 * @typedef {{ kind: 'server', url: string }} DatabaseServer
 * @typedef {DatabaseFile | DatabaseServer} DatabaseLocation
 */

const SERVER_SCHEMES = ['libsql:', 'https:', 'http:', 'wss:', 'ws:'];
const DEFAULT_FILE = path.join('.data', 'benchtake.db');

/**
 * Reads a database URL. Without one the database is `.data/benchtake.db` under `root`; a relative
 * `file:` path counts from `root` too.
 * @param {string | undefined} url `file:…`, or the address of a libsql server
 * @param {string} root folder of the project
 * @returns {DatabaseLocation}
 * @throws {Error} when the URL is of another kind
 * @example locateDatabase('file:./try.db', '/srv/benchtake') // { kind: 'file', path: '/srv/benchtake/try.db', … }
 */
export function locateDatabase(url, root) {
  const given = url?.trim();
  if (!given) return fileAt(path.resolve(root, DEFAULT_FILE));
  if (SERVER_SCHEMES.some((scheme) => given.startsWith(scheme))) return { kind: 'server', url: given };
  if (given.startsWith('file:') && !given.includes(':memory:')) {
    const rest = given.slice('file:'.length);
    return fileAt(rest.startsWith('//') ? fileURLToPath(given) : path.resolve(root, rest));
  }
  throw new Error(`DATABASE_URL is "${given}". Use file:<path>, or the libsql:// or https:// address of a libsql server.`);
}

/**
 * @param {string} file absolute path
 * @returns {DatabaseFile}
 */
function fileAt(file) {
  return { kind: 'file', path: file, url: pathToFileURL(file).href };
}
