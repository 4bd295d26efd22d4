/** What the start-up scripts say, and where the project is. Only `node:` imports: nothing may be installed yet. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROJECT_ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * One line on why it cannot go on and what to do, and the end.
 * @param {string} line
 * @returns {never}
 */
export function stop(line) {
  console.error(line);
  process.exit(1);
}

/**
 * @param {number} since from performance.now()
 * @example formatSeconds(performance.now() - 1234) // '1.2 s'
 */
export function formatSeconds(since) {
  return `${((performance.now() - since) / 1000).toFixed(1)} s`;
}
