/**
 * How many faults put in on purpose the tests find:
 *
 *     npm run mutation -- --mutate 'lib/calendar/**\/*.ts'
 *
 * Not part of `npm test`: a folder takes minutes. A fault that no test finds is told with its place.
 */
const area = process.env.MUTATION_TESTS ?? 'calendar';

export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env.MUTATION_WORKERS ?? 2),
  timeoutMS: 20_000,
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `.cache/reports/mutation-${area.replaceAll('/', '-')}.json` },
  tempDirName: '.cache/mutation',
  ignorePatterns: ['.data', '.next', '.cache', 'app', 'seed', 'prisma', 'tests/browser', 'tests/bench'],
  disableTypeChecks: false,
};
