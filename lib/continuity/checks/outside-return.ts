import { addDays, dateOf } from '@/lib/calendar';
import { backAfter, daysWithin, openingHours, workingDays } from '@/lib/outwork';
import { DEFAULT_TERMS, startWith, type OutsideJob } from '@/lib/build';
import type { Instant } from '@/lib/units';
import { sayAt, taskBlocks, type Facts } from '../facts';
import { makeCheck } from './check';

const CONFIDENCE = 0.8;
/** Farther ahead no opening days are looked at. */
const LOOK_AHEAD_DAYS = 240;

/**
 * The moment by which four such jobs in five can be fetched: by what the trade took before, else by its own quote, with its batch
 * and collection days. A day that the trade has promised stands; what it has called ready is. Null: not known.
 */
function returnP80(facts: Facts, job: OutsideJob, from: Instant): Instant | null {
  const trade = facts.document.trades.find(({ id }) => id === job.tradeId);
  if (trade === undefined) return null;
  const { zone } = facts.document.series;
  const ready = job.process?.readyAt ?? null;
  if (ready !== null) return ready;
  const first = dateOf(from, zone);
  const days = workingDays(openingHours(trade, first, addDays(first, LOOK_AHEAD_DAYS), zone), zone);
  const { promisedFor } = job;
  if (promisedFor !== null) return days.find(({ date }) => date >= promisedFor)?.opens ?? null;
  const { batchDays, collectionDays } = trade.terms ?? DEFAULT_TERMS;
  return backAfter({ days, zone, batchDays, collectionDays, transport: 0 }, from, daysWithin(job.quote, facts.known?.ratioOf(trade) ?? null, CONFIDENCE));
}

/** 37: a part is back, with four chances in five, before it is first needed. */
export const outsideReturn = makeCheck(37, 'warn', 'Parts from outside are back with 80 % confidence before they are needed', (facts) => {
  const blocks = taskBlocks(facts);
  return facts.document.outsideJobs.filter(({ collectedAt }) => collectedAt === null).flatMap((job) => {
    const away = facts.blocks.find(({ kind, subject }) => kind === 'away' && subject.id === job.id);
    const from = job.droppedOffAt ?? away?.start ?? null;
    const back = from === null ? null : returnP80(facts, job, from);
    const partIds = new Set(job.parts.map(({ partId }) => partId));
    const first = blocks.find(({ block }) => from !== null && block.start > from && block.partIds.some((id) => partIds.has(id)));
    if (back === null || first === undefined || back <= first.block.start) return [];
    return [{
      key: `${job.id}/${first.task.id}`, about: [first.task, job],
      message: `${startWith(first.task)} is planned for ${sayAt(facts, first.block.start)} and needs parts of “${job.name}”, which is back with 80 % confidence only by ${sayAt(facts, back)}.`,
      fix: 'Drop it off sooner, ask for a firm day, or have other work ready for that session.',
    }];
  });
});
