import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, instantOf } from '@/lib/calendar';
import { freezeNear } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve } from '@/lib/scheduling';
import { DEMO_ZONE, demoSeries } from '@/seed/demo';
import { blockOf, planOf } from './plan-of';

const MONDAY = '2027-02-01';
const now = instantOf(MONDAY, '09:00', DEMO_ZONE);
const demo = demoSeries(MONDAY);
const withSeries = (more: Partial<SeriesDocument['series']>): SeriesDocument => ({ ...demo, series: { ...demo.series, ...more } });
const minuteOf = (date: string) => (instantOf(date, '00:00', DEMO_ZONE) - instantOf(MONDAY, '00:00', DEMO_ZONE)) / 60_000;

describe('what a plan is to make small', () => {
  it('asks at the end of each week for episodes that are recorded the lead days before', () => {
    const { compiled } = planOf(withSeries({ leadDays: 7, bankMinimum: 1 }), now);
    const last = demo.episodes.reduce((latest, { releaseDate }) => (releaseDate > latest ? releaseDate : latest), MONDAY);
    const quotas = compiled.problem.quotas ?? [];
    expect(quotas.length).toBeGreaterThan(2);
    for (const quota of quotas) {
      const sunday = quota.id.replace('bank ', '');
      expect(quota.at).toBe(minuteOf(addDays(sunday, 1 - 7)));
      expect(quota.at).toBeGreaterThan(0);
      expect(sunday < last).toBe(true);
      // Only what airs after the Sunday can be in hand then.
      const later = demo.episodes.filter(({ releaseDate }) => releaseDate > sunday).map(({ id }) => `episode:${id}`);
      expect(quota.among.filter((id) => !later.includes(id))).toEqual([]);
      expect(quota.least).toBe(1);
    }
  });

  it('asks for nothing where nobody wants episodes in hand', () => {
    expect(planOf(withSeries({ bankMinimum: 0 }), now).compiled.problem.quotas).toEqual([]);
  });

  it('pays for a heated session once, by the heat of its hours, and tells the sum', () => {
    const { compiled, plan, schedule } = planOf(demo, now);
    const { upkeep } = compiled.problem;
    expect(upkeep?.spans.length).toBeGreaterThan(0);
    const used = upkeep!.spans.filter(({ within }) => schedule.placements.some(({ crew, pieces }) => crew.some((id) => upkeep!.resources.includes(id)) && pieces.some((piece) => piece.start < within.end && piece.end > within.start)));
    expect(plan.goals?.heating).toBeCloseTo(used.reduce((sum, { cost }) => sum + cost, 0), 6);
    expect(planOf({ ...demo, weather: [], readings: [] }, now).plan.goals?.heating).toBeNull();
  });

  it('hands the order of the goals to the engine and keeps it with the plan', () => {
    const { compiled, plan } = planOf(withSeries({ goals: ['finish', 'heating', 'lateness', 'bank', 'changes'] }), now);
    expect(compiled.problem.objective).toEqual(['makespan', 'cost', 'tardiness', 'shortages', 'moved']);
    expect(plan.goals?.order[0]).toBe('finish');
  });
});

describe('the days that stay as planned', () => {
  const accepted = planOf(demo, now).plan;
  const until = instantOf(addDays(MONDAY, 6), '09:00', DEMO_ZONE);
  const near = accepted.blocks.filter((block) => block.kind === 'task' && block.start >= now && block.start < until);
  const frozen = (document: SeriesDocument) => {
    const compiled = freezeNear(planOf(document, now, { accepted, schedules: 1 }).compiled);
    const solution = unwrap(solve(compiled.problem, { stop: afterWork(10), seed: 2 }));
    if (!('schedule' in solution)) throw new Error('no plan');
    expect(check(compiled.problem, solution.schedule)).toEqual([]);
    return { compiled, schedule: solution.schedule };
  };

  it('freezes the work that starts before the last of them ends, and no other', () => {
    const { compiled } = frozen(withSeries({ frozenDays: 6 }));
    const names = near.map(({ id }) => id);
    expect(names.length).toBeGreaterThan(1);
    expect([...compiled.draft.frozen].filter((id) => id.startsWith('task:')).toSorted()).toEqual(names.toSorted());
    expect(frozen(withSeries({ frozenDays: 0 })).compiled.draft.frozen.size).toBe(0);
  });

  it('keeps its start and its people even where another order would end sooner', () => {
    const { schedule } = frozen(withSeries({ frozenDays: 6, goals: ['finish', 'lateness', 'bank', 'changes', 'heating'] }));
    for (const { crewIds, id, start } of near) {
      const placement = schedule.placements.find(({ activity }) => activity === id)!;
      expect(placement.start).toBe((start - instantOf(dateOf(now, DEMO_ZONE), '00:00', DEMO_ZONE)) / 60_000);
      expect(placement.crew.map((resource) => resource.replace('person:', '')).toSorted()).toEqual(crewIds.toSorted());
    }
  });

  it('lets go of what can no longer stand there, and only of that', () => {
    const [first] = near;
    const gone = first!.crewIds[0]!;
    const day = dateOf(blockOf(accepted, first!.id).start, DEMO_ZONE);
    const away = { ...withSeries({ frozenDays: 6 }), people: demo.people.map((person) => (person.id === gone ? { ...person, away: [...person.away, { from: day, to: day, why: 'ill' }] } : person)) };
    const { compiled } = frozen(away);
    expect(compiled.draft.frozen.has(first!.id)).toBe(false);
    const others = near.filter((block) => dateOf(block.start, DEMO_ZONE) !== day).map(({ id }) => id);
    expect(others.every((id) => compiled.draft.frozen.has(id))).toBe(true);
  });
});
