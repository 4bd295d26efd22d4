import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { unwrap } from '@/lib/result';
import { openStorage } from '@/lib/storage';
import { openRaw } from '@/lib/storage/raw.mjs';
import { makeFolder } from './database';
import type { TestDatabase } from './database';
import { AT, changeEdit, changeOf, everything, planResult, seat, series } from './sample';

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

const countHandles = () => readdirSync('/proc/self/fd').length;

async function spoil(sql: string): Promise<void> {
  const raw = await openRaw(database.url);
  await raw.query(sql);
  await raw.close();
}

const IN_FORCE = { foreignKeys: true, journalMode: 'wal', busyTimeout: 5000 };

describe('the connection', () => {
  test('has foreign keys, write-ahead log and busy timeout in force, after transactions too', async () => {
    expect(await database.storage.readSettings()).toEqual(IN_FORCE);
    await database.storage.loadSeries('s1');
    unwrap(await database.storage.applyChange('s1', changeOf('Renamed', [changeEdit(seat, { name: 'Saddle' })]), AT));
    await database.storage.applyChange('nowhere', everything, AT);
    expect(await database.storage.readSettings()).toEqual(IN_FORCE);
  });

  test('stays one connection over many transactions', async () => {
    const before = countHandles();
    for (let times = 0; times < 30; times += 1) unwrap(await database.storage.savePlan('s1', { result: planResult, basedOnChange: 1, madeAt: AT }));
    expect(countHandles()).toBeLessThan(before + 5);
  });

  test('is shared by everybody who opens the same file', async () => {
    const again = await openStorage(database.url);
    unwrap(await again.applyChange('s1', changeOf('Renamed', [changeEdit(seat, { name: 'Saddle' })]), AT));
    expect((await database.storage.loadSeries('s1'))?.changeNumber).toBe(2);
    expect(globalThis.benchtakeClients?.size).toBe(new Set(globalThis.benchtakeClients?.keys()).size);
  });

  test('sees at once what another process wrote', async () => {
    await database.storage.loadSeries('s1');
    expect(await writeFromAnotherProcess(database.url, 'Saddle')).toEqual(['saved']);
    expect((await database.storage.loadSeries('s1'))?.parts.find(({ id }) => id === 'pa3')?.name).toBe('Saddle');
  });

  test('waits for a writer that holds the file, then writes', async () => {
    const other = await openRaw(database.url);
    await other.query('BEGIN IMMEDIATE');
    // The wait blocks its process, so the one that waits has to be another one.
    let isReleased = false;
    let isDoneEarly = false;
    const { waiting } = await new Promise<{ waiting: Promise<readonly string[]> }>((resolve) => {
      const started = writeFromAnotherProcess(database.url, 'Saddle', () => resolve({ waiting: started }));
    });
    void waiting.then(() => {
      isDoneEarly = !isReleased;
    });
    await new Promise((resolve) => {
      setTimeout(resolve, 700);
    });
    isReleased = true;
    await other.query('COMMIT');
    await other.close();
    expect(isDoneEarly).toBe(false);
    expect(await waiting).toEqual(['saved']);
  });

  test('lets one of two writers win and tells the other, in two processes', async () => {
    const outcomes = await Promise.all([writeFromAnotherProcess(database.url, 'Saddle'), writeFromAnotherProcess(database.url, 'Pillion')]);
    expect(outcomes.map(([first]) => first).toSorted()).toEqual(['saved', 'stale-record']);
    const refused = outcomes.find(([first]) => first === 'stale-record');
    expect(refused?.[1]).toMatch(/^The part “(Saddle|Pillion)” has been changed since you loaded it: name \(change 2/u);
    expect((await database.storage.loadSeries('s1'))?.changeNumber).toBe(2);
  });

  test('lets one of two writers win and tells the other, in one process', async () => {
    const outcomes = await Promise.all(
      ['Saddle', 'Pillion'].map((name) => database.storage.applyChange('s1', changeOf('Renamed', [changeEdit(seat, { name })]), AT)),
    );
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, false]);
  });
});

describe('opening', () => {
  test('a database that is not there says what to do, and makes no file', async () => {
    const file = path.join(folder.path, 'missing.db');
    await expect(openStorage(`file:${file}`)).rejects.toThrow(`There is no database at ${file}. Run npm start once; it makes one.`);
    expect(readdirSync(folder.path)).not.toContain('missing.db');
  });

  test('a database without tables says what to do', async () => {
    const url = `file:${path.join(folder.path, 'bare.db')}`;
    const bare = await openRaw(url);
    await bare.query('CREATE TABLE other (id)');
    await bare.close();
    await expect(openStorage(url)).rejects.toThrow(/has no tables yet. Run npm start once/u);
  });
});

describe('a damaged row', () => {
  test.each([
    ["UPDATE Task SET shotsJson = '[{' WHERE id = 'ta1'", 'table Task, row ta1, column shotsJson: is not JSON'],
    ["UPDATE Task SET shotsJson = '[{}]' WHERE id = 'ta1'", 'table Task, row ta1, column shotsJson: at 0.id'],
    ["UPDATE Task SET category = 'juggling' WHERE id = 'ta1'", 'table Task, row ta1, column category: must be one of strip'],
    ["UPDATE Person SET hoursJson = '[{\"weekday\":8,\"from\":\"\",\"to\":\"\"}]'", 'table Person, row p1, column hoursJson: at 0.weekday'],
    ["UPDATE Link SET toTaskId = NULL, toJobId = NULL WHERE id = 'l1'", 'table Link, row l1, columns toTaskId and toJobId are both empty'],
  ])('is named with its table and column: %s', async (sql, message) => {
    await spoil(sql);
    await expect(database.storage.loadSeries('s1')).rejects.toThrow(message);
  });

  test('of the history or a plan is named too', async () => {
    unwrap(await database.storage.savePlan('s1', { result: planResult, basedOnChange: 1, madeAt: AT }));
    await spoil("UPDATE Change SET editsJson = '[{\"kind\":\"task\",\"id\":\"x\",\"before\":5,\"after\":null}]'");
    await spoil("UPDATE Plan SET resultJson = '{}'");
    await expect(database.storage.listChanges('s1', 5)).rejects.toThrow('table Change, row 1, column editsJson: at 0.before: is not a record');
    await expect(database.storage.getPlan('s1', 1)).rejects.toThrow('table Plan, row 1, column resultJson: at blocks');
  });
});

/** Renames the seat from revision 1 in a process of its own; prints the outcome. */
function writeFromAnotherProcess(url: string, name: string, onOpened: () => void = () => {}): Promise<readonly string[]> {
  const script = path.join(import.meta.dirname, 'writer.ts');
  const child = spawn(process.execPath, ['--import', 'tsx', script, url, name], { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  child.stdout.on('data', (text: Buffer) => {
    output += text.toString();
    if (output.includes('opened\n')) onOpened();
  });
  return new Promise((resolve) => {
    child.on('close', () => resolve(output.replace('opened\n', '').trim().split('\n')));
  });
}
