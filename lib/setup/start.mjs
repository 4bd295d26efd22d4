/** `npm start`, `npm run dev`: from a fresh clone to a printed address. */
import { describeOldNode } from './node-version.mjs';

const problem = describeOldNode(process.versions.node);
if (problem) {
  console.error(problem);
  process.exit(1);
}
// Loaded only now: an old Node could not even read it.
const { serve } = await import('./serve.mjs');
await serve({ isDevelopment: process.argv.includes('--dev') });
