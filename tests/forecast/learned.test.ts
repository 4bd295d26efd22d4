import { describe, expect, it } from 'vitest';
import { gatherExperience } from '@/lib/episodes';
import { estimateAtCompletion, learnedFactors } from '@/lib/forecast';
import { instant } from '@/lib/units';
import { demoSeries } from '@/seed/demo';

const demo = demoSeries('2026-11-30');

describe('the estimate at completion', () => {
  const [first, second] = [demo.tasks[0]!, demo.tasks[1]!];
  const at = (taskId: string, minutes: number) => ({ ...demo.timeLogs[0]!, id: taskId, taskId, activity: 'hands-on' as const, start: instant(0), end: instant(minutes * 60_000), wasInterrupted: false });

  it('adds what finished work took to what the rest is typed as, while there is nothing to learn from', () => {
    const document = { ...demo, tasks: [{ ...first, doneAt: instant(0), effort: { ...first.effort, low: first.effort.likely, high: first.effort.likely } }, { ...second, doneAt: null }], timeLogs: [at(first.id, 200)] };
    const found = estimateAtCompletion(document);
    expect(found).toMatchObject({ spent: 200, unlogged: 0, isLearned: false });
    expect(found.openLearned).toBe(found.openTyped);
    expect(estimateAtCompletion({ ...document, timeLogs: [] })).toMatchObject({ unlogged: 1 });
  });

  it('is longer by experience when finished work took longer than typed', () => {
    const tasks = demo.tasks.map((task, k) => ({ ...task, doneAt: k < 12 ? instant(0) : null }));
    const timeLogs = tasks.slice(0, 12).map((task) => at(task.id, 2 * task.effort.likely));
    const found = estimateAtCompletion({ ...demo, tasks, timeLogs });
    expect(found.isLearned).toBe(true);
    expect(found.openLearned).toBeGreaterThan(1.2 * found.openTyped);
  });
});

describe('factors for a forecast', () => {
  it('are none without a history, so that the wide default spread counts', () => {
    expect(learnedFactors({ ...demo, timeLogs: [] }).size).toBe(0);
  });

  it('come from finished work, one for each kind that is still open, each with a spread', () => {
    const enough = gatherExperience(demo).learnedHandsOn.isEnough;
    const factors = [...learnedFactors(demo)];
    expect(enough).toBe(factors.length > 0);
    for (const [category, { deviation, mean }] of factors) {
      expect(demo.tasks.some((task) => task.doneAt === null && task.category === category)).toBe(true);
      expect(deviation).toBeGreaterThan(0);
      expect(Math.abs(mean)).toBeLessThan(1);
    }
  });
});
