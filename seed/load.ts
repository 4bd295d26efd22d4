/** `tsx seed/load.ts`: loads the demo into an empty database and says in one line what it did. */
import { openContext } from '@/lib/commands';
import { loadDemo } from './load-demo';
import { loadDemoLog } from './load-demo-log';
import { loadDemoSafety } from './load-demo-safety';

const started = performance.now();
const context = await openContext();
try {
  const loaded = await loadDemo(context);
  if (!loaded.ok) {
    console.error(['The demo could not be loaded:', ...loaded.error.map((found) => `  ${found.message} ${found.fix}`)].join('\n'));
    process.exitCode = 1;
  } else if (loaded.value === null) {
    console.log('The database holds a series already; the demo was not loaded.');
  } else {
    const { seriesId, name, monday, records, document } = loaded.value;
    const log = await loadDemoLog(context, document);
    if (!log.ok) console.error(`The demo's log is not complete: ${log.error[0]?.message ?? ''}`);
    const safety = await loadDemoSafety(context, seriesId, monday);
    if (!safety.ok) console.error(`The demo's signatures are not complete: ${safety.error[0]?.message ?? ''}`);
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`Loaded the demo “${name}” from ${monday}: ${document.tasks.length} tasks, ${document.parts.length} parts, ${document.sessions.length} sessions, ${document.episodes.length} episodes (${records} records, ${log.ok ? log.value : 0} log entries) in ${seconds} s.`);
  }
} finally {
  await context.storage.close();
}
