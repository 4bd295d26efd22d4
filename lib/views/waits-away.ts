/** Parts at outside trades: when they come back, how sure that is, and what their process asks for. */
import { DEFAULT_PROCESS, DEFAULT_TERMS, type OutsideJob, type Trade } from '@/lib/build';
import { addDays, dateOf, formatDay, formatMoment, startOfDay } from '@/lib/calendar';
import {
  backAfter, checkBatch, checkPreparations, checkReturnWindow, checkVentHoles, daysWithin, galvanizedPreparation, latestDropOff, probabilityBack, type LearnedRatio, type TradeDays,
} from '@/lib/outwork';
import { learnedTrades, openDays, tradeDays } from '@/lib/plan';
import { issue, type Issue } from '@/lib/result';
import { minutesBetween, MINUTES_PER_HOUR, type Instant } from '@/lib/units';
import { listHeld, plannedStart, type Waiting } from './waits-holds';
import type { AwayJob } from './waits-model';

/** Days looked ahead for a return. */
const HORIZON_DAYS = 240;
const CONFIDENCES = [0.5, 0.8, 0.95] as const;

const percent = (share: number): string => `${Math.round(share * 100)} %`;

interface Case extends Waiting {
  readonly job: OutsideJob;
  readonly trade: Trade;
  readonly ratio: LearnedRatio | null;
  readonly days: TradeDays;
  /** When it was or will be dropped off. */
  readonly out: Instant;
  /** When the next work needs it; null: nothing does. */
  readonly needed: Instant | null;
}

/** What the job's preparation, amount, vent holes and return ask for. */
function processAlarms({ job, trade, document, now, needed, out }: Case): readonly Issue[] {
  const { zone } = document.series;
  const terms = trade.terms ?? DEFAULT_TERMS;
  const process = job.process ?? DEFAULT_PROCESS;
  const named = new Set(process.preparations.map(({ name }) => name));
  const steps = [...process.preparations, ...terms.preparations.filter((name) => !named.has(name)).map((name) => ({ name, doneAt: null }))];
  const { width, height, diameter, isDrilledAfter } = process.vents;
  const hasVents = width !== null && height !== null && diameter !== null;
  const { amount } = terms.minimum;
  const treated = process.treatedAt ?? job.collectedAt;
  const { hours, afterwards } = terms.returnWindow;
  const isZinc = terms.returnWindow.hours !== null && treated !== null && trade.craft.toLowerCase().includes('galvani');
  const age = treated === null ? 0 : minutesBetween(treated, needed ?? now) / MINUTES_PER_HOUR;
  return [
    ...(job.droppedOffAt === null || process.preparations.some(({ doneAt }) => doneAt === null) ? checkPreparations(job.name, steps, out, zone).map((one) => ({ ...one, severity: 'warn' as const })) : []),
    ...(hasVents ? checkVentHoles(job.name, { width, height }, { diameter, drilled: isDrilledAfter ? 'after' : 'before' }) : []),
    ...(amount !== null && process.amount !== null ? checkBatch(trade.name, { amount, unit: terms.minimum.unit }, process.amount) : []),
    ...(hours !== null && treated !== null ? checkReturnWindow(job.name, { hours, afterwards }, treated, needed ?? now, zone).issues : []),
    ...(isZinc ? [issue('galvanized-preparation', `${job.name}: at this age the zinc is to be painted like this: ${galvanizedPreparation(age, process.isQuenched)}.`, 'A state DOT memo and the galvanizers’ association say so; the paint’s data sheet comes first.', { severity: 'warn' })] : []),
  ];
}

function sayNeeded({ needed, days, job, ratio, out, document }: Case): string | null {
  if (needed === null) return null;
  const chance = job.promisedFor === null ? ` Back by then with ${percent(probabilityBack(days, job.quote, ratio, out, needed))}.` : '';
  return `Needed ${formatMoment(needed, document.series.zone)}.${chance}`;
}

function sayDropOff({ job, needed, days, ratio, now, document }: Case, confidence: number): string | null {
  if (job.droppedOffAt !== null || needed === null) return null;
  const found = latestDropOff(days, job.quote, ratio, confidence, { from: now, by: needed });
  if (!found.ok) return found.error.map(({ message, fix }) => `${message} ${fix}`).join(' ');
  return `Drop it off by ${formatDay(dateOf(found.value.day.opens, document.series.zone))} to have it back in time with ${percent(found.value.probability)}.`;
}

function sayLearned(ratio: LearnedRatio | null): string {
  if (ratio === null || ratio.counts.all === 0) return 'No past job yet: the quote is all there is.';
  const { counts, factor } = ratio;
  return `Its jobs take ${factor.toFixed(2)} of the quote (n = ${counts.trade} of its own, ${counts.craft} of its craft, ${counts.all} in all).`;
}

function showJob(one: Case, confidence: number): AwayJob {
  const { job, trade, document, days, ratio, out } = one;
  const { zone } = document.series;
  const isAway = job.droppedOffAt !== null;
  const parts = [...new Set(job.parts.map(({ partId }) => document.parts.find((part) => part.id === partId)?.name ?? 'a removed part'))];
  const isLate = isAway && job.promisedFor !== null && startOfDay(addDays(job.promisedFor, 1), zone) <= one.now;
  return {
    id: job.id, revision: job.revision, name: job.name, trade: trade.name, parts: parts.join(', ') || 'no part named', isAway,
    since: isAway ? `since ${formatMoment(out, zone)}` : 'not dropped off yet',
    promisedFor: job.promisedFor,
    chances: CONFIDENCES.flatMap((share) => {
      const back = backAfter(days, out, daysWithin(job.quote, ratio, share));
      return back === null ? [] : [{ percent: share * 100, day: formatDay(dateOf(back, zone)) }];
    }),
    needed: sayNeeded(one), dropOff: sayDropOff(one, confidence), learned: sayLearned(ratio),
    holds: listHeld(one, { kind: 'outsideJob', id: job.id }).map(({ kind, id, name, planned }) => ({ kind, id, name, planned })),
    alarms: [
      ...(isLate ? [issue('promise-passed', `${job.name} was promised for ${formatDay(job.promisedFor ?? '')}, and is not back.`, `Ask ${trade.name}, and write down the new day.`, { severity: 'warn' })] : []),
      ...processAlarms(one),
    ],
  };
}

/** Every open job: those that are away first, then those to be dropped off, the soonest first. */
export function listJobs(waiting: Waiting, confidence: number): readonly AwayJob[] {
  const { document, now } = waiting;
  const { zone } = document.series;
  const learned = learnedTrades(document);
  return document.outsideJobs.filter((job) => job.collectedAt === null).flatMap((job) => {
    const trade = document.trades.find((one) => one.id === job.tradeId);
    if (trade === undefined) return [];
    const out = job.droppedOffAt ?? plannedStart(waiting, { kind: 'outsideJob', id: job.id }) ?? now;
    const needed = listHeld(waiting, { kind: 'outsideJob', id: job.id }).find(({ start }) => start !== null)?.start ?? null;
    const from = out < now ? out : now;
    const days = tradeDays(trade, openDays(trade, from, HORIZON_DAYS, zone), zone, trade.trip / 2);
    return [{ start: out, job: showJob({ ...waiting, job, trade, ratio: learned(trade), days, out, needed }, confidence) }];
  }).toSorted((a, b) => a.start - b.start).map(({ job }) => job);
}
