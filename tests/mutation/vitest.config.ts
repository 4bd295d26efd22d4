import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/** The tests of the areas that mutants are made in (MUTATION_TESTS: folders, or files that end in .ts), without those that start processes. */
const areas = (process.env.MUTATION_TESTS ?? 'calendar').split(',');

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  test: {
    include: areas.map((area) => (area.endsWith('.ts') ? `tests/${area}` : `tests/${area}/**/*.test.ts`)),
    exclude: ['tests/calendar/machine-zone.test.ts', 'tests/**/*speed*.test.ts'],
    setupFiles: ['tests/property-seed.ts'],
    testTimeout: 60_000,
  },
});
