/** Rows of loggers. They lie beside the document, since there may be tens of thousands of them. */
import type { Reading } from '@/lib/climate';
import type { Instant } from '@/lib/units';
import { readInstant, writeInstant } from './column';
import type { Db } from './connection';

/** Rows of one INSERT, handed over as one JSON text: several times as fast as row by row. */
const ROWS_AT_ONCE = 10_000;

/** Keeps the rows of one import. They count once the series holds a record of that id. */
export async function insertReadingRows(db: Db, seriesId: string, readingsId: string, readings: readonly Reading[]): Promise<void> {
  for (let first = 0; first < readings.length; first += ROWS_AT_ONCE) {
    const rows = JSON.stringify(readings.slice(first, first + ROWS_AT_ONCE).map(({ at, temperature, humidity }) => [at, temperature, humidity]));
    await db.$executeRaw`INSERT INTO "ReadingRow" ("seriesId", "readingsId", "at", "temperature", "humidity")
      SELECT ${seriesId}, ${readingsId}, json_extract(value, '$[0]'), json_extract(value, '$[1]'), json_extract(value, '$[2]') FROM json_each(${rows})`;
  }
}

/** Rows of one import between two moments, in order of time. */
export async function findReadingRows(db: Db, seriesId: string, readingsId: string, between: { readonly from: Instant; readonly to: Instant }): Promise<readonly Reading[]> {
  const at = { gte: writeInstant(between.from), lte: writeInstant(between.to) };
  const rows = await db.readingRow.findMany({ where: { seriesId, readingsId, at }, orderBy: { at: 'asc' }, select: { at: true, temperature: true, humidity: true } });
  return rows.map((row) => ({ at: readInstant(row.at), temperature: row.temperature, humidity: row.humidity }));
}
