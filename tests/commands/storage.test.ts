import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { LIST_KINDS, listOf, type ListKind, type ListRecord } from '@/lib/build';
import { acceptPlan, applyMany, changeRecord, createRecord, createSeries, removeRecord, undoChange, type CommandContext } from '@/lib/commands';
import { unwrap } from '@/lib/result';
import { contents } from '../build/history';
import { at, sampleSeries } from '../build/sample-series';
import { makeFolder } from '../storage/database';
import { samplePlan } from '../views/sample-plan';

const sample = sampleSeries();
let folder: Awaited<ReturnType<typeof makeFolder>>;
let context: CommandContext;

function fieldsOf({ id: _id, kind: _kind, revision: _revision, order: _order, ...fields }: ListRecord): object {
  return fields;
}

async function draft() {
  const document = await context.storage.loadSeries(sample.series.id);
  if (document === null) throw new Error('The series is gone.');
  return unwrap(await context.storage.savePlan(sample.series.id, { result: samplePlan().result, basedOnChange: document.changeNumber, madeAt: context.now() }));
}

beforeAll(async () => {
  folder = await makeFolder();
});

beforeEach(async () => {
  const { storage } = await folder.copyBase();
  let ids = 0;
  context = { storage, now: () => at('2026-11-30', '12:00'), newId: () => `new-${(ids += 1)}` };
  const { id: _id, kind: _kind, revision: _revision, order: _order, ...series } = sample.series;
  unwrap(await createSeries(context, series, sample.series.id));
  const creations = LIST_KINDS.flatMap((kind) => listOf<ListKind>(sample, kind).map((record: ListRecord) => ({ kind, id: record.id, input: fieldsOf(record) })));
  unwrap(await applyMany(context, sample.series.id, 'Added the sample', creations));
});

afterAll(() => folder.remove());

describe('commands on a real database', () => {
  it('store the sample series exactly as it is', async () => {
    expect(await context.storage.loadSeries(sample.series.id)).toEqual({ ...sample, changeNumber: 1, planChange: 1 });
  });

  it('remove a place with what depends on it and bring all of it back', async () => {
    unwrap(await removeRecord(context, sample.series.id, 'place', 'place-spray', 1, { cascade: true }));
    unwrap(await undoChange(context, sample.series.id, 2));
    unwrap(await undoChange(context, sample.series.id, 3));
    unwrap(await undoChange(context, sample.series.id, 4));
    const stored = await context.storage.loadSeries(sample.series.id);
    expect(stored === null ? null : contents(stored)).toEqual(contents(sample));
  });

  it('let one of two writes at once through and refuse the other with what changed', async () => {
    const results = await Promise.all(['Strip A', 'Strip B'].map((name) => changeRecord(context, sample.series.id, 'task', 'task-strip', 1, { name })));
    expect(results.filter(({ ok }) => ok)).toHaveLength(1);
    expect(results.flatMap((result) => (result.ok ? [] : result.error.map(({ code }) => code)))).toEqual(['stale-record']);
    expect((await context.storage.listChanges(sample.series.id, 10)).map(({ number }) => number)).toEqual([2, 1]);
  });
});

describe('a draft', () => {
  it('is accepted although something was said on camera since, which no plan is made from', async () => {
    const { number } = await draft();
    unwrap(await createRecord(context, sample.series.id, 'promise', { name: 'We will tell what it cost.' }));
    expect(unwrap(await acceptPlan(context, sample.series.id, number)).plan.status).toBe('accepted');
  });

  it('is refused when a task has changed since, and stays a draft', async () => {
    const { number } = await draft();
    unwrap(await changeRecord(context, sample.series.id, 'task', 'task-strip', 1, { name: 'Strip it all' }));
    const refused = await acceptPlan(context, sample.series.id, number);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['plan-out-of-date']);
    expect((await context.storage.getPlan(sample.series.id, number))?.status).toBe('draft');
  });
});
