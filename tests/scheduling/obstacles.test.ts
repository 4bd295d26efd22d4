import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, explainPlacement, solve, type Activity, type Problem } from '@/lib/scheduling';
import { activity, finishToStart, problem, scheduleOf } from './simple';

const bench = { id: 'bench', capacity: 1 };
const onBench = { demands: [{ resource: 'bench', amount: 1 }] };
const by = (pool: readonly string[]): Partial<Activity> => ({ crew: [{ pool, count: 1 }] });
const at = (start: number) => ({ pin: { start } });

const scheduled = (input: Problem) => scheduleOf(unwrap(solve(input, { stop: afterWork(30), seed: 1 })));
const tightest = (input: Problem, id: string) => explainPlacement(input, scheduled(input), id)[0];

const wet = (tail: number) => ({ states: [{ medium: 'air', state: 'wet', tail }] });

/** Kinds of what kept `turn` out, when the bench is busy and the air wet for so long. */
const reasons = (busy: number, tail: number) => scheduled(problem([
  activity('busy', busy, { ...onBench, ...at(0) }), activity('paint', 10, { ...at(busy), ...wet(tail) }), activity('turn', 20, { ...onBench, states: [{ medium: 'air', state: 'dusty', tail: 0 }] }),
], { horizon: 100, resources: [bench] })).unplaced.find(({ activity: id }) => id === 'turn')?.because.map(({ kind }) => kind);

describe('what stands in the way', () => {
  it('is wet paint long after the painting itself', () => {
    const input = problem([
      activity('paint', 10, { ...at(0), states: [{ medium: 'air', state: 'wet', tail: 90 }] }), activity('grind', 10, { release: 50, states: [{ medium: 'air', state: 'dusty', tail: 0 }] }),
      activity('sand', 10, { ...at(200), states: [{ medium: 'air', state: 'dusty', tail: 0 }] }),
    ]);
    expect(tightest(input, 'grind')).toEqual({ fact: { kind: 'state', medium: 'air', activity: 'grind', blockers: ['paint'] }, until: 100, activities: ['paint'] });
  });

  it('is a hold between its two ends, and who begins and ends it', () => {
    const input = problem([activity('send', 10, at(0)), activity('fetch', 10, at(100)), activity('turn', 10, { ...onBench, release: 50 })], {
      resources: [bench], lags: [finishToStart('send', 'fetch')], holds: [{ id: 'away', resource: 'bench', amount: 1, from: 'send', to: 'fetch' }],
    });
    expect(tightest(input, 'turn')).toMatchObject({ until: 110, activities: expect.arrayContaining(['send']) });
  });

  it('is everybody of a pool, each with their own work', () => {
    const input = problem([activity('x', 30, { ...by(['ann']), ...at(0) }), activity('y', 40, { ...by(['ben']), ...at(0) }), activity('z', 10, { ...by(['cem']), ...at(0) }), activity('turn', 10, by(['ann', 'ben']))], {
      resources: ['ann', 'ben', 'cem'].map((id) => ({ id, capacity: 1 })),
    });
    expect(tightest(input, 'turn')).toEqual({ fact: { kind: 'crew', activity: 'turn', pool: ['ann', 'ben'], blockers: ['x', 'y'] }, until: 30, activities: ['x', 'y'] });
  });

  it('is not what has ended before, nor what begins after', () => {
    const input = problem([activity('early', 10, { ...onBench, ...at(0) }), activity('busy', 30, { ...onBench, ...at(10) }), activity('late', 10, { ...onBench, ...at(80) }), activity('turn', 10, { ...onBench, release: 10 })], { resources: [bench] });
    expect(tightest(input, 'turn')).toEqual({ fact: { kind: 'resource', resource: 'bench', activity: 'turn', blockers: ['busy'] }, until: 40, activities: ['busy'] });
  });

  it('is told of work left out with the longest first', () => {
    expect(reasons(20, 60)?.slice(0, 2)).toEqual(['state', 'resource']);
    expect(reasons(70, 20)?.slice(0, 2)).toEqual(['resource', 'state']);
  });
});
