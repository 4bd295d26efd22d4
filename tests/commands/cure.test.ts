import { describe, expect, it } from 'vitest';
import { applyEdits, checkSeries, deriveOrder } from '@/lib/build';
import { copyMaterial, fitRoomTo, importReadings, laySystem, undoChange } from '@/lib/commands';
import { MATERIAL_LIBRARY } from '@/lib/cure';
import { unwrap } from '@/lib/result';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
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

describe('taking a fit over', () => {
  it('changes time constant and offset of the room, rounded to tenths, and nothing else', async () => {
    const context = memoryContext(coldSeries());
    unwrap(await fitRoomTo(context, ID, 1, { timeConstant: 17.46, offset: 2.88 }));
    expect(context.document().series.workshop).toEqual({ ...coldSeries().series.workshop!, room: { ...coldSeries().series.workshop!.room, timeConstant: 17.5, offset: 2.9 } });
  });

  it('refuses a room that cannot be', async () => {
    const result = await fitRoomTo(memoryContext(coldSeries()), ID, 1, { timeConstant: 0, offset: 2 });
    expect(result.ok ? [] : result.error.map(({ code }) => code)).toEqual(['room-value']);
  });
});
