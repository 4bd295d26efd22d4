import { expect, test } from 'vitest';
import { findRecord, type Sponsorship } from '@/lib/build';
import { changeRecord, createRecord, logTime, moveGoalBy, moveSegment, planByExperience, readFields, stopTimeLog } from '@/lib/commands';
import { unwrap, type Result } from '@/lib/result';
import { sampleSeries } from '../build/sample-series';
import { signAll } from '../safety/sample';
import { memoryContext } from './memory-store';

const ID = 'series-sample';
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code }) => code));

test('a clock starts by the clock, runs once, stops once and says whether it was interrupted', async () => {
  const context = memoryContext(sampleSeries());
  unwrap(await logTime(context, ID, 'task-strip', 'hands-on'));
  const [log] = context.document().timeLogs;
  expect(log).toMatchObject({ taskId: 'task-strip', activity: 'hands-on', start: context.now(), end: null, name: 'Strip the frame' });
  expect(codes(await logTime(context, ID, 'task-strip', 'hands-on'))).toEqual(['log-running']);
  expect(codes(await logTime(context, ID, 'task-strip', 'filming'))).toEqual([]);
  expect(codes(await stopTimeLog(context, ID, log!.id, 1, true))).toEqual(['time-log-ends-before-start']);
});

test('a clock of a task that is gone does not start', async () => {
  expect(codes(await logTime(memoryContext(sampleSeries()), ID, 'gone', 'hands-on'))).toEqual(['record-missing']);
});

test('the switch of the series is one change, refused at an old revision', async () => {
  const context = memoryContext(sampleSeries());
  expect(codes(await planByExperience(context, ID, 7, true))).toEqual(['stale-record']);
  expect(unwrap(await planByExperience(context, ID, 1, true)).change.label).toBe('Plan by experience');
  expect(context.document().series.usesExperience).toBe(true);
  expect(codes(await planByExperience(context, ID, 2, true))).toEqual(['nothing-changed']);
});

test('a goal of plans moves by one place, and stays where it is at either end', async () => {
  const context = memoryContext(sampleSeries());
  expect(codes(await moveGoalBy(context, ID, 1, 'speed', 1))).toEqual(['unknown-goal']);
  expect(codes(await moveGoalBy(context, ID, 7, 'bank', -1))).toEqual(['stale-record']);
  unwrap(await moveGoalBy(context, ID, 1, 'bank', -1));
  expect(context.document().series.goals).toEqual(['bank', 'lateness', 'changes', 'finish', 'heating']);
  expect(codes(await moveGoalBy(context, ID, 2, 'bank', -1))).toEqual(['nothing-changed']);
  unwrap(await moveGoalBy(context, ID, 2, 'bank', 1));
  expect(context.document().series.goals?.[0]).toBe('lateness');
});

test('an order of goals with one of them twice is refused', async () => {
  const context = memoryContext(sampleSeries());
  const refused = await changeRecord(context, ID, 'series', ID, 1, { goals: ['bank', 'bank', 'changes', 'finish', 'heating'] });
  expect(refused.ok ? '' : refused.error[0]!.message).toBe('What plans put first: The order of goals leaves one out or names one twice.');
});

test('a segment longer than an episode is refused by its form with one fix', async () => {
  const context = memoryContext(sampleSeries());
  const refused = await createRecord(context, ID, 'segment', { name: 'All of it', length: '30' });
  expect(refused.ok ? '' : refused.error[0]!.message).toBe('The segment “All of it” is 30 min long, and the longest episode has 24.5 min beside its titles.');
  const made = unwrap(await createRecord(context, ID, 'segment', { name: 'Some of it', length: '3', episodeId: 'episode-1', hook: 0.5 }));
  expect(findRecord(context.document(), 'segment', made.id)).toMatchObject({ length: 3, role: 'work', ending: 'free', taskIds: [] });
  unwrap(await moveSegment(context, ID, made.id, 1, { episodeId: 'episode-2', beforeId: null }));
  expect(findRecord(context.document(), 'segment', made.id)?.episodeId).toBe('episode-2');
});

test('a negative card size and a chance of takes above 90 % are told at their fields', async () => {
  const { id: _id, kind: _kind, revision: _revision, order: _order, ...fields } = sampleSeries().series;
  const read = readFields('series', { ...fields, camera: { ...fields.camera, cards: ['64', '-32'] }, filming: { ...fields.filming, retakeChance: 0.95 } }, { zone: 'UTC', newId: () => 'x' });
  expect(read.ok ? [] : read.error.map(({ path, message }) => [path.join('.'), message])).toEqual([
    ['filming.retakeChance', 'Filming times: The chance of a further take is 0.95; it must be from 0 to 0.9.'],
    ['camera.cards.1', 'Cameras and cards: Card 2 holds -32 GB; a card holds more than 0 GB.'],
  ]);
});

const OWED: Sponsorship = {
  kind: 'sponsorship', id: 'owed', revision: 1, order: 0, name: 'Oil on the couplings', sponsor: 'Wharf Oils', what: '', exclusiveIn: '', episodeId: 'episode-1', part: 'anywhere', dueDate: null,
  minimumSeconds: 30, spotStart: 100, spotEnd: 140, disclosureText: 'Paid promotion', spokenAt: 98, shownFrom: 97, shownUntil: 103, needsApproval: false, approvedOn: null,
};
const signedWith = (more: Partial<Sponsorship>) => memoryContext(signAll(sampleSeries({ sponsorships: [{ ...OWED, ...more }] })));
const call = (context: ReturnType<typeof signedWith>, status: string) => changeRecord(context, ID, 'episode', 'episode-1', 1, { status });

/** What the gate says of sponsors; what the checklist asks beside it is not looked at here. */
const ofSponsors = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ message }) => message).filter((message) => message.includes('“Oil on the couplings” is paid for')));

test('an episode is not released or cleared while its sponsor is not disclosed, and the refusal names what is missing', async () => {
  expect(ofSponsors(await call(signedWith({}), 'released'))).toEqual([]);
  const silent = signedWith({ spokenAt: null, shownFrom: null, shownUntil: null });
  const refused = await call(silent, 'released');
  expect(codes(refused)).toContain('gate-closed');
  // Each once: the checklist does not tell them again.
  expect(ofSponsors(refused)).toEqual([
    '“Down to bare metal” cannot be called released. Nobody says that “Oil on the couplings” is paid for.',
    '“Down to bare metal” cannot be called released. Nothing on screen says that “Oil on the couplings” is paid for.',
  ]);
  expect(ofSponsors(await call(silent, 'cleared'))).toHaveLength(2);
  expect(codes(await call(silent, 'cut'))).toEqual([]);
});
