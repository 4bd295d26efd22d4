import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/** The tests of the areas that mutants are made in, without those that start processes or measure time. */
const areas = (process.env.MUTATION_TESTS ?? 'calendar').split(',');
const runs = Number(process.env.MUTATION_RUNS ?? 1);

/** What a test says of how many examples it draws, times the share asked for. */
function drawLess(code: string): string {
  return code.replace(/numRuns: (\d+)/g, (_, count: string) => `numRuns: ${Math.max(3, Math.ceil(Number(count) * runs))}`);
}

/** Tests of many made-up cases take their time. */
function isSlow({ moduleId }: TestSpecification): boolean {
  return /\.property\.|examples/.test(moduleId);
}

/** The first test that fails ends the look at a fault: tests of single cases come first. */
class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve(files.toSorted((a, b) => Number(isSlow(a)) - Number(isSlow(b)) || (a.moduleId < b.moduleId ? -1 : 1)));
  }
}

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  plugins: runs === 1 ? [] : [{ name: 'draw-less', enforce: 'pre', transform: (code, id) => (id.endsWith('.test.ts') ? drawLess(code) : undefined) }],
  test: {
    include: areas.flatMap((area) => (area.endsWith('.ts') ? [`tests/${area}`] : [`tests/${area}/**/*.test.ts`, `tests/${area}*.test.ts`])),
    exclude: ['tests/calendar/machine-zone.test.ts', 'tests/**/*speed*.test.ts'],
    setupFiles: ['tests/property-seed.ts'],
    testTimeout: 60_000,
    maxWorkers: 1,
    sequence: { sequencer: QuickFirst },
  },
});
