/** What a forecast says, in moments and shares: plain data that is saved with its number. */
import { shootDue, type SeriesDocument } from '@/lib/build';
import { addDays, dateOf, daysBetween, mondayOf, isoWeekOf, formatIsoWeek, startOfDay } from '@/lib/calendar';
import { episodeActivity, isWorkshopWork, readName, type Compiled } from '@/lib/plan';
import type { ForecastInput, RunBlock } from '@/lib/simulation';
import { instant, type Instant } from '@/lib/units';
import { meanOf, quantileError, quantileOf, shareError } from './statistics';

/** A date as odds. */
export interface Outlook {
  /** Moments of the 1 % to the 99 % quantile, 99 of them; null: not within the sessions assumed. */
  readonly percentiles: readonly (Instant | null)[];
  /** Standard error of the 80 % quantile, minutes: how exact the number of runs makes it. Null: not known. */
  readonly error: number | null;
}

export interface EpisodeForecast {
  readonly episodeId: string;
  readonly shootDue: Instant;
  /** When its recording is complete. */
  readonly recorded: Outlook;
  /** 0 to 1: recorded by its due moment, so that the release date holds; with the error of the runs. */
  readonly chance: number;
  readonly chanceError: number;
}

/** What holds the end up most often. */
export interface Threat {
  readonly subject: { readonly kind: 'task' | 'outsideJob'; readonly id: string };
  /** Share of runs in which it was on the chain that set the finish. */
  readonly share: number;
  /** Mean minutes by which the finish comes sooner when an outside job takes a working day, or a task an hour, less. Null: not worked out. */
  readonly worth: number | null;
}

/** An outside trade, by the jobs it has. */
export interface TradeThreat {
  readonly tradeId: string;
  /** Jobs of it that are still open. */
  readonly jobs: number;
  /** Share of runs in which the job of it that held the finish up most often did so: with several jobs it is at least this. */
  readonly share: number;
  /** Mean minutes by which the finish comes sooner when each of its jobs takes a working day less. Null: not worked out. */
  readonly worth: number | null;
}

/** Episodes recorded but not released at the end of a week. */
export interface BankWeek {
  readonly week: string;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export interface ForecastResult {
  readonly runs: number;
  readonly seed: number;
  /** Milliseconds of simulating. */
  readonly time: number;
  readonly finish: Outlook;
  /** End of the last session somebody planned; later ones are assumed. */
  readonly lastPlanned: Instant;
  /** Share of runs that end after it. */
  readonly beyondPlanned: number;
  readonly episodes: readonly EpisodeForecast[];
  readonly threats: readonly Threat[];
  /** Trades with open jobs, the worst first; left out of forecasts made before they were counted. */
  readonly trades?: readonly TradeThreat[] | undefined;
  readonly bank: readonly BankWeek[];
  /** Means of a run. */
  readonly lostShots: number;
  readonly spoiltCoats: number;
  readonly missedWindows: number;
  readonly retakes: number;
  readonly assumptions: readonly string[];
}

function outlookOf(compiled: Compiled, values: Int32Array): Outlook {
  const { clock, horizon } = compiled.draft;
  const sorted = values.toSorted();
  const percentiles = Array.from({ length: 99 }, (_, k) => {
    const minute = quantileOf(sorted, (k + 1) / 100);
    return minute >= horizon ? null : clock.moment(minute);
  });
  const error = quantileError(values, 0.8);
  return { percentiles, error: Number.isFinite(error) ? error : null };
}

/** The date that holds with a confidence of 1 to 99 %; null: not within the sessions assumed. @throws RangeError outside. */
export function promiseDate(outlook: Outlook, confidence: number): Instant | null {
  const percent = Math.round(confidence * 100);
  if (!(percent >= 1 && percent <= 99)) throw new RangeError(`A confidence from 0.01 to 0.99 is needed, got ${confidence}`);
  return outlook.percentiles[percent - 1] ?? null;
}

function columnOf(block: RunBlock, width: number, column: number): Int32Array {
  return Int32Array.from({ length: block.count }, (_, k) => block.watched[k * width + column]!);
}

function bankOf(compiled: Compiled, block: RunBlock, watched: readonly string[]): BankWeek[] {
  const { clock, document, now } = compiled.draft;
  const { zone } = document.series;
  const dated = document.episodes.filter((episode) => episode.status !== 'released');
  if (dated.length === 0) return [];
  const monday = mondayOf(isoWeekOf(dateOf(now, zone)));
  const last = dated.reduce((latest, episode) => (episode.releaseDate > latest ? episode.releaseDate : latest), monday);
  const weeks = Math.min(40, Math.max(1, Math.ceil((daysBetween(monday, last) + 1) / 7)));
  const column = new Map(watched.map((id, index) => [id, index]));
  return Array.from({ length: weeks }, (_, k): BankWeek => {
    const day = addDays(monday, 7 * (k + 1));
    const minute = clock.up(startOfDay(day, zone));
    const counts = new Int32Array(block.count);
    for (const episode of dated) {
      const at = column.get(episodeActivity(episode.id));
      const isReleased = episode.releaseDate < day;
      for (let run = 0; run < block.count; run += 1) {
        // With no open work left it is recorded already.
        const isRecorded = at === undefined || block.watched[run * watched.length + at]! <= minute;
        // What is due but not recorded is not in the bank; it is late.
        if (isRecorded && !isReleased) counts[run]! += 1;
      }
    }
    counts.sort();
    return { week: formatIsoWeek(isoWeekOf(addDays(day, -1))), p10: quantileOf(counts, 0.1), p50: quantileOf(counts, 0.5), p90: quantileOf(counts, 0.9) };
  });
}

const MOST_THREATS = 8;

function subjectOf(activity: string): Threat['subject'] | null {
  const { id, kind } = readName(activity);
  if (isWorkshopWork(kind) || kind === 'redo') return { kind: 'task', id };
  return kind === 'drop-off' || kind === 'collection' ? { kind: 'outsideJob', id } : null;
}

/** Share of runs in which each piece of work was on the chain that set the finish, by kind and id. */
function countCritical(input: ForecastInput, block: RunBlock): ReadonlyMap<string, { readonly subject: Threat['subject']; readonly share: number }> {
  const shares = new Map<string, { subject: Threat['subject']; share: number }>();
  input.problem.activities.forEach((activity, i) => {
    const subject = subjectOf(activity.id);
    if (subject === null || block.critical[i] === 0) return;
    const key = `${subject.kind} ${subject.id}`;
    // Its trips and shots lie on one chain: the most frequent of them stands for it.
    shares.set(key, { subject, share: Math.max(shares.get(key)?.share ?? 0, block.critical[i]! / Math.max(1, block.criticalRuns)) });
  });
  return shares;
}

/** Work by the share of runs in which it was on the chain that set the finish, most often first. */
export function findThreats(input: ForecastInput, block: RunBlock): Threat[] {
  return [...countCritical(input, block).values()].toSorted((a, b) => b.share - a.share).slice(0, MOST_THREATS).map((one) => ({ ...one, worth: null }));
}

/** Trades with open jobs by how often one of those held the finish up, most often first. */
export function findTradeThreats({ outsideJobs, trades }: SeriesDocument, input: ForecastInput, block: RunBlock): TradeThreat[] {
  const shares = countCritical(input, block);
  return trades.flatMap(({ id: tradeId }): TradeThreat[] => {
    const jobs = outsideJobs.filter((job) => job.tradeId === tradeId && job.collectedAt === null);
    if (jobs.length === 0) return [];
    return [{ tradeId, jobs: jobs.length, share: jobs.reduce((most, { id }) => Math.max(most, shares.get(`outsideJob ${id}`)?.share ?? 0), 0), worth: null }];
  }).toSorted((a, b) => b.share - a.share);
}

export interface ResultFacts {
  readonly time: number;
  readonly lastPlanned: Instant;
  readonly assumptions: readonly string[];
  readonly threats: readonly Threat[];
  readonly trades: readonly TradeThreat[];
}

/** Runs as dates, odds and threats. */
export function tellResult(compiled: Compiled, input: ForecastInput, block: RunBlock, facts: ResultFacts): ForecastResult {
  const { clock, document } = compiled.draft;
  const width = input.watched.length;
  const lastMinute = clock.up(facts.lastPlanned);
  const episodes = document.episodes.flatMap((episode): EpisodeForecast[] => {
    const column = input.watched.indexOf(episodeActivity(episode.id));
    if (column < 0) return [];
    const values = columnOf(block, width, column);
    const due = shootDue(document.series, episode);
    const dueMinute = clock.down(due);
    const chance = values.reduce((sum, minute) => sum + Number(minute <= dueMinute), 0) / block.count;
    return [{ episodeId: episode.id, shootDue: due, recorded: outlookOf(compiled, values), chance, chanceError: shareError(chance, block.count) }];
  });
  const each = (total: number) => total / block.count;
  return {
    runs: block.count, seed: input.seed, time: facts.time, finish: outlookOf(compiled, block.finish), lastPlanned: facts.lastPlanned,
    beyondPlanned: block.finish.reduce((sum, minute) => sum + Number(minute > lastMinute), 0) / block.count,
    episodes, threats: facts.threats, trades: facts.trades, bank: bankOf(compiled, block, input.watched),
    lostShots: each(block.lostShots), spoiltCoats: each(block.spoiltCoats), missedWindows: each(block.missedWindows), retakes: each(block.retakes),
    assumptions: facts.assumptions,
  };
}

/** Mean minutes by which runs with a saving finish sooner than the same runs without it. */
export function worthOf(plain: RunBlock, saved: RunBlock): number {
  const runs = Math.min(plain.count, saved.count);
  return meanOf(plain.finish.subarray(0, runs)) - meanOf(saved.finish.subarray(0, runs));
}

/** The 10, 50 and 80 % moments of an outlook. */
export function threeMoments(outlook: Outlook): { readonly p10: Instant | null; readonly p50: Instant | null; readonly p80: Instant | null } {
  const at = (confidence: number) => {
    const found = promiseDate(outlook, confidence);
    return found === null ? null : instant(found);
  };
  return { p10: at(0.1), p50: at(0.5), p80: at(0.8) };
}
