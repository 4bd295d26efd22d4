import { describe, expect, it } from 'vitest';
import { changeRecord, removeRecord, undoChange, type Edited, type SavedChange } from '@/lib/build';
import { describeChanges } from '@/lib/views/history';
import { unwrap } from '@/lib/result';
import { minutes } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';

const save = ({ change }: Edited, number: number, undoneBy: number | null = null): SavedChange => ({
  ...change, number, at: at('2026-12-01', '18:30'), undoneBy,
});

describe('The history', () => {
  it('tells each field before and after in words and units', () => {
    const document = sampleSeries();
    const [task] = document.tasks;
    if (task === undefined) throw new Error('the sample has tasks');
    const edited = unwrap(changeRecord(document, 'task', task.id, task.revision, { effort: { low: minutes(30), likely: minutes(40), high: minutes(95) } }));
    const [change] = describeChanges(edited.document, [save(edited, 1)]);
    const [field, ...others] = change?.edits[0]?.fields ?? [];
    expect(others).toEqual([]);
    expect(field).toMatchObject({ label: 'Hands-on time', after: '30 min – 40 min – 1 h 35 min' });
    expect(change).toMatchObject({ at: 'Tue 1 Dec 18:30', whyNot: null });
  });

  it('says why a change cannot be taken back: it has been, or its record has moved on', () => {
    const document = sampleSeries();
    const [place] = document.places;
    if (place === undefined) throw new Error('the sample has places');
    const first = unwrap(changeRecord(document, 'place', place.id, place.revision, { capacity: 3 }));
    const second = unwrap(changeRecord(first.document, 'place', place.id, place.revision + 1, { capacity: 4 }));
    const changes = describeChanges(second.document, [save(second, 2), save(first, 1)]);
    expect(changes[0]?.whyNot).toBeNull();
    expect(changes[1]?.whyNot).toContain(place.name);
    const undone = unwrap(undoChange(second.document, save(second, 2)));
    const after = describeChanges(undone.document, [save(undone, 3), save(second, 2, 3)]);
    expect(after[0]).toMatchObject({ undoes: 2, whyNot: null });
    expect(after[1]?.whyNot).toBe('Taken back by change 3.');
  });

  it('lists a removed record without a link', () => {
    const document = sampleSeries();
    const [link] = document.links;
    if (link === undefined) throw new Error('the sample has links');
    const removed = unwrap(removeRecord(document, 'link', link.id, link.revision, { cascade: true }));
    const [change] = describeChanges(removed.document, [save(removed, 1)]);
    expect(change?.edits.find(({ id }) => id === link.id)).toMatchObject({ what: 'removed', isThere: false, name: link.name });
  });
});
