/** What finished outside jobs say about how long the next ones take. */
import { DEFAULT_TERMS, type OutsideJob, type SeriesDocument, type Trade } from '@/lib/build';
import { addDays, dateOf } from '@/lib/calendar';
import { threePointMean } from '@/lib/estimate';
import { learnRatio, openingHours, workingDays, workingDaysTaken, type LearnedRatio, type PastJob, type TradeDays, type WorkingDay } from '@/lib/outwork';
import type { Instant } from '@/lib/units';

/** A finished job of the series. */
export interface KeptJob extends PastJob {
  readonly jobId: string;
}

/** Working days that each finished job took, against its likeliest quote. */
export function listPastJobs(document: SeriesDocument): readonly KeptJob[] {
  const { zone } = document.series;
  return document.outsideJobs.flatMap((job): readonly KeptJob[] => {
    const trade = document.trades.find((one) => one.id === job.tradeId);
    const back = job.process?.readyAt ?? job.collectedAt;
    if (trade === undefined || job.droppedOffAt === null || back === null || job.collectedAt === null) return [];
    const days = workingDays(openingHours(trade, dateOf(job.droppedOffAt, zone), dateOf(back, zone), zone), zone);
    const actual = workingDaysTaken(days, job.droppedOffAt, back, zone);
    return [{ jobId: job.id, tradeId: trade.id, craft: trade.craft, quoted: job.quote.likely, actual }];
  });
}

/** The ratio to expect of each trade, made once; null for all while no job is finished. */
export function learnedTrades(document: SeriesDocument): (trade: Trade) => LearnedRatio | null {
  const past = listPastJobs(document);
  const made = new Map<string, LearnedRatio>();
  return (trade) => {
    if (past.length === 0) return null;
    const ratio = made.get(trade.id) ?? learnRatio(past, { tradeId: trade.id, craft: trade.craft });
    made.set(trade.id, ratio);
    return ratio;
  };
}

/** Working days booked for a job: its likeliest quote by what was learned, else the mean of the quote; rounded up, at least one when any are quoted. */
export function bookedDays(job: OutsideJob, learned: LearnedRatio | null): number {
  const days = learned === null || learned.counts.all === 0 ? threePointMean(job.quote) : job.quote.likely * learned.factor;
  return Math.ceil(days - 1e-9);
}

/** A trade's days with its batches and collections. `transport`: minutes home, nought where the trip is planned by itself. */
export function tradeDays(trade: Trade, days: readonly WorkingDay[], zone: string, transport: number): TradeDays {
  const { batchDays, collectionDays } = trade.terms ?? DEFAULT_TERMS;
  return { days, zone, batchDays, collectionDays, transport };
}

/** The trade's open days from a moment for so many days. */
export function openDays(trade: Trade, from: Instant, count: number, zone: string): readonly WorkingDay[] {
  const first = dateOf(from, zone);
  return workingDays(openingHours(trade, first, addDays(first, count), zone), zone);
}
