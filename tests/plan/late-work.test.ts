import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { requestPlan, type CommandContext } from '@/lib/commands';
import { DEFAULT_ASSUMPTIONS, findChances } from '@/lib/forecast';
import { compilePlan, explainBlock, findMissedWindows, lateTasksOf, raisePlan, scheduleOf, type PlanResult } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve } from '@/lib/scheduling';
import { Simulation } from '@/lib/simulation';
import { celsius, minutes, minutesBetween, type Instant } from '@/lib/units';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

/** End of Saturday's session, when the primer was laid. */
const LAID = at('2026-12-05', '16:00');

type Late = NonNullable<SeriesDocument['materials'][number]['cure']>['lateWork'];

/** Coats that bear any cold; a primer with a window of so many hours. `laidAt` null: it is still to be laid. */
function series(hours: number, lateWork: Late, laidAt: Instant | null = LAID): SeriesDocument {
  const document = coldSeries();
  const done = laidAt === null ? [] : ['task-prime'];
  return {
    ...document,
    materials: document.materials.map((material) => ({
      ...material, minimumTemperature: celsius(-10), cure: { ...material.cure!, minimumUntilDry: celsius(-10), lateWork },
      stages: material.id === 'material-primer' ? { ...material.stages, recoatUntil: minutes(hours * 60) } : material.stages,
    })),
    tasks: document.tasks.map((task) => ({
      ...task, conditions: { ...task.conditions, minimumTemperature: null },
      ...(['task-strip', 'task-clean', ...done].includes(task.id) ? { doneAt: task.id === 'task-prime' ? laidAt : at('2026-12-01', '09:00') } : {}),
    })),
  };
}

function raised(document: SeriesDocument, now: Instant, lateFor: ReadonlySet<string>): PlanResult {
  const compiled = unwrap(compilePlan({ document, now, previousBlocks: new Map(), lateFor }));
  const solution = unwrap(solve(compiled.problem, { stop: afterWork(20), seed: 7 }));
  if (!('schedule' in solution)) throw new Error(solution.status);
  expect(check(compiled.problem, solution.schedule)).toEqual([]);
  return raisePlan(compiled, solution, { solveTime: 0 });
}

const LATE = 'late-work:task-paint';
const planAt = (document: SeriesDocument, now: Instant) => planOf(document, now).plan;

describe('a recoat window of a coat that is on', () => {
  it('is kept while a session lies in it, and costs nothing', () => {
    const plan = planAt(series(130, 'abrade'), LAID);
    expect(plan.blocks.some(({ id }) => id === LATE)).toBe(false);
    expect(blockOf(plan, 'task:task-paint').start).toBeLessThanOrEqual(blockOf(plan, 'cure:task-prime').stages!.recoatUntil!);
  });

  it('binds a coat that may pause too: it is laid in one go, and begins before the window closes', () => {
    const document = series(130, 'abrade');
    const pausing = { ...document, tasks: document.tasks.map((task) => (task.id === 'task-paint' ? { ...task, inOneGo: false } : task)) };
    const paint = (input: SeriesDocument) => unwrap(compilePlan({ document: input, now: LAID, previousBlocks: new Map() })).problem.activities.find(({ id }) => id === 'task:task-paint')!;
    expect(paint(pausing)).toEqual(paint(document));
    const plan = planAt(pausing, LAID);
    expect(blockOf(plan, 'task:task-paint').pieces).toHaveLength(1);
    expect(blockOf(plan, 'task:task-paint').start).toBeLessThanOrEqual(blockOf(plan, 'cure:task-prime').stages!.recoatUntil!);
  });

  it('that has closed puts the abrading before the next coat, with the moment of the closing', () => {
    const plan = planAt(series(48, 'abrade'), at('2026-12-08', '09:00'));
    const abrading = blockOf(plan, LATE);
    expect(abrading).toMatchObject({ kind: 'late-work', subject: { kind: 'task', id: 'task-paint' }, title: 'Abrade Grey primer: its recoat window is over', partIds: ['part-frame'] });
    expect(minutesBetween(abrading.start, abrading.end)).toBe(45);
    expect(abrading.because[0]?.text).toBe('The recoat window of Grey primer closed Mon 7 Dec 16:00: abrading added before “Paint the frame”.');
    expect(blockOf(plan, 'task:task-paint').start).toBeGreaterThanOrEqual(abrading.end);
    expect(plan.unplaced).toEqual([]);
  });

  it('that closes before there is time for the next coat is told on the same evening', () => {
    // Saturday 16:00, closing Monday 16:00; the next recording session is on Thursday evening.
    const plan = planAt(series(48, 'abrade'), LAID);
    const [why] = blockOf(plan, LATE).because;
    expect(why?.text).toBe('The recoat window of Grey primer closes Mon 7 Dec 16:00, before “Paint the frame” can begin: abrading added.');
    expect(why?.change).toContain('Put a session inside the window');
  });

  it.each([[122 * 60 + 29, true], [122 * 60 + 30, false]] as const)('of %i minutes, with the next recording session after 122 h 30 min, is late: %s', (window, isLate) => {
    const document = series(1, 'abrade');
    const materials = document.materials.map((material) => (material.id === 'material-primer' ? { ...material, stages: { ...material.stages, recoatUntil: minutes(window) } } : material));
    const plan = planAt({ ...document, materials }, LAID);
    expect(plan.blocks.some(({ id }) => id === LATE)).toBe(isLate);
    expect(blockOf(plan, 'task:task-paint').start).toBeGreaterThanOrEqual(at('2026-12-10', '18:30'));
  });

  it('cleans and tacks where the data sheet says so, strips and lays again where it says that, and does nothing where it asks for nothing', () => {
    const now = at('2026-12-08', '09:00');
    expect(blockOf(planAt(series(48, 'clean and tack coat'), now), LATE).title).toContain('lay a tack coat');
    expect(planAt(series(48, 'none'), now).blocks.some(({ id }) => id === LATE)).toBe(false);
    const stripped = planAt(series(96, 'strip'), at('2026-12-10', '09:00'));
    expect(blockOf(stripped, LATE).title).toBe('Strip Grey primer and lay it again: its recoat window is over');
    // Laid again, it has a window of its own.
    const wait = minutesBetween(blockOf(stripped, LATE).end, blockOf(stripped, 'task:task-paint').start);
    expect(wait).toBeGreaterThan(120);
    expect(wait).toBeLessThanOrEqual(96 * 60);
  });
});

describe('late work in a plan', () => {
  const document = series(48, 'abrade');
  const now = at('2026-12-08', '09:00');
  const { compiled, plan, schedule } = planOf(document, now);

  it('stands in a forecast where the plan has it, with the same people', () => {
    const assumptions = { ...DEFAULT_ASSUMPTIONS, factorDeviation: 0, retakeChance: 0, lostChance: 0, spoilChance: 0, coldBegins: 0, absenceChance: 0 };
    const calm = new Simulation({ ...findChances(compiled, plan, { assumptions, factors: new Map(), seed: 1 }), lengths: [], groups: [], delays: [] });
    calm.runMany(0, 1);
    const row = calm.replay.names.indexOf(LATE);
    expect(calm.replay.start[row]).toBe(schedule.placements.find(({ activity }) => activity === LATE)?.start);
  });

  it('is found again in an accepted plan, and can be asked why it is there', () => {
    const again = unwrap(compilePlan({ document, now, previousBlocks: new Map(), lateFor: lateTasksOf(plan) }));
    expect(scheduleOf(again, plan).placements.map(({ activity }) => activity)).toContain(LATE);
    expect(explainBlock(compiled, schedule, LATE).chain[0]).toMatchObject({ blockId: LATE });
  });
});

describe('a recoat window of a coat that is still to be laid', () => {
  const now = at('2026-12-01', '09:00');

  it('that no two sessions allow brings the abrading with it, instead of a plan without the coats', () => {
    // The primer opens after two hours at 20 °C, where its window closes: colder than that it never opens in time.
    const plan = planAt(series(2, 'abrade', null), now);
    expect(plan.unplaced).toEqual([]);
    const [why] = blockOf(plan, LATE).because;
    expect(why?.text).toBe('No two sessions let “Paint the frame” follow “Prime the frame” within the recoat window of Grey primer (2 h at most): abrading added.');
    expect(blockOf(plan, LATE).start).toBeGreaterThanOrEqual(blockOf(plan, 'cure:task-prime').stages!.handle);
  });

  it('that some two sessions allow is kept', () => {
    const plan = planAt(series(50, 'abrade', null), now);
    expect(plan.blocks.some(({ id }) => id === LATE)).toBe(false);
    expect(blockOf(plan, 'task:task-paint').start).toBeLessThanOrEqual(blockOf(plan, 'cure:task-prime').stages!.recoatUntil!);
  });
});

describe('a recoat window that sessions allow and nobody has time for', () => {
  const saturday = at('2026-12-05', '18:00');
  /** The painter is away for a week. */
  const without = (document: SeriesDocument, until: Instant): SeriesDocument => ({
    ...document, sessions: document.sessions.map((session) => (session.start > saturday && session.start < until ? { ...session, crewIds: ['person-kim'] } : session)),
  });
  const onIt = without(series(130, 'abrade'), at('2026-12-12', '09:00'));

  it('is named by the plan that leaves the coat out, and planned for when it is asked again', () => {
    const { compiled, plan, schedule } = planOf(onIt, LAID);
    expect(plan.unplaced.find(({ subject }) => subject.id === 'task-paint')?.because.map(({ text }) => text).join(' ')).toContain('Must begin within the recoat window of Grey primer after “Prime the frame”, which closes Fri 11 Dec 02:00');
    const lateFor = findMissedWindows(compiled, { status: 'feasible', schedule, lowerBound: 0, schedulesTried: 1, seed: 1 });
    expect([...lateFor]).toEqual(['task-paint']);
    const again = raised(onIt, LAID, lateFor);
    expect(again.unplaced).toEqual([]);
    expect(blockOf(again, LATE).because[0]?.text).toBe('Nobody has time for “Paint the frame” within the recoat window of Grey primer, which closes Fri 11 Dec 02:00: abrading added.');
    expect(lateTasksOf(again)).toEqual(lateFor);
  });

  it('is seen where both coats lie ahead, and not where nothing is missed', () => {
    const document = without(series(50, 'abrade', null), at('2026-12-18', '09:00'));
    // Too slow for two coats on one day; the painter is there on two Saturdays, a fortnight apart.
    const materials = document.materials.map((material) => ({ ...material, stages: { ...material.stages, recoatFrom: minutes(600), handle: minutes(700) } }));
    const ahead = planOf({ ...document, materials }, at('2026-12-05', '09:00'));
    const found = (one: typeof ahead) => [...findMissedWindows(one.compiled, { status: 'feasible', schedule: one.schedule, lowerBound: 0, schedulesTried: 1, seed: 1 })];
    expect(ahead.plan.unplaced.map(({ subject }) => subject.id)).toContain('task-paint');
    expect(found(ahead)).toEqual(['task-paint']);
    expect(found(planOf(series(50, 'abrade', null), at('2026-12-01', '09:00')))).toEqual([]);
  });

  it('is planned for by the one who asks for a plan, in one go', async () => {
    const saved: PlanResult[] = [];
    const storage = {
      loadSeries: async () => onIt, acceptedPlan: async () => null, listReadings: async () => [],
      savePlan: async (_: string, { result }: { result: PlanResult }) => {
        saved.push(result);
        return { ok: true, value: { result } };
      },
    } as unknown as CommandContext['storage'];
    unwrap(await requestPlan({ storage, now: () => LAID, newId: () => 'new' }, 'series', { milliseconds: 400, seed: 1 }));
    expect(saved[0]?.unplaced).toEqual([]);
    expect(blockOf(saved[0]!, LATE).kind).toBe('late-work');
  }, 30_000);
});
