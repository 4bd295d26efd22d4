/** An outside trade that is late: by how many working days, and what that makes of its job. */
import type { OutsideJob } from '@/lib/build';
import { addDays } from '@/lib/calendar';

/** Working days when nothing else is said, those offered, and the most that makes sense. */
const SLIP_DAYS = 5;
export const SLIPS_OFFERED = [2, 5, 10] as const;
export const MOST_SLIP_DAYS = 60;

/** Behind the id of a job that slips by other than the usual working days. */
const SLIP_MARK = '@';

/** Job and working days of a target: `job-3` slips the usual days, `job-3@10` ten. Days that make no sense are NaN. */
export function readSlip(target: string): { readonly id: string; readonly days: number } {
  const mark = target.lastIndexOf(SLIP_MARK);
  if (mark < 0) return { id: target, days: SLIP_DAYS };
  const days = Number(target.slice(mark + 1));
  return { id: target.slice(0, mark), days: Number.isInteger(days) && days >= 1 && days <= MOST_SLIP_DAYS ? days : Number.NaN };
}

/** The other way round. @example slipTarget('job-3', 10) // 'job-3@10' */
export const slipTarget = (id: string, days: number): string => (days === SLIP_DAYS ? id : `${id}${SLIP_MARK}${days}`);

/** A job that comes back so many working days later; five of them are a week. */
export function later(job: OutsideJob, days: number): OutsideJob {
  if (job.promisedFor !== null) return { ...job, promisedFor: addDays(job.promisedFor, Math.ceil((days * 7) / 5)) };
  return { ...job, quote: { low: job.quote.low + days, likely: job.quote.likely + days, high: job.quote.high + days } };
}

/** @example tellDays(2) // '2 working days' */
export const tellDays = (days: number): string => (days === 1 ? '1 working day' : `${days} working days`);
