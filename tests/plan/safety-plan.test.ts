/** Plans that keep the limits of exposure, and never leave one person alone with a hazard. */
import { describe, expect, it } from 'vitest';
import { NO_TASK_HAZARDS, type HazardFact, type SeriesDocument } from '@/lib/build';
import { compilePlan, datedWork, explainUnplaced, scheduleOf } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { listPersonDays, VIBRATION_LIMIT_POINTS } from '@/lib/safety';
import { check } from '@/lib/scheduling';
import { minutes } from '@/lib/units';
import { at, sampleSeries, sampleTask } from '../build/sample-series';
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
    expect(broken.map(({ rule }) => rule)).toContain('dose');
    expect(check(bound.compiled.problem, bound.schedule)).toEqual([]);
  });
});

/** Two tasks of an hour that anybody may do, 256 points each, and nothing else to do. */
function shared(people: SeriesDocument['people']): SeriesDocument {
  const sample = shaking(16);
  const ids = people.map(({ id }) => id);
  return {
    ...sample, people, series: { ...sample.series, fillLimit: 1 }, links: [], outsideJobs: [], episodes: [], parts: sample.parts,
    sessions: sample.sessions.map((session) => ({ ...session, crewIds: ids, isNoiseAllowed: true })),
    tasks: ['a', 'b'].map((id, order) => sampleTask(`task-${id}`, order, `Scale ${id}`, { episodeId: null, inOneGo: true, equipmentIds: ['equipment-gun'], hazards: { ...NO_TASK_HAZARDS, toolShare: 0.5 } })),
    equipment: sample.equipment.map((one) => ({ ...one, count: 2 })),
  };
}

const dayOf = (plan: ReturnType<typeof planOf>['plan'], id: string) => new Date(blockOf(plan, `task:${id}`).start).toISOString().slice(0, 10);

describe('a limit of each person', () => {
  const { people } = sampleSeries();

  it('lets two people do in a day what one may not', () => {
    const two = planOf(shared(people), now).plan;
    expect(dayOf(two, 'task-a')).toBe(dayOf(two, 'task-b'));
    expect(blockOf(two, 'task:task-a').crewIds).not.toEqual(blockOf(two, 'task:task-b').crewIds);
    const one = planOf(shared(people.slice(0, 1)), now).plan;
    expect(dayOf(one, 'task-a')).not.toBe(dayOf(one, 'task-b'));
  });

  it('is told in trade words, with the person and the day', () => {
    const { plan } = planOf(shared(people.slice(0, 1)), now);
    const late = [blockOf(plan, 'task:task-a'), blockOf(plan, 'task:task-b')].toSorted((a, b) => b.start - a.start)[0];
    expect(late?.because[0]?.text).toBe('Robin has too few vibration points left for it on Tue 1 Dec (400 points a day).');
  });

  it('counts what the same person has had today already, as logged or else as typed', () => {
    const base = shared(people.slice(0, 1));
    const done = { ...base, tasks: base.tasks.map((task) => (task.id === 'task-a' ? { ...task, doneAt: at('2026-12-05', '11:15') } : task)) };
    const noon = at('2026-12-05', '12:00');
    const leftOf = (document: SeriesDocument, crewIds: readonly string[]) => {
      const previousBlocks = new Map([['task:task-a', { start: at('2026-12-05', '10:00'), crewIds }]]);
      const { budgets = [] } = unwrap(compilePlan({ document, now: noon, previousBlocks })).problem;
      return ['2026-12-05', '2026-12-08'].map((date) => Math.round((budgets.find(({ id }) => id === `vibration person-robin ${date}`)?.limit ?? 0) / 100));
    };
    // 60 min as typed, half of them with the tool at 16 m/s2: 256 points. 15 min as logged: 64.
    expect(leftOf(done, ['person-robin'])).toEqual([144, 400]);
    const logged = { kind: 'timeLog', id: 'log', revision: 1, order: 0, name: '', taskId: 'task-a', activity: 'hands-on', start: at('2026-12-05', '11:00'), end: at('2026-12-05', '11:15'), wasInterrupted: false } as const;
    expect(leftOf({ ...done, timeLogs: [logged] }, ['person-robin'])).toEqual([336, 400]);
    expect(leftOf({ ...base, timeLogs: [{ ...logged, start: at('2026-12-04', '23:50'), end: at('2026-12-05', '00:10') }] }, ['person-robin'])).toEqual([357, 400]);
    expect(leftOf(done, ['person-kim'])).toEqual([400, 400]);
    expect(dayOf(planOf(done, noon).plan, 'task-b')).toBe('2026-12-05');
  });

  it('is told apart from work that is too much for anybody in one go', () => {
    const base = shared(people);
    const { compiled, plan } = planOf({ ...base, tasks: base.tasks.map((task) => ({ ...task, hazards: { ...task.hazards, toolShare: 1 } })) }, now);
    expect(plan.unplaced).toHaveLength(2);
    expect(plan.unplaced[0]?.because[0]?.text).toBe('In one go it is more vibration than anybody may get (400 points a day).');
    const { reliefs } = explainUnplaced(compiled, scheduleOf(compiled, plan), plan.unplaced[0]!);
    // 60 min at 16 m/s2: 512 points. A smoother tool or a pause; the limit is never raised.
    expect(reliefs.map(({ text }) => text.split(':')[0])).toEqual(['Do “Scale a” with a tool that shakes 30 % less', 'Let “Scale a” pause from one session to the next']);
  });
});

/** The primer holds isocyanate and is sprayed in a corner whose air the bench shares: 30 air changes an hour, 30 minutes to clear. */
function sprayed(airChanges: number | null): SeriesDocument {
  const sample = sampleSeries();
  return {
    ...sample, links: [], outsideJobs: [], episodes: [],
    places: sample.places.map((place) => ({ ...place, airZone: 'arch', air: { volume: 100, airChanges, source: '' } })),
    materials: sample.materials.map((material) => ({ ...material, hasIsocyanate: material.id === 'material-primer' })),
    tasks: [
      sampleTask('task-prime', 0, 'Prime the frame', { episodeId: null, placeId: 'place-spray', inOneGo: true, crew: [{ skill: 'painting', count: 1 }], coats: [{ id: 'coat', materialId: 'material-primer' }], hazards: { ...NO_TASK_HAZARDS, facts: ['spraying'] } }),
      sampleTask('task-sort', 1, 'Sort the bolts', { episodeId: null, inOneGo: true, effort: { low: minutes(100), likely: minutes(100), high: minutes(100) } }),
    ],
  };
}

describe('isocyanate in a solved plan', () => {
  it('shuts the places that share its air, for everybody, until it has cleared', () => {
    for (const [airChanges, wait] of [[30, 30], [6, 47], [null, 1440]] as const) {
      const { plan } = planOf(sprayed(airChanges), now);
      expect(plan.unplaced).toEqual([]);
      const [prime, sort] = [blockOf(plan, 'task:task-prime'), blockOf(plan, 'task:task-sort')];
      const isApart = sort.end <= prime.start || sort.start >= prime.end + wait * 60_000;
      expect(isApart).toBe(true);
      const shut = plan.blocks.filter(({ kind }) => kind === 'shut');
      expect(shut.map(({ placeId }) => placeId).toSorted()).toEqual(['place-bench', 'place-spray']);
      for (const block of shut) expect([block.start, block.end]).toEqual([prime.end, prime.end + wait * 60_000]);
      expect(shut[0]?.title).toBe('Prime the frame: isocyanate has to clear');
    }
  });

  it('is told as the reason why other work waits', () => {
    const base = sprayed(6);
    const { plan } = planOf({ ...base, tasks: base.tasks.map((task) => (task.id === 'task-prime' ? { ...task, pinnedStart: at('2026-12-01', '18:30') } : task)) }, now);
    expect(blockOf(plan, 'task:task-sort').because.map(({ text }) => text)).toContainEqual('Nobody may breathe the air of arch before the isocyanate from “Prime the frame” has cleared: the next time for it is Thu 3 Dec 18:30.');
  });

  it('still counts from a spraying that is done', () => {
    const base = sprayed(6);
    const done = { ...base, tasks: base.tasks.map((task) => (task.id === 'task-prime' ? { ...task, doneAt: at('2026-12-01', '18:30') } : task)) };
    const { plan } = planOf(done, at('2026-12-01', '18:40'));
    const sort = blockOf(plan, 'task:task-sort');
    expect(sort.start).toBe(at('2026-12-01', '19:17'));
    expect(sort.because[0]?.text).toBe('Nobody may breathe the air of arch until Tue 1 Dec 19:17: isocyanate from “Prime the frame” has to clear.');
  });

  it('keeps the filming ahead of other work out as well', () => {
    const base = sprayed(6);
    const shot = { id: 'shot', name: 'As it is', purpose: 'before' as const, time: minutes(10), mustHave: true, filmedAt: null };
    const document = { ...base, tasks: base.tasks.map((task) => (task.id === 'task-sort' ? { ...task, irreversible: true, coverage: 'moved camera' as const, shots: [shot] } : task)) };
    const { activities } = unwrap(compilePlan({ document, now, previousBlocks: new Map() })).problem;
    expect(activities.find(({ id }) => id === 'before-shot:task-sort')?.states).toContainEqual({ medium: 'breath:arch', state: 'breathed', tail: 0 });
  });

  it('leaves nothing shut where the air is another or no isocyanate is sprayed', () => {
    const base = sprayed(6);
    const brushed = { ...base, tasks: base.tasks.map((task) => ({ ...task, hazards: NO_TASK_HAZARDS })) };
    expect(planOf(brushed, now).plan.blocks.some(({ kind }) => kind === 'shut')).toBe(false);
    const apart = { ...base, places: base.places.map((place) => ({ ...place, airZone: place.id })) };
    expect(planOf(apart, now).plan.blocks.filter(({ kind }) => kind === 'shut').map(({ placeId }) => placeId)).toEqual(['place-spray']);
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
