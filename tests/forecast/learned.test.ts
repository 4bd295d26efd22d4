import { describe, expect, it } from 'vitest';
import { gatherExperience } from '@/lib/episodes';
import { learnedFactors } from '@/lib/forecast';
import { demoSeries } from '@/seed/demo';

const demo = demoSeries('2026-11-30');

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
