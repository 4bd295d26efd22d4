/** A kept forecast in words and places on an axis. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf, formatDay, formatMoment } from '@/lib/calendar';
import { calibrate, promiseDate, threeMoments, type ForecastResult, type Judged, type Outlook, type SavedForecast } from '@/lib/forecast';
import { MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import type { CalibrationView, EpisodeOdds, ForecastView, Odds, Tone } from './progress-model';
import { linkRecord } from './week-block';

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

function tellWorth(minutes: number | null, kind: string): string {
  if (minutes === null) return '';
  const saving = kind === 'task' ? 'An hour less' : 'A working day sooner';
  const hours = minutes / 60;
  if (hours < 0.5) return `${saving} changes the finish by less than half an hour on average.`;
  return `${saving} brings the finish ${hours < 36 ? `${hours.toFixed(hours < 10 ? 1 : 0)} h` : `${(hours / 24).toFixed(1)} days`} sooner on average.`;
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
    threats: result.threats.map(({ share, subject, worth }) => ({
      subject: linkRecord(subject.kind, subject.id, subject.kind === 'task' ? document.tasks : document.outsideJobs), share: percent(share), width: share, worth: tellWorth(worth, subject.kind),
    })),
    bank: result.bank,
    luck: [
      `${result.retakes.toFixed(1)} retakes`, `${result.spoiltCoats.toFixed(1)} coats laid again`, `${result.lostShots.toFixed(2)} one-way shots lost`, `${result.missedWindows.toFixed(1)} recoat windows missed`,
    ],
    assumptions: result.assumptions,
  };
}

/** When an episode's recording was complete, as its tasks say; null: not yet. */
export function recordedAt(document: SeriesDocument, episodeId: string): Instant | null {
  const tasks = document.tasks.filter((task) => task.episodeId === episodeId);
  const jobs = document.outsideJobs.filter((job) => job.episodeId === episodeId);
  const ends = [...tasks.map((task) => task.doneAt), ...jobs.map((job) => job.collectedAt)];
  if (ends.length === 0 || ends.some((end) => end === null)) return null;
  return ends.reduce<Instant | null>((latest, end) => (end !== null && (latest === null || end > latest) ? end : latest), null);
}

/** Past forecasts against what happened, days from the day each was made. */
export function showCalibration(forecasts: readonly KeptForecast[], document: SeriesDocument, now: Instant): CalibrationView {
  const { zone } = document.series;
  const rows = forecasts.flatMap((forecast) => forecast.result.episodes.flatMap((one) => {
    const actual = recordedAt(document, one.episodeId);
    if (actual === null || actual <= forecast.madeAt) return [];
    const days = (at: number) => (at - forecast.madeAt) / MS_PER_DAY;
    // What lies beyond all sessions is later than anything that happened.
    const judged: Judged = { actual: days(actual), quantiles: one.recorded.percentiles.map((at, k) => ({ share: (k + 1) / 100, value: at === null ? 3650 : days(at) })) };
    const [low, high] = [promiseDate(one.recorded, 0.1), promiseDate(one.recorded, 0.9)];
    return [{
      judged, key: `${forecast.number} ${one.episodeId}`, forecast: `${forecast.number}, ${formatMoment(forecast.madeAt, zone)}`,
      episode: linkRecord('episode', one.episodeId, document.episodes).name, interval: `${showDay(low, now, zone)} to ${showDay(high, now, zone)}`, actual: formatMoment(actual, zone),
      isInside: low !== null && actual >= low && (high === null || actual <= high),
    }];
  }));
  const found = calibrate(rows.map(({ judged }) => judged));
  const shown = rows.map(({ judged: _judged, ...row }) => row);
  if (!found.ok) return { verdict: null, facts: [], rows: shown };
  const { belowEighty, count, coverage, pinball, verdict } = found.value;
  return {
    verdict, rows: shown,
    facts: [
      { name: 'Forecasts that came true', value: String(count) }, { name: 'Inside the 80 % interval', value: percent(coverage) }, { name: 'By the 80 % date', value: percent(belowEighty) },
      { name: 'Mean pinball loss', value: `${pinball.toFixed(2)} days` },
    ],
  };
}
