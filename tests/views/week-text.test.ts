import { describe, expect, it } from 'vitest';
import { describeWeek, writeWeek } from '@/lib/views';
import { computeWeek } from '@/lib/views/week-plan';
import { at, sampleSeries } from '../build/sample-series';
import { samplePlan } from './sample-plan';

const view = (hasPlan = true) => computeWeek({
  document: sampleSeries(), plan: hasPlan ? samplePlan() : null, now: at('2026-12-03', '19:00'), week: { year: 2026, week: 49 }, draft: null,
});

describe('the week in a terminal', () => {
  it('names every session with its work, its reason and what must be ready', () => {
    const week = view();
    const text = writeWeek(week);
    for (const session of week.sessions) expect(text).toContain(session.when);
    expect(text).toContain('Strip the frame');
    expect(text).toContain('why here: Cannot be undone, so its before-shots come first.');
    expect(text).toContain('Must be ready:');
    expect(text).toContain('Grey primer on Frame');
    expect(text.endsWith('\n')).toBe(true);
  });

  it('keeps its lines to 100 columns', () => {
    expect(writeWeek(view()).split('\n').filter((line) => line.length > 100)).toEqual([]);
  });

  it('says without a plan that there is none, and how to get one', () => {
    expect(writeWeek(view(false))).toContain('no plan has been accepted yet: open the Plans page and re-plan');
  });
});

describe('the week as a document', () => {
  it('holds the same sessions and blocks under keys that stay', () => {
    const week = view();
    const document = describeWeek(week);
    expect(document.format).toBe('benchtake.week/1');
    expect(document.week).toBe('2026-W49');
    expect(document.sessions.map(({ id }) => id)).toEqual(week.sessions.map(({ id }) => id));
    expect(document.sessions.length).toBeGreaterThan(0);
    expect(JSON.parse(JSON.stringify(document))).toEqual(document);
    expect(Object.keys(document)).toMatchInlineSnapshot(`
      [
        "format",
        "series",
        "week",
        "plan",
        "sessions",
        "blocks",
        "deadlines",
        "unplaced",
        "fallback",
      ]
    `);
  });
});
