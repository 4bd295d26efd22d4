import { describe, expect, it } from 'vitest';
import type { Episode, Person, Session } from '@/lib/build';
import { at, sampleSeries } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const withSession = (more: Partial<Session>) => sampleSeries({ sessions: changed(sample.sessions, 'session-1', more) });
const withKim = (more: Partial<Person>) => sampleSeries({ people: changed(sample.people, 'person-kim', more) });
const withEpisode = (id: string, more: Partial<Episode>) => sampleSeries({ episodes: changed(sample.episodes, id, more) });

describe('sessions', () => {
  it('refuses an end at or before the start, in the words of the zone', () => {
    const [found] = issuesOf(withSession({ end: at('2026-12-01', '17:30') }), 'session-ends-before-start');
    expect(found?.message).toBe('The session “Tuesday evening” on Tue 1 Dec 18:30 ends 1 h before its start, at Tue 1 Dec 17:30.');
    expect(codesOf(withSession({ end: at('2026-12-01', '18:30') }))).toEqual(['session-ends-before-start']);
    expect(codesOf(withSession({ end: at('2026-12-01', '18:31') }))).toEqual([]);
  });

  it('takes 24 h and refuses a minute more', () => {
    expect(codesOf(withSession({ end: at('2026-12-02', '18:30') }))).toEqual([]);
    expect(codesOf(withSession({ end: at('2026-12-02', '18:31') }))).toEqual(['session-too-long']);
  });

  it('refuses a person in two sessions that overlap and points out a place in both', () => {
    const touching = withSession({ start: at('2026-12-03', '16:00'), end: at('2026-12-03', '18:30') });
    expect(codesOf(touching)).toEqual([]);
    const overlapping = withSession({ start: at('2026-12-03', '16:00'), end: at('2026-12-03', '18:31'), placeIds: ['place-bench'], crewIds: ['person-kim'] });
    expect(issuesOf(overlapping, 'person-in-two-sessions').map(({ severity, fix }) => [severity, fix])).toEqual([['stop', 'Take “Kim” out of one of them.']]);
    expect(issuesOf(overlapping, 'place-in-two-sessions').map(({ severity }) => severity)).toEqual(['warn']);
    const apart = { ...overlapping, sessions: changed(overlapping.sessions, 'session-1', { crewIds: [], placeIds: [] }) };
    expect(codesOf(apart)).toEqual([]);
  });
});

describe('hours and dates', () => {
  it('refuses hours that end when they start and names whose they are', () => {
    const [found] = issuesOf(withKim({ hours: [{ weekday: 1, from: '09:00', to: '09:00' }] }), 'hours-end-before-start');
    expect(found?.message).toContain('The person “Kim”: ');
    expect(found?.path).toEqual(['hours', 0, 'to']);
    expect(codesOf(withKim({ hours: [{ weekday: 1, from: '00:00', to: '24:00' }] }))).toEqual([]);
    expect(codesOf(withKim({ hours: [{ weekday: 1, from: '9', to: '10:00' }] }))).toEqual(['time-shape']);
  });

  it('takes days off of one day and refuses a last day before the first', () => {
    expect(codesOf(withKim({ away: [{ from: '2026-12-24', to: '2026-12-24', why: '' }] }))).toEqual([]);
    expect(codesOf(withKim({ away: [{ from: '2026-12-24', to: '2026-12-23', why: '' }] }))).toEqual(['dates-out-of-order']);
    expect(codesOf(withKim({ away: [{ from: '2026-02-30', to: '2026-03-01', why: '' }] }))).toEqual(['unknown-date']);
  });

  it('refuses a release date that does not exist', () => {
    expect(issuesOf(withEpisode('episode-1', { releaseDate: '2026-13-01' }), 'unknown-date').map(({ path }) => path)).toEqual([['releaseDate']]);
  });

  it('refuses a date that no build reaches', () => {
    expect(codesOf(withEpisode('episode-2', { releaseDate: '2990-12-31' }))).toEqual([]);
    expect(codesOf(withEpisode('episode-2', { releaseDate: '2991-01-01' }))).toEqual(['date-out-of-range']);
    expect(codesOf(withEpisode('episode-1', { releaseDate: '1973-01-01' }))).toEqual([]);
    expect(codesOf(withEpisode('episode-1', { releaseDate: '1972-12-31' }))).toEqual(['date-out-of-range']);
  });

  it('points out a later episode that comes out no later, evergreens aside', () => {
    expect(codesOf(withEpisode('episode-2', { releaseDate: '2026-12-21' }))).toEqual([]);
    expect(issuesOf(withEpisode('episode-2', { releaseDate: '2026-12-20' }), 'episodes-out-of-order')[0]?.severity).toBe('warn');
    expect(codesOf(withEpisode('episode-2', { releaseDate: '2026-12-01', isEvergreen: true }))).toEqual([]);
  });

  it('points out a planned episode without a task', () => {
    const more: Episode = { kind: 'episode', id: 'episode-3', revision: 1, order: 2, name: 'Extra', releaseDate: '2027-01-17', isEvergreen: false, status: 'planned' };
    expect(codesOf(sampleSeries({ episodes: [...sample.episodes, more] }))).toEqual(['episode-without-tasks']);
    expect(codesOf(sampleSeries({ episodes: [...sample.episodes, { ...more, status: 'recorded' }] }))).toEqual([]);
  });
});
