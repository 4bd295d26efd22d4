import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const runs = Number(process.env.MUTATION_RUNS ?? 1);

/** The examples a test draws, times the share asked for; and as good as no wish for how many of them were worth drawing. */
function drawLess(code: string): string {
  return code
    .replace(/numRuns: (\d+)/g, (_, count: string) => `numRuns: ${Math.max(3, Math.ceil(Number(count) * runs))}`)
    .replace(/toBeGreaterThan\((\d+)\)/g, (_, count: string) => `toBeGreaterThan(${Math.floor((Number(count) * runs) / 2) - 1})`);
}

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  plugins: runs === 1 ? [] : [{ name: 'draw-less', enforce: 'pre', transform: (code, id) => (id.endsWith('.property.test.ts') ? drawLess(code) : undefined) }],
  test: {
    include: ['tests/mutation/all.ts'],
    setupFiles: ['tests/property-seed.ts'],
    testTimeout: 60_000,
    maxWorkers: 1,
  },
});
