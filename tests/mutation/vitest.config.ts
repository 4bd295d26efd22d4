import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const runs = Number(process.env.MUTATION_RUNS ?? 1);

/** What a test says of how many examples it draws, times the share asked for. */
function drawLess(code: string): string {
  return code.replace(/numRuns: (\d+)/g, (_, count: string) => `numRuns: ${Math.max(3, Math.ceil(Number(count) * runs))}`);
}

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  plugins: runs === 1 ? [] : [{ name: 'draw-less', enforce: 'pre', transform: (code, id) => (id.endsWith('.test.ts') ? drawLess(code) : undefined) }],
  test: {
    include: ['tests/mutation/all.ts'],
    setupFiles: ['tests/property-seed.ts'],
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
