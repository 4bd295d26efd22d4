import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, explainChain, explainPlacement, repair, solve, Standing, type Problem, type Schedule } from '@/lib/scheduling';
import { makeSeries } from '../bench/series';
import { scheduleOf, startOf } from './simple';

/** What a series reaches: the first plan, and the plan after a hundred. A later engine may do better, none may do worse. */
interface Mark {
  readonly size: number;
  readonly seed: number;
  readonly tardiness: number;
  readonly first: number;
  readonly makespan: number;
  readonly sumOfEnds: number;
  readonly lowerBound: number;
}

const marks: readonly Mark[] = [
  { size: 40, seed: 1, tardiness: 0, first: 29_685, makespan: 28_310, sumOfEnds: 807_160, lowerBound: 28_310 },
  { size: 40, seed: 2, tardiness: 0, first: 38_070, makespan: 35_760, sumOfEnds: 770_970, lowerBound: 22_774 },
  { size: 60, seed: 1, tardiness: 54_000, first: 48_350, makespan: 48_325, sumOfEnds: 1_922_860, lowerBound: 32_925 },
  { size: 60, seed: 3, tardiness: 7_840, first: 48_205, makespan: 38_410, sumOfEnds: 1_656_985, lowerBound: 38_107 },
];

describe.each(marks)('a series of $size tasks from seed $seed', ({ first, lowerBound, makespan, seed, size, sumOfEnds, tardiness }) => {
  const series = makeSeries(size, seed);

  it('has a first plan that leaves nothing out and is nearly in time', () => {
    const { score } = scheduleOf(unwrap(solve(series, { stop: afterWork(1), seed: 1 })));
    expect(score).toMatchObject({ unplaced: 0 });
    expect(score.tardiness).toBeLessThanOrEqual(tardiness);
    expect(score.makespan).toBeLessThanOrEqual(first * 1.01);
  });

  it('is planned well after a hundred plans, under a bound that is no worse', () => {
    const solution = unwrap(solve(series, { stop: afterWork(100), seed: 1 }));
    const { score } = scheduleOf(solution);
    expect(score.tardiness).toBeLessThanOrEqual(tardiness);
    expect(score.makespan).toBeLessThanOrEqual(makespan * 1.005);
    expect(score.sumOfEnds).toBeLessThanOrEqual(sumOfEnds * 1.01);
    if ('lowerBound' in solution) expect(solution.lowerBound).toBeGreaterThanOrEqual(lowerBound);
  });
});

const repaired = (input: Problem): Schedule => scheduleOf(repair(input, 10));

describe('a plan of forty tasks', () => {
  const series = makeSeries(40, 2);
  const schedule = scheduleOf(unwrap(solve(series, { stop: afterWork(30), seed: 1 })));

  it('explains each start by something that lets it begin just then, the tightest first', () => {
    for (const { activity, start } of schedule.placements) {
      const reasons = explainPlacement(series, schedule, activity);
      expect(reasons.map(({ until }) => until)).toEqual(reasons.map(({ until }) => until).toSorted((a, b) => b - a));
      expect(reasons[0]?.until ?? 0).toBeLessThanOrEqual(start);
      if (start > 0) expect(reasons.length).toBeGreaterThan(0);
    }
  });

  it('goes back over a chain in which each is held by the next, until nothing holds the last, and nobody comes twice', () => {
    for (const { activity } of schedule.placements) {
      const chain = explainChain(series, schedule, activity);
      expect(chain[0]).toMatchObject({ activity, start: startOf(schedule, activity) });
      expect(new Set(chain.map((link) => link.activity)).size).toBe(chain.length);
      chain.slice(1).forEach((link, k) => expect(chain[k]?.reason?.activities).toContain(link.activity));
      expect(chain.at(-1)?.reason?.activities.filter((id) => chain.every((link) => link.activity !== id)) ?? []).toEqual([]);
    }
  });

  it('accepts every task where it stands, and none where its reasons forbid it', () => {
    const standing = new Standing(series, schedule);
    for (const { activity, start } of schedule.placements) {
      expect([activity, standing.tryStart(activity, start).verdict]).toEqual([activity, 'fits']);
      const isHeld = explainPlacement(series, schedule, activity)[0]?.until === start;
      if (isHeld) expect([activity, standing.tryStart(activity, start - 1).verdict]).not.toEqual([activity, 'fits']);
    }
  });

  const accepted = (more: (id: string, index: number) => object): Problem => ({
    ...series, objective: ['tardiness', 'moved', 'shortages', 'makespan', 'cost'],
    activities: series.activities.map((row, index) => ({ ...row, previousStart: startOf(schedule, row.id)!, ...more(row.id, index) })),
  });

  it('is left as it is when nothing is in its way', () => {
    const input = accepted(() => ({}));
    expect(repaired(input).score.moved).toBe(0);
    expect(scheduleOf(unwrap(solve(input, { stop: afterWork(5), seed: 1 }))).score.moved).toBe(0);
  });

  it('moves a few tasks when one begins a day later', () => {
    const last = schedule.placements.toSorted((a, b) => a.start - b.start)[15]!;
    const input = accepted((id) => (id === last.activity ? { release: last.start + 1440 } : {}));
    const { score } = repaired(input);
    expect(check(input, repaired(input))).toEqual([]);
    expect(score.moved).toBeGreaterThan(0);
    expect(score.moved).toBeLessThanOrEqual(12);
    expect(score.unplaced).toBe(0);
  });
});
