import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, type Contradiction, type Fact, type Problem, type Schedule } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { propagate } from '@/lib/scheduling/propagate';
import { validate } from '@/lib/scheduling/validate';
import { problems } from './random-problem';

const wellFormed = problems.filter((problem) => validate(problem).ok);
const options = { stop: afterWork(25), seed: 3 };

/** The problem without one stated fact. */
function withoutFact(problem: Problem, fact: Fact): Problem {
  const keys = { release: 'release', 'latest-end': 'latestEnd', pin: 'pin', calendar: 'calendar' } as const;
  const { kind } = fact;
  if (kind === 'lag-min' || kind === 'lag-max') {
    return { ...problem, lags: problem.lags.map((lag) => (lag.id === fact.lag ? { ...lag, [kind === 'lag-min' ? 'min' : 'max']: undefined } : lag)) };
  }
  if (kind === 'hold') return { ...problem, holds: (problem.holds ?? []).filter((hold) => hold.id !== fact.hold) };
  if (kind === 'duration') return { ...problem, activities: problem.activities.map((a) => (a.id === fact.activity ? { ...a, duration: 0 } : a)) };
  if (kind === 'release' || kind === 'latest-end' || kind === 'pin' || kind === 'calendar') {
    return { ...problem, activities: problem.activities.map((a) => (a.id === fact.activity ? { ...a, [keys[kind]]: undefined } : a)) };
  }
  return problem;
}

const name = (id: string) => `task ${id}`;

function isContradictory(problem: Problem): boolean {
  return !propagate(compile(problem)).ok;
}

/** The problem with only the facts of a contradiction: everything else is left out. */
function onlyFacts(problem: Problem, { facts }: Contradiction): Problem {
  const has = (kind: Fact['kind'], id: string) => facts.some((fact) => fact.kind === kind && ('activity' in fact ? fact.activity : 'lag' in fact ? fact.lag : '') === id);
  const dropped: Fact[] = [
    ...problem.activities.flatMap((a) => (['duration', 'calendar', 'release', 'latest-end', 'pin'] as const).filter((kind) => !has(kind, a.id)).map((kind) => ({ kind, activity: a.id }))),
    ...problem.lags.flatMap((lag) => (['lag-min', 'lag-max'] as const).filter((kind) => !has(kind, lag.id)).map((kind) => ({ kind, lag: lag.id }))),
    ...(problem.holds ?? []).filter((hold) => !facts.some((fact) => fact.kind === 'hold' && fact.hold === hold.id)).map((hold) => ({ kind: 'hold' as const, hold: hold.id, activity: hold.to })),
  ];
  return dropped.reduce(withoutFact, problem);
}

describe('every answer to a random small problem', () => {
  it('passes the independent checker and respects its bound', () => {
    fc.assert(fc.property(wellFormed, (problem) => {
      const solution = unwrap(solve(problem, options));
      if (solution.status === 'infeasible') return;
      if (solution.status === 'unknown') throw new Error('The serial scheme always gives a schedule.');
      expect(check(problem, solution.schedule)).toEqual([]);
      if (solution.schedule.score.unplaced === 0) expect(solution.schedule.score.makespan).toBeGreaterThanOrEqual(solution.lowerBound);
    }), { numRuns: 400 });
  });

  it('is the same for the same seed', () => {
    fc.assert(fc.property(wellFormed, (problem) => {
      expect(solve(problem, options)).toEqual(solve(problem, options));
    }), { numRuns: 80 });
  });

  it('stays sound when the activities are listed in another order under other names', () => {
    fc.assert(fc.property(wellFormed, (problem) => {
      const renamed: Problem = {
        ...problem,
        activities: problem.activities.toReversed().map((a) => ({ ...a, id: name(a.id) })),
        lags: problem.lags.toReversed().map((l) => ({ ...l, from: { ...l.from, activity: name(l.from.activity) }, to: { ...l.to, activity: name(l.to.activity) } })),
        holds: (problem.holds ?? []).map((h) => ({ ...h, from: name(h.from), to: name(h.to) })),
        quotas: (problem.quotas ?? []).map((q) => ({ ...q, among: q.among.map(name) })),
      };
      const before = unwrap(solve(problem, options));
      const after = unwrap(solve(renamed, options));
      expect(after.status === 'infeasible').toBe(before.status === 'infeasible');
      if (after.status === 'infeasible' || after.status === 'unknown') return;
      expect(check(renamed, after.schedule)).toEqual([]);
      if (before.status === 'optimal' && after.status === 'optimal') expect(after.schedule.score.makespan).toBe(before.schedule.score.makespan);
    }), { numRuns: 150 });
  });

  it('stays sound under a problem with more capacity', () => {
    fc.assert(fc.property(wellFormed, (problem) => {
      const solution = unwrap(solve(problem, options));
      if (solution.status === 'infeasible' || solution.status === 'unknown') return;
      const relaxed = { ...problem, resources: problem.resources.map((r) => ({ ...r, capacity: r.capacity + 1 })) };
      expect(check(relaxed, solution.schedule)).toEqual([]);
    }), { numRuns: 150 });
  });

  it('moves with a problem that is moved as a whole', () => {
    const shift = 1440;
    fc.assert(fc.property(wellFormed.filter((p) => p.lags.every((l) => l.min?.kind !== 'table')), (problem) => {
      const later = (at: number | undefined) => (at === undefined ? undefined : at + shift);
      const shifted = {
        ...problem,
        horizon: problem.horizon + shift,
        calendars: problem.calendars.map((c) => ({ ...c, intervals: c.intervals.map((i) => ({ start: i.start + shift, end: i.end + shift })) })),
        budgets: (problem.budgets ?? []).map((b) => ({ ...b, within: { start: b.within.start + shift, end: b.within.end + shift } })),
        quotas: (problem.quotas ?? []).map((q) => ({ ...q, at: q.at + shift })),
        ...(problem.upkeep === undefined ? {} : { upkeep: { ...problem.upkeep, spans: problem.upkeep.spans.map(({ cost, within }) => ({ cost, within: { start: within.start + shift, end: within.end + shift } })) } }),
        activities: problem.activities.map((a) => ({
          ...a,
          release: (a.release ?? 0) + shift,
          latestEnd: later(a.latestEnd),
          previousStart: later(a.previousStart),
          due: a.due === undefined ? undefined : { ...a.due, at: a.due.at + shift },
          pin: a.pin === undefined ? undefined : { ...a.pin, start: a.pin.start + shift },
        })),
      } as Problem;
      const here = unwrap(solve(problem, options));
      const there = unwrap(solve(shifted, options));
      expect(there.status === 'infeasible').toBe(here.status === 'infeasible');
      if (here.status === 'infeasible' || there.status === 'infeasible' || here.status === 'unknown' || there.status === 'unknown') return;
      const placed = there.schedule.placements;
      const back = (at: number) => at - shift;
      const { score } = there.schedule;
      const movedBack: Schedule = {
        ...there.schedule,
        score: { ...score, makespan: placed.length === 0 ? 0 : back(score.makespan), sumOfEnds: score.sumOfEnds - placed.length * shift },
        placements: placed.map((p) => ({ ...p, start: back(p.start), end: back(p.end), pieces: p.pieces.map((piece) => ({ start: back(piece.start), end: back(piece.end) })) })),
      };
      expect(check(problem, movedBack)).toEqual([]);
      if (here.status === 'optimal' && there.status === 'optimal') expect(back(there.schedule.score.makespan)).toBe(here.schedule.score.makespan);
    }), { numRuns: 80 });
  });

  it('names a contradiction of which no fact can be spared', () => {
    let seen = 0;
    fc.assert(fc.property(wellFormed, (problem) => {
      const solution = unwrap(solve(problem, options));
      if (solution.status !== 'infeasible') return;
      const { contradiction } = solution;
      expect(contradiction.facts.length).toBeGreaterThan(0);
      // Pins that clash on a resource are no matter of time alone.
      if (!isContradictory(problem)) return;
      seen += 1;
      const alone = onlyFacts(problem, contradiction);
      expect(isContradictory(alone)).toBe(true);
      for (const fact of contradiction.facts) expect(isContradictory(withoutFact(alone, fact))).toBe(false);
    }), { numRuns: 300 });
    expect(seen).toBeGreaterThan(20);
  });
});
