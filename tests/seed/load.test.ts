import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { instantOf } from '@/lib/calendar';
import { checkSeries } from '@/lib/build';
import { undoChange, type SeriesContext } from '@/lib/commands';
import { fail, issue, unwrap } from '@/lib/result';
import type { Storage } from '@/lib/storage';
import { demoSeries, DEMO_ZONE } from '@/seed/demo';
import { loadDemo } from '@/seed/load-demo';
import { makeFolder } from '../storage/database';

let folder: Awaited<ReturnType<typeof makeFolder>>;
let storage: Storage;

beforeAll(async () => {
  folder = await makeFolder();
});

beforeEach(async () => {
  ({ storage } = await folder.copyBase());
});

afterAll(() => folder.remove());

function contextAt(date: string, time: string): SeriesContext {
  let count = 0;
  return { storage, now: () => instantOf(date, time, DEMO_ZONE), newId: () => `new-${(count += 1)}` };
}

describe('loading the demo', () => {
  it('stores exactly the demo of the week in which it is loaded', async () => {
    const loaded = unwrap(await loadDemo(contextAt('2026-12-03', '10:00')));
    expect(loaded?.monday).toBe('2026-11-30');
    const stored = await storage.loadSeries(loaded!.seriesId);
    expect(stored).toEqual({ ...demoSeries('2026-11-30'), changeNumber: 1, planChange: 1 });
    expect(checkSeries(stored!)).toEqual([]);
  });

  it('takes the Monday from the clock of the arch: late on Sunday it is still the old week', async () => {
    const loaded = unwrap(await loadDemo(contextAt('2027-06-20', '23:30')));
    expect(loaded?.monday).toBe('2027-06-14');
  });

  it('does nothing when there is a series already', async () => {
    const first = unwrap(await loadDemo(contextAt('2026-12-03', '10:00')));
    expect(unwrap(await loadDemo(contextAt('2027-02-01', '10:00')))).toBeNull();
    expect((await storage.listSeries()).map((series) => series.id)).toEqual([first!.seriesId]);
    expect(await storage.listChanges(first!.seriesId, 10)).toHaveLength(1);
  });

  it('is one change in the history, which can be undone like any other', async () => {
    const context = contextAt('2026-12-03', '10:00');
    const { seriesId } = unwrap(await loadDemo(context))!;
    unwrap(await undoChange(context, seriesId, 1));
    const left = await storage.loadSeries(seriesId);
    expect([left?.tasks, left?.parts, left?.people, left?.sessions]).toEqual([[], [], [], []]);
  });

  it('leaves no series behind when its records are refused', async () => {
    const refusing = { ...storage, applyChange: async () => fail([issue('database-busy', 'Busy.', 'Try again.')]) };
    const loaded = await loadDemo({ ...contextAt('2026-12-03', '10:00'), storage: refusing });
    expect(loaded.ok).toBe(false);
    expect(await storage.listSeries()).toEqual([]);
  });
});
