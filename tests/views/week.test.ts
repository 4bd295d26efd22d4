import { describe, expect, it } from 'vitest';
import type { Session } from '@/lib/build';
import { celsius, instant } from '@/lib/units';
import { computeWeek, type WeekInput } from '@/lib/views/week-plan';
import { at, sampleSeries, withTask } from '../build/sample-series';
import { block, SAMPLE_BLOCKS, samplePlan } from './sample-plan';

const WEEK = { year: 2026, week: 49 };

function week(more: Partial<WeekInput> = {}) {
  return computeWeek({ document: sampleSeries(), plan: samplePlan(), now: at('2026-12-03', '19:00'), week: WEEK, draft: null, ...more });
}

const rowOf = (view: ReturnType<typeof week>, id: string) => view.rows.find((row) => row.id === id);

describe('the week', () => {
  it('has seven days that touch and fill the strip', () => {
    const view = week();
    expect(view.days.map((day) => day.date)).toEqual(['2026-11-30', '2026-12-01', '2026-12-02', '2026-12-03', '2026-12-04', '2026-12-05', '2026-12-06']);
    expect(view.days[0]?.left).toBe(0);
    view.days.forEach((day, index) => expect(day.left + day.width).toBeCloseTo(view.days[index + 1]?.left ?? 1, 9));
    expect(view.label).toBe('30 November to 6 December 2026');
    expect([view.previousWeek, view.week, view.nextWeek]).toEqual(['2026-W48', '2026-W49', '2026-W50']);
  });

  it('draws session hours to the same scale everywhere and quiet days narrow', () => {
    const view = week();
    const perMinute = view.frames.map((frame) => {
      const session = sampleSeries().sessions.find((one) => one.id === frame.sessionId);
      return frame.width / (((session?.end ?? 0) - (session?.start ?? 0)) / 60_000);
    });
    expect(perMinute).toHaveLength(3);
    for (const scale of perMinute) expect(scale).toBeCloseTo(1 / view.units, 9);
    const monday = view.days[0];
    const saturday = view.days[5];
    expect(monday?.isQuiet).toBe(true);
    expect(saturday?.isQuiet).toBe(false);
    expect(monday?.width).toBeLessThan((saturday?.width ?? 0) / 3);
  });

  it('keeps every worked piece inside the frame of its session', () => {
    const view = week();
    const frames = new Map(view.frames.map((frame) => [frame.sessionId, frame]));
    const pieces = view.rows.filter((row) => row.kind === 'place').flatMap((row) => row.pieces.map((piece) => ({ row, piece })));
    expect(pieces.map(({ piece }) => piece.blockId).toSorted()).toEqual(['before-shot:task-strip', 'task:task-clean', 'task:task-prime', 'task:task-strip']);
    for (const { row, piece } of pieces) {
      const frame = frames.get(piece.sessionId ?? '');
      expect(frame?.rowIds).toContain(row.id);
      expect(piece.left).toBeGreaterThanOrEqual((frame?.left ?? 1) - 1e-9);
      expect(piece.left + piece.width).toBeLessThanOrEqual((frame?.left ?? 0) + (frame?.width ?? 0) + 1e-9);
    }
  });

  it('puts boxes that would overlap into different lanes', () => {
    const bench = rowOf(week(), 'place-bench');
    const [shots, strip] = [bench?.pieces.find((one) => one.blockId.startsWith('before-shot')), bench?.pieces.find((one) => one.blockId === 'task:task-strip')];
    // Twenty minutes are drawn wider than they last, over the beginning of the next block.
    expect((shots?.left ?? 0) + (shots?.width ?? 0)).toBeGreaterThan(strip?.left ?? 1);
    expect(shots?.lane).not.toBe(strip?.lane);
    expect(bench?.lanes).toBe(2);
  });

  it('draws a wait that runs on into the next week to the edge, and on from the edge there', () => {
    const first = rowOf(week(), 'place-spray')?.bars[0];
    expect(first).toMatchObject({ blockId: 'cure:task-prime', startsBefore: false, endsAfter: true });
    expect((first?.left ?? 0) + (first?.width ?? 0)).toBeCloseTo(1, 9);
    const second = rowOf(week({ week: { year: 2026, week: 50 } }), 'place-spray')?.bars[0];
    expect(second).toMatchObject({ blockId: 'cure:task-prime', left: 0, startsBefore: true, endsAfter: false });
  });

  it('shows trips on the road, parts away at the trades, and nothing of either in the places', () => {
    const view = week();
    expect(view.rows.map((row) => row.id)).toEqual(['place-bench', 'place-spray', 'road', 'away']);
    expect(rowOf(view, 'road')?.pieces.map((piece) => piece.blockId)).toEqual(['drop-off:job-wheel']);
    expect(rowOf(view, 'away')?.bars.map((bar) => bar.blockId)).toEqual(['away:job-wheel']);
    expect(view.notes['2026-12-01']?.map((note) => note.text)).toEqual([
      '12:00 Drop off: Powder coat the wheel', 'Wheel at Canal Street Coaters: away until Mon 7 Dec 12:00',
    ]);
  });

  it('tells what is booked against what is there', () => {
    const thursday = week().sessions.find((card) => card.id === 'session-2');
    // Two people for three hours; 20 min and 110 min of one person's work.
    expect(thursday).toMatchObject({ booked: 130, available: 360, isOverfull: false });
    expect(thursday?.booking).toBe('2 h 10 min of 6 h crew time booked (36 %, limit 70 %)');
  });

  it('marks a session that is booked above the limit', () => {
    const document = sampleSeries({ series: { ...sampleSeries().series, fillLimit: 0.3 } });
    expect(week({ document }).sessions.find((card) => card.id === 'session-2')?.isOverfull).toBe(true);
  });

  it('lists what must be ready for a session', () => {
    const view = week();
    const saturday = view.sessions.find((card) => card.id === 'session-3');
    expect(saturday?.ready.map((item) => `${item.kind}: ${item.text}`)).toEqual([
      'heating: Workshop at 8 °C or more: heating set to 15 °C', 'material: Grey primer: 1 coat', 'equipment: Spray gun', 'lay out: respirator',
    ]);
    const thursday = view.sessions.find((card) => card.id === 'session-2');
    expect(thursday?.ready.find((item) => item.kind === 'camera')?.text).toBe(
      'Batteries charged and cards empty: 2 h 10 min to be filmed. If the camera rolls throughout: 98 of 115 GB, 2 of 3 batteries.',
    );
    const fitting = week({ week: { year: 2026, week: 51 } }).sessions.find((card) => card.id === 'session-7');
    expect(fitting?.ready[0]).toMatchObject({ kind: 'part', text: 'Wheel back from Canal Street Coaters by Tue 8 Dec 13:00', isAtRisk: true });
  });

  it('warns when the workshop will be too cold', () => {
    const cold = withTask('task-prime', { conditions: { minimumTemperature: celsius(18), needsDaylight: false } });
    expect(week({ document: cold }).sessions.find((card) => card.id === 'session-3')?.ready[0]).toMatchObject({
      kind: 'heating', isAtRisk: true, text: 'Workshop at 18 °C or more: only 15 °C is expected',
    });
  });

  it('says why a block is where it is, and what has no place', () => {
    const view = week();
    expect(view.blocks['task:task-strip']?.because[0]).toEqual({ text: 'Cannot be undone, so its before-shots come first.', until: 'Thu 3 Dec 18:50', change: null });
    expect(view.unplaced.map((work) => work.title)).toEqual(['Closing words beside the frame']);
    expect(view.later.map((work) => `${work.when} ${work.title}`)).toEqual(['Sat 12 Dec 10:00 Paint the frame', 'Tue 15 Dec 18:30 Fit the wheel']);
    expect(view.later[0]?.reasons[0]?.text).toBe('Waits for the primer.');
  });

  it('flags the day an episode must be recorded and the day it comes out', () => {
    const view = week();
    expect(view.days[5]?.deadlines).toEqual([
      { episode: { kind: 'episode', id: 'episode-1', name: 'Down to bare metal' }, kind: 'shoot due', text: 'Down to bare metal: recording complete', outlook: 'recorded Sat 5 Dec 16:10', isLate: false },
    ]);
    expect(week({ week: { year: 2026, week: 51 } }).days[6]?.deadlines[0]?.kind).toBe('release');
  });

  it('says that the build has changed since the plan', () => {
    expect(week().plan?.staleness).toBeNull();
    expect(week({ document: sampleSeries({ changeNumber: 4, planChange: 4 }), draft: 5 }).plan).toMatchObject({ staleness: 'The build has changed since this plan.', draft: 5 });
    expect(week({ document: sampleSeries({ changeNumber: 4, planChange: 0 }) }).plan?.staleness).toBeNull();
  });

  it('keeps showing work whose session was taken away, and counts it', () => {
    const document = sampleSeries({ sessions: sampleSeries().sessions.filter((session) => session.id !== 'session-2') });
    const view = week({ document });
    expect(view.strayCount).toBe(2);
    expect(rowOf(view, 'place-bench')?.pieces.filter((piece) => piece.sessionId === null)).toHaveLength(2);
  });

  it('names removed records as removed instead of failing', () => {
    const document = sampleSeries({ people: [], places: [], tasks: [], parts: [], outsideJobs: [], trades: [] });
    const view = week({ document });
    expect(view.blocks['task:task-strip']?.crew).toEqual(['a removed person']);
    expect(view.rows.map((row) => row.id)).toEqual(['elsewhere', 'road', 'away']);
  });

  it('shows sessions and no work before the first plan', () => {
    const view = week({ plan: null });
    expect(view.plan).toBeNull();
    expect(view.frames).toHaveLength(3);
    expect(view.rows.map((row) => [row.id, row.pieces.length, row.bars.length])).toEqual([['place-bench', 0, 0], ['place-spray', 0, 0]]);
    expect(view.sessions.every((card) => card.work.length === 0 && card.ready.length === 0)).toBe(true);
  });

  it('is empty where nothing happens', () => {
    const view = week({ week: { year: 2027, week: 10 } });
    expect([view.rows, view.frames, view.sessions]).toEqual([[], [], []]);
    expect(view.closedPlaces).toEqual(['Main bay', 'Spray corner']);
    expect(view.nowAt).toBeNull();
  });

  it('offers fallback work that the week does not hold', () => {
    const done = withTask('task-strip', { doneAt: at('2026-11-20', '10:00') });
    const without = samplePlan({ blocks: SAMPLE_BLOCKS.filter((one) => one.subject.id !== 'task-clean') });
    expect(week({ document: done, plan: without }).fallback.map((item) => item.title)).toEqual(['Clean the frame']);
    expect(week({ document: done }).fallback).toEqual([]);
  });
});

const nightSession = (start: number, end: number): Session => ({
  kind: 'session', id: 'session-night', revision: 1, order: 0, name: 'Night', start: instant(start), end: instant(end), placeIds: ['place-bench'],
  crewIds: ['person-robin'], isRecording: false, hasDaylight: false, isNoiseAllowed: false, heating: null,
});

describe('weeks at their borders', () => {
  it('gives a session on Sunday night to its own week and not to the next', () => {
    const document = sampleSeries({ sessions: [nightSession(at('2026-12-06', '22:00'), at('2026-12-07', '02:00'))] });
    const work = block('task:task-clean', 'Clean the frame', [[at('2026-12-06', '22:00'), at('2026-12-07', '01:00')]], { placeId: 'place-bench', crewIds: ['person-robin'] });
    const plan = samplePlan({ blocks: [work] });
    const own = week({ document, plan });
    expect(own.sessions.map((card) => card.id)).toEqual(['session-night']);
    expect(own.frames[0]).toMatchObject({ sessionId: 'session-night' });
    expect((own.frames[0]?.left ?? 0) + (own.frames[0]?.width ?? 0)).toBeCloseTo(1, 9);
    const next = week({ document, plan, week: { year: 2026, week: 50 } });
    expect(next.sessions).toEqual([]);
    expect(rowOf(next, 'place-bench')?.pieces[0]).toMatchObject({ blockId: 'task:task-clean', left: 0 });
  });

  it.each([
    ['forward', { year: 2026, week: 13 }, 23, Date.parse('2026-03-29T00:00Z')],
    ['back', { year: 2026, week: 43 }, 25, Date.parse('2026-10-25T00:30Z')],
  ])('draws the Sunday when clocks go %s with its true length', (way, isoWeek, hours, start) => {
    const document = sampleSeries({ sessions: [nightSession(start, start + 3 * 3_600_000)] });
    const view = week({ document, plan: null, week: isoWeek });
    expect(view.days[6]?.clockChange).toBe(`Clocks go ${way}: this day has ${hours} hours.`);
    expect(view.days.slice(0, 6).every((day) => day.clockChange === null)).toBe(true);
    // Three hours are three hours, whatever the clock on the wall says.
    expect(view.frames[0]?.width).toBeCloseTo(180 / view.units, 9);
  });

  it('gives the days of a week over New Year their own years', () => {
    expect(week({ week: { year: 2026, week: 53 }, plan: null }).label).toBe('28 December 2026 to 3 January 2027');
  });
});
