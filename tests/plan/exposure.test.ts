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

describe('exposure in the plan', () => {
  const sample = sampleSeries();
  const tools = (noise: number | null, vibration: number | null): SeriesDocument => ({
    ...sample,
    equipment: sample.equipment.map((one) => ({ ...one, exposure: { noise, vibration, source: 'handbook' } })),
    tasks: sample.tasks.map((task) => ({ ...task, equipmentIds: task.id === 'task-fit' ? ['equipment-gun'] : [] })),
  });

  it('becomes a budget of each day with a session: 400 points of vibration', () => {
    const problem = compile(tools(null, 5));
    const own = (problem.budgets ?? []).filter(({ resource }) => resource === 'exposure:vibration');
    expect(own).toHaveLength(new Set(sample.sessions.map(({ start }) => new Date(start).toISOString().slice(0, 10))).size);
    // 5 m/s2 is 400 points in eight hours.
    const amount = problem.activities.find(({ id }) => id === 'task:task-fit')?.demands.find(({ resource }) => resource === 'exposure:vibration')?.amount ?? 0;
    expect(amount * 480).toBeGreaterThanOrEqual(own[0]?.limit ?? Infinity);
    expect((amount - 1) * 480).toBeLessThan(own[0]?.limit ?? 0);
  });

  it('becomes a budget of noise at the ear behind its protection', () => {
    const problem = compile(tools(102, null));
    const budget = problem.budgets?.find(({ resource }) => resource === 'exposure:noise');
    const amount = problem.activities.find(({ id }) => id === 'task:task-fit')?.demands.find(({ resource }) => resource === 'exposure:noise')?.amount ?? 0;
    // 102 dB(A) less 15 is 87, the limit over eight hours.
    expect(amount * 480).toBeGreaterThanOrEqual(budget?.limit ?? Infinity);
    expect((amount - 1) * 480).toBeLessThan(budget?.limit ?? 0);
  });

  it('says nothing for tools without figures', () => {
    const bare = { ...sample, equipment: sample.equipment.map((one) => ({ ...one, exposure: NO_TOOL_EXPOSURE })) };
    expect((compile(bare).budgets ?? []).some(({ resource }) => resource.startsWith('exposure:'))).toBe(false);
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
