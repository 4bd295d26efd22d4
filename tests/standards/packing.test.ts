import { expect, test } from 'vitest';
import { packSegments } from '@/lib/episodes';
import { unwrap } from '@/lib/result';
import { packing, TWELVE } from '../episodes/segments';

// Computed apart from this code, by trying every set of cuts.
test('the twelve segments are cut after 4, 6 and 9 into episodes of 16, 11.5, 14.5 and 14 min, cost -5.2142857', () => {
  const [best] = unwrap(packSegments(packing(TWELVE)));
  expect(best!.episodes.map((episode) => episode.segmentIds.at(-1))).toEqual(['4', '6', '9', '12']);
  expect(best!.episodes.map((episode) => episode.length)).toEqual([16, 11.5, 14.5, 14]);
  expect(best!.cost).toBeCloseTo(-5.2142857, 7);
});
