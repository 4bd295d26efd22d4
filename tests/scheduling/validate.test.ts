import { describe, expect, it } from 'vitest';
import { afterWork, solve, validate, type Problem } from '@/lib/scheduling';
import { activity, finishToStart, lag, problem } from './simple';

const evenings = { id: 'evenings', intervals: [{ start: 0, end: 60 }, { start: 100, end: 160 }] };
const ann = { id: 'ann', capacity: 1 };

function codesOf(input: Problem): readonly string[] {
  const result = validate(input);
  return result.ok ? [] : result.error.map((found) => found.code);
}

const bad: readonly (readonly [string, string, Problem])[] = [
  ['a horizon of nothing', 'horizon-too-short', problem([], { horizon: 0 })],
  ['two activities with one id', 'duplicate-id', problem([activity('a', 1), activity('a', 2)])],
  ['a negative duration', 'negative-duration', problem([activity('a', -5)])],
  ['half a minute', 'not-a-minute', problem([activity('a', 1.5)])],
  ['a calendar out of order', 'calendar-unsorted', problem([], { calendars: [{ id: 'c', intervals: [{ start: 100, end: 160 }, { start: 0, end: 60 }] }] })],
  ['a calendar that overlaps itself', 'calendar-overlap', problem([], { calendars: [{ id: 'c', intervals: [{ start: 0, end: 60 }, { start: 50, end: 90 }] }] })],
  ['an interval that ends before it starts', 'interval-ends-before-start', problem([], { calendars: [{ id: 'c', intervals: [{ start: 60, end: 0 }] }] })],
  ['an unknown calendar', 'unknown-calendar', problem([activity('a', 1, { calendar: 'nights' })])],
  ['an empty calendar', 'empty-calendar', problem([activity('a', 1, { calendar: 'c' })], { calendars: [{ id: 'c', intervals: [] }] })],
  ['work in one go longer than any session', 'longer-than-any-interval', problem([activity('a', 61, { calendar: 'evenings' })], { calendars: [evenings] })],
  ['a shortest piece of nothing', 'bad-shortest-piece', problem([activity('a', 10, { mode: 'split', calendar: 'evenings', shortestPiece: 0 })], { calendars: [evenings] })],
  ['pieces of work in one go', 'pieces-in-one-go', problem([activity('a', 10, { calendar: 'evenings', shortestPiece: 5 })], { calendars: [evenings] })],
  ['a shortest piece longer than any session', 'interval-too-short', problem([activity('a', 200, { mode: 'split', calendar: 'evenings', shortestPiece: 61 })], { calendars: [evenings] })],
  ['previous people without a previous start', 'previous-crew-without-start', problem([activity('a', 10, { previousCrew: ['ann'] })], { resources: [ann] })],
  ['an unknown resource', 'unknown-resource', problem([activity('a', 1, { demands: [{ resource: 'lathe', amount: 1 }] })])],
  ['more demand than there is', 'demand-above-capacity', problem([activity('a', 1, { demands: [{ resource: 'ann', amount: 2 }] })], { resources: [ann] })],
  ['a pool smaller than the crew', 'pool-too-small', problem([activity('a', 1, { crew: [{ pool: ['ann'], count: 2 }] })], { resources: [ann] })],
  ['two pools with the same one person', 'pool-too-small', problem([activity('a', 1, { crew: [{ pool: ['ann'], count: 1 }, { pool: ['ann'], count: 1 }] })], { resources: [ann] })],
  ['a pinned crew that is not in the pool', 'pinned-crew-does-not-fit', problem([activity('a', 1, { crew: [{ pool: ['ann'], count: 1 }], pin: { start: 0, crew: ['ben'] } })], { resources: [ann] })],
  ['a pin past the horizon', 'pin-after-horizon', problem([activity('a', 10, { pin: { start: 995 } })])],
  ['an unknown activity in a lag', 'unknown-activity', problem([activity('a', 1)], { lags: [finishToStart('a', 'b')] })],
  ['a lag from an activity to itself', 'lag-on-itself', problem([activity('a', 1)], { lags: [finishToStart('a', 'a')] })],
  ['a lag that closes before it opens', 'lag-window-closed', problem([activity('a', 1), activity('b', 1)], { lags: [finishToStart('a', 'b', 20, 10)] })],
  ['a table that is not first in, first out', 'table-not-first-in-first-out', problem([activity('a', 1), activity('b', 1)], { lags: [lag('a', 'b', { kind: 'table', step: 10, ready: [50, 40] })] })],
  ['a table that is ready before it starts', 'table-not-first-in-first-out', problem([activity('a', 1), activity('b', 1)], { lags: [lag('a', 'b', { kind: 'table', step: 10, ready: [0, 5] })] })],
  ['two states of one medium at once', 'two-states-at-once', problem([activity('a', 1, { states: [{ medium: 'air', state: 'wet', tail: 0 }, { medium: 'air', state: 'dusty', tail: 0 }] })])],
  ['a hold on what its ends need themselves', 'hold-above-capacity', problem([activity('a', 1, { demands: [{ resource: 'ann', amount: 1 }] }), activity('b', 1)], { resources: [ann], holds: [{ id: 'h', resource: 'ann', amount: 1, from: 'a', to: 'b' }] })],
];

describe('validating a problem', () => {
  it.each(bad)('names %s as %s', (_, code, input) => {
    expect(codesOf(input)).toContain(code);
    const solved = solve(input, { stop: afterWork(1), seed: 1 });
    expect(solved.ok).toBe(false);
  });

  it('accepts what is well formed', () => {
    expect(codesOf(problem([activity('a', 60, { calendar: 'evenings' })], { calendars: [evenings] }))).toEqual([]);
  });

  it('collects all issues at once, each with its subject and a fix', () => {
    const result = validate(problem([activity('a', -1), activity('b', 1, { calendar: 'nights' })], { horizon: 0 }));
    const found = result.ok ? [] : result.error;
    expect(found.map((issue) => issue.code)).toEqual(['horizon-too-short', 'negative-duration', 'unknown-calendar']);
    expect(found.map((issue) => issue.subjects[0]?.id)).toEqual([undefined, 'a', 'b']);
    expect(found.every((issue) => issue.fix.length > 0)).toBe(true);
  });
});
