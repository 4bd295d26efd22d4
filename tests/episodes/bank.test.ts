import { expect, test } from 'vitest';
import { countBank, spreadReleases, type BankedEpisode } from '@/lib/episodes';
import { unwrap } from '@/lib/result';

/** Releases on Sundays from 6 December 2026. */
const EPISODES: readonly BankedEpisode[] = [
  { id: '1', name: 'One', releaseDate: '2026-12-06', finishedOn: '2026-11-30', isEvergreen: false },
  { id: '2', name: 'Two', releaseDate: '2026-12-13', finishedOn: '2026-12-04', isEvergreen: false },
  { id: '3', name: 'Three', releaseDate: '2026-12-20', finishedOn: '2026-12-04', isEvergreen: true },
  { id: '4', name: 'Four', releaseDate: '2026-12-27', finishedOn: '2026-12-29', isEvergreen: false },
];

test('episodes in hand are finished and not yet released at the end of each week', () => {
  const { weeks, missedIds } = countBank(EPISODES, '2026-12-02', 2);
  expect(weeks.map((week) => week.monday)).toEqual(['2026-11-30', '2026-12-07', '2026-12-14', '2026-12-21', '2026-12-28']);
  expect(weeks.map((week) => week.inHand)).toEqual([2, 1, 0, 0, 0]);
  expect(weeks.map((week) => week.evergreen)).toEqual([1, 1, 0, 0, 0]);
  expect(weeks.map((week) => week.releasedIds)).toEqual([['1'], ['2'], ['3'], [], ['4']]);
  expect(missedIds).toEqual(['4']);
});

test('the alarm is the first week below the minimum; what is left of a series bounds the minimum', () => {
  expect(countBank(EPISODES, '2026-12-02', 2).firstAlarm?.monday).toBe('2026-12-07');
  const ready = EPISODES.map((episode) => ({ ...episode, finishedOn: '2026-11-30' }));
  expect(countBank(ready, '2026-12-02', 2).firstAlarm).toBeNull();
});

test('an episode finished on its day is not missed, one with no day foreseen is', () => {
  const [one, two] = [{ ...EPISODES[0]!, finishedOn: '2026-12-06' }, { ...EPISODES[1]!, finishedOn: null }];
  expect(countBank([one, two], '2026-12-02', 1).missedIds).toEqual(['2']);
});

test('no episodes, no weeks', () => {
  expect(countBank([], '2026-12-02', 2)).toEqual({ weeks: [], firstAlarm: null, missedIds: [] });
});

test('a fortnightly cadence starts at the next release and keeps what is out', () => {
  const spread = unwrap(spreadReleases(EPISODES, '2026-12-07', 14));
  expect(spread.map((episode) => episode.releaseDate)).toEqual(['2026-12-06', '2026-12-13', '2026-12-27', '2027-01-10']);
  expect(countBank(spread, '2026-12-07', 1).missedIds).toEqual([]);
});

test('a cadence without a date to start from, and one of no days, are refused', () => {
  const late = spreadReleases(EPISODES, '2027-02-01', 14);
  expect(late.ok ? '' : late.error[0]!.code).toBe('cadence-without-date');
  const none = spreadReleases(EPISODES, '2026-12-01', 0);
  expect(none.ok ? '' : none.error[0]!.code).toBe('cadence');
});
