import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, explainChain, explainPlacement, solve, type Problem, type Schedule } from '@/lib/scheduling';
import { activity, finishToStart, problem, scheduleOf, startOf } from './simple';

const ann = { id: 'ann', capacity: 1 };
const one = { demands: [{ resource: 'ann', amount: 1 }] };

function plan(input: Problem): Schedule {
  return scheduleOf(unwrap(solve(input, { stop: afterWork(60), seed: 1 })));
}

describe('why an activity is not earlier', () => {
  it('names the lag that binds, with the moment it allows', () => {
    const input = problem([activity('coat', 30), activity('strip', 10), activity('fit', 20)], { lags: [finishToStart('coat', 'fit', 100), finishToStart('strip', 'fit')] });
    const reasons = explainPlacement(input, plan(input), 'fit');
    expect(reasons).toEqual([
      { fact: { kind: 'lag-min', lag: 'coat>fit' }, until: 130, activities: ['coat'] },
      { fact: { kind: 'lag-min', lag: 'strip>fit' }, until: 10, activities: ['strip'] },
    ]);
  });

  it('names the person who is busy and with what', () => {
    const input = problem([activity('a', 30, { ...one, pin: { start: 0 } }), activity('b', 20, one)], { resources: [ann] });
    expect(explainPlacement(input, plan(input), 'b')).toEqual([
      { fact: { kind: 'resource', resource: 'ann', activity: 'b', blockers: ['a'] }, until: 30, activities: ['a'] },
    ]);
  });

  it('names the crew pool, the state of the air, the budget and the release', () => {
    const input = problem([
      activity('paint', 10, { pin: { start: 0 }, states: [{ medium: 'air', state: 'wet', tail: 90 }] }),
      activity('grind', 10, { states: [{ medium: 'air', state: 'dusty', tail: 0 }] }),
      activity('hold', 40, { pin: { start: 0 }, crew: [{ pool: ['ann'], count: 1 }] }),
      activity('turn', 10, { crew: [{ pool: ['ann'], count: 1 }] }),
      activity('saw', 30, { demands: [{ resource: 'saw', amount: 1 }] }),
      activity('late', 10, { release: 77 }),
    ], { resources: [ann, { id: 'saw', capacity: 1 }], budgets: [{ id: 'noise', resource: 'saw', within: { start: 0, end: 200 }, limit: 0 }] });
    const schedule = plan(input);
    expect(explainPlacement(input, schedule, 'grind')[0]).toEqual({ fact: { kind: 'state', medium: 'air', activity: 'grind', blockers: ['paint'] }, until: 100, activities: ['paint'] });
    expect(explainPlacement(input, schedule, 'turn')[0]).toEqual({ fact: { kind: 'crew', activity: 'turn', pool: ['ann'], blockers: ['hold'] }, until: 40, activities: ['hold'] });
    expect(explainPlacement(input, schedule, 'saw')[0]).toEqual({ fact: { kind: 'budget', budget: 'noise', activity: 'saw' }, until: 200, activities: [] });
    expect(explainPlacement(input, schedule, 'late')[0]).toEqual({ fact: { kind: 'release', activity: 'late' }, until: 77, activities: [] });
    expect(explainPlacement(input, schedule, 'paint')[0]?.fact).toEqual({ kind: 'pin', activity: 'paint' });
  });

  it('names the calendar when nothing else holds the first work', () => {
    const input = problem([activity('a', 30, { calendar: 'c' })], { calendars: [{ id: 'c', intervals: [{ start: 50, end: 200 }] }] });
    expect(explainPlacement(input, plan(input), 'a')).toEqual([{ fact: { kind: 'calendar', activity: 'a' }, until: 50, activities: [] }]);
  });

  it('names the accepted plan when nothing else keeps the work there', () => {
    const input = problem([activity('a', 30, { previousStart: 50 })]);
    expect(explainPlacement(input, plan(input), 'a')).toEqual([{ fact: { kind: 'previous', activity: 'a' }, until: 50, activities: [] }]);
  });

  it('has nothing to say about what starts at once or is left out', () => {
    const input = problem([activity('a', 30), activity('b', 5000)]);
    expect(explainPlacement(input, plan(input), 'a')).toEqual([]);
    expect(explainPlacement(input, plan(input), 'b')).toEqual([]);
  });

  it('follows the chain back over lags and people to the root', () => {
    const input = problem([activity('a', 30, { ...one, pin: { start: 0 } }), activity('b', 20, one), activity('c', 10)], { resources: [ann], lags: [finishToStart('b', 'c', 15)] });
    const schedule = plan(input);
    expect(startOf(schedule, 'c')).toBe(65);
    const chain = explainChain(input, schedule, 'c');
    expect(chain.map((link) => [link.activity, link.reason?.fact.kind])).toEqual([['c', 'lag-min'], ['b', 'resource'], ['a', 'pin']]);
  });
});
