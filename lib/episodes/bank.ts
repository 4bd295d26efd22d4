/** Finished episodes in hand, week by week. */
import { addDays, compareDates, dayNumberOf, isoWeekOf, mondayOf, type CivilDate, type IsoWeek } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';

export interface BankedEpisode {
  readonly id: string;
  readonly name: string;
  readonly releaseDate: CivilDate;
  /** The day it is or will be ready to release; null: not foreseen. */
  readonly finishedOn: CivilDate | null;
  readonly isEvergreen: boolean;
}

export interface BankWeek {
  readonly week: IsoWeek;
  readonly monday: CivilDate;
  /** Finished and not yet released at the end of the week. */
  readonly inHand: number;
  /** Those of them that keep for any time. */
  readonly evergreen: number;
  /** Ids of the episodes that are released in the week. */
  readonly releasedIds: readonly string[];
  /** Ids of the episodes that become ready in the week. */
  readonly finishedIds: readonly string[];
  /** Ids of the episodes due for release in the week and not ready that day. */
  readonly missedIds: readonly string[];
  readonly isBelowMinimum: boolean;
}

export interface Bank {
  readonly weeks: readonly BankWeek[];
  /** The first week that ends with too few; null: none. */
  readonly firstAlarm: BankWeek | null;
  /** Ids of all episodes that miss their release. */
  readonly missedIds: readonly string[];
}

/** Two to four in hand, an alarm at one, is common practice; no source. */
export const USUAL_MINIMUM = 2;
const MOST_WEEKS = 520;

/** The day an episode can really be shown: its release, or later when it is finished later. */
function shownOn(episode: BankedEpisode): CivilDate | null {
  if (episode.finishedOn === null) return null;
  return compareDates(episode.finishedOn, episode.releaseDate) > 0 ? episode.finishedOn : episode.releaseDate;
}

/**
 * The bank at the end (Sunday) of every week from the one with `from` to the one of the last release. An episode that is not
 * ready on its day is missed, and shown on the day it is ready. No alarm is raised once everything is released.
 * @throws RangeError for dates that do not exist.
 */
export function countBank(episodes: readonly BankedEpisode[], from: CivilDate, minimum: number): Bank {
  const first = mondayOf(isoWeekOf(from));
  const last = episodes.reduce((latest, episode) => Math.max(latest, dayNumberOf(shownOn(episode) ?? episode.releaseDate)), dayNumberOf(first));
  const count = Math.min(MOST_WEEKS, Math.floor((last - dayNumberOf(first)) / 7) + 1);
  const weeks = episodes.length === 0 ? [] : Array.from({ length: count }, (_, index) => countWeek(episodes, addDays(first, 7 * index), minimum));
  return { weeks, firstAlarm: weeks.find((week) => week.isBelowMinimum) ?? null, missedIds: weeks.flatMap((week) => week.missedIds) };
}

function countWeek(episodes: readonly BankedEpisode[], monday: CivilDate, minimum: number): BankWeek {
  const sunday = addDays(monday, 6);
  const isInWeek = (date: CivilDate | null): boolean => date !== null && date >= monday && date <= sunday;
  const isDone = (date: CivilDate | null): boolean => date !== null && date <= sunday;
  const held = episodes.filter((episode) => isDone(episode.finishedOn) && !isDone(shownOn(episode)));
  const stillToCome = episodes.filter((episode) => !isDone(shownOn(episode)));
  const missed = episodes.filter((episode) => isInWeek(episode.releaseDate) && (episode.finishedOn === null || episode.finishedOn > episode.releaseDate));
  return {
    week: isoWeekOf(monday),
    monday,
    inHand: held.length,
    evergreen: held.filter((episode) => episode.isEvergreen).length,
    releasedIds: episodes.filter((episode) => isInWeek(shownOn(episode))).map(({ id }) => id),
    finishedIds: episodes.filter((episode) => isInWeek(episode.finishedOn)).map(({ id }) => id),
    missedIds: missed.map(({ id }) => id),
    // At the end of a series the bank runs out, as it should: what is still to come bounds it.
    isBelowMinimum: held.length < Math.min(minimum, stillToCome.length),
  };
}

/**
 * The episodes with the releases that are still to come laid `cadenceDays` apart, the first of them on its own day, the others in
 * their order. Released ones keep their day. Fails with `cadence` or, when nothing is to come, `cadence-without-date`.
 * @example spreadReleases(episodes, '2026-12-01', 14) // every second week from the next release on
 */
export function spreadReleases(episodes: readonly BankedEpisode[], from: CivilDate, cadenceDays: number): Result<readonly BankedEpisode[]> {
  if (!(Number.isInteger(cadenceDays) && cadenceDays >= 1 && cadenceDays <= 365)) {
    return fail([issue('cadence', `Releases ${cadenceDays} days apart make no sense.`, 'Type 7 or 14 days.', { path: ['cadenceDays'] })]);
  }
  const coming = episodes.filter((episode) => episode.releaseDate >= from).toSorted((a, b) => compareDates(a.releaseDate, b.releaseDate));
  const [first] = coming;
  if (first === undefined) return fail([issue('cadence-without-date', 'No release is to come, so there is no day to start the cadence from.', 'Give an episode a release date from today on.')]);
  const dates = new Map(coming.map((episode, index) => [episode.id, addDays(first.releaseDate, index * cadenceDays)]));
  return ok(episodes.map((episode) => ({ ...episode, releaseDate: dates.get(episode.id) ?? episode.releaseDate })));
}
