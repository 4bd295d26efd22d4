import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/** The tests of the areas that mutants are made in, without those that start processes. */
export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  test: {
    include: (process.env.MUTATION_TESTS ?? 'calendar').split(',').map((area) => `tests/${area}/**/*.test.ts`),
    exclude: ['tests/calendar/machine-zone.test.ts', 'tests/**/*speed*.test.ts'],
    setupFiles: ['tests/property-seed.ts'],
    testTimeout: 60_000,
  },
});
