/**
 * How many faults put in on purpose the tests find:
 *
 *     npm run mutation -- --mutate 'lib/calendar/**\/*.ts'
 *     MUTATION_TESTS=scheduling/check npm run mutation -- --mutate 'lib/scheduling/check/**\/*.ts'
 *     MUTATION_SHARE=0.05 MUTATION_RUNS=0.1 MUTATION_TESTS=scheduling,scheduling-proof/solve npm run mutation -- --mutate 'lib/scheduling/**\/*.ts'
 *
 * MUTATION_TESTS: folders of tests, starts of the names of test files, or files. MUTATION_SHARE: a sample instead of all (see
 * sample.mjs), another one for another MUTATION_SALT. MUTATION_RUNS: share of the examples that property tests draw;
 * fewer of them find fewer faults, never more. MUTATION_WORKERS: processes. MUTATION_TIMEOUT: ms before an endless loop counts as found.
 *
 * Not part of `npm test`: a folder takes minutes. A fault that no test finds is told with its place.
 */
import { sampleFaults } from './sample.mjs';

const area = process.env.MUTATION_TESTS ?? 'calendar';
const share = Number(process.env.MUTATION_SHARE ?? 1);
const salt = process.env.MUTATION_SALT ?? 'a';
if (share !== 1) await sampleFaults(share, salt);

export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner', './tests/mutation/score-reporter.mjs'],
  // All tests lie in one file, which names the files it loads when it runs: no tool sees what it is related to.
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env.MUTATION_WORKERS ?? 2),
  timeoutMS: Number(process.env.MUTATION_TIMEOUT ?? 20_000),
  reporters: ['clear-text', 'json', 'score'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `.cache/reports/mutation-${area.replaceAll(/[/,]/g, '-')}${share === 1 ? '' : `-${salt}`}.json` },
  tempDirName: '.cache/mutation',
  ignorePatterns: ['.data', '.next', '.cache', 'app', 'seed', 'prisma', 'tests/browser'],
  disableTypeChecks: false,
};
