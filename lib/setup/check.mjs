/** `npm run check`: types, lint, layers, dead code. */
import { generateIfStale } from './generate.mjs';
import { installIfMissing } from './install.mjs';
import { runStaticChecks } from './static-checks.mjs';

await installIfMissing();
await generateIfStale();
const failed = await runStaticChecks();
console.log(failed.length === 0 ? '\nAll checks passed.' : `\nFailed: ${failed.join(', ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
