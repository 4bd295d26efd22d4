import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, solve, Standing, type Problem, type Schedule } from '@/lib/scheduling';
import { makeSeries } from '../bench/series';
import { activity, finishToStart, once, problem, scheduleOf } from './simple';

const ann = { id: 'ann', capacity: 1 };
const byAnn = { crew: [{ pool: ['ann'], count: 1 }] };

function plan(input: Problem): Schedule {
  return scheduleOf(unwrap(solve(input, { stop: afterWork(20), seed: 1 })));
}

/** Milliseconds of processor time. */
function spent(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { system, user } = process.cpuUsage(before);
  return (system + user) / 1000;
}

describe('a start chosen by hand', () => {
  const input = problem([
    activity('prime', 30, byAnn), activity('coat', 30, { ...byAnn, release: 100 }), activity('sweep', 20, { ...byAnn, pin: { start: 300 } }),
  ], { resources: [ann], lags: [finishToStart('prime', 'coat', 60, 200)] });
  const standing = once(() => new Standing(input, plan(input)));

  it('is accepted where nothing stands in its way', () => {
    expect(standing().tryStart('coat', 150)).toMatchObject({ verdict: 'fits', start: 150, end: 180, clashes: [], placement: { crew: ['ann'] } });
  });

  it('names the work that has to give way', () => {
    const onTop = standing().tryStart('coat', 300);
    expect(onTop.verdict).toBe('impossible');
    const beside = standing().tryStart('prime', 100);
    expect(beside).toMatchObject({ verdict: 'displaces', clashes: [{ fact: { kind: 'lag-min', lag: 'prime>coat' }, until: 190, activities: ['coat'] }, { fact: { kind: 'crew' }, activities: ['coat'] }] });
  });

  it('is refused with a minimal set of facts when what was stated forbids it', () => {
    const { contradiction, verdict } = standing().tryStart('coat', 80);
    expect(verdict).toBe('impossible');
    expect(contradiction?.facts).toEqual(expect.arrayContaining([{ kind: 'pin', activity: 'coat' }]));
    const drop = contradiction!.facts.find(({ kind }) => kind !== 'pin');
    expect(drop).toBeDefined();
  });

  it('is refused by something fixed, which is named', () => {
    expect(standing().tryStart('coat', 290)).toMatchObject({ verdict: 'impossible', clashes: [{ fact: { kind: 'lag-max' } }, { fact: { kind: 'crew', blockers: ['sweep'] }, activities: ['sweep'] }] });
  });

  it('finds the first start that fits while everything else stays', () => {
    expect(standing().earliest('coat', 0, 500)).toBe(100);
    expect(standing().earliest('coat', 240, 500)).toBeNull();
    expect(standing().earliest('prime', 10, 500)).toBe(10);
  });

  it('is answered for a series of 300 tasks in far less than 150 ms', () => {
    const series = makeSeries(300, 1);
    const schedule = scheduleOf(unwrap(solve(series, { stop: afterWork(1), seed: 1 })));
    const moved = series.activities.filter((_, k) => k % 40 === 0);
    const worst = moved.map(({ id }) => spent(() => {
      const board = new Standing(series, schedule);
      board.tryStart(id, (board.startOf(id) ?? 0) + 1440);
    }));
    expect(Math.max(...worst)).toBeLessThan(150);
  });
});
