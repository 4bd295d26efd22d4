/**
 * Records anew what the engine says of fixed problems, for tests/scheduling/engine-recorded.test.ts, after a change that is meant
 * to change its answers or its way to them. It takes some seconds. Look at the difference before it is committed:
 *
 *     npx tsx tests/bench/record-engine.ts
 */
import { writeFileSync } from 'node:fs';
import { fileOf, recordings } from '../scheduling/recorded-cases';

for (const [name, cases] of Object.entries(recordings)) {
  const before = process.cpuUsage();
  // One line a case, so that a difference is read by the case.
  const rows = cases.map(({ id, make }) => `${JSON.stringify(id)}: ${JSON.stringify(make())}`);
  writeFileSync(fileOf(name), `{\n${rows.join(',\n')}\n}\n`);
  const { system, user } = process.cpuUsage(before);
  console.log(`${rows.length} cases of engine-${name}.json in ${Math.round((user + system) / 1000)} ms`);
}
