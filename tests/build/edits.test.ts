import { describe, expect, it } from 'vitest';
import {
  changeRecord, changeRecords, createRecord, createRecords, findRecord, previewRemoval, removeRecord, reorderRecords, undoChange, type Edited, type Episode,
} from '@/lib/build';
import { unwrap, type Result } from '@/lib/result';
import { minutes } from '@/lib/units';
import { contents, save, undo, type History } from './history';
import { sampleSeries, sampleTask, withTask } from './sample-series';

const sample = sampleSeries();
const start: History = { document: sample, changes: [] };
const codes = (result: Result<Edited>): readonly string[] => (result.ok ? [] : result.error.map(({ code }) => code));
const messages = (result: Result<Edited>): readonly string[] => (result.ok ? [] : result.error.map(({ message }) => message));

const episode = (id: string, order: number): Episode => ({ kind: 'episode', id, revision: 1, order, name: id, releaseDate: `2027-0${order + 2}-01`, isEvergreen: false, status: 'planned' });

function saved(history: History, edited: Result<Edited>): History {
  const next = save(history, edited);
  if (next === null) throw new Error(`Refused: ${JSON.stringify(edited)}`);
  return next;
}

describe('createRecord', () => {
  it('adds the record at the end of its list at revision 1', () => {
    const { document, change } = unwrap(createRecord(sample, sampleTask('task-new', 99, 'Polish')));
    expect(document.tasks.at(-1)).toMatchObject({ id: 'task-new', order: 6, revision: 1 });
    expect(document.changeNumber).toBe(1);
    expect(change).toMatchObject({ label: 'Added task Polish', undoes: null });
    expect(change.edits).toHaveLength(1);
  });

  it('refuses an id that is taken, and a record that breaks a rule', () => {
    expect(codes(createRecord(sample, sampleTask('task-strip', 0, 'Again')))).toEqual(['record-exists']);
    expect(codes(createRecord(sample, sampleTask('task-new', 0, '', { category: 'paint' })))).toEqual(['name-missing', 'missing-coats']);
  });

  it('is never stopped by a fault that was there before', () => {
    const faulty = withTask('task-prime', { coats: [] });
    expect(codes(createRecord(faulty, sampleTask('task-new', 0, 'Polish')))).toEqual([]);
    expect(codes(changeRecord(faulty, 'task', 'task-prime', 1, { name: 'Prime it' }))).toEqual([]);
  });

  it('makes all of several records or none', () => {
    const bad = createRecords(sample, [sampleTask('a', 0, 'A'), sampleTask('b', 0, '')], 'Added two');
    expect(codes(bad)).toEqual(['name-missing']);
    const good = unwrap(createRecords(sample, [sampleTask('a', 0, 'A'), sampleTask('b', 0, 'B')], 'Added two'));
    expect(good.document.tasks.slice(-2).map(({ id, order }) => [id, order])).toEqual([['a', 6], ['b', 7]]);
    expect(codes(createRecords(sample, [sampleTask('a', 0, 'A'), sampleTask('a', 0, 'B')], 'Twice'))).toEqual(['record-exists']);
  });
});

describe('changeRecord', () => {
  it('moves the revision on by one and names the fields in the label', () => {
    const { document, change } = unwrap(changeRecord(sample, 'task', 'task-clean', 1, { inOneGo: true, effort: { low: minutes(60), likely: minutes(90), high: minutes(90) } }));
    expect(findRecord(document, 'task', 'task-clean')).toMatchObject({ revision: 2, inOneGo: true });
    expect(change.label).toBe('Changed task Clean the frame: hands-on time, in one go');
  });

  it('changes the series itself', () => {
    expect(unwrap(changeRecord(sample, 'series', 'series-sample', 1, { leadDays: 7 })).document.series).toMatchObject({ leadDays: 7, revision: 2 });
  });

  it('refuses a stale revision, a record that is gone, and no change at all', () => {
    const stale = changeRecord(sample, 'task', 'task-clean', 3, { name: 'Other' });
    expect(codes(stale)).toEqual(['stale-record']);
    expect(messages(stale)[0]).toContain('“Clean the frame”');
    expect(codes(changeRecord(sample, 'task', 'gone', 1, { name: 'Other' }))).toEqual(['record-missing']);
    expect(codes(changeRecord(sample, 'task', 'task-clean', 1, { name: 'Clean the frame' }))).toEqual(['nothing-changed']);
  });

  it('refuses to close a ring', () => {
    const link = createRecord(sample, {
      kind: 'link', id: 'l', revision: 1, order: 0, name: 'Back', from: { kind: 'task', id: 'task-fit' }, to: { kind: 'task', id: 'task-clean' },
      stage: null, minWait: minutes(0), maxWait: null, clock: 'elapsed',
    });
    expect(codes(link)).toEqual(['work-goes-round']);
  });

  it('refuses a task that grows beyond every session, but lets a session shrink below a task', () => {
    const grown = changeRecord(sample, 'task', 'task-paint', 1, { effort: { low: minutes(60), likely: minutes(430), high: minutes(500) } });
    expect(codes(grown)).toEqual(['task-longer-than-any-session']);
    const long = withTask('task-paint', { effort: { low: minutes(60), likely: minutes(400), high: minutes(500) } });
    const shrinks = long.sessions.filter(({ hasDaylight }) => hasDaylight).reduce<History>((history, session) =>
      saved(history, changeRecord(history.document, 'session', session.id, 1, { isRecording: false })), { document: long, changes: [] });
    expect(shrinks.changes).toHaveLength(3);
  });

  it('changes several records in one change and leaves alone what stays', () => {
    const [wheel, frame] = [findRecord(sample, 'part', 'part-wheel'), findRecord(sample, 'part', 'part-frame')];
    if (wheel === undefined || frame === undefined) throw new Error('The sample has both parts');
    const { change } = unwrap(changeRecords(sample, [{ ...wheel, assembly: 'Wheels' }, frame], 'Moved'));
    expect(change.edits.map(({ id }) => id)).toEqual(['part-wheel']);
    expect(codes(changeRecords(sample, [frame], 'Nothing'))).toEqual(['nothing-changed']);
    expect(codes(changeRecords(sample, [{ ...wheel, revision: 2 }], 'Stale'))).toEqual(['stale-record']);
  });
});

describe('removeRecord', () => {
  it('says what would be left with a gap, and one thing to do', () => {
    const refused = removeRecord(sample, 'place', 'place-spray', 1);
    expect(codes(refused)).toEqual(['removal-orphans']);
    expect(messages(refused)[0]).toBe('Without the place “Spray corner”, the sessions “Tuesday evening”, “Thursday evening”, “Saturday”, “Tuesday evening”, “Thursday evening” and 4 more '
      + 'and the tasks “Prime the frame” and “Paint the frame” would be left with a gap.');
    expect(refused.ok ? '' : refused.error[0]?.fix).toBe('Change those first, or remove the place together with what depends on it.');
  });

  it('says which work needs a state that only the removed task makes', () => {
    const free = sampleSeries({ links: [] });
    const refused = removeRecord(free, 'task', 'task-clean', 1);
    expect(codes(refused)).toEqual(['removal-orphans-state']);
    expect(messages(refused)[0]).toBe('The task “Clean the frame” alone brings the part “Frame” into “clean”, and the task “Prime the frame” needs that.');
  });

  it('removes what nothing needs without asking', () => {
    expect(codes(removeRecord(sample, 'task', 'task-closing', 1))).toEqual([]);
    expect(codes(removeRecord(sample, 'session', 'session-1', 1))).toEqual([]);
  });

  it('takes dependent records along and mentions out when told to', () => {
    const { document, change } = unwrap(removeRecord(sample, 'place', 'place-spray', 1, { cascade: true }));
    expect(document.tasks.map(({ id }) => id)).toEqual(['task-strip', 'task-clean', 'task-fit', 'task-closing']);
    expect(document.links).toEqual([]);
    expect(document.sessions.every(({ placeIds }) => placeIds.length === 1)).toBe(true);
    expect(change.label).toBe('Removed place Spray corner, with 4 records that needed it and its mention in 9 records');
    expect(previewRemoval(sample, 'place', 'place-spray')?.removed.map(({ id }) => id).toSorted())
      .toEqual(['link-handle', 'link-recoat', 'place-spray', 'task-paint', 'task-prime']);
  });

  it('refuses even then what would break a rule', () => {
    expect(codes(removeRecord(sample, 'material', 'material-primer', 1, { cascade: true }))).toContain('missing-coats');
  });

  it('closes the gap in the numbers of the episodes', () => {
    const free = { ...sample, tasks: sample.tasks.map((task) => ({ ...task, episodeId: 'episode-2' })) };
    const { document, change } = unwrap(removeRecord(free, 'episode', 'episode-1', 1));
    expect(document.episodes).toMatchObject([{ id: 'episode-2', order: 0, revision: 2 }]);
    expect(change.edits).toHaveLength(2);
  });
});

describe('reorderRecords', () => {
  it('gives every moved record its place and a new revision', () => {
    const { document, change } = unwrap(reorderRecords(sample, 'part', ['part-wheel', 'part-frame']));
    expect(document.parts.map(({ id, order, revision }) => [id, order, revision])).toEqual([['part-wheel', 0, 2], ['part-frame', 1, 2]]);
    expect(change.label).toBe('Changed the order of the parts');
  });

  it('leaves what stays in its place', () => {
    const ids = ['task-clean', 'task-strip', ...sample.tasks.slice(2).map(({ id }) => id)];
    expect(unwrap(reorderRecords(sample, 'task', ids)).change.edits.map(({ id }) => id)).toEqual(['task-strip', 'task-clean']);
  });

  it('refuses a list that is not the whole list, each once', () => {
    expect(codes(reorderRecords(sample, 'part', ['part-wheel']))).toEqual(['order-incomplete']);
    expect(codes(reorderRecords(sample, 'part', ['part-wheel', 'part-wheel']))).toEqual(['order-incomplete']);
    expect(codes(reorderRecords(sample, 'part', ['part-wheel', 'gone']))).toEqual(['order-incomplete']);
    expect(codes(reorderRecords(sample, 'part', ['part-frame', 'part-wheel']))).toEqual(['nothing-changed']);
  });
});

describe('undoChange', () => {
  it('takes back a creation, a change and a removal, the revision always moving on', () => {
    const made = saved(start, createRecord(sample, sampleTask('task-new', 0, 'Polish')));
    expect(contents(undo(made, 1).document)).toEqual(contents(sample));
    const changed = undo(saved(start, changeRecord(sample, 'task', 'task-clean', 1, { name: 'Wash' })), 1);
    expect(findRecord(changed.document, 'task', 'task-clean')).toMatchObject({ name: 'Clean the frame', revision: 3 });
    const removed = undo(saved(start, removeRecord(sample, 'place', 'place-spray', 1, { cascade: true })), 1);
    expect(contents(removed.document)).toEqual(contents(sample));
    expect(removed.changes.at(-1)?.label).toMatch(/^Undid: Removed place Spray corner/u);
  });

  it('can be taken back itself', () => {
    const made = saved(start, changeRecord(sample, 'task', 'task-clean', 1, { name: 'Wash' }));
    const redone = undo(undo(made, 1), 2);
    expect(contents(redone.document)).toEqual(contents(made.document));
    expect(redone.changes.at(-1)).toMatchObject({ label: 'Redid: Changed task Clean the frame: name', undoes: 2 });
  });

  it('names the record and the fields that have changed since', () => {
    const first = saved(start, changeRecord(sample, 'task', 'task-clean', 1, { name: 'Wash' }));
    const second = saved(first, changeRecord(first.document, 'task', 'task-clean', 2, { inOneGo: true, isNoisy: false }));
    const [change] = second.changes;
    if (change === undefined) throw new Error('There is a first change');
    const refused = undoChange(second.document, change);
    expect(codes(refused)).toEqual(['changed-since']);
    expect(messages(refused)).toEqual(['The task “Wash” has been changed since: in one go, noise.']);
    expect(contents(undo(undo(second, 2), 1).document)).toEqual(contents(sample));
  });

  it('is not hindered by a new order of the list', () => {
    const first = saved(start, changeRecord(sample, 'part', 'part-wheel', 1, { name: 'Front wheel' }));
    const second = saved(first, reorderRecords(first.document, 'part', ['part-wheel', 'part-frame']));
    expect(undo(second, 1).document.parts.map(({ name }) => name)).toEqual(['Wheel', 'Frame']);
  });

  it('refuses to take back a record that others need by now, one that is gone, and a change taken back already', () => {
    const made = saved(start, createRecord(sample, { kind: 'equipment', id: 'jig', revision: 1, order: 0, name: 'Jig', count: 1, exposure: { noise: null, vibration: null, source: '' } }));
    const used = saved(made, changeRecord(made.document, 'task', 'task-fit', 1, { equipmentIds: ['jig'] }));
    const [change] = used.changes;
    if (change === undefined) throw new Error('There is a first change');
    expect(messages(undoChange(used.document, change))).toEqual(['Without the piece of equipment “Jig”, the task “Fit the wheel” would be left with a gap.']);
    const gone = saved(made, removeRecord(made.document, 'equipment', 'jig', 1));
    expect(messages(undoChange(gone.document, change))).toEqual(['The piece of equipment “Jig” has been removed since.']);
    expect(codes(undoChange(made.document, { ...change, undoneBy: 2 }))).toEqual(['already-undone']);
  });

  it('refuses what would contradict later work', () => {
    const link = { kind: 'link' as const, revision: 1, order: 0, stage: null, minWait: minutes(0), maxWait: null, clock: 'elapsed' as const };
    const [a, b] = [{ kind: 'task' as const, id: 'a' }, { kind: 'task' as const, id: 'b' }];
    const two = sampleSeries({ tasks: [...sample.tasks, sampleTask('a', 6, 'A'), sampleTask('b', 7, 'B')], links: [{ ...link, id: 'ab', name: 'A before B', from: a, to: b }] });
    const removed = saved({ document: two, changes: [] }, removeRecord(two, 'link', 'ab', 1));
    const turned = saved(removed, createRecord(removed.document, { ...link, id: 'ba', name: 'B before A', from: b, to: a }));
    const [change] = turned.changes;
    if (change === undefined) throw new Error('There is a first change');
    expect(codes(undoChange(turned.document, change))).toEqual(['work-goes-round']);
  });

  it('brings an episode back to its number when another has been added since', () => {
    const three = { ...sample, episodes: [...sample.episodes, episode('e3', 2), episode('e4', 3)] };
    const removed = saved({ document: three, changes: [] }, removeRecord(three, 'episode', 'e3', 1));
    const added = saved(removed, createRecord(removed.document, episode('e5', 4)));
    expect(undo(added, 1).document.episodes.map(({ order }) => order)).toEqual([0, 1, 2, 3, 4]);
  });
});
