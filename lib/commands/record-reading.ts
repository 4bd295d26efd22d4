import { changeRecords } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import type { Result } from '@/lib/result';
import { addReading } from '@/lib/safety';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { editSeries, type Saved } from './save-edited';
import { textOf, wholeNumber } from './schemas/values';

const schema = z.strictObject({ text: z.string().trim().min(1).max(1000), on: z.string().trim().max(20), personId: textOf(64), revision: wholeNumber('changes') });

/**
 * Records that somebody read a source again and that its values still hold; undone like any change. `revision`: of the series, as seen.
 * Fails with `input-value`, `source-unknown`, `signed-by-nobody`, `reading-date` or `stale-record`.
 */
export async function recordReading(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<Saved>> {
  const sent = readInput(schema, input);
  if (!sent.ok) return sent;
  const { revision, ...reading } = sent.value;
  return editSeries(context, seriesId, (document) => {
    const readings = addReading(document, reading, dateOf(context.now(), document.series.zone));
    if (!readings.ok) return readings;
    const by = readings.value.at(-1)?.by ?? '';
    return changeRecords(document, [{ ...document.series, revision, sourceReadings: readings.value }], `${by.slice(0, 40)} read again: ${reading.text}`.slice(0, 190));
  });
}
