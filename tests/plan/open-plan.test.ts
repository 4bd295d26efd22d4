import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { openPlan } from '@/lib/plan';
import { at, sampleSeries } from '../build/sample-series';
import { samplePlan, SAMPLE_BLOCKS } from '../views/sample-plan';

const document = sampleSeries();
const done = at('2026-12-05', '16:00');
/** Blocks that a series no longer has in its plan. */
const goneOf = (series: SeriesDocument): string[] => {
  const left = new Set(openPlan(series, samplePlan().result).blocks.map(({ id }) => id));
  return SAMPLE_BLOCKS.map(({ id }) => id).filter((id) => !left.has(id));
};

describe('what is left of a plan', () => {
  it('is all of it while nothing is done', () => {
    expect(goneOf(document)).toEqual([]);
  });

  it('leaves out finished tasks and the shots ahead of them, but no wait', () => {
    expect(goneOf({ ...document, tasks: document.tasks.map((task) => ({ ...task, doneAt: done })) }).every((id) => /^(task|before-shot):/.test(id))).toBe(true);
    expect(goneOf({ ...document, tasks: document.tasks.map((task) => (task.id === 'task-prime' ? { ...task, doneAt: done } : task)) })).toEqual(['task:task-prime']);
  });

  it('leaves out filmed before-shots while their task is open', () => {
    const tasks = document.tasks.map((task) => ({ ...task, shots: task.shots.map((shot) => ({ ...shot, filmedAt: shot.purpose === 'before' ? done : null })) }));
    expect(goneOf({ ...document, tasks })).toEqual(['before-shot:task-strip']);
  });

  it('leaves out each trip of an outside job by itself', () => {
    const jobs = (droppedOffAt: typeof done | null, collectedAt: typeof done | null) => ({ ...document, outsideJobs: document.outsideJobs.map((job) => ({ ...job, droppedOffAt, collectedAt })) });
    expect(goneOf(jobs(done, null))).toEqual(['drop-off:job-wheel']);
    expect(goneOf(jobs(done, done))).toEqual(['drop-off:job-wheel', 'collection:job-wheel']);
  });
});
