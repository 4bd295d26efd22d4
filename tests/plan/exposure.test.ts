import { describe, expect, it } from 'vitest';
import { NO_TASK_HAZARDS, NO_TOOL_EXPOSURE, type HazardFact, type SeriesDocument } from '@/lib/build';
import { compilePlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { at, sampleSeries } from '../build/sample-series';

const compile = (document: SeriesDocument) => unwrap(compilePlan({ document, now: at('2026-11-30', '08:00'), previousBlocks: new Map() })).problem;

/** The sample with isocyanate in its primer, sprayed in a place with the given air changes. */
function withIsocyanate(airChanges: number | null): SeriesDocument {
  const sample = sampleSeries();
  return {
    ...sample,
    places: sample.places.map((place) => ({ ...place, airZone: 'arch', air: { volume: 100, airChanges, source: '' } })),
    materials: sample.materials.map((material) => (material.id === 'material-primer' ? { ...material, hasIsocyanate: true } : material)),
    tasks: sample.tasks.map((task) => (task.id === 'task-prime' ? { ...task, hazards: { ...NO_TASK_HAZARDS, facts: ['spraying'] } } : task)),
  };
}

const stateOf = (document: SeriesDocument, task: string) => compile(document).activities.find(({ id }) => id === `task:${task}`)?.states?.find(({ medium }) => medium === 'breath:arch');

describe('isocyanate in the plan', () => {

  it('shuts the air zone to all other work until it has cleared', () => {
    expect(stateOf(withIsocyanate(6), 'task-prime')).toEqual({ medium: 'breath:arch', state: 'isocyanate', tail: 47 });
    expect(stateOf(withIsocyanate(60), 'task-prime')?.tail).toBe(30);
    expect(stateOf(withIsocyanate(6), 'task-fit')).toEqual({ medium: 'breath:arch', state: 'breathed', tail: 0 });
  });

  it('shuts it for a day where nobody knows the air changes', () => {
    expect(stateOf(withIsocyanate(null), 'task-prime')?.tail).toBe(1440);
  });

  it('says nothing where none is sprayed', () => {
    expect(stateOf(sampleSeries(), 'task-prime')).toBeUndefined();
  });
});

const rateOf = (problem: ReturnType<typeof compile>, kind: string) =>
  problem.activities.find(({ id }) => id === 'task:task-fit')?.doses?.find((dose) => dose.kind === kind)?.perMinute ?? 0;

describe('exposure in the plan', () => {
  const sample = sampleSeries();
  const tools = (noise: number | null, vibration: number | null): SeriesDocument => ({
    ...sample,
    equipment: sample.equipment.map((one) => ({ ...one, exposure: { noise, vibration, source: 'handbook' } })),
    tasks: sample.tasks.map((task) => ({ ...task, equipmentIds: task.id === 'task-fit' ? ['equipment-gun'] : [] })),
  });

  it('becomes a budget of each person and each day they attend: 400 points of vibration', () => {
    const problem = compile(tools(null, 5));
    const own = (problem.budgets ?? []).filter(({ dose }) => dose === 'vibration');
    const days = sample.people.flatMap(({ id }) => [...new Set(sample.sessions.filter(({ crewIds }) => crewIds.includes(id)).map(({ start }) => `${id} ${new Date(start).toISOString().slice(0, 10)}`))]);
    expect(own.map(({ id }) => id).toSorted()).toEqual(days.map((day) => `vibration ${day}`).toSorted());
    expect(new Set(own.map(({ resource }) => resource)).size).toBe(sample.people.length);
    // 5 m/s2 is 400 points in eight hours.
    expect(rateOf(problem, 'vibration') * 480).toBeGreaterThanOrEqual(own[0]?.limit ?? Infinity);
    expect((rateOf(problem, 'vibration') - 1) * 480).toBeLessThan(own[0]?.limit ?? 0);
  });

  it('becomes a budget of noise at the ear behind its protection', () => {
    const problem = compile(tools(102, null));
    const limit = problem.budgets?.find(({ dose }) => dose === 'noise')?.limit;
    // 102 dB(A) less 15 is 87, the limit over eight hours.
    expect(rateOf(problem, 'noise') * 480).toBeGreaterThanOrEqual(limit ?? Infinity);
    expect((rateOf(problem, 'noise') - 1) * 480).toBeLessThan(limit ?? 0);
  });

  it('gives nothing to work that nobody does', () => {
    const document = tools(102, 5);
    const alone = { ...document, tasks: document.tasks.map((task) => ({ ...task, crew: [] })) };
    expect(compile(alone).activities.flatMap(({ doses }) => doses ?? [])).toEqual([]);
  });

  it('says nothing for tools without figures', () => {
    const bare = { ...sample, equipment: sample.equipment.map((one) => ({ ...one, exposure: NO_TOOL_EXPOSURE })) };
    expect((compile(bare).budgets ?? []).some(({ dose }) => dose !== undefined)).toBe(false);
  });
});

const base = sampleSeries();
const together = (facts: readonly HazardFact[], airZone: string): SeriesDocument => ({
  ...base,
  places: base.places.map((place) => ({ ...place, airZone: place.id === 'place-spray' ? airZone : 'arch' })),
  tasks: base.tasks.map((task) => (task.id === 'task-fit' ? { ...task, hazards: { ...NO_TASK_HAZARDS, facts } } : task)),
});
const fireOf = (document: SeriesDocument, task: string) => compile(document).activities.find(({ id }) => id === `task:${task}`)?.states?.find(({ medium }) => medium.startsWith('fire:'));

describe('solvent and sparks in one air', () => {
  it('exclude each other until the coat is touch dry', () => {
    const document = together(['grinding'], 'arch');
    expect(fireOf(document, 'task-fit')).toEqual({ medium: 'fire:arch', state: 'sparks', tail: 0 });
    expect(fireOf(document, 'task-prime')).toMatchObject({ medium: 'fire:arch', state: 'vapour' });
    expect(fireOf(document, 'task-prime')?.tail).toBeGreaterThan(0);
    expect(fireOf(document, 'task-strip')).toBeUndefined();
  });

  it('are not spoken of where the air is another, or where nothing sparks', () => {
    expect(fireOf(together(['grinding'], 'tent'), 'task-fit')).toBeUndefined();
    expect(fireOf(together(['heavy-lift'], 'arch'), 'task-prime')).toBeUndefined();
  });
});
