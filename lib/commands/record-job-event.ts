import { findRecord, type OutsideJob, type Part, type SeriesDocument } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { z } from 'zod';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import type { Saved } from './save-edited';
import { civilDate, momentIn, orNull, splitMessage, type FormSetting } from './schemas/values';

/** What happened to an outside job. `at` null takes it back. */
const eventSchema = (setting: FormSetting) => z.discriminatedUnion('event', [
  z.strictObject({ event: z.literal('dropped off'), at: orNull(momentIn(setting)) }),
  z.strictObject({ event: z.literal('promised'), for: orNull(civilDate) }),
  z.strictObject({ event: z.literal('collected'), at: orNull(momentIn(setting)) }),
]);

type JobEvent = z.output<ReturnType<typeof eventSchema>>;

function withEvent(job: OutsideJob, event: JobEvent): OutsideJob {
  switch (event.event) {
    case 'dropped off': return { ...job, droppedOffAt: event.at };
    case 'promised': return { ...job, promisedFor: event.for };
    case 'collected': return { ...job, collectedAt: event.at };
  }
}

function isAway(job: OutsideJob): boolean {
  return job.droppedOffAt !== null && job.collectedAt === null;
}

/** Parts are at the trade from drop-off to collection, and in store when they are back. */
function moveParts(document: SeriesDocument, before: OutsideJob, after: OutsideJob): readonly Part[] {
  if (isAway(before) === isAway(after)) return [];
  const whereabouts: Part['whereabouts'] = isAway(after) ? { kind: 'trade', id: after.tradeId } : { kind: 'store', id: null };
  return after.parts.flatMap((use) => {
    const part = findRecord(document, 'part', use.partId);
    return part === undefined ? [] : [{ ...part, whereabouts }];
  });
}

const WORDS = { 'dropped off': 'Dropped off', promised: 'Promised day of', collected: 'Collected' } as const;

/**
 * Records that an outside job was dropped off or collected (and where its parts are now), or the day the trade promised.
 * Input: `{ event: 'dropped off', at }`, `{ event: 'promised', for: '2026-12-04' }` or `{ event: 'collected', at }`, with an
 * instant or a local time; null takes it back. Fails with `input-value`, `collected-before-drop-off`,
 * `collected-without-drop-off`, `record-missing`, `stale-record` or `nothing-changed`.
 */
export async function recordJobEvent(context: SeriesContext, seriesId: string, jobId: string, revision: number, input: unknown): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'outsideJob', id: jobId, revision }, (job, document) => {
    const event = eventSchema({ zone: document.series.zone, newId: context.newId }).safeParse(input);
    if (!event.success) {
      return fail(event.error.issues.map((found) => {
        const { problem, fix } = splitMessage(found.message);
        return issue('input-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
      }));
    }
    const after = withEvent(job, event.data);
    const isTakenBack = 'at' in event.data ? event.data.at === null : event.data.for === null;
    return turnTo(`${isTakenBack ? 'Not after all: ' : ''}${WORDS[event.data.event]}`, after, ...moveParts(document, job, after));
  });
}
