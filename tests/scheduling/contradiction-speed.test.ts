import { describe, expect, it } from 'vitest';
import { findContradiction, validate, type Problem } from '@/lib/scheduling';
import { makeSeries } from '../bench/series';

const series = makeSeries(300, 1);

/** A chain of three that follow one another, far into the series. */
function chainIn({ activities, lags }: Problem): readonly [string, string, string] {
  for (const first of lags) {
    if (first.min === undefined || first.from.at !== 'end' || first.to.at !== 'start') continue;
    const second = lags.find(({ from, min, to }) => min !== undefined && from.at === 'end' && to.at === 'start' && from.activity === first.to.activity);
    if (second !== undefined && activities.findIndex(({ id }) => id === first.from.activity) > 150) return [first.from.activity, first.to.activity, second.to.activity];
  }
  throw new Error('The series has no chain of three.');
}

const chain = chainIn(series);
const [first, , last] = chain;

const change = (id: string, more: object): Problem => ({ ...series, activities: series.activities.map((activity) => (activity.id === id ? { ...activity, ...more } : activity)) });

const cases: readonly (readonly [string, Problem])[] = [
  ['an end that comes before what it needs can be done', change(last, { latestEnd: 30 })],
  ['a circle of lags', { ...series, lags: [...series.lags, { id: 'back', from: { activity: last, at: 'end' }, to: { activity: first, at: 'start' }, min: { kind: 'elapsed', minutes: 1 } }] }],
  ['a pin ahead of what it waits for', change(last, { pin: { start: 10 } })],
  ['a window that closes before it opens', { ...series, lags: [...series.lags, { id: 'soon', from: { activity: first, at: 'end' }, to: { activity: last, at: 'start' }, max: 0 }, { id: 'later', from: { activity: first, at: 'end' }, to: { activity: last, at: 'start' }, min: { kind: 'elapsed', minutes: 600 } }] }],
];

describe('a contradiction among 300 tasks', () => {
  it.each(cases)('is named in less than a second: %s', (_, problem) => {
    expect(validate(problem).ok).toBe(true);
    const begin = process.cpuUsage();
    const found = findContradiction(problem);
    const { system, user } = process.cpuUsage(begin);
    expect(found).not.toBeNull();
    expect((system + user) / 1000).toBeLessThan(1000);
    // That none of them can be spared is held on small problems, fact by fact.
    expect(found!.facts.length).toBeGreaterThan(1);
    expect(found!.facts.length).toBeLessThan(6);
  });
});
