import { describe, expect, test } from 'vitest';
import { checkSeries, removeRecord } from '@/lib/build';
import { filmedSeries } from '../sample-series';

const codes = (document = filmedSeries()) => checkSeries(document).filter(({ severity }) => severity === 'stop').map(({ code }) => code);

describe('cameras and promises', () => {
  test('that make sense are left alone', () => expect(codes()).toEqual([]));

  test('a camera counts drop-frame at 29.97 and 59.94 only', () => {
    const [camera] = filmedSeries().cameras;
    const at = (numerator: number, denominator: number) => codes({ ...filmedSeries(), cameras: [{ ...camera!, rate: { numerator, denominator } }] });
    expect(at(60_000, 1001)).toEqual([]);
    expect(at(25, 1)).toEqual(['camera-drop-frame']);
    expect(at(0, 1)).toEqual(['camera-rate']);
  });

  test('a promise is replaced or withdrawn with a reason only', () => {
    const [promise] = filmedSeries().promises;
    const as = (closure: 'kept' | 'replaced' | 'withdrawn on screen') => codes({ ...filmedSeries(), promises: [{ ...promise!, closure, reason: ' ' }] });
    expect([as('kept'), as('replaced'), as('withdrawn on screen')]).toEqual([[], ['promise-without-reason'], ['promise-without-reason']]);
  });

  test('a promise outlives the episode that it names', () => {
    const document = filmedSeries();
    const without = removeRecord(document, 'episode', 'episode-2', 1, { cascade: true });
    expect(without.ok && without.value.document.promises.map(({ saidInId, dueId }) => [saidInId, dueId])).toEqual([['episode-1', null]]);
  });
});
