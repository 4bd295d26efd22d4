import { describe, expect, it } from 'vitest';
import { findRecord } from '@/lib/build';
import { applyMany, changeRecord, createRecord, createSeries, removeRecord, removeSeries, reorderRecords, undoChange } from '@/lib/commands';
import { unwrap, type Result } from '@/lib/result';
import { contents } from '../build/history';
import { sampleSeries } from '../build/sample-series';
import { memoryContext } from './memory-store';

const ID = 'series-sample';
const task = { name: 'Polish', category: 'repair', placeId: 'place-bench', effort: { low: 30, likely: 60, high: 90 } };
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code }) => code));

describe('createSeries', () => {
  const input = {
    name: 'New build', zone: 'europe/london', cadenceDays: 7, leadDays: 3, fillLimit: 0.7, workshopTemperature: 12,
    runtime: { target: 20, min: 15, max: 25 }, frameRate: { numerator: 25, denominator: 1 },
  };

  it('makes an empty series after the others', async () => {
    const context = memoryContext(sampleSeries());
    const { id } = unwrap(await createSeries(context, input));
    expect(context.document(id)).toMatchObject({ series: { id, name: 'New build', zone: 'Europe/London', order: 1, revision: 1 }, changeNumber: 0, tasks: [] });
  });

  it('makes nothing of a form with faults', async () => {
    const context = memoryContext();
    expect(codes(await createSeries(context, { ...input, zone: 'Nowhere/Land' }))).toEqual(['input-value']);
    expect(codes(await createSeries(context, { ...input, cadenceDays: 0, fillLimit: 2 }))).toEqual(['cadence', 'fill-limit']);
    expect(context.writes()).toBe(0);
  });
});

describe('removeSeries', () => {
  it('asks for the name to be typed', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await removeSeries(context, ID, 'Arch'))).toEqual(['name-not-confirmed']);
    expect(context.writes()).toBe(0);
    expect(unwrap(await removeSeries(context, ID, ' Arch build '))).toEqual({ name: 'Arch build' });
    expect(codes(await removeSeries(context, ID, 'Arch build'))).toEqual(['no-such-series']);
  });
});

describe('createRecord', () => {
  it('saves one change and tells the id', async () => {
    const context = memoryContext(sampleSeries());
    const { id, change, warnings } = unwrap(await createRecord(context, ID, 'task', task));
    expect(findRecord(context.document(), 'task', id)).toMatchObject({ name: 'Polish', revision: 1, order: 6 });
    expect(change).toMatchObject({ number: 1, label: 'Added task Polish', at: context.now() });
    expect(warnings).toEqual([]);
  });

  it('tells what it made questionable without refusing it', async () => {
    const saved = unwrap(await createRecord(memoryContext(sampleSeries()), ID, 'episode', { name: 'Three', releaseDate: '2027-01-17' }));
    expect(saved.warnings.map(({ code }) => code)).toEqual(['episode-without-tasks']);
  });

  it('saves nothing when the form, a rule or the series is in the way', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await createRecord(context, ID, 'task', { ...task, name: 'x'.repeat(10_000) }))).toEqual(['input-name']);
    expect(codes(await createRecord(context, ID, 'task', { ...task, category: 'paint' }))).toEqual(['missing-coats']);
    expect(codes(await createRecord(context, ID, 'task', { ...task, placeId: 'gone' }))).toEqual(['reference-missing']);
    expect(codes(await createRecord(context, ID, 'task', { ...task, effort: { low: 0, likely: -5, high: 90 } }))).toEqual(['effort-not-positive', 'effort-not-positive']);
    expect(codes(await createRecord(context, ID, 'session', { name: 'Back', start: '2026-12-20T12:00', end: '2026-12-20T11:00' }))).toEqual(['session-ends-before-start']);
    expect(codes(await createRecord(context, ID, 'planet', task))).toEqual(['unknown-kind']);
    expect(codes(await createRecord(context, 'gone', 'task', task))).toEqual(['no-such-series']);
    expect(context.writes()).toBe(0);
  });
});

describe('changeRecord', () => {
  it('changes the fields that the form sends and keeps the others', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await changeRecord(context, ID, 'task', 'task-strip', 1, { isNoisy: true, effort: { low: '60', likely: '100', high: '180' } }));
    expect(findRecord(context.document(), 'task', 'task-strip')).toMatchObject({ revision: 2, isNoisy: true, irreversible: true, effort: { likely: 100 } });
  });

  it('changes the settings of the series', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await changeRecord(context, ID, 'series', ID, 1, { leadDays: 6 }));
    expect(context.document().series).toMatchObject({ leadDays: 6, revision: 2 });
    expect(codes(await changeRecord(context, ID, 'series', ID, 2, { zone: 'Nowhere/Land' }))).toEqual(['input-value']);
  });

  it('refuses a stale form and tells what has been changed since', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await changeRecord(context, ID, 'task', 'task-strip', 1, { isNoisy: true }));
    unwrap(await changeRecord(context, ID, 'task', 'task-strip', 2, { name: 'Strip it' }));
    const stale = await changeRecord(context, ID, 'task', 'task-strip', 1, { isDusty: true });
    expect(codes(stale)).toEqual(['stale-record']);
    expect(stale.ok ? '' : stale.error[0]?.message).toBe('The task “Strip it” has been changed since you opened it: name, noise.');
    expect(context.writes()).toBe(2);
  });

  it('saves nothing of a form that is no object, names a foreign field or changes nothing', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await changeRecord(context, ID, 'task', 'task-strip', 1, null))).toEqual(['input-value']);
    expect(codes(await changeRecord(context, ID, 'task', 'task-strip', 1, { id: 'other' }))).toEqual(['input-unknown-field']);
    expect(codes(await changeRecord(context, ID, 'task', 'task-strip', 1, {}))).toEqual(['nothing-changed']);
    expect(context.writes()).toBe(0);
  });
});

describe('removeRecord, reorderRecords and undoChange', () => {
  it('refuses an orphaning removal, does it with cascade, and undoes it', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await removeRecord(context, ID, 'part', 'part-wheel', 1))).toEqual(['removal-orphans']);
    const { change } = unwrap(await removeRecord(context, ID, 'part', 'part-wheel', 1, { cascade: true }));
    expect(context.document().parts).toHaveLength(1);
    const undone = unwrap(await undoChange(context, ID, change.number));
    expect(undone.change).toMatchObject({ number: 2, undoes: 1 });
    expect(contents(context.document())).toEqual(contents(sampleSeries()));
    expect(codes(await undoChange(context, ID, change.number))).toEqual(['already-undone']);
    expect(codes(await undoChange(context, ID, 99))).toEqual(['no-such-change']);
    expect(context.writes()).toBe(2);
  });

  it('puts a list into a new order', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await reorderRecords(context, ID, 'part', ['part-wheel', 'part-frame']));
    expect(context.document().parts.map(({ id }) => id)).toEqual(['part-wheel', 'part-frame']);
    expect(codes(await reorderRecords(context, ID, 'part', ['part-wheel']))).toEqual(['order-incomplete']);
  });
});

describe('applyMany', () => {
  it('makes records that point at each other in one change', async () => {
    const context = memoryContext(sampleSeries());
    const { ids, change } = unwrap(await applyMany(context, ID, 'Added the tank', [
      { kind: 'part', id: 'tank', input: { name: 'Tank', states: [{ id: 'tank-bare', name: 'bare' }] } },
      { kind: 'task', input: { ...task, parts: [{ partId: 'tank', from: 'tank-bare' }] } },
    ]));
    expect(ids).toEqual(['tank', 'new-1']);
    expect(change).toMatchObject({ number: 1, label: 'Added the tank' });
    expect(change.edits).toHaveLength(2);
  });

  it('makes none when one has a fault, and says which', async () => {
    const context = memoryContext(sampleSeries());
    const refused = await applyMany(context, ID, 'Two', [{ kind: 'task', input: task }, { kind: 'task', input: { ...task, name: '' } }]);
    expect(refused.ok ? [] : refused.error.map(({ path }) => path)).toEqual([[1, 'name']]);
    expect(context.writes()).toBe(0);
  });
});
