import { changeRecord, DEFAULT_WORKSHOP } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

const fitSchema = z.strictObject({ timeConstant: z.number(), offset: z.number() });

const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * Takes the time constant (hours) and the offset (K) that readings gave over into the room of the series, rounded to tenths.
 * Fails with `input-value`, `stale-record`, `nothing-changed` or the rules of the workshop.
 */
export async function fitRoomTo(context: SeriesContext, seriesId: string, revision: number, input: unknown): Promise<Result<Saved>> {
  const read = fitSchema.safeParse(input);
  if (!read.success) return fail([issue('input-value', 'The fit has no time constant or no offset.', 'Load the page again.')]);
  return editSeries(context, seriesId, (document) => {
    const workshop = document.series.workshop ?? DEFAULT_WORKSHOP;
    const room = { ...workshop.room, timeConstant: tenth(read.data.timeConstant), offset: tenth(read.data.offset) };
    return changeRecord(document, 'series', seriesId, revision, { workshop: { ...workshop, room } });
  });
}
