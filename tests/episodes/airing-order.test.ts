import { expect, test } from 'vitest';
import { checkAiringOrder, type ShownSegment } from '@/lib/episodes';

const STATES = ['as bought', 'stripped', 'primed'];
const shown = (id: string, stateIndex: number, isFlashback = false): ShownSegment => ({
  id, name: `Segment ${id}`, isFlashback, parts: [{ partId: 'frame', partName: 'Frame', stateIndex, stateName: STATES[stateIndex]! }],
});

test('a part shown in an earlier state than before is pointed out, with both segments', () => {
  const [found] = checkAiringOrder([shown('a', 0), shown('b', 2), shown('c', 1)]);
  expect(found).toMatchObject({ code: 'state-runs-backwards', severity: 'warn', message: 'Frame is stripped in “Segment c”, but was primed already in “Segment b”, which is shown before it.' });
  expect(found!.subjects.map(({ id }) => id)).toEqual(['c', 'b']);
});

test('the same state again, and a flashback, are no fault', () => {
  expect(checkAiringOrder([shown('a', 1), shown('b', 1), shown('c', 0, true), shown('d', 2)])).toEqual([]);
});
