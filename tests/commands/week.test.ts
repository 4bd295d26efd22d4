import { describe, expect, it } from 'vitest';
import { findRecord } from '@/lib/build';
import { completeTask, createSessions, pinTask, recordBeforeShots, recordJobEvent, reopenTask, undoChange, unpinTask } from '@/lib/commands';
import { unwrap, type Result } from '@/lib/result';
import { contents } from '../build/history';
import { at, sampleSeries } from '../build/sample-series';
import { memoryContext } from './memory-store';

const ID = 'series-sample';
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code }) => code));

describe('completeTask and reopenTask', () => {
  it('sets the moment by the clock, takes it back, and can be undone', async () => {
    const context = memoryContext(sampleSeries());
    const { change } = unwrap(await completeTask(context, ID, 'task-strip', 1));
    expect(findRecord(context.document(), 'task', 'task-strip')).toMatchObject({ doneAt: context.now(), revision: 2 });
    expect(change.label).toBe('Done: task Strip the frame');
    unwrap(await reopenTask(context, ID, 'task-strip', 2));
    expect(findRecord(context.document(), 'task', 'task-strip')?.doneAt).toBeNull();
    unwrap(await undoChange(context, ID, 2));
    expect(findRecord(context.document(), 'task', 'task-strip')?.doneAt).toBe(context.now());
  });

  it('refuses a stale revision and a task that is not done anyway', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await completeTask(context, ID, 'task-strip', 2))).toEqual(['stale-record']);
    expect(codes(await reopenTask(context, ID, 'task-strip', 1))).toEqual(['nothing-changed']);
    expect(context.writes()).toBe(0);
  });
});

describe('recordBeforeShots', () => {
  it('marks the before-shots and no other, keeps a moment that is there, and takes it back', async () => {
    const context = memoryContext(sampleSeries());
    const earlier = at('2026-11-28', '10:00');
    unwrap(await recordBeforeShots(context, ID, 'task-strip', 1, earlier));
    expect(findRecord(context.document(), 'task', 'task-strip')?.shots.map(({ filmedAt }) => filmedAt)).toEqual([earlier, null]);
    expect(codes(await recordBeforeShots(context, ID, 'task-strip', 2))).toEqual(['nothing-changed']);
    const { change } = unwrap(await recordBeforeShots(context, ID, 'task-strip', 2, null));
    expect(change.label).toBe('Before-shots to be filmed again: task Strip the frame');
    expect(findRecord(context.document(), 'task', 'task-strip')?.shots.map(({ filmedAt }) => filmedAt)).toEqual([null, null]);
  });
});

describe('pinTask and unpinTask', () => {
  it('takes a local time of the series', async () => {
    const context = memoryContext(sampleSeries());
    expect(unwrap(await pinTask(context, ID, 'task-clean', 1, '2026-12-05T10:00')).warnings).toEqual([]);
    expect(findRecord(context.document(), 'task', 'task-clean')?.pinnedStart).toBe(at('2026-12-05', '10:00'));
    unwrap(await unpinTask(context, ID, 'task-clean', 2));
    expect(findRecord(context.document(), 'task', 'task-clean')?.pinnedStart).toBeNull();
  });

  it('keeps a start outside every session, with a warning, and refuses what is no time', async () => {
    const context = memoryContext(sampleSeries());
    expect(unwrap(await pinTask(context, ID, 'task-clean', 1, at('2026-12-06', '10:00'))).warnings.map(({ code }) => code)).toEqual(['pin-outside-sessions']);
    expect(codes(await pinTask(context, ID, 'task-clean', 2, 'soon'))).toEqual(['input-value']);
  });
});

describe('recordJobEvent', () => {
  it('moves the parts with the job, in one change each', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await recordJobEvent(context, ID, 'job-wheel', 1, { event: 'dropped off', at: '2026-12-01T09:00' }));
    expect(findRecord(context.document(), 'part', 'part-wheel')?.whereabouts).toEqual({ kind: 'trade', id: 'trade-coater' });
    unwrap(await recordJobEvent(context, ID, 'job-wheel', 2, { event: 'promised', for: '2026-12-08' }));
    const { change } = unwrap(await recordJobEvent(context, ID, 'job-wheel', 3, { event: 'collected', at: '2026-12-08T16:00' }));
    expect(change).toMatchObject({ number: 3, label: 'Collected outside job Powder coat the wheel' });
    expect(findRecord(context.document(), 'part', 'part-wheel')?.whereabouts).toEqual({ kind: 'store', id: null });
    expect(findRecord(context.document(), 'outsideJob', 'job-wheel')).toMatchObject({ droppedOffAt: at('2026-12-01', '09:00'), promisedFor: '2026-12-08', collectedAt: at('2026-12-08', '16:00') });
    for (const number of [3, 2, 1]) unwrap(await undoChange(context, ID, number));
    expect(contents(context.document())).toEqual(contents(sampleSeries()));
  });

  it('refuses a collection without or before the drop-off, and a form it cannot read', async () => {
    const context = memoryContext(sampleSeries());
    expect(codes(await recordJobEvent(context, ID, 'job-wheel', 1, { event: 'collected', at: '2026-12-08T16:00' }))).toEqual(['collected-without-drop-off']);
    expect(codes(await recordJobEvent(context, ID, 'job-wheel', 1, { event: 'promised', for: 'Tuesday' }))).toEqual(['input-value']);
    expect(codes(await recordJobEvent(context, ID, 'job-wheel', 1, { event: 'lost' }))).toEqual(['input-value']);
    expect(context.writes()).toBe(0);
  });

  it('takes a drop-off back', async () => {
    const context = memoryContext(sampleSeries());
    unwrap(await recordJobEvent(context, ID, 'job-wheel', 1, { event: 'dropped off', at: '2026-12-01T09:00' }));
    const { change } = unwrap(await recordJobEvent(context, ID, 'job-wheel', 2, { event: 'dropped off', at: null }));
    expect(change.label).toBe('Not after all: Dropped off outside job Powder coat the wheel');
    expect(findRecord(context.document(), 'part', 'part-wheel')?.whereabouts).toEqual({ kind: 'store', id: null });
  });
});

describe('createSessions', () => {
  const input = {
    name: 'Sunday', startOn: '2027-03-15', weeks: 3, weekdays: [7], from: '10:00', to: '16:00',
    placeIds: ['place-bench'], crewIds: ['person-robin', 'person-kim'], isRecording: true,
  };

  it('keeps the time on the clock through the change to summer time', async () => {
    const context = memoryContext(sampleSeries());
    const { ids, change } = unwrap(await createSessions(context, ID, input));
    const made = ids.map((id) => findRecord(context.document(), 'session', id));
    expect(made.map((session) => session?.start)).toEqual([at('2027-03-21', '10:00'), at('2027-03-28', '09:00'), at('2027-04-04', '09:00')]);
    expect(made.map((session) => session?.end)).toEqual([at('2027-03-21', '16:00'), at('2027-03-28', '15:00'), at('2027-04-04', '15:00')]);
    expect(made[0]).toMatchObject({ isRecording: true, hasDaylight: false, heating: null, placeIds: ['place-bench'] });
    expect(change).toMatchObject({ number: 1, label: 'Added 3 sessions Sunday' });
    unwrap(await undoChange(context, ID, 1));
    expect(context.document().sessions).toHaveLength(9);
  });

  it('leaves out who is away that day', async () => {
    const context = memoryContext(sampleSeries());
    const { ids } = unwrap(await createSessions(context, ID, { ...input, startOn: '2026-12-21', weeks: 2 }));
    expect(ids.map((id) => findRecord(context.document(), 'session', id)?.crewIds)).toEqual([['person-robin'], ['person-robin', 'person-kim']]);
  });

  it('saves nothing when one of them overlaps another of the same person, or ends before it starts', async () => {
    const context = memoryContext(sampleSeries());
    const overlapping = await createSessions(context, ID, { ...input, startOn: '2026-12-01', weeks: 1, weekdays: [6], from: '16:59', to: '20:00' });
    expect(codes(overlapping)).toEqual(['person-in-two-sessions', 'person-in-two-sessions']);
    expect(codes(await createSessions(context, ID, { ...input, to: '10:00' }))).toEqual(['session-ends-before-start']);
    expect(codes(await createSessions(context, ID, { ...input, weekdays: [], weeks: 54 }))).toEqual(['input-value', 'input-value']);
    expect(context.writes()).toBe(0);
  });
});
