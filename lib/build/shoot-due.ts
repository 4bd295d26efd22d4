/** When the recording of an episode must be complete. */
import { addDays, endOfDay } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import type { Episode, Series } from './model';

/**
 * The end of the day that lies the series' lead days before the release, in the series' zone.
 * @throws RangeError for a release date or zone that does not exist.
 * @example shootDue({ ...series, leadDays: 5, zone: 'Europe/London' }, { ...episode, releaseDate: '2026-12-20' }) // 2026-12-16T00:00Z
 */
export function shootDue(series: Series, episode: Episode): Instant {
  return endOfDay(addDays(episode.releaseDate, -series.leadDays), series.zone);
}
