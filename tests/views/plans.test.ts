import { describe, expect, it } from 'vitest';
import { computePlans, type PlansInput } from '@/lib/views/plans-plan';
import { minutes } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { SAMPLE_BLOCKS, samplePlan } from './sample-plan';

const view = (more: Partial<PlansInput> = {}) =>
  computePlans({ document: sampleSeries(), accepted: samplePlan(), draft: null, plans: [], now: at('2026-12-01', '12:00'), ...more });

const later = SAMPLE_BLOCKS.map((block) =>
  (block.id === 'task:task-clean' ? { ...block, start: at('2026-12-05', '11:00'), end: at('2026-12-05', '15:00') } : block));

describe('the plans page', () => {
  it('shows what a draft moves against the accepted plan', () => {
    const draft = samplePlan({ blocks: later }, { number: 4, status: 'draft' });
    const shown = view({ draft }).draft;
    expect(shown?.summary).toBe('1 later.');
    expect(shown?.changes).toEqual([
      { key: 'task:task-clean', title: 'Clean the frame', kind: 'later', kindWord: 'Later', text: '1 h later: Sat 5 Dec 10:00 becomes Sat 5 Dec 11:00' },
    ]);
  });

  it('does not call work gone that has been done since', () => {
    const document = sampleSeries();
    const done = { ...document, tasks: document.tasks.map((task) => (task.id === 'task-clean' ? { ...task, doneAt: at('2026-12-05', '15:00') } : task)) };
    const draft = samplePlan({ blocks: SAMPLE_BLOCKS.filter(({ id }) => id !== 'task:task-clean') }, { number: 4, status: 'draft' });
    expect(view({ document: done, draft }).draft?.summary).toBe('Nothing moves.');
    expect(view({ draft }).draft?.summary).toBe('1 gone.');
  });

  it('says which episodes are better and which are worse', () => {
    const episodes = [
      { episodeId: 'episode-1', shootDue: at('2026-12-06', '00:00'), recordedBy: at('2026-12-06', '03:00'), late: minutes(180) },
      { episodeId: 'episode-2', shootDue: at('2026-12-30', '00:00'), recordedBy: at('2026-12-15', '19:40'), late: minutes(0) },
    ];
    const shown = view({ draft: samplePlan({ episodes }, { number: 4, status: 'draft' }) }).draft;
    expect(shown?.episodes.map((line) => [line.kind, line.outlook, line.isLate])).toEqual([
      ['worse', '3 h late', true], ['better', '14 d 4 h to spare', false],
    ]);
    expect(shown).toMatchObject({ late: '1 episode late, 3 h together', isLate: true });
  });

  it('tells the goals in the order of the series, and what a plan makes of them', () => {
    const document = sampleSeries();
    const goals = { order: ['lateness', 'bank', 'changes', 'finish', 'heating'] as const, bankWeeks: 2, changes: 0, heating: 12.4 };
    const shown = view({ draft: samplePlan({ goals }, { number: 4, status: 'draft' }), document: { ...document, series: { ...document.series, goals: ['finish', 'lateness', 'bank', 'changes', 'heating'], frozenDays: 2 } } });
    expect(shown.goals.map(({ goal }) => goal)).toEqual(['finish', 'lateness', 'bank', 'changes', 'heating']);
    expect(shown.draft).toMatchObject({ bank: '2 weeks below 2 finished episodes', heating: 'EUR 12.40 in the sessions it uses' });
    expect(shown.frozen).toBe('Days that stay as planned: work that starts within 2 days stays where the accepted plan has it.');
    expect(shown.accepted).toMatchObject({ bank: null, heating: null });
  });

  it('lists no changes for the first plan, only what it holds', () => {
    const shown = view({ accepted: null, draft: samplePlan({}, { number: 1, status: 'draft' }) });
    expect(shown.draft?.changes).toEqual([]);
    expect(shown.draft?.episodes[0]?.kind).toBe('first');
    expect(shown.accepted).toBeNull();
  });

  it('names starts fixed by hand that the accepted plan does not have, as long as they are', () => {
    const document = sampleSeries();
    const pinned = (start: ReturnType<typeof at> | null) => ({ ...document, tasks: document.tasks.map((task) => (task.id === 'task-clean' ? { ...task, pinnedStart: start } : task)) });
    expect(view({ document: pinned(at('2026-12-05', '11:00')) }).loosePins).toEqual([{ taskId: 'task-clean', revision: 1, name: 'Clean the frame', when: 'Sat 5 Dec 11:00' }]);
    const planned = SAMPLE_BLOCKS.find(({ id }) => id === 'task:task-clean')!.start;
    for (const start of [planned, null]) expect(view({ document: pinned(start) }).loosePins).toEqual([]);
  });

  it('says that a draft is older than the build', () => {
    const document = sampleSeries({ changeNumber: 2, planChange: 2 });
    expect(view({ document, draft: samplePlan({}, { number: 4, status: 'draft' }) }).draft?.staleness).toBe('The build has changed since this plan.');
    expect(view({ draft: samplePlan({}, { number: 4, status: 'draft' }) }).draft?.staleness).toBeNull();
  });

  it('names work without a place, with what would free it', () => {
    const shown = view({ draft: samplePlan({}, { number: 4, status: 'draft' }) }).draft;
    expect(shown?.without).toMatchObject([{ title: 'Closing words beside the frame', reasons: [{ change: 'Add a session.' }] }]);
  });

  it('knows when there is nothing to plan or no session ahead', () => {
    expect(view({ document: sampleSeries({ tasks: [], outsideJobs: [], links: [] }), accepted: null }).openWork).toBe(0);
    expect(view({ now: at('2027-02-01', '12:00') }).sessionsAhead).toBe(0);
    expect(view()).toMatchObject({ openWork: 7, sessionsAhead: 9 });
  });
});
