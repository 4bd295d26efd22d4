/** `npx tsx tests/bench/forecast.ts`: what-ifs and 10,000 runs of a series of about 300 tasks, wall and processor time. */
import { instantOf } from '@/lib/calendar';
import { continueSessions, DEFAULT_ASSUMPTIONS, findChances, findEffect, quantileOf, WHAT_IF_KINDS } from '@/lib/forecast';
import { compilePlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { prepareSimulation, simulateInWorkers } from '@/lib/worker';
import { largeSeries } from '../forecast/large-series';
import { planOf } from '../plan/plan-of';

const RUNS = 10_000;
const document = largeSeries('2026-11-30');
const now = instantOf('2026-11-30', '09:00', 'Europe/London');
const { plan } = planOf(document, now, { schedules: 2 });

/** Milliseconds on the clock on the wall. */
async function measure(name: string, work: () => unknown): Promise<number> {
  const [wall, processor] = [performance.now(), process.cpuUsage()];
  await work();
  const { system, user } = process.cpuUsage(processor);
  const took = performance.now() - wall;
  console.log(`${name}: ${took.toFixed(0)} ms, processor ${((user + system) / 1000).toFixed(0)} ms`);
  return took;
}

const ask = (kind: (typeof WHAT_IF_KINDS)[number]) => unwrap(findEffect({ document, plan, now }, [{ kind, target: '' }]));
// The first round warms the compiler, as the first answers of a server do.
for (const round of ['cold', 'warm', 'again']) {
  const times: number[] = [];
  for (const kind of WHAT_IF_KINDS) times.push(await measure(`${kind}, ${round}`, () => ask(kind)));
  times.sort((a, b) => a - b);
  console.log(`what-ifs, ${round}: p50 ${quantileOf(times, 0.5).toFixed(0)} ms, p95 ${quantileOf(times, 0.95).toFixed(0)} ms`);
}
// As a request does: threads start while the series is compiled.
prepareSimulation();
const longer = unwrap(compilePlan({ document: continueSessions(document, 4).document, now, previousBlocks: new Map() }));
const input = findChances(longer, plan, { assumptions: DEFAULT_ASSUMPTIONS, factors: new Map(), seed: 1 });
// Threads stay: the second time is what a server that has run for a while takes.
for (const state of ['threads just started', 'threads there', 'threads there, again']) await measure(`${RUNS} runs of ${document.tasks.length} tasks, ${state}`, async () => unwrap(await simulateInWorkers({ ...input, problem: { ...input.problem } }, RUNS)));
