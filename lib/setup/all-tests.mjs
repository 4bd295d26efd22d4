/** The steps of `npm test`. */
import { existsSync } from 'node:fs';
import { mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { formatSeconds, PROJECT_ROOT } from './console.mjs';
import { findChromium } from './find-chromium.mjs';
import { buildIfStale, generateIfStale } from './generate.mjs';
import { installIfMissing } from './install.mjs';
import { runNode } from './run.mjs';
import { runStaticChecks } from './static-checks.mjs';

/**
 * @typedef {{ passed: number, failed: number }} Count
 * @typedef {{ numPassedTests: number, numFailedTests: number }} VitestReport
 * @typedef {{ stats: { expected: number, unexpected: number, flaky: number } }} PlaywrightReport
 */

const REPORTS = path.join(PROJECT_ROOT, '.cache', 'reports');

/**
 * @param {{ withBrowser: boolean }} options
 * @returns {Promise<number>} exit code
 */
export async function runAllTests({ withBrowser }) {
  const started = performance.now();
  await timed('install and generate', async () => {
    await installIfMissing();
    await generateIfStale();
  });
  await mkdir(REPORTS, { recursive: true });
  const failedChecks = await runStaticChecks();
  const counts = [{ passed: 0, failed: failedChecks.length }, await timed('unit, property, standards, storage', runUnitTests)];
  if (withBrowser) counts.push(await timed('browser', runBrowserTests));
  const passed = counts.reduce((sum, count) => sum + count.passed, 0);
  const failed = counts.reduce((sum, count) => sum + count.failed, 0);
  if (failedChecks.length > 0) console.log(`\nFailed checks, counted as one each: ${failedChecks.join(', ')}`);
  console.log(`\nWhole check in ${formatSeconds(started)}`);
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

/**
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
async function timed(name, work) {
  const started = performance.now();
  console.log(`\n── ${name}`);
  const result = await work();
  console.log(`${name}: ${formatSeconds(started)}`);
  return result;
}

/** @returns {Promise<Count>} */
async function runUnitTests() {
  const file = path.join(REPORTS, 'vitest.json');
  await rm(file, { force: true });
  const code = await runNode(['node_modules/vitest/vitest.mjs', 'run', '--reporter=dot', '--reporter=json', `--outputFile.json=${file}`]);
  return countOf(code, file, readVitest);
}

/** @returns {Promise<Count>} */
async function runBrowserTests() {
  if (!existsSync(path.join(PROJECT_ROOT, 'tests', 'browser'))) {
    console.log('There are no browser tests (tests/browser).');
    return { passed: 0, failed: 0 };
  }
  const chromium = await findChromium(process.env.CHROMIUM_PATH);
  if ('problem' in chromium) {
    console.error(chromium.problem);
    return { passed: 0, failed: 1 };
  }
  await buildIfStale();
  const file = path.join(REPORTS, 'playwright.json');
  await rm(file, { force: true });
  const code = await runNode(['node_modules/@playwright/test/cli.js', 'test', '--reporter=dot,json'], {
    env: { CHROMIUM_PATH: chromium.path, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  });
  return countOf(code, file, readPlaywright);
}

/**
 * @template Report
 * @param {number} code exit code of the runner
 * @param {string} file its JSON report
 * @param {(report: Report) => Count} read
 * @returns {Promise<Count>} a runner that failed without a failed test, as when a file cannot be loaded, counts as one
 */
async function countOf(code, file, read) {
  const text = await readFile(file, 'utf8').catch(() => null);
  const { passed, failed } = text === null ? { passed: 0, failed: 0 } : read(JSON.parse(text));
  return { passed, failed: code !== 0 || text === null ? Math.max(failed, 1) : failed };
}

/**
 * @param {VitestReport} report
 * @returns {Count}
 */
export function readVitest({ numPassedTests: passed, numFailedTests: failed }) {
  return { passed, failed };
}

/**
 * @param {PlaywrightReport} report
 * @returns {Count} a test that passed only when repeated has failed
 */
export function readPlaywright({ stats: { expected, unexpected, flaky } }) {
  return { passed: expected, failed: unexpected + flaky };
}
