import { expect, test } from 'vitest';
import { checkSeries, findUsers, removeRecord, type Segment, type Sponsorship, type TimeLog } from '@/lib/build';
import { unwrap } from '@/lib/result';
import { at, sampleSeries } from '../sample-series';

const SEGMENT: Segment = {
  kind: 'segment', id: 'segment-1', revision: 1, order: 0, name: 'Paint off', episodeId: 'episode-1', role: 'work', length: 24.5, isResult: false, hook: 1, hang: 0,
  thread: '', isEvergreen: false, isFlashback: false, storyDate: null, ending: 'free', taskIds: ['task-strip'],
};
const LOG: TimeLog = {
  kind: 'timeLog', id: 'log-1', revision: 1, order: 0, name: 'Strip', taskId: 'task-strip', activity: 'hands-on', start: at('2026-12-01', '18:30'), end: at('2026-12-01', '18:31'), wasInterrupted: false,
};
const OWED: Sponsorship = {
  kind: 'sponsorship', id: 'owed-1', revision: 1, order: 0, name: 'Discs', sponsor: 'Abrasives', what: '', exclusiveIn: '', episodeId: 'episode-1', part: 'anywhere', dueDate: null,
  minimumSeconds: 0, spotStart: 0, spotEnd: 1, disclosureText: '', spokenAt: 0, shownFrom: null, shownUntil: null, needsApproval: false, approvedOn: null,
};

const own = (more: Parameters<typeof sampleSeries>[0]): string[] =>
  checkSeries(sampleSeries(more)).filter(({ subjects }) => ['segment', 'timeLog', 'sponsorship'].includes(subjects[0]?.kind ?? '')).map(({ code }) => code);

test('a segment fits the longest episode beside its titles: 24.5 of 25 min do, 24.6 do not', () => {
  expect(own({ segments: [SEGMENT] })).toEqual([]);
  expect(own({ segments: [{ ...SEGMENT, length: 24.6 }] })).toEqual(['segment-longer-than-episode']);
  expect(own({ segments: [{ ...SEGMENT, length: 0 }] })).toEqual(['segment-length']);
});

test('hook and open end are shares', () => {
  expect(own({ segments: [{ ...SEGMENT, hook: 1.01, hang: -0.01 }] })).toEqual(['segment-share', 'segment-share']);
});

test('a time log ends after it starts, and within a day', () => {
  expect(own({ timeLogs: [LOG, { ...LOG, id: 'log-2', end: null }] })).toEqual([]);
  expect(own({ timeLogs: [{ ...LOG, end: LOG.start }] })).toEqual(['time-log-ends-before-start']);
  expect(own({ timeLogs: [{ ...LOG, end: at('2026-12-02', '18:30') }] })).toEqual([]);
  expect(own({ timeLogs: [{ ...LOG, end: at('2026-12-02', '18:31') }] })).toEqual(['time-log-too-long']);
});

test('seconds of a sponsor obligation count from 0, spans are whole and end later than they start', () => {
  expect(own({ sponsorships: [OWED] })).toEqual([]);
  expect(own({ sponsorships: [{ ...OWED, minimumSeconds: -1 }] })).toEqual(['sponsor-seconds']);
  expect(own({ sponsorships: [{ ...OWED, spotEnd: 0 }] })).toEqual(['sponsor-span-ends-early']);
  expect(own({ sponsorships: [{ ...OWED, shownFrom: 3 }] })).toEqual(['sponsor-span-open']);
});

test('with a task go its time logs; a segment only loses the mention of it', () => {
  const document = sampleSeries({ segments: [SEGMENT], timeLogs: [LOG] });
  const owed = { ...document, sponsorships: [OWED] };
  expect(findUsers(owed, 'episode', 'episode-1').map(({ record }) => record.kind)).toEqual(expect.arrayContaining(['segment', 'sponsorship']));
  const after = unwrap(removeRecord(owed, 'task', 'task-strip', 1, { cascade: true })).document;
  expect(after.timeLogs).toEqual([]);
  expect(after.segments[0]!.taskIds).toEqual([]);
});
