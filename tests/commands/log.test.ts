import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import type { CommandContext } from '@/lib/commands';
import { applyMany, correctEntry, createSeries, importTakes, logEntry, planPickup, undoChange, waiveFinding, withdrawEntry } from '@/lib/commands';
import { findPickups, gatherFacts, runChecks, stateAt } from '@/lib/continuity';
import { standingEntries } from '@/lib/footage';
import { writeTakesCsv } from '@/lib/exchange';
import { unwrap } from '@/lib/result';
import { instant } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { TAKE } from '../continuity/sample-log';
import { blockOf, planOf } from '../plan/plan-of';
import { makeFolder } from '../storage/database';

const ID = 'series-sample';
const NOW = at('2026-12-01', '21:00');
let folder: Awaited<ReturnType<typeof makeFolder>>;
beforeAll(async () => {
  folder = await makeFolder();
});
afterAll(() => folder.remove());

const input = ({ id: _id, kind: _kind, revision: _revision, order: _order, ...rest }: { id: string; kind: string; revision: number; order: number }) => rest;

async function open(more: Partial<SeriesDocument> = {}): Promise<CommandContext> {
  const { storage } = await folder.copyBase();
  let ids = 0;
  const context = { storage, now: () => NOW, newId: () => `made-here-${(ids += 1)}` };
  const { series, changeNumber: _number, planChange: _planChange, ...lists } = sampleSeries({
    cameras: [{ kind: 'camera', id: 'camera-a', revision: 1, order: 0, name: 'A', rate: { numerator: 30_000, denominator: 1001 }, isDropFrame: true, clockOffset: 0 }], ...more,
  });
  unwrap(await createSeries(context, input(series), ID));
  unwrap(await applyMany(context, ID, 'Loaded', Object.values(lists).flat().map((record) => ({ kind: record.kind, id: record.id, input: input(record) }))));
  return context;
}

let made = 0;
const sent = (more: Record<string, unknown> = {}) => ({
  id: `device-entry-${(made += 1)}`, kind: 'note', deviceAt: NOW - 60_000, sentAt: NOW, device: 'phone 1', author: 'Robin', taskId: null, shotId: null, text: '', ...more,
});
const take = (more: Record<string, unknown> = {}, around: Record<string, unknown> = {}) =>
  sent({ kind: 'take', taskId: 'task-strip', shotId: 'shot-before', take: { cameraId: 'camera-a', start: '', end: '', verdict: 'good', media: '', reenactmentLabel: '', ...more }, ...around });

describe('logging an entry', () => {
  test('sent three times is kept once, and takes of a shot are counted on', async () => {
    const context = await open();
    const [one, two] = [take(), take({ verdict: 'no good' })];
    expect(unwrap(await logEntry(context, ID, one)).entry.take?.number).toBe(1);
    expect(unwrap(await logEntry(context, ID, two)).entry.take?.number).toBe(2);
    const again = [unwrap(await logEntry(context, ID, one)), unwrap(await logEntry(context, ID, two))];
    expect(again.map(({ isNew, entry }) => [isNew, entry.take?.number])).toEqual([[false, 1], [false, 2]]);
    expect(await context.storage.listLogEntries(ID, {})).toHaveLength(2);
  });

  test('with an impossible timecode is kept, with the label as words and a warning', async () => {
    const context = await open();
    const { entry, warnings } = unwrap(await logEntry(context, ID, take({ start: '00:01:00;00', end: '00:02:00;02' })));
    expect([entry.take?.startFrame, entry.take?.endFrame]).toEqual([null, 3598]);
    expect(entry.text).toBe('Start as read: 00:01:00;00');
    expect(warnings.map(({ code }) => code)).toEqual(['timecode-dropped']);
  });

  test('from a device two days ahead gets its time put right', async () => {
    const context = await open();
    const twoDays = 2 * 86_400_000;
    const { entry, warnings } = unwrap(await logEntry(context, ID, sent({ deviceAt: NOW - 60_000 + twoDays, sentAt: NOW + twoDays })));
    expect(entry.at).toBe(NOW - 60_000);
    expect(entry.deviceAt).toBe(NOW - 60_000 + twoDays);
    expect(warnings[0]?.message).toContain('2 days ahead');
  });

  test('about a task and a part that are gone is kept without them', async () => {
    const context = await open();
    const { entry, warnings } = unwrap(await logEntry(context, ID, sent({ text: 'here', taskId: 'task-gone', observed: [{ partId: 'part-gone', stateId: null, whereabouts: null }] })));
    expect([entry.taskId, entry.observed, entry.text]).toEqual([null, [], 'here']);
    expect(warnings.map(({ code }) => code)).toEqual(['log-reference-gone']);
  });

  test('that is malformed is refused with the place of each fault', async () => {
    const context = await open();
    const refused = await logEntry(context, ID, { ...sent(), kind: 'song', deviceAt: 'now', extra: 1 });
    expect(refused.ok ? [] : refused.error.map(({ path }) => path.join('.'))).toEqual(['kind', 'deviceAt', '']);
    expect(await logEntry(context, 'gone', sent())).toMatchObject({ ok: false, error: [{ code: 'no-such-series' }] });
  });

  test('can be found by the names of what it is about', async () => {
    const context = await open();
    unwrap(await logEntry(context, ID, sent({ kind: 'state', observed: [{ partId: 'part-frame', stateId: 'frame-primed', whereabouts: null }] })));
    expect(await context.storage.searchLog(ID, 'frame prim', 5)).toHaveLength(1);
  });
});

test('a correction takes the place of an entry, keeps its timecode, and both stay', async () => {
  const context = await open();
  const { entry } = unwrap(await logEntry(context, ID, take({ start: '00:01:00;02', end: '00:02:00;02' }, { text: 'blury' })));
  const corrected = unwrap(await correctEntry(context, ID, entry.id, 'Kim', { text: 'blurry', verdict: 'no good' })).entry;
  expect([corrected.take?.startFrame, corrected.take?.endFrame, corrected.take?.verdict, corrected.at]).toEqual([1800, 3598, 'no good', entry.at]);
  unwrap(await withdrawEntry(context, ID, corrected.id, 'Kim'));
  const log = await context.storage.listLogEntries(ID, {});
  expect(log).toHaveLength(3);
  expect(standingEntries(log)).toEqual([]);
});

test('a finding is let pass with a reason only, and counts again when that is taken back', async () => {
  const context = await open();
  const { entry } = unwrap(await logEntry(context, ID, take({ isReenacted: true })));
  const waived = async () => runChecks(gatherFacts({ document: (await context.storage.loadSeries(ID))!, blocks: [], entries: await context.storage.listLogEntries(ID, {}), now: NOW })).find(({ check }) => check === 20)?.waived?.reason;
  expect(await waiveFinding(context, ID, { check: 20, key: entry.id }, 'Kim', ' ')).toMatchObject({ ok: false, error: [{ code: 'waiver-without-reason' }] });
  const waiver = unwrap(await waiveFinding(context, ID, { check: 20, key: entry.id }, 'Kim', 'said by voice'));
  expect(await waived()).toBe('said by voice');
  unwrap(await withdrawEntry(context, ID, waiver.entry.id, 'Kim'));
  expect(await waived()).toBeUndefined();
});

test('a table of takes is taken in once, or not at all', async () => {
  const context = await open();
  const row = { id: '', at: instant(NOW - 3_600_000), author: 'Kim', taskId: 'task-strip', taskName: '', shotId: null, shotName: '', cameraName: '', text: 'from the other log', take: { ...TAKE, cameraId: 'camera-a', format: { rate: { numerator: 30_000, denominator: 1001 }, isDropFrame: true }, startFrame: 1800, endFrame: 3598 } };
  const table = writeTakesCsv([row, { ...row, text: 'second' }]);
  expect(unwrap(await importTakes(context, ID, table, 'Robin'))).toMatchObject({ added: 2, known: 0, warnings: [] });
  expect(unwrap(await importTakes(context, ID, table, 'Robin'))).toMatchObject({ added: 0, known: 2 });
  expect(await importTakes(context, ID, `${table}x,never\r\n`, 'Robin')).toMatchObject({ ok: false });
  expect((await context.storage.listLogEntries(ID, {})).map(({ take: kept }) => [kept?.startFrame, kept?.endFrame])).toEqual([[1800, 3598], [1800, 3598]]);
});

test('a pickup becomes a task with its shot in the right state, is offered no more, and can be undone', async () => {
  const context = await open();
  unwrap(await logEntry(context, ID, take({ verdict: 'no good' }, { text: 'out of focus' })));
  const saved = unwrap(await planPickup(context, ID, 'failed/shot-before'));
  const document = await context.storage.loadSeries(ID);
  const task = document?.tasks.find(({ name }) => name.startsWith('Pickup:'));
  expect(task?.parts).toEqual([{ partId: 'part-frame', from: 'frame-bought', to: null }]);
  expect(task?.shots.map(({ purpose }) => purpose)).toEqual(['pickup']);
  expect(await planPickup(context, ID, 'failed/shot-before')).toMatchObject({ ok: false, error: [{ code: 'no-such-pickup' }] });
  unwrap(await undoChange(context, ID, saved.change.number));
  expect((await context.storage.loadSeries(ID))?.tasks.some(({ name }) => name.startsWith('Pickup:'))).toBe(false);
});

test('a planned pickup gets a block in a session in which its part is in the right state', async () => {
  // Stripped on Thursday evening, cleaned nine days later: offered are the sessions in between, and work that asked for no state would go ahead of both.
  const tasks = sampleSeries().tasks.map((task) => ({
    ...task, ...(task.id === 'task-strip' ? { pinnedStart: at('2026-12-03', '18:50'), shots: [...task.shots, { ...task.shots[0]!, id: 'shot-after', name: 'Frame stripped, all round', purpose: 'after' as const }] } : {}),
    ...(task.id === 'task-clean' ? { pinnedStart: at('2026-12-12', '10:00') } : {}),
  }));
  const context = await open({ tasks, series: { ...sampleSeries().series, fillLimit: 1 } });
  unwrap(await logEntry(context, ID, take({ verdict: 'no good' }, { shotId: 'shot-after', text: 'out of focus' })));
  const accepted = planOf((await context.storage.loadSeries(ID))!, NOW).plan;
  unwrap(await context.storage.savePlan(ID, { result: accepted, basedOnChange: 0, madeAt: NOW }));
  unwrap(await context.storage.setPlanStatus(ID, 1, 'accepted', NOW));
  const factsOf = async (blocks: typeof accepted.blocks) => gatherFacts({ document: (await context.storage.loadSeries(ID))!, blocks, entries: await context.storage.listLogEntries(ID, {}), now: NOW });
  const before = await factsOf(accepted.blocks);
  const offered = findPickups(before, runChecks(before)).find(({ key }) => key === 'failed/shot-after')!.sessions;
  expect(offered.map(({ id }) => id)).toEqual(['session-3', 'session-5']);

  unwrap(await planPickup(context, ID, 'failed/shot-after'));
  const document = (await context.storage.loadSeries(ID))!;
  const { plan } = planOf(document, NOW, { accepted });
  expect(plan.unplaced).toEqual([]);
  const pickup = blockOf(plan, `task:${document.tasks.find(({ name }) => name.startsWith('Pickup:'))!.id}`);
  const session = document.sessions.find(({ start, end }) => start <= pickup.start && pickup.end <= end);
  expect(session?.isRecording).toBe(true);
  expect(pickup.start).toBeGreaterThanOrEqual(blockOf(plan, 'task:task-strip').end);
  expect(pickup.end).toBeLessThanOrEqual(blockOf(plan, 'task:task-clean').start);
  const frame = (await factsOf(plan.blocks)).lineOf.get('part-frame')!;
  expect([pickup.start, pickup.end].map((moment) => stateAt(frame, moment, 'planned')?.stateId)).toEqual(['frame-stripped', 'frame-stripped']);
});
