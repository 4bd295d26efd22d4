/** Running of other programs. */
import { spawn } from 'node:child_process';
import { PROJECT_ROOT } from './console.mjs';

/**
 * @typedef {{ env?: Record<string, string>, isQuiet?: boolean }} RunOptions `isQuiet`: output is shown only on failure
 */

/**
 * Runs a program in the project's folder to its end.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 * @returns {Promise<number>} its exit code
 */
export function run(command, args, { env = {}, isQuiet = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: PROJECT_ROOT,
      env: { ...process.env, ...env },
      stdio: isQuiet ? ['ignore', 'pipe', 'pipe'] : 'inherit',
    });
    /** @type {Buffer[]} */
    const output = [];
    child.stdout?.on('data', (text) => output.push(text));
    child.stderr?.on('data', (text) => output.push(text));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code !== 0 && isQuiet) process.stderr.write(Buffer.concat(output));
      resolve(code ?? 1);
    });
  });
}

/**
 * Runs a script with this Node.
 * @param {readonly string[]} args the script, from the project's folder, and its arguments
 * @param {RunOptions} [options]
 */
export function runNode(args, options) {
  return run(process.execPath, args, options);
}

/**
 * Runs npm: the one that started this script, else the one in the path.
 * @param {readonly string[]} args
 */
export function runNpm(args) {
  const script = process.env.npm_execpath;
  if (script?.endsWith('.js')) return runNode([script, ...args]);
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args);
}
