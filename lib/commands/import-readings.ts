import { createRecord, quoteName, type Readings } from '@/lib/build';
import { readReadings } from '@/lib/climate';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { nameOf, oneOf, say, splitMessage, textOf } from './schemas/values';

/** Sixteen megabytes: two years of a reading a minute. */
const LARGEST_FILE = 16_000_000;

const importSchema = z.strictObject({
  name: nameOf('The set of readings'),
  airZone: textOf(200),
  /** IANA zone the logger's clock was set to. */
  zone: textOf(100),
  unit: oneOf(['auto', 'C', 'F']),
  dateOrder: oneOf(['auto', 'day first', 'month first']),
  text: z.string({ error: say('No file is chosen.', 'Choose the file that the logger wrote.') })
    .min(1, say('The file is empty.', 'Export the readings once more.')).max(LARGEST_FILE, say('The file is larger than 16 MB.', 'Export a shorter time.')),
});

/** A saved import. */
export interface ReadingsImported extends Saved {
  /** What was wrong with rows, each with row and column as its path; the good rows are kept. */
  readonly issues: readonly Issue[];
  /** Rows of the file, and of those the ones kept. */
  readonly rows: number;
  readonly kept: number;
}

/**
 * Reads the file of a logger and keeps its good rows as one set of readings. Fails with `input-value`, `input-name`, or with what
 * makes the file unreadable as a whole: `readings-empty`, `readings-columns`, `readings-date-order`, `readings-zone`.
 */
export async function importReadings(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<ReadingsImported>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const read = importSchema.safeParse(input);
  if (!read.success) {
    return fail(read.error.issues.map((found) => {
      const { problem, fix } = splitMessage(found.message);
      return issue(found.path[0] === 'name' ? 'input-name' : 'input-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
    }));
  }
  const { name, airZone, text, ...options } = read.data;
  const found = readReadings(text, options);
  const [first, last] = [found.readings[0], found.readings.at(-1)];
  if (first === undefined || last === undefined) {
    return fail(found.issues.length > 0 ? found.issues : [issue('readings-empty', 'The file has no row that can be used.', 'Export the readings once more.')]);
  }
  const id = context.newId();
  const rows = await context.storage.saveReadings(seriesId, id, found.readings);
  if (!rows.ok) return rows;
  const record: Readings = { kind: 'readings', id, revision: 1, order: 0, name, airZone, count: found.readings.length, from: first.at, to: last.at };
  const edited = createRecord(loaded.value, record);
  const saved = await saveEdited(context, loaded.value, edited.ok ? ok({ ...edited.value, change: { ...edited.value.change, label: `Imported ${found.readings.length} readings: ${quoteName(name)}` } }) : edited);
  return saved.ok ? ok({ ...saved.value, issues: found.issues, rows: found.rows, kept: found.readings.length }) : saved;
}
