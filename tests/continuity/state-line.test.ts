import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SeriesDocument, Task } from '@/lib/build';
import { correctClock, drawStateLines, findDisagreements, findPickups, gatherFacts, runChecks, standingEntries, stateAt, whereaboutsAt, type LogEntry } from '@/lib/continuity';
import { frameAtMoment, momentOfFrame } from '@/lib/takes';
import { addMinutes, instant, minutes } from '@/lib/units';
import { at, sampleSeries, sampleTask } from '../build/sample-series';
import { block, entry, NOW, take } from './sample-log';

const tue = at('2026-12-01', '18:30');
const thu = at('2026-12-03', '20:00');

function withDone(done: Readonly<Record<string, Task['doneAt']>>, more: Partial<SeriesDocument> = {}): SeriesDocument {
  const document = sampleSeries(more);
  return { ...document, tasks: document.tasks.map((task) => ({ ...task, doneAt: done[task.id] ?? null })) };
}

const saw = (stateId: string, moment: LogEntry['at'], more: Partial<LogEntry> = {}) => entry({ kind: 'state', at: moment, observed: [{ partId: 'part-frame', stateId, whereabouts: null }], ...more });
const frameOf = (document: SeriesDocument, entries: readonly LogEntry[], blocks: Parameters<typeof drawStateLines>[1] = []) => drawStateLines(document, blocks, entries).find(({ partId }) => partId === 'part-frame')!;

describe('a state line', () => {
  test('starts in the first state, follows work that is done and then the plan', () => {
    const line = frameOf(withDone({ 'task-strip': tue }), [], [block('task-clean', thu, 2)]);
    expect(stateAt(line, addMinutes(tue, -1), 'observed')?.stateId).toBe('frame-bought');
    expect(stateAt(line, tue, 'observed')?.stateId).toBe('frame-stripped');
    expect(stateAt(line, addMinutes(thu, 120), 'observed')?.stateId).toBe('frame-stripped');
    expect(stateAt(line, addMinutes(thu, 119), 'planned')?.stateId).toBe('frame-stripped');
    expect(stateAt(line, addMinutes(thu, 120), 'planned')?.stateId).toBe('frame-clean');
  });

  test('knows when a part is away and back', () => {
    const document = { ...sampleSeries(), outsideJobs: sampleSeries().outsideJobs.map((job) => ({ ...job, droppedOffAt: tue, collectedAt: thu })) };
    const line = drawStateLines(document, [], []).find(({ partId }) => partId === 'part-wheel')!;
    expect(whereaboutsAt(line, addMinutes(tue, 1), 'observed')?.whereabouts?.kind).toBe('trade');
    expect([whereaboutsAt(line, thu, 'observed')?.whereabouts?.kind, stateAt(line, thu, 'observed')?.stateId]).toEqual(['store', 'wheel-coated']);
  });

  test('keeps a failed way and starts another one when a part goes back', () => {
    const line = frameOf(withDone({ 'task-strip': tue, 'task-clean': addMinutes(tue, 60), 'task-prime': addMinutes(tue, 120) }), [saw('frame-stripped', thu), saw('frame-clean', addMinutes(thu, 60))]);
    expect(line.redos).toMatchObject([{ branch: 1, fromId: 'frame-primed', toId: 'frame-stripped', at: thu }]);
    expect(line.points.map(({ branch }) => branch)).toEqual([0, 0, 0, 0, 1, 1]);
    expect(line.points.map(({ stateId }) => stateId)).toContain('frame-primed');
  });
});

const disagreementsOf = (document: SeriesDocument, entries: readonly LogEntry[], blocks: Parameters<typeof drawStateLines>[1] = []) => findDisagreements(document, drawStateLines(document, blocks, entries), NOW);

describe('two sources that disagree', () => {
  test('are both named', () => {
    const [found, ...others] = disagreementsOf(withDone({ 'task-strip': tue }), [saw('frame-bought', thu, { text: 'still all bolts in' })]);
    expect(others).toEqual([]);
    expect([found?.seen.source.name, found?.said.source.name, found?.seen.stateId, found?.said.stateId]).toEqual(['still all bolts in', 'Strip the frame', 'frame-bought', 'frame-stripped']);
  });

  test('do not disagree when work is ticked off some hours after it was seen', () => {
    expect(disagreementsOf(withDone({ 'task-strip': tue }), [saw('frame-stripped', addMinutes(tue, -12 * 60))])).toEqual([]);
    expect(disagreementsOf(withDone({ 'task-strip': tue }), [saw('frame-stripped', addMinutes(tue, -12 * 60 - 1))])).toHaveLength(1);
  });

  test('are told once, not with every later look', () => {
    expect(disagreementsOf(sampleSeries(), [saw('frame-stripped', tue), saw('frame-stripped', thu)])).toHaveLength(1);
  });

  test('can be the plan and the part', () => {
    expect(disagreementsOf(sampleSeries(), [], [block('task-strip', tue, 2)])[0]?.said.isPlanned).toBe(true);
    expect(disagreementsOf(sampleSeries(), [], [block('task-strip', addMinutes(NOW, -119), 2)])).toEqual([]);
  });
});

describe('the log that stands', () => {
  test('holds the last of each chain of corrections, and none of those taken back', () => {
    const first = entry({ id: 'a' });
    const second = entry({ id: 'b', supersedes: 'a' });
    const third = entry({ id: 'c', supersedes: 'b', text: 'right' });
    expect(standingEntries([third, first, second]).map(({ id }) => id)).toEqual(['c']);
    expect(standingEntries([first, second, entry({ id: 'd', supersedes: 'b', isWithdrawn: true })])).toEqual([]);
  });

  test('survives chains that bite their tail, and never holds an entry twice', () => {
    const chain = fc.array(fc.option(fc.nat(9), { nil: null }), { minLength: 1, maxLength: 10 });
    fc.assert(fc.property(chain, (links) => {
      const entries = links.map((target, index) => entry({ id: `e${index}`, number: index + 1, supersedes: target === null ? null : `e${target}` }));
      const standing = standingEntries(entries).map(({ id }) => id);
      expect(new Set(standing).size).toBe(standing.length);
      for (const [index, target] of links.entries()) if (target === null && !links.includes(index)) expect(standing).toContain(`e${index}`);
    }));
  });
});

describe('clocks', () => {
  test('a device within two minutes is left alone, beyond that it is put right, and nothing comes from the future', () => {
    const read = (off: number) => correctClock({ deviceAt: instant(tue - 60_000 + off), sentAt: instant(tue + off), receivedAt: tue });
    expect(read(120_000)).toMatchObject({ at: tue, warnings: [] });
    expect(read(-120_000)).toMatchObject({ at: tue - 180_000, warnings: [] });
    expect(read(120_001)).toMatchObject({ at: tue - 60_000, warnings: [{ code: 'device-clock-off' }] });
    expect(read(-172_800_000).warnings[0]?.message).toContain('2 days behind');
  });

  test('a camera that runs ahead shows a later frame, and the way back gives the moment', () => {
    const format = { rate: { numerator: 30_000, denominator: 1001 }, isDropFrame: true };
    const midnight = at('2026-12-01', '00:00');
    expect(momentOfFrame(107_892, format, midnight, 0)).toBe(midnight + 3_599_996);
    expect(momentOfFrame(107_892, format, midnight, 4000)).toBe(midnight + 3_595_996);
    fc.assert(fc.property(fc.nat(2_589_407), fc.integer({ min: -60_000, max: 60_000 }), (frame, offset) => {
      const back = frameAtMoment(momentOfFrame(frame, format, midnight, offset), format, midnight, offset);
      expect(Math.abs(back - frame)).toBeLessThanOrEqual(1);
    }));
  });
});

describe('pickups', () => {
  const find = (document: SeriesDocument, entries: readonly LogEntry[]) => {
    const facts = gatherFacts({ document, blocks: [], entries, now: tue });
    return findPickups(facts, runChecks(facts));
  };
  const failed = take({ verdict: 'no good' }, { taskId: 'task-strip', shotId: 'shot-before', at: addMinutes(tue, -60), text: 'dark' });

  test('are offered in recording sessions in which the part still looks right', () => {
    const [pickup] = find(sampleSeries(), [failed]);
    expect(pickup?.why).toBe('its only take is no good: dark');
    expect(pickup?.sessions.every(({ isRecording, start }) => isRecording && start >= tue)).toBe(true);
    expect(pickup?.sessions.length).toBeGreaterThan(0);
  });

  test('have no session once the part has moved on, and say why', () => {
    const [pickup] = find(withDone({ 'task-strip': tue }), [failed]).filter(({ key }) => key === 'failed/shot-before');
    expect(pickup?.sessions).toEqual([]);
    expect(pickup?.whyNone).toContain('as bought');
  });

  test('are offered again in a session after the part went back, and the way that failed stays', () => {
    // Stripped once, then seen as bought again: another frame of the same kind was taken.
    const [pickup] = find(withDone({ 'task-strip': addMinutes(tue, -30) }), [failed, saw('frame-bought', addMinutes(tue, -10))]).filter(({ key }) => key === 'failed/shot-before');
    expect(pickup?.sessions.length).toBeGreaterThan(0);
  });

  test('that are planned are not wanted, nor those that have a good take; one that failed is wanted again', () => {
    const wish = find(sampleSeries(), [failed])[0]!;
    const again: Task = { ...sampleTask('task-again', 9, `Pickup: ${wish.what}`), shots: [{ id: 'shot-again', name: wish.what, purpose: 'pickup', time: minutes(0), mustHave: false, filmedAt: null }] };
    const wished = (doneAt: Task['doneAt'], ...takes: readonly LogEntry[]) => find({ ...sampleSeries(), tasks: [...sampleSeries().tasks, { ...again, doneAt }] }, [failed, ...takes]).map(({ key }) => key);
    const takeAgain = (verdict: 'good' | 'no good') => take({ verdict }, { taskId: 'task-again', shotId: 'shot-again', at: tue });
    expect(wished(null)).toEqual([]);
    expect(wished(tue, takeAgain('good'))).toEqual([]);
    expect(wished(tue, takeAgain('no good'))).toContain(wish.key);
  });

  test('close the gap in the coverage that they were filmed for', () => {
    const document = withDone({ 'task-strip': addMinutes(tue, -30) });
    const wide = take({ size: 'wide' }, { taskId: 'task-strip', at: addMinutes(tue, -40) });
    expect(find(document, [wide]).map(({ what }) => what)).toContain('a close picture of “Strip the frame”');
    const again: Task = { ...sampleTask('task-again', 9, 'Pickup'), doneAt: tue, shots: [{ id: 'shot-again', name: 'a close picture of “Strip the frame”', purpose: 'pickup', time: minutes(0), mustHave: false, filmedAt: null }] };
    expect(find({ ...document, tasks: [...document.tasks, again] }, [wide, take({ size: 'close' }, { taskId: 'task-again', shotId: 'shot-again', at: tue })]).map(({ what }) => what)).not.toContain('a close picture of “Strip the frame”');
  });

  test('are not wanted when another take of the shot is good', () => {
    expect(find(sampleSeries(), [failed, take({}, { taskId: 'task-strip', shotId: 'shot-before', at: tue })])).toEqual([]);
  });
});
