import { afterAll, beforeAll, expect, test } from 'vitest';
import { listRecords, type RecordEdit, type SeriesDocument } from '@/lib/build';
import type { Reading } from '@/lib/climate';
import { unwrap } from '@/lib/result';
import type { Storage } from '@/lib/storage';
import { addMinutes } from '@/lib/units';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
import { makeFolder } from './database';

const ID = 'series-sample';
const NOW = at('2026-11-30', '12:00');
const cold = coldSeries();
const workshop = cold.series.workshop!;
/** Two airs with a room and a heater of their own beside the workshop's. */
const document: SeriesDocument = {
  ...cold, series: { ...cold.series, workshop: { ...workshop, airs: [
    { airZone: 'tent', room: { ...workshop.room, timeConstant: 1.5, volume: 22, airChanges: 30 }, heater: { kilowatts: 2, kind: 'flued burner', fuel: 'propane', isIgnitionSafe: false } },
    { airZone: 'office', room: { ...workshop.room, offset: 7.5 }, heater: { ...workshop.heater, kilowatts: 0.75, isIgnitionSafe: true } },
  ] } },
};
let folder: Awaited<ReturnType<typeof makeFolder>>;
let storage: Storage;

beforeAll(async () => {
  folder = await makeFolder();
  ({ storage } = await folder.copyBase());
  unwrap(await storage.createSeries(document.series, NOW));
  const edits = listRecords(document).filter(({ kind }) => kind !== 'series').map((after): RecordEdit => ({ kind: after.kind, id: after.id, before: null, after }));
  unwrap(await storage.applyChange(ID, { label: 'Made', edits, undoes: null }, NOW));
});
afterAll(() => folder.remove());

test('room, materials, terms, processes, systems, heating, weather and readings come back as they were saved', async () => {
  expect({ ...(await storage.loadSeries(ID)), changeNumber: 0, planChange: 0 }).toEqual(document);
});

test('the airs of a workshop are read back one by one, changed alone, and taken out again', async () => {
  const before = (await storage.loadSeries(ID))!.series;
  expect(before.workshop?.airs?.map(({ airZone }) => airZone)).toEqual(['tent', 'office']);
  const [tent] = before.workshop!.airs!;
  const after = { ...before, revision: before.revision + 1, workshop: { ...before.workshop!, airs: [{ ...tent!, room: { ...tent!.room, timeConstant: 3 } }] } };
  unwrap(await storage.applyChange(ID, { label: 'Tent timed', edits: [{ kind: 'series', id: ID, before, after }], undoes: null }, NOW));
  expect((await storage.loadSeries(ID))!.series.workshop).toEqual(after.workshop);
  const bare = { ...after, revision: after.revision + 1, workshop };
  unwrap(await storage.applyChange(ID, { label: 'One room', edits: [{ kind: 'series', id: ID, before: after, after: bare }], undoes: null }, NOW));
  expect((await storage.loadSeries(ID))!.series.workshop?.airs).toBeUndefined();
});

test('fifty thousand rows of a logger are kept and read back by time', async () => {
  const rows = Array.from({ length: 50_000 }, (_, k): Reading => ({ at: addMinutes(at('2026-11-01', '00:00'), k), temperature: 8 + (k % 7) / 10, humidity: k % 3 === 0 ? null : 70 }));
  unwrap(await storage.saveReadings(ID, 'readings-tent', rows));
  expect(await storage.listReadings(ID, 'readings-tent', { from: rows[0]!.at, to: rows.at(-1)!.at })).toEqual(rows);
  expect(await storage.listReadings(ID, 'readings-tent', { from: rows[10]!.at, to: rows[12]!.at })).toHaveLength(3);
  expect(await storage.listReadings(ID, 'another', { from: rows[0]!.at, to: rows.at(-1)!.at })).toEqual([]);
});
