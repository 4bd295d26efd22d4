/** Packages: installed when what stands in node_modules is not what package-lock.json asks for. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { PROJECT_ROOT, stop } from './console.mjs';
import { runNpm } from './run.mjs';

/** @typedef {{ packages?: Record<string, { version?: string, optional?: boolean, devOptional?: boolean, link?: boolean }> }} Lockfile */

/**
 * Compares the lockfile with npm's own record of what it installed.
 * @param {Lockfile} wanted package-lock.json
 * @param {Lockfile | null} installed node_modules/.package-lock.json, which npm writes when it has finished
 */
export function isInstallComplete(wanted, installed) {
  if (!installed) return false;
  const present = installed.packages ?? {};
  return Object.entries(wanted.packages ?? {}).every(([place, { version, optional, devOptional }]) => {
    if (place === '') return true;
    const found = present[place];
    // A package for another system is left out by npm.
    return found ? found.version === version : Boolean(optional ?? devOptional);
  });
}

/** Runs `npm ci` when something is missing. Stops the program when npm fails. */
export async function installIfMissing() {
  const wanted = await readLockfile('package-lock.json');
  if (wanted && isInstallComplete(wanted, await readLockfile('node_modules/.package-lock.json'))) return;
  console.log('Installing packages (npm ci) …');
  const code = await runNpm(['ci', '--include=dev', '--no-fund', '--no-audit', '--loglevel=error']).catch(() => 1);
  if (code !== 0) stop('npm ci failed; its message stands above. Check the connection to the package registry and start again.');
}

/**
 * @param {string} file
 * @returns {Promise<Lockfile | null>}
 */
async function readLockfile(file) {
  const text = await readFile(path.join(PROJECT_ROOT, file), 'utf8').catch(() => null);
  return text === null ? null : JSON.parse(text);
}
