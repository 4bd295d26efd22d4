import { describe, expect, it } from 'vitest';
import { concernsPlan, type RecordEdit, type SeriesRecord, type StatementAbout } from '@/lib/build';
import { at, sampleSeries } from './sample-series';

const document = sampleSeries();
const TYPED = { usesExperience: false };

const first = <T>(list: readonly T[]): T => {
  const [one] = list;
  if (one === undefined) throw new Error('The sample has none.');
  return one;
};

const edit = (after: SeriesRecord): RecordEdit => ({ kind: after.kind, id: after.id, before: null, after });

const signed = (about: StatementAbout): RecordEdit =>
  edit({ kind: 'statement', id: 'st', revision: 1, order: 0, name: 'signed', about, personId: 'p', signedBy: 'Wren', at: at('2026-11-30', '12:00'), reason: '' });

describe('what a plan is made from', () => {
  it('is touched by a task, a session and the series', () => {
    expect(concernsPlan(TYPED, [edit(first(document.tasks))])).toBe(true);
    expect(concernsPlan(TYPED, [edit(first(document.sessions))])).toBe(true);
    expect(concernsPlan(TYPED, [edit(document.series)])).toBe(true);
  });

  it('is touched by a removal as well', () => {
    const task = first(document.tasks);
    expect(concernsPlan(TYPED, [{ kind: 'task', id: task.id, before: task, after: null }])).toBe(true);
  });

  it('is not touched by what is only said or shown, and one touching edit among them is enough', () => {
    const promise: RecordEdit = { kind: 'promise', id: 'pr', before: null, after: null };
    const segment: RecordEdit = { kind: 'segment', id: 'sg', before: null, after: null };
    expect(concernsPlan(TYPED, [promise, segment])).toBe(false);
    expect(concernsPlan(TYPED, [promise, edit(first(document.tasks)), segment])).toBe(true);
  });

  it('is touched by a logged time only where the plan goes by experience', () => {
    const log: RecordEdit = { kind: 'timeLog', id: 'tl', before: null, after: null };
    expect(concernsPlan(TYPED, [log])).toBe(false);
    expect(concernsPlan({ usesExperience: true }, [log])).toBe(true);
  });

  it('is touched by a hazard that a person adds or takes out, not by a signature', () => {
    expect(concernsPlan(TYPED, [signed({ sort: 'hazard-added', taskId: 't', hazardId: 'h' })])).toBe(true);
    expect(concernsPlan(TYPED, [signed({ sort: 'hazard-removed', taskId: 't', hazardId: 'h' })])).toBe(true);
    expect(concernsPlan(TYPED, [signed({ sort: 'override', episodeId: 'e', status: 'cleared', blocks: [] })])).toBe(false);
  });
});
