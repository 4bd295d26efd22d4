import { describe, expect, it } from 'vitest';
import { checkSeries } from '@/lib/build';
import { sampleSeries } from './sample-series';

describe('checkSeries', () => {
  it('finds nothing wrong with the sample series', () => {
    expect(checkSeries(sampleSeries())).toEqual([]);
  });
});
