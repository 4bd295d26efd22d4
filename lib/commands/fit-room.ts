import { changeRecord, DEFAULT_WORKSHOP, roomOf } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

const fitSchema = z.strictObject({ timeConstant: z.number(), offset: z.number(), airZone: z.string().optional() });

const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * Takes the time constant (hours) and the offset (K) that readings gave over into the room of the air they lay in, rounded to tenths; where
 * the workshop has several airs, that one gets numbers of its own. Without an air: into the room of the workshop.
 * Fails with `input-value`, `stale-record`, `nothing-changed` or the rules of the workshop.
 */
export async function fitRoomTo(context: SeriesContext, seriesId: string, revision: number, input: unknown): Promise<Result<Saved>> {
  const read = fitSchema.safeParse(input);
  if (!read.success) return fail([issue('input-value', 'The fit has no time constant or no offset.', 'Load the page again.')]);
  return editSeries(context, seriesId, (document) => {
    const workshop = document.series.workshop ?? DEFAULT_WORKSHOP;
    const { airZone } = read.data;
    const { room: before, heater } = airZone === undefined ? workshop : roomOf(document.series, airZone);
    const room = { ...before, timeConstant: tenth(read.data.timeConstant), offset: tenth(read.data.offset) };
    const hasOthers = document.places.some((place) => place.airZone !== airZone);
    if (airZone === undefined || !hasOthers) return changeRecord(document, 'series', seriesId, revision, { workshop: { ...workshop, room } });
    const others = (workshop.airs ?? []).filter((air) => air.airZone !== airZone);
    return changeRecord(document, 'series', seriesId, revision, { workshop: { ...workshop, airs: [...others, { airZone, room, heater }] } });
  });
}
