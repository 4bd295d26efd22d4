/** A Chromium for the browser tests. */
import { accessSync, constants, existsSync } from 'node:fs';
import path from 'node:path';
import { run } from './run.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** What the search asks of the machine; tests hand in their own. */
const MACHINE = {
  /** @param {string} file */
  isThere: (file) => existsSync(file),
  findInPath: findInPath,
  playwrightOwn: async () => {
    const { chromium } = await import('@playwright/test');
    return chromium.executablePath();
  },
  canInstall: () => process.getuid?.() === 0 && findInPath('apt-get') !== null,
  install: async () => {
    console.log('Installing chromium (apt-get) …');
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    if ((await run('apt-get', ['update'], { env, isQuiet: true })) !== 0) return false;
    return (await run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { env, isQuiet: true })) === 0;
  },
};

/**
 * In this order: CHROMIUM_PATH, one in the path, Playwright's own, Debian's when it may be installed.
 * @param {string | undefined} given CHROMIUM_PATH
 * @param {typeof MACHINE} [machine]
 * @returns {Promise<{ path: string } | { problem: string }>} `problem` is one line on what to do
 */
export async function findChromium(given, machine = MACHINE) {
  if (given) {
    return machine.isThere(given) ? { path: given } : { problem: `CHROMIUM_PATH is ${given}, and there is no such file. Correct it, or leave it out.` };
  }
  const system = firstInPath(machine);
  if (system) return { path: system };
  const own = await machine.playwrightOwn().catch(() => '');
  if (own && machine.isThere(own)) return { path: own };
  if (machine.canInstall() && (await machine.install())) {
    const installed = firstInPath(machine);
    if (installed) return { path: installed };
  }
  return { problem: 'The browser tests need a Chromium: install one (Debian: apt-get install chromium), or set CHROMIUM_PATH to its program.' };
}

/** @param {typeof MACHINE} machine */
function firstInPath(machine) {
  for (const name of NAMES) {
    const file = machine.findInPath(name);
    if (file) return file;
  }
  return null;
}

/**
 * @param {string} name
 * @returns {string | null}
 */
function findInPath(name) {
  for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
    const file = path.join(folder, name);
    try {
      accessSync(file, constants.X_OK);
      return file;
    } catch {
      // Not in this folder.
    }
  }
  return null;
}
