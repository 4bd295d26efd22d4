/** `npm test`: the whole check, from a fresh clone to one closing line. `--no-browser` leaves the browser out. */
import { describeOldNode } from './node-version.mjs';

const problem = describeOldNode(process.versions.node);
if (problem) {
  console.error(problem);
  process.exit(1);
}
// Loaded only now: an old Node could not even read it.
const { runAllTests } = await import('./all-tests.mjs');
process.exitCode = await runAllTests({ withBrowser: !process.argv.includes('--no-browser') });
