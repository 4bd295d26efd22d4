/** Past forecasts against what happened: rows, a plot, and what they say together. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { calibrate, promiseDate, type Judged } from '@/lib/forecast';
import { MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { percent, scaleOf, showDay, type KeptForecast } from './progress-forecast';
import type { CalibrationView } from './progress-model';
import { linkRecord } from './week-block';

const MS_PER_DAY = MINUTES_PER_DAY * MS_PER_MINUTE;

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
      judged, span: { from: low ?? actual, to: high, actual }, key: `${forecast.number} ${one.episodeId}`, forecast: `${forecast.number}, made ${formatMoment(forecast.madeAt, zone)}`,
      episode: linkRecord('episode', one.episodeId, document.episodes).name, interval: `${showDay(low, now, zone)} to ${showDay(high, now, zone)}`, actual: formatMoment(actual, zone),
      isInside: low !== null && actual >= low && (high === null || actual <= high),
    }];
  }));
  const found = calibrate(rows.map(({ judged }) => judged));
  const moments = rows.flatMap(({ span }) => [span.from, span.actual, ...(span.to === null ? [] : [span.to])]);
  const scale = scaleOf(Math.min(...moments), Math.max(...moments));
  const shown = rows.map(({ judged: _judged, span, ...row }) => ({ ...row, places: { from: scale(span.from), to: span.to === null ? null : scale(span.to), actual: scale(span.actual) } }));
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
