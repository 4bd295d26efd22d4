import { expect, test } from 'vitest';
import { arrangeSegments, moveSegment, undoChange, type Segment, type SeriesDocument } from '@/lib/build';
import { unwrap, type Result } from '@/lib/result';
import { instant } from '@/lib/units';
import { sampleSeries } from './sample-series';

const segment = (id: string, order: number, episodeId: string | null): Segment => ({
  kind: 'segment', id, revision: 1, order, name: id, episodeId, role: 'work', length: 3, isResult: false, hook: 0, hang: 0, thread: '', isEvergreen: false, isFlashback: false,
  storyDate: null, ending: 'free', taskIds: [],
});
const SERIES = sampleSeries({ segments: [segment('a', 0, 'episode-1'), segment('b', 1, 'episode-1'), segment('c', 2, 'episode-2'), segment('d', 3, null)] });

const order = ({ segments }: SeriesDocument): string[] => segments.map(({ id, episodeId }) => `${id}:${episodeId ?? '-'}`);
const codes = (result: Result<unknown>): string[] => (result.ok ? [] : result.error.map(({ code }) => code));

test('a segment moves in front of another one of its episode', () => {
  const { document, change } = unwrap(moveSegment(SERIES, 'b', 1, { episodeId: 'episode-1', beforeId: 'a' }));
  expect(order(document)).toEqual(['b:episode-1', 'a:episode-1', 'c:episode-2', 'd:-']);
  expect(change.label).toBe('Moved segment b within its episode');
});

test('a segment moves to the end of another episode, out of its own, and back by undo', () => {
  const there = unwrap(moveSegment(SERIES, 'a', 1, { episodeId: 'episode-2', beforeId: null }));
  expect(order(there.document)).toEqual(['b:episode-1', 'c:episode-2', 'a:episode-2', 'd:-']);
  expect(order(unwrap(moveSegment(SERIES, 'c', 1, { episodeId: null, beforeId: 'd' })).document)).toEqual(['a:episode-1', 'b:episode-1', 'c:-', 'd:-']);
  const saved = { ...there.change, number: 1, at: instant(0), undoneBy: null };
  expect(order(unwrap(undoChange(there.document, saved)).document)).toEqual(order(SERIES));
});

test('a move in front of a segment that is elsewhere, from an old revision or to where it is, is refused', () => {
  expect(codes(moveSegment(SERIES, 'a', 1, { episodeId: 'episode-1', beforeId: 'c' }))).toEqual(['segment-move']);
  expect(codes(moveSegment(SERIES, 'a', 2, { episodeId: 'episode-2', beforeId: null }))).toEqual(['stale-record']);
  expect(codes(moveSegment(SERIES, 'b', 1, { episodeId: 'episode-1', beforeId: null }))).toEqual(['nothing-changed']);
});

test('a proposal puts segments into episodes in its order, in one change, and leaves the others', () => {
  const { document, change } = unwrap(arrangeSegments(SERIES, [{ episodeId: 'episode-1', segmentIds: ['a'] }, { episodeId: 'episode-2', segmentIds: ['c', 'b'] }]));
  expect(order(document)).toEqual(['a:episode-1', 'c:episode-2', 'b:episode-2', 'd:-']);
  expect(change.edits).toHaveLength(2);
});

test('a proposal that names a segment twice or one that is gone is refused', () => {
  expect(codes(arrangeSegments(SERIES, [{ episodeId: 'episode-1', segmentIds: ['a', 'a'] }]))).toEqual(['segment-arrangement']);
  expect(codes(arrangeSegments(SERIES, [{ episodeId: 'episode-1', segmentIds: ['gone'] }]))).toEqual(['segment-arrangement']);
});
