import { describe, expect, it } from 'vitest';
import type { PartUse } from '@/lib/build';
import { sampleSeries, sampleTask, withTask } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const frame = (from: string | null, to: string | null): readonly PartUse[] => [{ partId: 'part-frame', from, to }];

describe('states of a part', () => {
  it('asks for at least one state and names of their own', () => {
    expect(codesOf(sampleSeries({ parts: [...sample.parts, { kind: 'part', id: 'p', revision: 1, order: 2, name: 'Tank', assembly: '', states: [], whereabouts: { kind: 'store', id: null } }] })))
      .toEqual(['part-without-states']);
    const states = (sample.parts[1]?.states ?? []).map((state) => (state.id === 'wheel-fitted' ? { ...state, name: 'Bare ' } : state));
    const [found] = issuesOf(sampleSeries({ parts: changed(sample.parts, 'part-wheel', { states }) }), 'part-state-twice');
    expect(found?.path).toEqual(['states', 2, 'name']);
  });

  it('refuses a state of another part, naming the states there are', () => {
    const [found] = issuesOf(withTask('task-clean', { parts: frame('wheel-bare', 'frame-clean') }), 'state-of-another-part');
    expect(found?.path).toEqual(['parts', 0, 'from']);
    expect(found?.fix).toBe('Choose one of its states: “as bought”, “stripped”, “clean”, “primed”, “painted” and 1 more.');
  });

  it('refuses a part twice in one task and a step to the same state', () => {
    expect(codesOf(withTask('task-clean', { parts: [...frame('frame-stripped', 'frame-clean'), ...frame(null, null)] }))).toEqual(['part-twice-in-work']);
    expect(codesOf(withTask('task-closing', { parts: frame('frame-wheeled', 'frame-wheeled') }))).toContain('part-use-goes-nowhere');
  });
});

describe('flow of part states', () => {
  it('refuses a state that two tasks make', () => {
    const twice = sampleSeries({ tasks: [...sample.tasks, sampleTask('task-again', 6, 'Clean it again', { parts: frame(null, 'frame-clean') })] });
    const [found] = issuesOf(twice, 'state-made-twice');
    expect(found?.severity).toBe('stop');
    expect(found?.message).toBe('“Clean the frame” and “Clean it again” each bring the part “Frame” into “clean”, so the order of work is not clear.');
    expect(found?.subjects[0]?.id).toBe('task-again');
  });

  it('refuses work that brings a part into the state it starts with', () => {
    const back = sampleSeries({ tasks: [...sample.tasks, sampleTask('task-back', 6, 'Put it back', { parts: frame('frame-wheeled', 'frame-bought') })] });
    expect(codesOf(back)).toContain('first-state-made');
  });

  it('refuses a state that two tasks take away, and lets any number look at it', () => {
    const add = (parts: readonly PartUse[]) => sampleSeries({ tasks: [...sample.tasks, sampleTask('task-more', 6, 'Look at it', { parts })] });
    expect(codesOf(add(frame('frame-clean', null)))).toEqual([]);
    const states = [...(sample.parts[0]?.states ?? []), { id: 'frame-drilled', name: 'drilled' }];
    const drilled = { ...add(frame('frame-clean', 'frame-drilled')), parts: changed(sample.parts, 'part-frame', { states }) };
    expect(codesOf(drilled)).toEqual(['state-taken-twice']);
  });

  it('points out a state that is needed and never made', () => {
    const gap = sampleSeries({ tasks: sample.tasks.filter(({ id }) => id !== 'task-clean') });
    const [found] = issuesOf(gap, 'state-never-made');
    expect(found?.severity).toBe('warn');
    expect(found?.message).toBe('“Prime the frame” needs the part “Frame” in “clean”, and nothing brings it there.');
  });
});
