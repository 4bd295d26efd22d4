/** Plans that keep the limits of exposure, and never leave one person alone with a hazard. */
import { describe, expect, it } from 'vitest';
import { NO_TASK_HAZARDS, type HazardFact, type SeriesDocument } from '@/lib/build';
import { compilePlan, datedWork } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { listPersonDays, VIBRATION_LIMIT_POINTS } from '@/lib/safety';
import { check } from '@/lib/scheduling';
import { at, sampleSeries } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

const now = at('2026-11-30', '09:00');
const TOOLS = ['task-fit', 'task-closing'];

/** Two tasks with a needle scaler at 16 m/s2: 35 min and 18 min of trigger time, 299 and 149 of a day's 400 points. */
function shaking(vibration: number | null): SeriesDocument {
  const sample = sampleSeries();
  return {
    ...sample,
    equipment: sample.equipment.map((one) => ({ ...one, exposure: { noise: null, vibration, source: 'handbook' } })),
    tasks: sample.tasks.map((task) => ({ ...task, equipmentIds: TOOLS.includes(task.id) ? ['equipment-gun'] : [], hazards: { ...NO_TASK_HAZARDS, toolShare: 0.5 } })),
  };
}

const daysOf = (plan: ReturnType<typeof planOf>['plan']): ReadonlySet<string> =>
  new Set(TOOLS.flatMap((id) => blockOf(plan, `task:${id}`).pieces.map(({ start }) => new Date(start).toISOString().slice(0, 10))));

describe('a plan under a daily limit of vibration', () => {
  const free = planOf(shaking(null), now);
  const bound = planOf(shaking(16), now);

  it('keeps the limit for everybody, on days that it would share without it', () => {
    expect(free.plan.unplaced).toEqual([]);
    expect(bound.plan.unplaced).toEqual([]);
    expect(daysOf(free.plan).size).toBeLessThan(daysOf(bound.plan).size);
    const days = listPersonDays(shaking(16), datedWork(bound.plan).pieces).filter(({ vibration }) => vibration.points > 0);
    expect(days.length).toBeGreaterThan(0);
    for (const { vibration } of days) expect(vibration.points).toBeLessThanOrEqual(VIBRATION_LIMIT_POINTS);
    expect(Math.max(...days.map(({ vibration }) => vibration.points))).toBeGreaterThan(VIBRATION_LIMIT_POINTS / 2);
  });

  it('is told from one that breaks it by the independent check', () => {
    const broken = check(bound.compiled.problem, free.schedule);
    expect(broken.some((violation) => JSON.stringify(violation).includes('exposure:vibration'))).toBe(true);
    expect(check(bound.compiled.problem, bound.schedule)).toEqual([]);
  });
});

const hazardous = (facts: readonly HazardFact[], people?: SeriesDocument['people']): SeriesDocument => {
  const sample = sampleSeries();
  return {
    ...sample, people: people ?? sample.people,
    tasks: sample.tasks.map((task) => (task.id === 'task-fit' ? { ...task, crew: [{ skill: null, count: 1 }], hazards: { ...NO_TASK_HAZARDS, facts } } : task)),
  };
};

function crewOf(count: number) {
  const document = hazardous(['under-raised-load']);
  const changed = { ...document, tasks: document.tasks.map((task) => (task.id === 'task-fit' ? { ...task, crew: [{ skill: null, count }] } : task)) };
  return unwrap(compilePlan({ document: changed, now, previousBlocks: new Map() })).problem.activities.find(({ id }) => id === 'task:task-fit')?.crew?.map((need) => need.count);
}

describe('work that is never done with one person', () => {
  it('gets a second one from the plan, and other work does not', () => {
    expect(blockOf(planOf(hazardous([]), now).plan, 'task:task-fit').crewIds).toHaveLength(1);
    expect(blockOf(planOf(hazardous(['under-raised-load']), now).plan, 'task:task-fit').crewIds).toHaveLength(2);
  });

  it('finds no place where the crew is one person, and says why', () => {
    const sample = sampleSeries();
    const [robin] = sample.people;
    if (robin === undefined) throw new Error('The sample has people');
    const alone = hazardous(['under-raised-load'], [robin]);
    const document = { ...alone, sessions: alone.sessions.map((session) => ({ ...session, crewIds: [robin.id] })) };
    const { draft } = unwrap(compilePlan({ document, now, previousBlocks: new Map() }));
    expect(draft.impossible.get('task:task-fit')?.text).toBe('Is never done with one person (under a raised vehicle), and there is nobody else in the crew.');
  });

  it('asks for nobody more where two are on it already, or nobody is', () => {
    expect(crewOf(2)).toEqual([2]);
    expect(crewOf(1)).toEqual([1, 1]);
    expect(crewOf(0)).toEqual([]);
  });
});
