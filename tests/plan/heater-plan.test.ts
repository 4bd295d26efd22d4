import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { compilePlan, tellContradiction } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve } from '@/lib/scheduling';
import { celsius, type Instant } from '@/lib/units';
import { coldSeries, withHeater } from '../build/cold-series';
import { at } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

const now = at('2026-11-30', '09:00');
/** When the tent is heated: over the first two evenings. */
const ON = { start: at('2026-12-01', '09:00'), end: at('2026-12-04', '09:00') };

/** Primer and gloss that bear the cold and any wait between them, in sessions that are not heated, and one long heating of the tent. */
function heatedTent(isSafe: boolean, more: Partial<SeriesDocument> = {}): SeriesDocument {
  const document = coldSeries();
  const [run] = document.heatingRuns;
  return withHeater({
    ...document,
    sessions: document.sessions.map((session) => ({ ...session, heating: null })),
    materials: document.materials.map((material) => ({ ...material, stages: { ...material.stages, recoatUntil: null }, minimumTemperature: celsius(-10), cure: { ...material.cure!, minimumUntilDry: celsius(-10) } })),
    tasks: document.tasks.map((task) => ({ ...task, conditions: { ...task.conditions, minimumTemperature: null }, ...(['task-strip', 'task-clean'].includes(task.id) ? { doneAt: now } : {}) })),
    heatingRuns: [{ ...run!, ...ON }], ...more,
  }, isSafe);
}

/** From opening the tin to touch dry. */
function vapourOf(plan: ReturnType<typeof planOf>['plan'], task: string): { readonly start: Instant; readonly end: Instant } {
  return { start: blockOf(plan, `task:${task}`).start, end: blockOf(plan, `cure:${task}`).stages!.touchDry };
}

const COATS = ['task-prime', 'task-paint'];
const inHeat = (plan: ReturnType<typeof planOf>['plan']): string[] => COATS.filter((task) => vapourOf(plan, task).start < ON.end && vapourOf(plan, task).end > ON.start);

describe('a heater that can light solvent', () => {
  const { plan, compiled, schedule } = planOf(heatedTent(false), now);

  it('keeps every solvent coat out of its air from the opening of the tin to touch dry', () => {
    expect(plan.unplaced).toEqual([]);
    expect(inHeat(plan)).toEqual([]);
  });

  it('is the only thing that kept them out: a heater made for such air, or one in another air, does not bind', () => {
    expect(inHeat(planOf(heatedTent(true), now).plan)).not.toEqual([]);
    const [run] = heatedTent(false).heatingRuns;
    expect(inHeat(planOf(heatedTent(false, { heatingRuns: [{ ...run!, airZone: 'arch' }] }), now).plan)).not.toEqual([]);
  });

  it('does not keep out a coat without solvent', () => {
    const materials = heatedTent(false).materials.map((material) => ({ ...material, hasSolvent: false }));
    expect(inHeat(planOf(heatedTent(false, { materials }), now).plan)).not.toEqual([]);
  });

  it('is named as the reason, with its hours and what would make room', () => {
    const [first] = COATS.flatMap((task) => blockOf(plan, `task:${task}`).because.filter(({ text }) => text.includes('heater')));
    expect(first?.text).toMatch(/gives off solvent until it is touch dry, and the electric heater of tent is on from Tue 1 Dec 09:00 to Fri 4 Dec 09:00\.$/);
    expect(first?.change).toContain('made for air that holds solvent');
  });

  it('is seen by the checker when a coat is put into its hours', () => {
    const minute = compiled.draft.clock.up(at('2026-12-03', '19:00'));
    const moved = { ...schedule, placements: schedule.placements.map((one) => (one.activity === 'task:task-paint' ? { ...one, start: minute, end: minute + one.end - one.start, pieces: [{ start: minute, end: minute + one.end - one.start }] } : one)) };
    expect(check(compiled.problem, moved).map(({ rule }) => rule)).toContain('calendar');
  });

  it('stands against a coat pinned into its hours, and both are told', () => {
    const document = heatedTent(false);
    const pinned = { ...document, tasks: document.tasks.map((task) => (task.id === 'task-prime' ? { ...task, pinnedStart: at('2026-12-03', '19:00') } : task)) };
    const told = unwrap(compilePlan({ document: pinned, now, previousBlocks: new Map() }));
    const solution = unwrap(solve(told.problem, { stop: afterWork(5), seed: 1 }));
    if (solution.status !== 'infeasible') throw new Error(solution.status);
    const [issue] = tellContradiction(told, solution.contradiction);
    expect(issue?.message).toContain('Pinned by hand');
    expect(issue?.message).toContain('the electric heater of tent is on from Tue 1 Dec 09:00');
  });

  it('that is always on leaves no place, and the plan says what to change', () => {
    const [run] = heatedTent(false).heatingRuns;
    const always = planOf(heatedTent(false, { heatingRuns: [{ ...run!, start: now, end: at('2026-12-31', '09:00') }] }), now).plan;
    const [why] = always.unplaced.find(({ subject }) => subject.id === 'task-prime')?.because ?? [];
    expect(why?.text).toContain('with the electric heater of tent off until Grey primer is dry');
    expect(why?.change).toContain('switch off');
  });
});

it('while nobody has said which heater there is, the plan does not guess', () => {
  const document = heatedTent(false);
  const unsaid = { ...document.series };
  delete (unsaid as { workshop?: unknown }).workshop;
  expect(inHeat(planOf({ ...document, series: unsaid }, now).plan)).not.toEqual([]);
});

it('a coat laid before the heating is dry when it begins', () => {
  const run = { ...heatedTent(false).heatingRuns[0]!, start: at('2026-12-05', '16:00'), end: at('2026-12-20', '16:00') };
  const { compiled } = planOf(heatedTent(false, { heatingRuns: [run] }), now);
  const of = (id: string) => compiled.problem.calendars.find(({ id: name }) => name === compiled.problem.activities.find((activity) => activity.id === id)?.calendar)!;
  const last = Math.max(...of('task:task-prime').intervals.filter(({ end }) => end < compiled.draft.clock.up(run.start)).map(({ end }) => end));
  const cure = compiled.draft.cureIn('tent');
  const primer = compiled.draft.materials.get('material-primer')!;
  const on = compiled.draft.clock.down(run.start);
  expect(cure.reached(primer, 'touchDry', last)).toBeLessThanOrEqual(on);
  expect(cure.reached(primer, 'touchDry', last + 30)).toBeGreaterThan(on);
});
