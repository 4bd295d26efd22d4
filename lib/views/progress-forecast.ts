/** A kept forecast in words and places on an axis. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf, formatDay, formatMoment } from '@/lib/calendar';
import { promiseDate, threeMoments, type ForecastResult, type Outlook, type SavedForecast } from '@/lib/forecast';
import { issue } from '@/lib/result';
import { MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import type { EpisodeOdds, ForecastView, Odds, ThreatRow, Tone, TradeRow, WantedDate } from './progress-model';
import { linkRecord } from './week-block';
import { formatCount } from './week-words';

export type KeptForecast = Extract<SavedForecast, { kind: 'forecast' }>;

const MS_PER_DAY = MINUTES_PER_DAY * MS_PER_MINUTE;
const BEYOND = 'later than all sessions';

export const percent = (share: number): string => `${share > 0 && share < 0.01 ? '<1' : share < 1 && share > 0.99 ? '>99' : Math.round(100 * share)} %`;

/** `Sat 1 May`, with the year when it is another than this one. */
export function showDay(at: Instant | null, now: Instant, zone: string): string {
  if (at === null) return BEYOND;
  const date = dateOf(at, zone);
  return date.slice(0, 4) === dateOf(now, zone).slice(0, 4) ? formatDay(date) : `${formatDay(date)} ${date.slice(0, 4)}`;
}

function oddsOf(outlook: Outlook, now: Instant, zone: string): Odds {
  const { p10, p50, p80 } = threeMoments(outlook);
  return { p10: showDay(p10, now, zone), p50: showDay(p50, now, zone), p80: showDay(p80, now, zone) };
}

const toneOf = (chance: number): Tone => (chance >= 0.8 ? 'good' : chance >= 0.5 ? 'warn' : 'stop');

/** A scale from a first to a last moment. */
export function scaleOf(first: number, last: number): (at: number) => number {
  const length = Math.max(1, last - first);
  return (at) => Math.min(1, Math.max(0, (at - first) / length));
}

function showEpisode(result: ForecastResult['episodes'][number], document: SeriesDocument, now: Instant, scale: (at: number) => number): EpisodeOdds {
  const { zone } = document.series;
  const { p10, p50, p80 } = threeMoments(result.recorded);
  const place = (at: Instant | null) => (at === null ? null : scale(at));
  const episode = document.episodes.find((one) => one.id === result.episodeId);
  return {
    episode: linkRecord('episode', result.episodeId, document.episodes), ...oddsOf(result.recorded, now, zone),
    due: formatMoment(result.shootDue, zone), release: episode === undefined ? '' : formatDay(episode.releaseDate),
    chance: percent(result.chance), chanceError: `± ${(100 * result.chanceError).toFixed(1)}`, tone: toneOf(result.chance),
    places: { p10: place(p10), p50: place(p50), p80: place(p80), due: scale(result.shootDue) },
  };
}

/** What a saving brings, in a sentence; empty: not worked out. */
export function tellWorth(minutes: number | null, saving: string): string {
  if (minutes === null) return '';
  const hours = minutes / 60;
  if (hours < 0.5) return `${saving} changes the finish by less than half an hour on average.`;
  return `${saving} brings the finish ${hours < 36 ? `${hours.toFixed(hours < 10 ? 1 : 0)} h` : `${(hours / 24).toFixed(1)} days`} sooner on average.`;
}

export const savingOf = (kind: string): string => (kind === 'task' ? 'An hour less' : 'A working day sooner');

function showThreats({ threats }: ForecastResult, { outsideJobs, tasks }: SeriesDocument): ThreatRow[] {
  return threats.map(({ share, subject, worth }) => ({
    subject: linkRecord(subject.kind, subject.id, subject.kind === 'task' ? tasks : outsideJobs), share: percent(share), width: share, worth: tellWorth(worth, savingOf(subject.kind)),
  }));
}

function showTrades({ trades }: ForecastResult, document: SeriesDocument): TradeRow[] | null {
  return trades?.map(({ jobs, share, tradeId, worth }) => ({
    trade: linkRecord('trade', tradeId, document.trades), jobs: formatCount(jobs, 'open job'), share: `${jobs > 1 ? 'at least ' : ''}${percent(share)}`, width: share,
    worth: tellWorth(worth, jobs > 1 ? 'Each job a working day sooner' : 'A working day sooner'),
  })) ?? null;
}

/** The date that holds with a confidence typed in percent. Null: nothing was typed. */
export function tellWanted({ result }: KeptForecast, typed: string | null, now: Instant, zone: string): WantedDate | null {
  const text = (typed ?? '').trim().replace(/\s*%$/, '');
  if (text === '') return null;
  const wanted = Number(text.replace(',', '.'));
  const rounded = Math.round(wanted);
  if (!(wanted >= 1 && wanted <= 99)) {
    const found = issue('confidence-out-of-range', `A date can be told for a confidence of 1 to 99 %, and "${text}" is not one.`, 'Type 85 for a date that holds in 85 of 100 cases.', { path: ['sure'] });
    return { typed: text, answer: null, issue: found };
  }
  const date = promiseDate(result.finish, rounded / 100);
  return { typed: text, answer: `${rounded} % sure: ${date === null ? `${BEYOND} that are assumed` : `done by ${showDay(date, now, zone)}`}.`, issue: null };
}

/** The forecast as pages show it; `planNumber` is the plan that counts. */
export function showForecast(forecast: KeptForecast, document: SeriesDocument, now: Instant, planNumber: number | null): ForecastView {
  const { result } = forecast;
  const { zone } = document.series;
  const dated = [result.finish, ...result.episodes.map((one) => one.recorded)].flatMap((outlook) => outlook.percentiles.filter((at) => at !== null));
  const first = Math.min(forecast.madeAt, ...result.episodes.map((one) => one.shootDue));
  const last = Math.max(first + MS_PER_DAY, ...dated, ...result.episodes.map((one) => one.shootDue));
  const scale = scaleOf(first, last);
  const age = Math.floor((now - forecast.madeAt) / MS_PER_DAY);
  const plan = forecast.planNumber === planNumber ? null : `It is about plan ${forecast.planNumber}, and plan ${planNumber ?? 0} counts now.`;
  const error = result.finish.error;
  return {
    number: forecast.number, planNumber: forecast.planNumber, madeAt: formatMoment(forecast.madeAt, zone),
    staleness: plan ?? (age >= 7 ? `It is ${age} days old.` : null),
    runs: `${result.runs.toLocaleString('en-GB')} runs in ${(result.time / 1000).toFixed(1)} s, seed ${result.seed}`,
    exactness: error === null ? 'Too few runs to say how exact the dates are.' : `With so many runs the 80 % date is exact to ${error < 60 ? 'less than an hour' : `± ${(error / 60).toFixed(0)} h`}; the odds of an episode have their own ± beside them, in points.`,
    finish: oddsOf(result.finish, now, zone),
    beyond: result.beyondPlanned > 0 ? `${percent(result.beyondPlanned)} of the runs end after the last planned session, ${formatMoment(result.lastPlanned, zone)}; later ones are assumed.` : 'Every run ends within the planned sessions.',
    promises: [0.5, 0.7, 0.8, 0.9, 0.95].map((confidence) => ({ confidence: percent(confidence), date: showDay(promiseDate(result.finish, confidence), now, zone) })),
    curve: result.finish.percentiles.flatMap((at, k) => (at === null ? [] : [{ at: scale(at), share: (k + 1) / 100, label: showDay(at, now, zone) }])),
    axis: { from: formatDay(dateOf(first as Instant, zone)), to: showDay(last as Instant, now, zone) },
    episodes: result.episodes.map((one) => showEpisode(one, document, now, scale)),
    threats: showThreats(result, document),
    trades: showTrades(result, document),
    bank: result.bank,
    luck: [
      `${result.retakes.toFixed(1)} retakes`, `${result.spoiltCoats.toFixed(1)} coats laid again`, `${result.lostShots.toFixed(2)} one-way shots lost`, `${result.missedWindows.toFixed(1)} recoat windows missed`,
    ],
    assumptions: result.assumptions,
  };
}
