import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import type { SavedPlan } from '@/lib/plan';
import { minutes, type Instant } from '@/lib/units';
import { computeNow } from '@/lib/views/now-plan';
import { at, sampleSeries, withTask } from '../build/sample-series';
import { samplePlan } from './sample-plan';

const view = (now: Instant, document: SeriesDocument = sampleSeries(), plan: SavedPlan | null = samplePlan()) =>
  computeNow({ document, plan, now, draft: null });

describe('now', () => {
  it('names the next session and its first work before it begins', () => {
    const now = view(at('2026-12-03', '15:10'));
    expect(now).toMatchObject({ phase: 'between', distance: 'in 3 h 20 min', now: [] });
    expect(now.session?.when).toBe('Thu 3 Dec 18:30–21:30');
    expect(now.next.map((work) => `${work.time} ${work.block.title}`)).toEqual(['18:30–18:50 Before-shots: Strip the frame', '18:50–20:40 Strip the frame']);
    expect(now.filming).toBe('2 h 10 min to be filmed, 1 step to film before it is done');
  });

  it('shows the running work, and what is left of the session', () => {
    const now = view(at('2026-12-03', '18:55'));
    expect(now).toMatchObject({ phase: 'running', distance: 'until 21:30, 2 h 35 min left' });
    expect(now.now.map((work) => [work.block.id, work.phase])).toEqual([['before-shot:task-strip', 'open'], ['task:task-strip', 'now']]);
    expect(now.next).toEqual([]);
  });

  it('counts the first minute of a session in and its last moment out', () => {
    expect(view(at('2026-12-03', '18:30')).phase).toBe('running');
    expect(view(at('2026-12-03', '21:30')).session?.id).toBe('session-3');
  });

  it('leaves out what is done', () => {
    const done = withTask('task-strip', { doneAt: at('2026-12-03', '18:56') });
    expect(view(at('2026-12-03', '18:57'), done).now).toEqual([]);
  });

  it('asks about work whose time is over and that nobody ticked', () => {
    const now = view(at('2026-12-04', '09:00'));
    expect(now.dontForget.filter((one) => one.kind === 'not ticked').map((one) => one.text)).toEqual(['Strip the frame: done? Tick it, or re-plan.']);
  });

  it('says which parts may not be touched, and until when', () => {
    const hands = view(at('2026-12-06', '12:00')).dontForget.filter((one) => one.kind === 'hands off');
    expect(hands).toMatchObject([{ text: 'Frame: Grey primer on Frame', moment: 'until Mon 7 Dec 06:00' }]);
    expect(view(at('2026-12-07', '06:00')).dontForget.filter((one) => one.kind === 'hands off')).toEqual([]);
  });

  it('says whose air may not be breathed, and until when, first of all', () => {
    const plan = samplePlan();
    const shut = ['place-bench', 'place-spray'].map((placeId) => ({
      ...plan.result.blocks[0]!, id: `shut:task-prime:${placeId}`, kind: 'shut' as const, subject: { kind: 'task' as const, id: 'task-prime' }, placeId,
      title: 'Prime the frame: isocyanate has to clear', start: at('2026-12-05', '16:10'), end: at('2026-12-05', '16:57'),
    }));
    const cleared = { ...plan, result: { ...plan.result, blocks: [...plan.result.blocks, ...shut] } };
    expect(view(at('2026-12-05', '16:56'), sampleSeries(), cleared).dontForget[0]).toMatchObject({
      kind: 'stay out', text: 'Main bay and Spray corner: nobody without air-fed protection. Prime the frame: isocyanate has to clear.', moment: 'until Sat 5 Dec 16:57', isUrgent: true,
    });
    expect(view(at('2026-12-05', '16:57'), sampleSeries(), cleared).dontForget.some(({ kind }) => kind === 'stay out')).toBe(false);
  });

  it('warns of a recoat window that is about to close, and of one that has closed', () => {
    const primed = withTask('task-prime', { doneAt: at('2026-12-05', '16:10') });
    // Two days of the data sheet, 2880 min, are not stretched by the cold.
    const before = view(at('2026-12-06', '12:00'), primed).dontForget.filter((one) => one.kind === 'recoat');
    expect(before).toMatchObject([{ moment: 'closes Mon 7 Dec 16:10', isUrgent: true }]);
    const after = view(at('2026-12-08', '12:00'), primed).dontForget.filter((one) => one.kind === 'recoat');
    expect(after[0]?.text).toContain('has closed. Abrade');
    const slow = sampleSeries({
      tasks: primed.tasks,
      materials: primed.materials.map((one) => ({ ...one, stages: { ...one.stages, recoatUntil: minutes(30 * 1440) } })),
    });
    expect(view(at('2026-12-06', '12:00'), slow).dontForget.filter((one) => one.kind === 'recoat')).toEqual([]);
  });

  it('names the trips of the next days and those that were missed', () => {
    const soon = view(at('2026-12-06', '12:00')).dontForget.filter((one) => one.kind === 'collect');
    expect(soon).toMatchObject([{ text: 'Collect: Powder coat the wheel · Robin', moment: 'Tue 8 Dec 12:00', isUrgent: false }]);
    const missed = view(at('2026-12-09', '12:00')).dontForget.filter((one) => one.kind === 'collect');
    expect(missed[0]?.isUrgent).toBe(true);
    const back = sampleSeries({ outsideJobs: sampleSeries().outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-12-01', '13:00'), collectedAt: at('2026-12-08', '13:00') })) });
    expect(view(at('2026-12-09', '12:00'), back).dontForget.filter((one) => one.kind === 'collect' || one.kind === 'deliver')).toEqual([]);
  });

  it('asks for the before-shots of a step that cannot be done twice', () => {
    expect(view(at('2026-12-03', '15:00')).dontForget.find((one) => one.kind === 'film first')?.text)
      .toBe('Before "Strip the frame", which cannot be done twice, film: Frame as bought, all round.');
  });

  it('stands without a plan and after the last session', () => {
    expect(view(at('2026-12-03', '15:00'), sampleSeries(), null)).toMatchObject({ plan: null, phase: 'between', now: [], next: [] });
    expect(view(at('2027-02-03', '15:00'))).toMatchObject({ phase: 'over', session: null, distance: null });
  });
});
