import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { explainBlock, explainUnplaced, pinTask, requestPlan, tryMove, type CommandContext } from '@/lib/commands';
import { instantOf } from '@/lib/calendar';
import { unwrap } from '@/lib/result';
import { loadDemo } from '@/seed/load-demo';
import { planOf } from '../plan/plan-of';
import { makeFolder } from '../storage/database';

const now = instantOf('2026-11-30', '09:00', 'Europe/London');
let folder: Awaited<ReturnType<typeof makeFolder>>;
let context: CommandContext;
let seriesId = '';

const codesOf = (result: { readonly ok: boolean; readonly error?: readonly { readonly code: string }[] }) => (result.error ?? []).map(({ code }) => code);

describe('the plan in the hand of a person', () => {
  beforeAll(async () => {
    folder = await makeFolder();
    const { storage } = await folder.copyBase();
    let ids = 0;
    context = { storage, now: () => now, newId: () => `new-${(ids += 1)}` };
    seriesId = unwrap(await loadDemo(context))!.seriesId;
  }, 60_000);
  afterAll(() => folder.remove());

  it('has nothing to move before a plan is accepted', async () => {
    expect(codesOf(await tryMove(context, seriesId, 'task:x', { at: now }))).toEqual(['no-accepted-plan']);
    expect(codesOf(await explainBlock(context, 'gone', 'task:x'))).toEqual(['no-such-series']);
    expect(codesOf(await explainUnplaced(context, seriesId, 'draft', { kind: 'task', id: 'x' }))).toEqual(['no-draft']);
  });

  it('answers a move without saving anything, and saves the pin only when told to', async () => {
    const before = (await context.storage.loadSeries(seriesId))!;
    const { plan } = planOf(before, now, { schedules: 5 });
    const [left] = plan.blocks.filter(({ kind }) => kind === 'task').toSorted((a, b) => b.start - a.start);
    const without = { ...plan, blocks: plan.blocks.filter(({ id }) => id !== left!.id), unplaced: [{ subject: left!.subject, title: left!.title, because: [] }] };
    const draft = unwrap(await context.storage.savePlan(seriesId, { result: without, basedOnChange: before.changeNumber, madeAt: now }));
    const found = unwrap(await explainUnplaced(context, seriesId, 'draft', left!.subject));
    expect(found.reliefs[0]?.text).toContain('Plan again as things stand');
    expect(codesOf(await explainUnplaced(context, seriesId, 'draft', { kind: 'task', id: 'x' }))).toEqual(['work-has-place']);
    expect(codesOf(await explainUnplaced(context, seriesId, 'accepted', left!.subject))).toEqual(['no-accepted-plan']);
    unwrap(await context.storage.setPlanStatus(seriesId, draft.number, 'discarded', now));
    const saved = unwrap(await context.storage.savePlan(seriesId, { result: plan, basedOnChange: before.changeNumber, madeAt: now }));
    unwrap(await context.storage.setPlanStatus(seriesId, saved.number, 'accepted', now));
    const block = plan.blocks.find(({ kind }) => kind === 'task')!;
    expect(unwrap(await tryMove(context, seriesId, block.id, { at: block.start }))).toMatchObject({ verdict: 'fits', start: block.start });
    expect(unwrap(await explainBlock(context, seriesId, block.id)).chain[0]).toMatchObject({ blockId: block.id });
    expect((await context.storage.loadSeries(seriesId))!.changeNumber).toBe(before.changeNumber);
    const task = before.tasks.find(({ id }) => id === block.subject.id)!;
    unwrap(await pinTask(context, seriesId, task.id, task.revision, block.start));
    expect((await context.storage.loadSeries(seriesId))!.tasks.find(({ id }) => id === task.id)?.pinnedStart).toBe(block.start);
  }, 30_000);

  it('is left alone by a search that is stopped', async () => {
    const plans = await context.storage.listPlans(seriesId);
    const stopped = new AbortController();
    let abortedAt = Infinity;
    const result = await requestPlan(context, seriesId, {
      milliseconds: 60_000, seed: 1, signal: stopped.signal,
      onProgress: ({ earliestFinish, finish }) => {
        expect(earliestFinish).toBeGreaterThan(now);
        if (finish !== null) expect(finish).toBeGreaterThanOrEqual(earliestFinish);
        abortedAt = Math.min(abortedAt, performance.now());
        stopped.abort();
      },
    });
    // Its own thread may still be at a schedule: the answer does not wait for it.
    expect(performance.now() - abortedAt).toBeLessThan(250);
    expect(codesOf(result)).toEqual(['cancelled']);
    expect(await context.storage.listPlans(seriesId)).toEqual(plans);
  }, 30_000);
});
