import { describe, expect, it } from 'vitest';
import { instantOf } from '@/lib/calendar';
import { DEFAULT_ASSUMPTIONS, findChances } from '@/lib/forecast';
import { Simulation } from '@/lib/simulation';
import { simulateInWorkers } from '@/lib/worker';
import { demoSeries } from '@/seed/demo';
import { planOf } from '../plan/plan-of';

const now = instantOf('2026-11-30', '09:00', 'Europe/London');
const { compiled, plan } = planOf(demoSeries('2026-11-30'), now, { schedules: 2 });
const input = findChances(compiled, plan, { assumptions: DEFAULT_ASSUMPTIONS, factors: new Map(), seed: 7 });
const RUNS = 450;

describe('a simulation in threads', () => {
  it('gives what one run after another gives here, however many threads take the runs, and tells each block', async () => {
    const here = new Simulation(input).runMany(0, RUNS);
    const told: number[] = [];
    for (const threads of [1, 2]) {
      const joined = await simulateInWorkers(input, RUNS, { threads, onProgress: (done) => told.push(done) });
      expect(joined.ok && joined.value).toEqual(here);
    }
    expect(told.filter((done) => done === RUNS)).toHaveLength(2);
    expect(told.length).toBeGreaterThan(4);
  });

  it('says that it was stopped, and keeps nothing', async () => {
    const controller = new AbortController();
    const result = await simulateInWorkers(input, 1_000_000, { signal: controller.signal, onProgress: () => controller.abort() });
    expect(result.ok ? [] : result.error.map(({ code }) => code)).toEqual(['cancelled']);
  });
});
