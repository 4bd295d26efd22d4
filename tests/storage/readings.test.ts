import { afterAll, beforeAll, expect, test } from 'vitest';
import { listRecords, type RecordEdit } from '@/lib/build';
import type { Reading } from '@/lib/climate';
import { unwrap } from '@/lib/result';
import type { Storage } from '@/lib/storage';
import { addMinutes } from '@/lib/units';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
import { makeFolder } from './database';

const ID = 'series-sample';
const NOW = at('2026-11-30', '12:00');
const document = coldSeries();
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

test('fifty thousand rows of a logger are kept and read back by time', async () => {
  const rows = Array.from({ length: 50_000 }, (_, k): Reading => ({ at: addMinutes(at('2026-11-01', '00:00'), k), temperature: 8 + (k % 7) / 10, humidity: k % 3 === 0 ? null : 70 }));
  unwrap(await storage.saveReadings(ID, 'readings-tent', rows));
  expect(await storage.listReadings(ID, 'readings-tent', { from: rows[0]!.at, to: rows.at(-1)!.at })).toEqual(rows);
  expect(await storage.listReadings(ID, 'readings-tent', { from: rows[10]!.at, to: rows[12]!.at })).toHaveLength(3);
  expect(await storage.listReadings(ID, 'another', { from: rows[0]!.at, to: rows.at(-1)!.at })).toEqual([]);
});
