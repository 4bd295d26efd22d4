import { existsSync } from 'node:fs';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { copyDatabase } from '@/lib/storage/copy.mjs';
import { locateDatabase } from '@/lib/storage/location.mjs';
import { photosBeside } from '@/lib/storage/photo-folder.mjs';
import { openRaw } from '@/lib/storage/raw.mjs';
import { readPhoto } from '@/lib/storage/photo-image';
import { unwrap } from '@/lib/result';
import { at, sampleSeries } from '../build/sample-series';
import { entry } from '../continuity/sample-log';
import { makeFolder, type TestDatabase } from './database';

const ID = 'series-sample';
const NOW = at('2026-12-01', '21:00');
let folder: Awaited<ReturnType<typeof makeFolder>>;
beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => folder.remove());

async function withSeries(): Promise<TestDatabase> {
  const database = await folder.copyBase();
  unwrap(await database.storage.createSeries(sampleSeries().series, NOW));
  return database;
}

const asNew = (id: string, words: string, text = words) => {
  const { number: _number, ...rest } = entry({ id, text });
  return { entry: rest, words };
};

/** A picture with a place and a camera written into it. */
const withPlace = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#884422' } }).withExif({ IFD0: { Make: 'PhoneMaker' }, IFD3: { GPSLatitude: '51/1 30/1 0/1', GPSLatitudeRef: 'N' } }).withMetadata({ orientation: 6 }).jpeg().toBuffer();

async function codeOf(bytes: Uint8Array): Promise<string | undefined> {
  const read = await readPhoto(bytes);
  return read.ok ? 'kept' : read.error[0]?.code;
}

describe('the log', () => {
  test('keeps an entry once, however often it comes, and in the order of arrival', async () => {
    const { storage } = await withSeries();
    const first = unwrap(await storage.addLogEntries(ID, [asNew('a', 'alpha'), asNew('b', 'beta')]));
    const again = unwrap(await storage.addLogEntries(ID, [asNew('b', 'other'), asNew('a', 'other'), asNew('c', 'gamma')]));
    expect(first.map(({ isNew }) => isNew)).toEqual([true, true]);
    expect(again.map(({ isNew, entry: kept }) => [isNew, kept.text])).toEqual([[false, 'beta'], [false, 'alpha'], [true, 'gamma']]);
    expect((await storage.listLogEntries(ID, {})).map(({ id }) => id)).toEqual(['c', 'b', 'a']);
    expect((await storage.getLogEntry(ID, 'a'))?.number).toBeLessThan((await storage.getLogEntry(ID, 'b'))?.number ?? 0);
    expect((await storage.measureLog(ID)).count).toBe(3);
  });

  test('refuses entries of a series that is gone, and takes its own away with it', async () => {
    const { storage, url } = await withSeries();
    expect(await storage.addLogEntries('nobody', [asNew('a', 'alpha')])).toMatchObject({ ok: false, error: [{ code: 'no-such-series' }] });
    unwrap(await storage.addLogEntries(ID, [asNew('a', 'alpha')]));
    await storage.removeSeries(ID);
    const raw = await openRaw(url);
    expect(await raw.query('SELECT rowid FROM "LogSearch" WHERE "LogSearch" MATCH \'alpha\'')).toEqual([]);
    await raw.close();
  });

  test('finds words, beginnings of words and words without their accents, and takes no sign for a command', async () => {
    const { storage } = await withSeries();
    unwrap(await storage.addLogEntries(ID, [asNew('a', 'Gabel grundiert · café'), asNew('b', 'Gabel lackiert'), asNew('c', 'x" OR "y* NEAR(')]));
    const find = async (text: string) => (await storage.searchLog(ID, text, 10)).map(({ id }) => id);
    expect(await find('gab')).toEqual(['b', 'a']);
    expect(await find('gabel grund')).toEqual(['a']);
    expect(await find('cafe')).toEqual(['a']);
    expect(await find('" OR *')).toEqual(['c']);
    expect(await find('NEAR(')).toEqual(['c']);
    expect(await find('  ')).toEqual([]);
  });

  test('finds among 100,000 entries in 50 ms on a quiet machine', async () => {
    const { storage, url } = await withSeries();
    const raw = await openRaw(url);
    const sample = JSON.stringify(asNew('n', 'word').entry).replaceAll("'", "''");
    await raw.query(`INSERT INTO "LogEntry"("seriesId","id","kind","at","receivedAt","entryJson","words")
      WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 100000)
      SELECT '${ID}', 'n' || i, 'note', i, i, '${sample}', 'frame take ' || (i % 40) || ' primer batch' || i || ' robin bench ' || (i % 977) FROM n`);
    await raw.close();
    const times: Record<string, number> = {};
    for (const text of ['f', 'fr', 'frame', 'batch99', 'frame batch7', 'robin 976', 'nothing']) {
      const runs: number[] = [];
      for (let run = 0; run < 3; run += 1) {
        const start = performance.now();
        const found = await storage.searchLog(ID, text, 50);
        runs.push(performance.now() - start);
        expect(found.length > 0).toBe(text !== 'nothing');
      }
      times[text] = Math.round(Math.min(...runs));
    }
    console.log(`search among 100,000 entries: ${JSON.stringify(times)} ms`);
    // Twice the figure: other work may share the machine.
    expect(Math.max(...Object.values(times))).toBeLessThan(100);
  });
});

describe('photos', () => {
  test('are turned upright, made smaller and freed of place and camera', async () => {
    const sent = await withPlace(4000, 3000);
    expect(sent.includes('PhoneMaker')).toBe(true);
    const image = unwrap(await readPhoto(sent));
    const [large, small] = [await sharp(image.large).metadata(), await sharp(image.small).metadata()];
    expect([large.format, large.width, large.height]).toEqual(['jpeg', 1920, 2560]);
    expect([large.exif, large.orientation, small.exif]).toEqual([undefined, undefined, undefined]);
    expect(image.large.includes('PhoneMaker')).toBe(false);
    expect(Math.max(small.width, small.height)).toBe(400);
  });

  test('that are no photos, empty, too heavy or too large are refused by name', async () => {
    const wide = await sharp({ create: { width: 30_000, height: 10, channels: 3, background: '#000' } }).png().toBuffer();
    const whole = await withPlace(800, 600);
    expect(await codeOf(Buffer.from('<script>alert(1)</script>'))).toBe('photo-unreadable');
    expect(await codeOf(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'))).toBe('photo-unreadable');
    expect(await codeOf(new Uint8Array())).toBe('photo-empty');
    expect(await codeOf(new Uint8Array(60_000_000))).toBe('photo-too-heavy');
    expect(await codeOf(wide)).toBe('photo-too-large');
    expect(await codeOf(whole.subarray(0, whole.length - 400))).toBe('photo-unreadable');
    expect(await codeOf(whole)).toBe('kept');
  });

  test('lie beside the database, are kept once, and come along in the backup', async () => {
    const { storage, file, url } = await withSeries();
    unwrap(await storage.addLogEntries(ID, [asNew('a', 'alpha')]));
    const bytes = await withPlace(600, 400);
    expect(await storage.keepLogPhoto(ID, { entryId: 'zz', id: 'p1', bytes }, NOW)).toMatchObject({ ok: false, error: [{ code: 'no-such-entry' }] });
    const kept = unwrap(await storage.keepLogPhoto(ID, { entryId: 'a', id: '../../p1', bytes }, NOW));
    expect(unwrap(await storage.keepLogPhoto(ID, { entryId: 'a', id: '../../p1', bytes: new Uint8Array() }, NOW))).toEqual(kept);
    expect(await storage.listLogPhotos(ID)).toEqual([kept]);
    expect((await storage.loadLogPhoto(ID, '../../p1', 'large'))?.length).toBe(kept.bytes);
    expect(await storage.loadLogPhoto(ID, 'p2', 'small')).toBeNull();
    await writeFile(path.join(photosBeside(file), 'half.jpg.1.part'), 'x');
    const location = locateDatabase(url, '/');
    if (location.kind !== 'file') throw new Error('not a file');
    const copy = await copyDatabase(location, { now: new Date('2026-12-01T22:00:00Z') });
    const names = (await readdir(photosBeside(copy), { recursive: true })).filter((name) => name.endsWith('g') || name.endsWith('part'));
    expect(names).toHaveLength(2);
    expect((await readFile(path.join(photosBeside(copy), names.find((name) => name.includes('large'))!))).length).toBe(kept.bytes);
    await storage.removeSeries(ID);
    expect(existsSync(path.join(photosBeside(file), path.dirname(names[0]!)))).toBe(false);
  });
});
