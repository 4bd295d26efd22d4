import { describe, expect, it } from 'vitest';
import { findRecord } from '@/lib/build';
import { changeRecord, completeTask, createSessions, pinTask, recordBeforeShots, recordJobEvent, reopenTask, undoChange, unpinTask } from '@/lib/commands';
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

describe('completeTask while work before it is open', () => {
  it('asks by name and saves nothing, and asks no longer once that is done', async () => {
    const context = memoryContext(sampleSeries());
    const refused = await completeTask(context, ID, 'task-prime', 1);
    expect(refused).toMatchObject({ ok: false, error: [{
      code: 'work-before-open', message: 'Before Prime the frame comes work that is not ticked: Clean the frame, Strip the frame.',
      fix: 'Say that they are done too, or press again when it is done all the same.', subjects: [{ id: 'task-clean' }, { id: 'task-strip' }],
    }] });
    expect(context.writes()).toBe(0);
    unwrap(await completeTask(context, ID, 'task-strip', 1));
    expect(codes(await completeTask(context, ID, 'task-clean', 1))).toEqual([]);
  });

  it('ticks what comes before it too, as one change that undo takes back whole', async () => {
    const context = memoryContext(sampleSeries());
    const { change } = unwrap(await completeTask(context, ID, 'task-prime', 1, { before: 'too' }));
    expect(change.label).toBe('Done with 2 before it: task Prime the frame');
    const done = () => context.document().tasks.filter(({ doneAt }) => doneAt !== null).map(({ id }) => id);
    expect(done()).toEqual(['task-strip', 'task-clean', 'task-prime']);
    unwrap(await undoChange(context, ID, change.number));
    expect(done()).toEqual([]);
  });

  it('lets it be done all the same, and never ticks the trips of an outside job by itself', async () => {
    const context = memoryContext(sampleSeries());
    expect(await completeTask(context, ID, 'task-fit', 1, { before: 'too' })).toMatchObject({ ok: false, error: [{ code: 'work-before-open', fix: expect.stringContaining('Powder coat the wheel in Waits') }] });
    expect(unwrap(await completeTask(context, ID, 'task-fit', 1, { before: 'leave' })).change.label).toBe('Done: task Fit the wheel');
  });
});

describe('dates that are over already', () => {
  const saturday = { name: 'Saturday', placeIds: ['place-bench'], crewIds: ['person-robin'], isRecording: false, hasDaylight: false, isNoiseAllowed: false, heating: null };

  it('are kept with a warning that says what, where, why and one fix', async () => {
    const context = memoryContext(sampleSeries());
    const { change, warnings } = unwrap(await changeRecord(context, ID, 'episode', 'episode-1', 1, { releaseDate: '2026-11-02' }));
    expect(warnings.find(({ code }) => code === 'release-over')).toMatchObject({
      severity: 'warn', message: 'Down to bare metal is to come out Mon 2 Nov 2026, and that day is over, so its work counts as late.', fix: 'Give it a day that is still to come, or call it released.',
    });
    expect(unwrap(await undoChange(context, ID, change.number)).warnings.filter(({ code }) => code === 'release-over')).toEqual([]);
    const added = unwrap(await createSessions(context, ID, { ...saturday, startOn: '2026-11-02', weeks: 2, weekdays: [6], from: '10:00', to: '16:00' }));
    expect(added.warnings.find(({ code }) => code === 'session-over')?.message).toBe('2 of the sessions end before now, the first Sat 7 Nov 16:00, so no work is planned into them.');
  });

  it('warn no more for what is still to come, or for another field of what was over before', async () => {
    const context = memoryContext(sampleSeries());
    expect(unwrap(await changeRecord(context, ID, 'episode', 'episode-1', 1, { releaseDate: '2026-11-30' })).warnings.map(({ code }) => code)).not.toContain('release-over');
    unwrap(await changeRecord(context, ID, 'episode', 'episode-2', 1, { releaseDate: '2026-11-02' }));
    expect(unwrap(await changeRecord(context, ID, 'episode', 'episode-2', 2, { name: 'Green' })).warnings.map(({ code }) => code)).not.toContain('release-over');
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
