import { describe, expect, it } from 'vitest';
import { shootDue } from '@/lib/build';
import { at, sampleSeries } from './sample-series';

const { series, episodes: [episode] } = sampleSeries();
if (episode === undefined) throw new Error('The sample has an episode');

describe('shootDue', () => {
  it('is the end of the day that lies the lead days before the release', () => {
    expect(shootDue(series, episode)).toBe(at('2026-12-16', '00:00'));
    expect(shootDue({ ...series, leadDays: 0 }, episode)).toBe(at('2026-12-21', '00:00'));
  });

  it('ends with the day on the clock of the series, summer time included', () => {
    expect(shootDue(series, { ...episode, releaseDate: '2027-04-03' })).toBe(at('2027-03-29', '23:00'));
    expect(shootDue({ ...series, zone: 'Asia/Tokyo' }, episode)).toBe(at('2026-12-15', '15:00'));
  });
});
