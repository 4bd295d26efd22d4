/** The checks that read the code without running it. */
import { formatSeconds } from './console.mjs';
import { runNode } from './run.mjs';

const CHECKS = [
  { name: 'types', args: ['node_modules/typescript/bin/tsc', '--noEmit'] },
  { name: 'lint', args: ['node_modules/oxlint/bin/oxlint'] },
  { name: 'layers', args: ['node_modules/dependency-cruiser/bin/dependency-cruise.mjs', 'app', 'lib', 'seed', 'tests', '--config', '.dependency-cruiser.cjs'] },
  { name: 'dead code', args: ['node_modules/knip/bin/knip.js'] },
];

/**
 * Runs them all, also after a failure.
 * @returns {Promise<string[]>} names of those that failed
 */
export async function runStaticChecks() {
  const failed = [];
  for (const { name, args } of CHECKS) {
    const started = performance.now();
    console.log(`\n── ${name}`);
    const code = await runNode(args);
    console.log(`${name}: ${code === 0 ? 'passed' : 'failed'} in ${formatSeconds(started)}`);
    if (code !== 0) failed.push(name);
  }
  return failed;
}
