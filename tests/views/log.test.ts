import { describe, expect, test } from 'vitest';
import type { Segment, SeriesDocument } from '@/lib/build';
import type { LogEntry } from '@/lib/continuity';
import { exportLog, searchLog, viewChecks, viewLog, viewLogPhone, viewPickups, viewPromises, viewStates, viewStills } from '@/lib/views';
import type { ViewContext } from '@/lib/views/context';
import { readOtio, readTakesCsv, readWebVtt } from '@/lib/exchange';
import { unwrap } from '@/lib/result';
import { addMinutes, instant } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { cameraA, R25, withTasks } from '../continuity/check-case';
import { segment } from '../continuity/check-cases-story';
import { promise } from '../continuity/check-cases-work';
import { block, entry, LOOK, take } from '../continuity/sample-log';

const NOW = at('2026-12-03', '21:00');
const tue = at('2026-12-01', '18:30');

/** A storage that holds a log and its photos, and no plan but these blocks. */
function contextOf(entries: readonly LogEntry[], { photos = [], blocks = null, now = NOW }: { readonly photos?: readonly (readonly [id: string, entryId: string])[]; readonly blocks?: readonly ReturnType<typeof block>[] | null; readonly now?: typeof NOW } = {}): ViewContext {
  const inside = (one: LogEntry, { from = instant(-8e15), until = instant(8e15) }: { readonly from?: typeof NOW; readonly until?: typeof NOW }) => one.at >= from && one.at < until;
  const storage = {
    listLogEntries: async (_id: string, filter: object) => entries.filter((one) => inside(one, filter)).toReversed(),
    listLogPhotos: async () => photos.map(([id, entryId]) => ({ id, entryId, receivedAt: NOW, width: 1, height: 1, bytes: 1 })),
    measureLog: async () => ({ count: entries.length, first: entries[0]?.at ?? null, last: entries.at(-1)?.at ?? null }),
    searchLog: async (_id: string, _text: string, limit: number) => entries.slice(0, limit),
    acceptedPlan: async () => (blocks === null ? null : { number: 1, result: { blocks, episodes: [], unplaced: [] } }), listReadings: async () => [],
  } as unknown as ViewContext['storage'];
  return { storage, now, zone: 'Europe/London' };
}

const filmed = (more: Partial<SeriesDocument> = {}) => sampleSeries({ cameras: [{ ...cameraA, clockOffset: 4 }], ...more });
const saw = (stateId: string, moment: LogEntry['at'], text = '') => entry({ kind: 'state', at: moment, text, observed: [{ partId: 'part-frame', stateId, whereabouts: null }] });

describe('the log of a day', () => {
  const first = take({ cameraId: 'camera-a', format: R25, startFrame: 18 * 90_000, endFrame: 18 * 90_000 + 250, media: 'A1' }, { id: 'take-1', at: at('2026-12-01', '18:01'), taskId: 'task-strip' });
  const corrected = { ...first, id: 'take-2', number: first.number + 1, supersedes: 'take-1', text: 'better words' };

  test('shows what stands, newest first, with the photos of what it took the place of', async () => {
    const day = await viewLog(contextOf([first, corrected, entry({ at: tue, text: 'later' })], { photos: [['photo-1', 'take-1']] }), filmed(), '2026-12-01');
    expect(day.entries.map(({ id }) => id)).toEqual([expect.any(String), 'take-2']);
    expect(day.entries[1]).toMatchObject({ title: 'Take 1: good', photoIds: ['photo-1'], replaces: true, task: { name: 'Strip the frame' } });
    expect([day.isToday, day.after, day.before, day.lastDay]).toEqual([false, '2026-12-02', '2026-11-30', '2026-12-01']);
    expect(day.cameras).toEqual([{ id: 'camera-a', name: 'A', clock: 'its clock is 4 s ahead, and its times are put right by that' }]);
  });

  test('gives the time of a take by the workshop’s clock', async () => {
    const [shown] = (await viewLog(contextOf([first]), filmed(), '2026-12-01')).entries;
    expect(shown?.lines).toContain('18:00:00:00 – 18:00:10:00 at 25');
    expect(shown?.lines).toContain('recorded 17:59:56 – 18:00:06, its clock 4 s ahead put right');
  });

  test('says of an entry that its device was two days off, and nothing within two minutes', async () => {
    const off = entry({ at: tue, deviceAt: addMinutes(tue, 2880), text: 'a' });
    const near = entry({ at: tue, deviceAt: addMinutes(tue, 2), text: 'b' });
    const lines = (await viewLog(contextOf([off, near]), filmed(), '2026-12-01')).entries.map((one) => one.lines);
    expect(lines).toEqual([[], ['the clock of the device was 2 days ahead; the time is put right']]);
  });

  test('shows honestly what is re-enacted, failed, or departs from the manual', async () => {
    const day = await viewLog(contextOf([
      take({ isReenacted: true }, { at: tue }), take({ isReenacted: true, reenactmentLabel: 'Shown again', isFailedAttempt: true }, { at: tue }),
      entry({ kind: 'departure', at: tue, departure: { manualValue: '25 Nm', ownValue: '22 Nm', reason: 'soft thread', warning: '', isSpoken: true, isCaptioned: false } }),
    ]), filmed(), '2026-12-01');
    expect(day.entries.flatMap(({ lines }) => lines)).toEqual(['manual: 25 Nm; own: 22 Nm', 'reason: soft thread', 'warning: not stated, spoken', 're-enacted, labelled “Shown again”', 'a failed attempt that may be shown', 're-enacted, no label yet']);
  });

  test('of a date that is none is today’s, and is empty without entries', async () => {
    const day = await viewLog(contextOf([]), sampleSeries(), '2026-02-30');
    expect([day.day, day.isToday, day.after, day.entries, day.count, day.lastDay, day.cameras]).toEqual(['2026-12-03', true, null, [], 0, null, []]);
  });

  test('found entries say their day, and that there are more than are shown', async () => {
    const many = Array.from({ length: 51 }, () => entry({ at: tue, text: 'word' }));
    const found = await searchLog(contextOf(many), filmed(), 'word');
    expect([found.entries.length, found.hasMore, found.entries[0]?.day]).toEqual([50, true, '2026-12-01']);
  });
});

describe('the picture of the states', () => {
  test('draws parts with a story by what they belong to, and names those without', async () => {
    const view = await viewStates(contextOf([]), withTasks({ 'task-strip': { doneAt: tue } }));
    expect(view.assemblies.map(({ name, threads }) => [name, threads.map((thread) => thread.stretches.map(({ state }) => state))])).toEqual([['Chassis', [['as bought', 'stripped']]]]);
    expect(view.idle).toEqual(['Wheel, bare']);
    const [thread] = view.assemblies[0]!.threads;
    for (const { from, width } of thread!.stretches) expect(from >= 0 && width > 0 && from + width <= 100.01).toBe(true);
  });

  test('tells a redo, and both sources of a disagreement', async () => {
    const view = await viewStates(contextOf([saw('frame-bought', at('2026-12-02', '18:00'), 'still all bolts in')]), withTasks({ 'task-strip': { doneAt: tue } }));
    const [thread] = view.assemblies[0]!.threads;
    expect(thread?.disagreements).toEqual(['Wed 2 Dec 18:00: still all bolts in says as bought; Strip the frame says stripped.']);
    expect(thread?.redos[0]).toContain('Done again from as bought');
    expect(thread?.stretches.map(({ branch }) => branch)).toEqual([0, 0, 1]);
  });

  test('marks takes and draws the plan as planned', async () => {
    const view = await viewStates(contextOf([take({ verdict: 'no good' }, { taskId: 'task-strip', at: tue })], { blocks: [block('task-strip', at('2026-12-05', '10:00'), 2)] }), sampleSeries());
    const [thread] = view.assemblies[0]!.threads;
    expect(thread?.takes).toMatchObject([{ isGood: false, words: 'take 1, no good, Tue 1 Dec 18:30' }]);
    expect(thread?.stretches.map(({ state, isPlanned }) => [state, isPlanned])).toEqual([['as bought', false], ['stripped', true]]);
  });
});

const two: readonly Segment[] = [segment('one', 0, { taskIds: ['task-strip'] }), segment('two', 1, { taskIds: ['task-clean'] })];

test('stills stand side by side in the order of airing, and say where they differ', async () => {
  const left = take({}, { taskId: 'task-strip', at: tue, look: { ...LOOK, clothes: 'blue', light: 'panels' } });
  const right = take({}, { taskId: 'task-clean', at: at('2026-12-03', '19:00'), look: { ...LOOK, clothes: 'brown', light: 'Panels' } });
  const view = await viewStills(contextOf([left, right], { photos: [['photo-l', left.id]] }), sampleSeries({ segments: two }));
  expect(view.episodes).toMatchObject([{ name: 'Down to bare metal', pairs: [{ left: { name: 'one', photoId: 'photo-l' }, right: { name: 'two', photoId: null } }] }]);
  expect(view.episodes[0]?.pairs[0]?.right.look).toEqual([{ words: 'Clothes: brown', differs: true }, { words: 'Light: Panels', differs: false }]);
  expect((await viewStills(contextOf([]), sampleSeries({ segments: two }))).episodes).toEqual([]);
});

describe('the checks', () => {
  test('are grouped, counted, and name those with nothing to look at', async () => {
    const view = await viewChecks(contextOf([]), sampleSeries());
    expect([view.stops, view.hasPlan]).toEqual([0, false]);
    expect(view.blind.map(({ number }) => number)).toEqual([9, 15, 18, 30, 31, 34]);
    expect(view.held.length + view.blind.length + new Set(view.groups.flatMap(({ findings }) => findings.map(({ check }) => check))).size).toBe(40);
  });

  test('offer to mark the later segment as a flashback', async () => {
    const segments = [segment('paint', 0, { taskIds: ['task-paint'] }), segment('strip', 1, { taskIds: ['task-strip'], revision: 3 })];
    const document = withTasks({ 'task-strip': { doneAt: tue }, 'task-paint': { doneAt: at('2026-12-03', '20:00') } }, { segments });
    const findings = (await viewChecks(contextOf([]), document)).groups.flatMap((group) => group.findings);
    expect(findings.filter(({ check }) => check === 17).map(({ flashback }) => flashback)).toEqual([{ id: 'strip', revision: 3, name: 'strip' }]);
    expect(findings.filter(({ check, flashback }) => check !== 17 && flashback !== null)).toEqual([]);
  });
});

test('pickups name their parts and the next sessions, and how many more there are', async () => {
  const failed = take({ verdict: 'no good' }, { taskId: 'task-strip', shotId: 'shot-before', at: tue, text: 'dark' });
  const [pickup] = await viewPickups(contextOf([failed], { now: tue }), sampleSeries());
  expect(pickup).toMatchObject({ what: '“Frame as bought, all round”', parts: ['Frame as bought'], moreSessions: 2, whyNone: '' });
  expect(pickup?.sessions[0]?.words).toBe('Thursday evening, Thu 3 Dec 18:30');
});

test('promises say where they were made, when they are due and how they ended', () => {
  const view = viewPromises(contextOf([]), sampleSeries({ promises: [{ ...promise, closure: 'replaced', reason: 'matt suits it', closedInId: 'episode-2' }, { ...promise, id: 'p2', order: 1, dueId: null, saidInId: 'episode-1', where: 'closing words' }] }));
  expect(view.promises.map(({ standing, due, said, closure }) => [standing, due, said, closure])).toEqual([
    ['open', 'by the end of the series, Green at last, Sun 3 Jan', 'in Down to bare metal, closing words', 'open'], ['closed', 'Down to bare metal, Sun 20 Dec', 'not in an episode yet', 'replaced in Green at last'],
  ]);
});

test('the phone has the work that is planned next in front, and done work last', async () => {
  const view = await viewLogPhone(contextOf([], { blocks: [block('task-fit', at('2026-12-05', '10:00'), 1), block('task-prime', at('2026-12-05', '12:00'), 1)] }), withTasks({ 'task-strip': { doneAt: tue } }));
  expect(view.tasks.map(({ id }) => id)).toEqual(['task-fit', 'task-prime', 'task-clean', 'task-paint', 'task-closing', 'task-strip']);
});

describe('what goes out', () => {
  const document = filmed();
  const entries = [
    take({ cameraId: 'camera-a', format: R25, startFrame: 1500, endFrame: 1750, media: 'A1', verdict: 'good' }, { id: 'take-out-1', at: tue, taskId: 'task-strip', text: 'first, with “=1+1”' }),
    take({ verdict: 'no good' }, { id: 'take-out-2', at: addMinutes(tue, 5), taskId: 'task-strip' }), entry({ at: addMinutes(tue, 6), text: 'Mind the lug & the <pin>.' }),
  ];
  const out = async (format: 'csv' | 'otio' | 'vtt') => unwrap(await exportLog(contextOf(entries), document, format));

  test('as a table can be read again as the same takes', async () => {
    const { text, name } = await out('csv');
    expect(name).toBe('arch-build-2026-12-03.csv');
    expect(unwrap(readTakesCsv(text)).map((row) => [row.id, row.take])).toEqual(entries.slice(0, 2).map((one) => [one.id, one.take]));
  });

  test('as a timeline has a clip for each take, with its frames, and a marker for its note', async () => {
    const { clips } = unwrap(readOtio((await out('otio')).text));
    expect(clips.map(({ start, length, media, markers }) => [start, length, media, markers.map(({ colour }) => colour)])).toEqual([[1500, 250, 'A1', ['GREEN']], [0, 250, '', []]]);
  });

  test('as timed text has every word that was noted, from the first on', async () => {
    const cues = unwrap(readWebVtt((await out('vtt')).text));
    expect(cues.map(({ start }) => start)).toEqual([0, 360]);
    expect(cues[1]?.text).toBe('Mind the lug & the <pin>.');
  });
});
