import { describe, expect, it } from 'vitest';
import { applyEdits, checkSeries, deriveOrder, type MaterialCure, type RecordEdit, type SeriesDocument } from '@/lib/build';
import { copyMaterial, fitRoomTo, importReadings, laySystem, planLateWork, recordJobEvent, undoChange } from '@/lib/commands';
import { MATERIAL_LIBRARY } from '@/lib/cure';
import { compilePlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
import { blockOf, planOf } from '../plan/plan-of';
import { memoryContext } from './memory-store';

const ID = 'series-sample';
const FILE = ['time,temp C,rh', '2026-11-20 00:00,8.5,80', '2026-11-20 01:00,warm,80', '2026-11-20 02:00,8.1,190', 'never,8,80', '2026-11-20 03:00,8.0,81'].join('\n');
const LOGGER = { name: 'Logger', airZone: 'tent', zone: 'Europe/London', unit: 'auto', dateOrder: 'auto' };

describe('importing readings', () => {
  it('keeps the good rows and names row and column of every other one', async () => {
    const context = memoryContext(coldSeries());
    const found = unwrap(await importReadings(context, ID, { ...LOGGER, text: FILE }));
    expect([found.rows, found.kept]).toEqual([5, 3]);
    expect(found.issues.map(({ path }) => path)).toEqual([[3, 'temp C'], [4, 'rh'], [5, 'time']]);
    const set = context.document().readings.at(-1)!;
    expect(set).toMatchObject({ name: 'Logger', airZone: 'tent', count: 3, from: at('2026-11-20', '00:00') });
    expect(await context.storage.listReadings(ID, set.id, set)).toHaveLength(3);
  });

  it('is one change that can be undone', async () => {
    const context = memoryContext(coldSeries());
    const { change } = unwrap(await importReadings(context, ID, { ...LOGGER, text: FILE }));
    unwrap(await undoChange(context, ID, change.number));
    expect(context.document().readings).toEqual(coldSeries().readings);
  });

  it.each([['no file', '', 'input-value'], ['a file without a column of times', 'a,b\nc,d', 'readings-columns']])('refuses %s and writes nothing', async (_what, text, code) => {
    const context = memoryContext(coldSeries());
    const result = await importReadings(context, ID, { ...LOGGER, text });
    expect(result.ok ? [] : result.error.map((found) => found.code)).toContain(code);
    expect(context.writes()).toBe(0);
  });
});

describe('copying a material', () => {
  it.each(MATERIAL_LIBRARY.map(({ id }) => id))('makes a record of %s that breaks no rule', async (id) => {
    const context = memoryContext(coldSeries());
    unwrap(await copyMaterial(context, ID, id));
    const stops = checkSeries(context.document()).filter(({ severity, subjects }) => severity === 'stop' && subjects[0]?.kind === 'material');
    expect(stops).toEqual([]);
  });
});

describe('laying a coating system', () => {
  it('makes a task and a state for each coat and abrasion, in an order that follows', async () => {
    const context = memoryContext(coldSeries());
    const { change } = unwrap(await laySystem(context, ID, 'system-frame', { partId: 'part-wheel', fromState: 'wheel-fitted', placeId: 'place-spray', episodeId: null, skill: null }));
    const made = change.edits.flatMap(({ after }) => (after?.kind === 'task' ? [after] : []));
    // Two coats of primer wet on wet are one piece of work; then abrading; then two coats of gloss.
    expect(made.map(({ coats }) => coats.length)).toEqual([2, 0, 1, 1]);
    expect(made[0]?.effort.likely).toBe(30 + 10 + 30);
    const order = deriveOrder(context.document()).map(({ from, to }) => `${from.id} ${to.id}`);
    for (const [index, task] of made.entries()) if (index > 0) expect(order).toContain(`${made[index - 1]!.id} ${task.id}`);
    expect(applyEdits(coldSeries(), change.edits).parts.find(({ id }) => id === 'part-wheel')?.states).toHaveLength(7);
  });

  it('refuses a state that the part does not have', async () => {
    const result = await laySystem(memoryContext(coldSeries()), ID, 'system-frame', { partId: 'part-wheel', fromState: 'gone', placeId: 'place-spray' });
    expect(result.ok ? [] : result.error.map(({ path }) => path)).toEqual([['fromState']]);
  });
});

/** The cold series with another late work of the primer. */
function asking(lateWork: MaterialCure['lateWork']): SeriesDocument {
  const document = coldSeries();
  return { ...document, materials: document.materials.map((one) => (one.id === 'material-primer' ? { ...one, cure: { ...one.cure!, lateWork } } : one)) };
}

const madeBy = (change: { readonly edits: readonly RecordEdit[] }) => change.edits.flatMap(({ after, before }) => (after?.kind === 'task' && before === null ? [after] : []));

async function lateCodes(document: SeriesDocument, given: unknown): Promise<readonly string[]> {
  const result = await planLateWork(memoryContext(document), ID, given);
  return result.ok ? [] : result.error.map(({ code }) => code);
}

describe('work after a missed recoat window', () => {
  const input = { coatTaskId: 'task-prime', nextTaskId: 'task-paint' };

  it('is a task with a time of its own between the two coats, which the plan follows and undo takes away', async () => {
    const context = memoryContext(asking('abrade'));
    const { change } = unwrap(await planLateWork(context, ID, input));
    const [abrade] = madeBy(change);
    // The abrading time of the coating system that has the primer.
    expect(abrade).toMatchObject({ category: 'clean', isDusty: true, effort: { likely: 45 }, coats: [] });
    const order = deriveOrder(context.document()).map(({ from, to }) => `${from.id} ${to.id}`);
    expect(order).toEqual(expect.arrayContaining([`task-prime ${abrade!.id}`, `${abrade!.id} task-paint`]));
    expect(order).not.toContain('task-prime task-paint');
    // Asked from the block that a plan adds, which knows the next coat alone.
    const fromBlock = madeBy(unwrap(await planLateWork(memoryContext(asking('abrade')), ID, { coatTaskId: null, nextTaskId: 'task-paint' })).change);
    expect(fromBlock.map(({ name }) => name)).toEqual([abrade?.name]);
    const { problem } = unwrap(compilePlan({ document: context.document(), now: at('2026-12-01', '08:00'), previousBlocks: new Map() }));
    expect(problem.activities.find(({ id }) => id === `task:${abrade!.id}`)?.duration).toBe(45);
    // The missed window binds no more.
    expect(problem.lags.filter(({ from, max }) => from.activity === 'task:task-prime' && max !== undefined)).toEqual([]);
    unwrap(await undoChange(context, ID, change.number));
    expect(context.document().tasks.map(({ id }) => id)).toEqual(coldSeries().tasks.map(({ id }) => id));
    expect(context.document().tasks.find(({ id }) => id === 'task-paint')?.parts).toEqual(coldSeries().tasks.find(({ id }) => id === 'task-paint')?.parts);
  });

  it('cleans and tacks in one piece of work, and strips and lays again in two', async () => {
    const tack = madeBy(unwrap(await planLateWork(memoryContext(asking('clean and tack coat')), ID, input)).change);
    expect(tack.map(({ name, effort }) => [name.split(':')[0], effort.likely])).toEqual([[expect.stringContaining('tack coat'), 45 + 10]]);
    const again = madeBy(unwrap(await planLateWork(memoryContext(asking('strip')), ID, input)).change);
    expect(again.map(({ category, coats }) => [category, coats.map(({ materialId }) => materialId)])).toEqual([['strip', []], ['paint', ['material-primer']]]);
    expect(again[1]?.parts[0]?.from).toBe(again[0]?.parts[0]?.to);
  });

  it('refuses two coats that do not follow each other, and a material that asks for nothing', async () => {
    expect(await lateCodes(coldSeries(), { coatTaskId: 'task-paint', nextTaskId: 'task-prime' })).toEqual(['late-work-order']);
    expect(await lateCodes(coldSeries(), { coatTaskId: 'gone', nextTaskId: 'task-prime' })).toEqual(['record-missing']);
    expect(await lateCodes(asking('none'), input)).toEqual(['late-work-none']);
  });
});

describe('an outside job', () => {
  it('is planned anew after each event: dropped off, promised for another day, collected', async () => {
    const context = memoryContext(coldSeries());
    const plan = () => planOf(context.document(), at('2026-12-01', '12:00')).plan;
    const has = (id: string) => plan().blocks.some((block) => block.id === id);
    const ages: number[] = [context.document().planChange];
    const record = async (event: unknown) => {
      unwrap(await recordJobEvent(context, ID, 'job-wheel', context.document().outsideJobs[0]!.revision, event));
      ages.push(context.document().planChange);
    };
    expect([has('drop-off:job-wheel'), has('collection:job-wheel')]).toEqual([true, true]);
    await record({ event: 'dropped off', at: '2026-12-01T09:00' });
    expect([has('drop-off:job-wheel'), has('collection:job-wheel')]).toEqual([false, true]);
    await record({ event: 'promised', for: '2026-12-15' });
    expect(blockOf(plan(), 'collection:job-wheel').start).toBeGreaterThanOrEqual(at('2026-12-15', '08:00'));
    await record({ event: 'promised', for: '2026-12-03' });
    expect(blockOf(plan(), 'collection:job-wheel').start).toBeLessThan(at('2026-12-15', '00:00'));
    await record({ event: 'collected', at: '2026-12-01T11:00' });
    expect(has('collection:job-wheel')).toBe(false);
    // Every event makes the plan before it old.
    expect(ages).toEqual([...new Set(ages)].toSorted((a, b) => a - b));
  });
});

describe('taking a fit over', () => {
  it('changes time constant and offset of the room, rounded to tenths, and nothing else', async () => {
    const context = memoryContext(coldSeries());
    unwrap(await fitRoomTo(context, ID, 1, { timeConstant: 17.46, offset: 2.88 }));
    expect(context.document().series.workshop).toEqual({ ...coldSeries().series.workshop!, room: { ...coldSeries().series.workshop!.room, timeConstant: 17.5, offset: 2.9 } });
  });

  it('gives the air that was measured numbers of its own where there are several airs', async () => {
    const context = memoryContext(coldSeries());
    unwrap(await fitRoomTo(context, ID, 1, { timeConstant: 4.2, offset: 1, airZone: 'tent' }));
    const { workshop } = context.document().series;
    expect(workshop?.room).toEqual(coldSeries().series.workshop!.room);
    expect(workshop?.airs).toEqual([{ airZone: 'tent', room: { ...workshop!.room, timeConstant: 4.2, offset: 1 }, heater: workshop!.heater }]);
  });

  it('refuses a room that cannot be', async () => {
    const result = await fitRoomTo(memoryContext(coldSeries()), ID, 1, { timeConstant: 0, offset: 2 });
    expect(result.ok ? [] : result.error.map(({ code }) => code)).toEqual(['room-value']);
  });
});
