/** `npm run plan -- --week 2026-W49 [--json]`: a week in the terminal. */
import { generateIfStale } from './generate.mjs';
import { installIfMissing } from './install.mjs';
import { runNode } from './run.mjs';

await installIfMissing();
await generateIfStale();
process.exitCode = await runNode(['--import', 'tsx', 'lib/setup/plan-cli.ts', ...process.argv.slice(2)]);
