import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { instantOf } from '@/lib/calendar';
import type { SavedPlan } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import { viewRepair, type RepairView } from '@/lib/views';
import { at, sampleSeries } from '../build/sample-series';
import { planOf } from '../plan/plan-of';
import { samplePlan } from './sample-plan';

const document = sampleSeries();
const monday = instantOf('2026-11-30', '09:00', 'Europe/London');
const plan = samplePlan(planOf(document, monday, { schedules: 5 }).plan);
const changed = (more: Partial<SeriesDocument>): SeriesDocument => ({ ...sampleSeries(more), changeNumber: 1, planChange: 1 });

/** What Week and Now offer for a series with the accepted plan, and perhaps a draft. */
function offer(series: SeriesDocument, now: Instant, draft: SavedPlan | null = null): Promise<RepairView | null> {
  // Only these three are asked.
  const storage = { acceptedPlan: async () => plan, latestDraft: async () => draft, listReadings: async () => [] };
  return viewRepair({ storage: storage as unknown as Parameters<typeof viewRepair>[0]['storage'], now, zone: 'Europe/London' }, series);
}

describe('the mend that is offered', () => {
  it('is none while the plan fits the build and nothing has run over', async () => {
    expect(await offer(document, monday)).toBeNull();
  });

  it('comes when a session is cancelled', async () => {
    const stands = plan.result.blocks.find(({ kind }) => kind === 'task')!;
    const found = await offer(changed({ sessions: document.sessions.filter(({ end, start }) => !(start <= stands.start && stands.start < end)) }), monday);
    expect(found?.canMend).toBe(true);
    expect(found?.text).toMatch(/^Mending it changes \d+ blocks?: /);
  });

  it('comes when a part comes late', async () => {
    const away = plan.result.blocks.find(({ kind }) => kind === 'collection')!;
    const outsideJobs = document.outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-12-01', '12:00'), promisedFor: '2026-12-14' }));
    const found = await offer(changed({ outsideJobs }), at('2026-12-01', '13:00'));
    expect(away.start).toBeLessThan(at('2026-12-14', '00:00'));
    expect(found).toMatchObject({ canMend: true });
  });

  it('comes when work runs over, half an hour after its time, and names it; a draft made since is offer enough', async () => {
    const first = plan.result.blocks.filter(({ kind }) => kind === 'task').toSorted((a, b) => a.end - b.end)[0]!;
    const done = changed({ outsideJobs: document.outsideJobs.map((job) => ({ ...job, droppedOffAt: monday })) });
    const fresh = { ...done, planChange: 0 };
    const half = 30 * 60_000;
    expect(await offer(fresh, (first.end + half - 1) as Instant)).toBeNull();
    const now = (first.end + half) as Instant;
    const found = await offer(fresh, now);
    expect(found?.text).toContain(`${first.title} should be done by now and is not ticked: tick what is done. Mending it changes `);
    expect(found?.canMend).toBe(true);
    expect(await offer(fresh, now, { ...plan, status: 'draft', madeAt: now })).toBeNull();
    expect(await offer(fresh, now, { ...plan, status: 'draft', madeAt: monday })).not.toBeNull();
    const ticked = { ...fresh, tasks: fresh.tasks.map((task) => (task.id === first.subject.id ? { ...task, doneAt: now } : task)) };
    expect(await offer(ticked, now)).toBeNull();
  });
});
