import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { listRecords } from '@/lib/build';
import type { SeriesRecord } from '@/lib/build';
import { unwrap } from '@/lib/result';
import { openRaw } from '@/lib/storage/raw.mjs';
import { minutes } from '@/lib/units';
import { makeFolder } from './database';
import type { TestDatabase } from './database';
import {
  AT, bracket, changeEdit, changeOf, everything, frame, makeEdit, place, prime, records, removeEdit, seat, series, session, strip, zinc,
} from './sample';

let folder: Awaited<ReturnType<typeof makeFolder>>;
let database: TestDatabase;

beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => folder.remove());
beforeEach(async () => {
  database = await folder.copyBase();
  unwrap(await database.storage.createSeries(series, AT));
  unwrap(await database.storage.applyChange('s1', everything, AT));
});

const load = async () => {
  const document = await database.storage.loadSeries('s1');
  if (!document) throw new Error('The series is gone.');
  return document;
};
const found = async (record: SeriesRecord) => listRecords(await load()).find(({ kind, id }) => kind === record.kind && id === record.id);

describe('a change', () => {
  test.each([series, ...records].map((record) => [`${record.kind} ${record.id}`, record] as const))('brings %s back as it was saved', async (_name, record) => {
    expect(await found(record)).toEqual(record);
  });

  test('keeps the lists in their order, whatever order they were written in', async () => {
    const document = await load();
    expect(document.tasks.map(({ id }) => id)).toEqual(['ta1', 'ta2']);
    const swap = [changeEdit(prime, { order: 1 }), changeEdit(strip, { order: 0 })];
    unwrap(await database.storage.applyChange('s1', changeOf('Reordered', swap), AT));
    expect((await load()).tasks.map(({ id }) => id)).toEqual(['ta2', 'ta1']);
  });

  test('replaces the join rows of a changed record in their new order', async () => {
    const edit = changeEdit(prime, { parts: [{ partId: 'pa3', from: null, to: null }], coats: prime.coats.toReversed(), equipmentIds: [] });
    unwrap(await database.storage.applyChange('s1', changeOf('Changed', [edit]), AT));
    expect(await found(prime)).toEqual(edit.after);
  });

  test('changes the series itself', async () => {
    const edit = changeEdit(series, { name: 'Outfit, second try', leadDays: 6 });
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [edit]), AT));
    const document = await load();
    expect(document.series).toEqual(edit.after);
    expect(document.changeNumber).toBe(2);
  });

  test('numbers the history and keeps every edit in it', async () => {
    const edit = changeEdit(strip, { name: 'Strip and sort' });
    const saved = unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [edit]), AT));
    expect(saved).toEqual({ number: 2, at: AT, label: 'Renamed', edits: [edit], undoes: null, undoneBy: null });
    expect(await database.storage.getChange('s1', 2)).toEqual(saved);
    expect((await database.storage.listChanges('s1', 10)).map(({ number }) => number)).toEqual([2, 1]);
    expect((await database.storage.listChanges('s1', 1)).map(({ number }) => number)).toEqual([2]);
    expect((await load()).changeNumber).toBe(2);
  });

  test('removes records together with those that pointed at them', async () => {
    const all = records.map(removeEdit).toReversed();
    unwrap(await database.storage.applyChange('s1', changeOf('Removed everything', all), AT));
    expect(listRecords(await load())).toEqual([series]);
  });

  test('moves a reference away and removes what it pointed at in one go', async () => {
    const edits = [removeEdit(place), changeEdit(frame, { whereabouts: { kind: 'store', id: null } }), changeEdit(strip, { placeId: 'pl2' }), changeEdit(session, { placeIds: ['pl2'] })];
    unwrap(await database.storage.applyChange('s1', changeOf('Gave up the arch', edits), AT));
    expect((await load()).places.map(({ id }) => id)).toEqual(['pl2']);
  });

  test('leaves another series with the same ids alone', async () => {
    unwrap(await database.storage.createSeries({ ...series, id: 's2', order: 1 }, AT));
    unwrap(await database.storage.applyChange('s2', everything, AT));
    unwrap(await database.storage.applyChange('s2', changeOf('Renamed', [changeEdit(strip, { name: 'Other' })]), AT));
    expect(await found(strip)).toEqual(strip);
    expect(await database.storage.removeSeries('s2')).toBe(true);
    expect(listRecords(await load())).toHaveLength(records.length + 1);
  });

  test('saves a name of 10,000 characters, quotation marks and all', async () => {
    const name = `"'\\ ${'ß'.repeat(10_000)} 日本`;
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [changeEdit(seat, { name })]), AT));
    expect((await found(seat))?.name).toBe(name);
  });
});

describe('a stale change', () => {
  test('is refused with the fields that changed and the change that did it', async () => {
    const theirs = changeEdit(strip, { effort: { ...strip.effort, high: minutes(400) }, placeId: 'pl2' });
    unwrap(await database.storage.applyChange('s1', changeOf('Changed task Strip the frame', [theirs]), AT));
    const mine = await database.storage.applyChange('s1', changeOf('Mine', [changeEdit(strip, { name: 'Mine' })]), AT);
    expect(mine).toEqual({
      ok: false,
      error: [
        expect.objectContaining({
          code: 'stale-record',
          message: 'The task “Strip the frame” has been changed since you loaded it: place, hands-on time (change 2 “Changed task Strip the frame”).',
          fix: 'Load it again and repeat your change.',
          subjects: [{ kind: 'task', id: 'ta2', name: 'Strip the frame' }],
        }),
      ],
    });
    expect(await found(strip)).toEqual(theirs.after);
    expect((await load()).changeNumber).toBe(2);
  });

  test('names the fields of every change since, not of the last alone', async () => {
    const first = changeEdit(strip, { isDusty: true });
    unwrap(await database.storage.applyChange('s1', changeOf('One', [first]), AT));
    unwrap(await database.storage.applyChange('s1', changeOf('Two', [changeEdit(first.after, { isNoisy: false })]), AT));
    const mine = await database.storage.applyChange('s1', changeOf('Mine', [changeEdit(strip, { name: 'Mine' })]), AT);
    const [refused] = mine.ok ? [] : mine.error;
    expect(refused?.message).toContain('noise, dust');
  });

  test('is refused when the record has been removed', async () => {
    unwrap(await database.storage.applyChange('s1', changeOf('Removed part Seat', [removeEdit(seat)]), AT));
    const mine = await database.storage.applyChange('s1', changeOf('Mine', [changeEdit(seat, { name: 'Mine' })]), AT);
    const [refused] = mine.ok ? [] : mine.error;
    expect(refused?.message).toBe('The part “Seat” has been removed since you loaded it (change 2 “Removed part Seat”).');
  });

  test('is refused when the record has been made already', async () => {
    const mine = await database.storage.applyChange('s1', changeOf('Mine', [makeEdit(seat)]), AT);
    const [refused] = mine.ok ? [] : mine.error;
    expect(refused?.message).toBe('The part “Seat” has been made meanwhile (change 1 “Made everything”).');
  });

  test('tells of every stale record, not of the first', async () => {
    const theirs = [changeEdit(seat, { name: 'Saddle' }), changeEdit(strip, { name: 'Other' })];
    unwrap(await database.storage.applyChange('s1', changeOf('Theirs', theirs), AT));
    const mine = await database.storage.applyChange('s1', changeOf('Mine', [changeEdit(strip, { isDusty: true }), changeEdit(seat, { assembly: 'Seats' })]), AT);
    expect(mine.ok ? [] : mine.error.flatMap(({ subjects }) => subjects.map(({ id }) => id))).toEqual(['pa3', 'ta2']);
  });

  test('leaves nothing half saved when one of its edits is good', async () => {
    unwrap(await database.storage.applyChange('s1', changeOf('Theirs', [changeEdit(seat, { name: 'Saddle' })]), AT));
    const before = await load();
    const edits = [changeEdit(strip, { name: 'Good' }), makeEdit({ ...bracket, id: 'pa9' }), changeEdit(seat, { name: 'Stale' })];
    expect((await database.storage.applyChange('s1', changeOf('Mine', edits), AT)).ok).toBe(false);
    expect(await load()).toEqual(before);
    expect(await database.storage.listChanges('s1', 10)).toHaveLength(2);
  });
});

describe('a reference to nothing', () => {
  test('is refused, named, and leaves nothing half saved', async () => {
    const before = await load();
    const edits = [makeEdit({ ...bracket, id: 'pa9' }), changeEdit(prime, { placeId: 'gone', parts: [{ partId: 'nowhere', from: null, to: null }] })];
    const refused = await database.storage.applyChange('s1', changeOf('Mine', edits), AT);
    expect(refused.ok ? [] : refused.error.map(({ code, message }) => [code, message])).toEqual([
      ['reference-missing', 'The task “Prime the frame” names a place that is not in the series any more.'],
      ['reference-missing', 'The task “Prime the frame” names a part that is not in the series any more.'],
    ]);
    expect(await load()).toEqual(before);
  });

  test('is refused when a record is removed that another one uses', async () => {
    const refused = await database.storage.applyChange('s1', changeOf('Mine', [removeEdit(bracket)]), AT);
    expect(refused.ok ? [] : refused.error.map(({ code, message }) => [code, message])).toEqual([
      ['still-used', 'The part “Bracket” cannot be removed: the task “Prime the frame” uses it since.'],
      ['still-used', 'The part “Bracket” cannot be removed: the outside job “Galvanize” uses it since.'],
    ]);
    expect(await found(bracket)).toEqual(bracket);
  });

  test('cannot reach into another series', async () => {
    unwrap(await database.storage.createSeries({ ...series, id: 's2' }, AT));
    const refused = await database.storage.applyChange('s2', changeOf('Mine', [makeEdit(zinc)]), AT);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['reference-missing', 'reference-missing', 'reference-missing']);
  });

  test('is refused by the database itself', async () => {
    const raw = await openRaw(database.url);
    await expect(raw.query("DELETE FROM Place WHERE id = 'pl1'")).rejects.toThrow(/ForeignKeyConstraintViolation/u);
    expect(await raw.query('PRAGMA foreign_key_check')).toEqual([]);
    await raw.close();
  });
});

describe('undoing', () => {
  const rename = changeEdit(strip, { name: 'Renamed' });
  const back = { ...removeEdit(rename.after), after: { ...strip, revision: 3 } };

  test('marks the change as undone, by which', async () => {
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [rename]), AT));
    unwrap(await database.storage.applyChange('s1', changeOf('Undid', [back], 2), AT));
    expect((await database.storage.getChange('s1', 2))?.undoneBy).toBe(3);
    expect((await found(strip))?.name).toBe('Strip the frame');
  });

  test('is refused a second time', async () => {
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [rename]), AT));
    unwrap(await database.storage.applyChange('s1', changeOf('Undid', [back], 2), AT));
    const refused = await database.storage.applyChange('s1', changeOf('Undid', [], 2), AT);
    expect(refused.ok ? [] : refused.error.map(({ code, message }) => [code, message])).toEqual([
      ['already-undone', 'Change 2 (Renamed) has been undone already, by change 3.'],
    ]);
    expect((await load()).changeNumber).toBe(3);
  });

  test('of an undo lets the first change stand again', async () => {
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [rename]), AT));
    unwrap(await database.storage.applyChange('s1', changeOf('Undid', [back], 2), AT));
    const again = { ...rename, before: back.after, after: { ...rename.after, revision: 4 } };
    unwrap(await database.storage.applyChange('s1', changeOf('Redid', [again], 3), AT));
    expect((await database.storage.getChange('s1', 2))?.undoneBy).toBeNull();
    expect((await database.storage.getChange('s1', 3))?.undoneBy).toBe(4);
  });

  test('of a change that is not there is refused', async () => {
    const refused = await database.storage.applyChange('s1', changeOf('Undid', [], 99), AT);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['no-such-change']);
  });
});

describe('a change that contradicts itself', () => {
  test.each([
    ['edits one record twice', [changeEdit(strip, { name: 'a' }), changeEdit(strip, { name: 'b' })]],
    ['skips a revision', [{ ...changeEdit(strip, {}), after: { ...strip, revision: 9 } }]],
    ['is empty on both sides', [{ kind: 'task' as const, id: 'ta2', before: null, after: null }]],
    ['names another record than it holds', [{ kind: 'task' as const, id: 'ta1', before: null, after: strip }]],
    ['removes the series', [removeEdit(series)]],
  ])('throws when it %s', async (_what, edits) => {
    await expect(database.storage.applyChange('s1', changeOf('Bug', edits), AT)).rejects.toThrow();
    expect((await load()).changeNumber).toBe(1);
  });
});

describe('a series', () => {
  test('is refused a second time', async () => {
    const refused = await database.storage.createSeries(series, AT);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['series-exists']);
  });

  test('that does not exist takes no change and loads as null', async () => {
    const refused = await database.storage.applyChange('nowhere', everything, AT);
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['no-such-series']);
    expect(await database.storage.loadSeries('nowhere')).toBeNull();
    expect(await database.storage.removeSeries('nowhere')).toBe(false);
  });

  test('goes with all its rows', async () => {
    expect(await database.storage.removeSeries('s1')).toBe(true);
    expect(await database.storage.listSeries()).toEqual([]);
    const raw = await openRaw(database.url);
    for (const table of ['Task', 'TaskPart', 'Coat', 'SessionCrew', 'OutsideJobPart', 'Link', 'Change']) {
      expect(await raw.query(`SELECT * FROM ${table}`), table).toEqual([]);
    }
    await raw.close();
  });

  test('is listed with its number of changes', async () => {
    expect(await database.storage.listSeries()).toEqual([{ id: 's1', name: 'Outfit', changeNumber: 1, planChange: 1, createdAt: AT }]);
  });
});
