import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { unwrap } from '@/lib/result';
import { instant } from '@/lib/units';
import { makeFolder } from './database';
import type { TestDatabase } from './database';
import { AT, planResult, series } from './sample';

let folder: Awaited<ReturnType<typeof makeFolder>>;
let database: TestDatabase;
const LATER = instant(AT + 60_000);

beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => folder.remove());
beforeEach(async () => {
  database = await folder.copyBase();
  unwrap(await database.storage.createSeries(series, AT));
});

const save = async (basedOnChange = 0) => unwrap(await database.storage.savePlan('s1', { result: planResult, basedOnChange, madeAt: AT }));

describe('a plan', () => {
  test('is saved as the next number and read back whole', async () => {
    const saved = await save(3);
    expect(saved).toEqual({ id: 's1:1', number: 1, status: 'draft', madeAt: AT, acceptedAt: null, basedOnChange: 3, result: planResult });
    expect(await database.storage.getPlan('s1', 1)).toEqual(saved);
    expect((await save()).number).toBe(2);
  });

  test('takes the place of the draft before it', async () => {
    await save();
    await save();
    expect((await database.storage.latestDraft('s1'))?.number).toBe(2);
    expect((await database.storage.getPlan('s1', 1))?.status).toBe('discarded');
  });

  test('supersedes the accepted one when it is accepted', async () => {
    await save();
    unwrap(await database.storage.setPlanStatus('s1', 1, 'accepted', AT));
    await save();
    expect((await database.storage.acceptedPlan('s1'))?.number).toBe(1);
    expect(unwrap(await database.storage.setPlanStatus('s1', 2, 'accepted', LATER)).acceptedAt).toBe(LATER);
    expect(await database.storage.acceptedPlan('s1')).toMatchObject({ number: 2, status: 'accepted' });
    expect(await database.storage.getPlan('s1', 1)).toMatchObject({ status: 'superseded', acceptedAt: AT });
    expect(await database.storage.latestDraft('s1')).toBeNull();
  });

  test('is listed newest first, without its blocks', async () => {
    await save();
    await save(1);
    const [newest, older] = await database.storage.listPlans('s1');
    expect(newest).toEqual({
      id: 's1:2', number: 2, status: 'draft', madeAt: AT, acceptedAt: null, basedOnChange: 1, finish: AT, blockCount: 1, unplacedCount: 1,
    });
    expect(older?.number).toBe(1);
  });

  test('that does not exist is null, and its status cannot be set', async () => {
    expect(await database.storage.getPlan('s1', 9)).toBeNull();
    expect(await database.storage.acceptedPlan('s1')).toBeNull();
    const refused = await database.storage.setPlanStatus('s1', 9, 'accepted', AT);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['no-such-plan']);
  });

  test('of a series that is gone is refused', async () => {
    const refused = await database.storage.savePlan('nowhere', { result: planResult, basedOnChange: 0, madeAt: AT });
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['no-such-series']);
  });

  test('accepting one that does not exist leaves the accepted one as it is', async () => {
    await save();
    unwrap(await database.storage.setPlanStatus('s1', 1, 'accepted', AT));
    await database.storage.setPlanStatus('s1', 9, 'accepted', AT);
    expect((await database.storage.acceptedPlan('s1'))?.number).toBe(1);
  });
});
