import { describe, expect, it } from 'vitest';
import { DEFAULT_CURE, DEFAULT_TERMS, type OutsideJob } from '@/lib/build';
import { compilePlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { celsius, minutes, minutesBetween } from '@/lib/units';
import { coldSeries } from '../build/cold-series';
import { at } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

const now = at('2026-11-30', '09:00');
const laidAt = at('2026-12-05', '16:00');

/** The cold series with the frame painted on Saturday, and how warm each night after it is. */
function painted(setPoint: number | null) {
  const document = coldSeries();
  const done = new Set(['task-strip', 'task-clean', 'task-prime', 'task-paint']);
  const [run] = document.heatingRuns;
  return {
    ...document,
    tasks: document.tasks.map((task) => (done.has(task.id) ? { ...task, doneAt: laidAt } : task)),
    heatingRuns: setPoint === null || run === undefined ? [] : [{ ...run, start: laidAt, end: at('2026-12-08', '16:00'), setPoint: celsius(setPoint) }],
  };
}

const length = (intervals: readonly { start: number; end: number }[] = []) => intervals.reduce((sum, { start, end }) => sum + end - start, 0);

/** Three finished jobs of the trade, quoted at four working days. */
const past = (days: number): OutsideJob[] => [1, 2, 3].map((index) => ({
  ...coldSeries().outsideJobs[0]!, id: `past-${index}`, order: index, name: `Past job ${index}`, parts: [], episodeId: null, quote: { low: 4, likely: 4, high: 4 },
  droppedOffAt: at('2026-11-02', '09:00'), collectedAt: at(days === 4 ? '2026-11-06' : '2026-11-12', '09:00'),
}));

describe('coats in a cold arch', () => {
  it('wait longer than at the temperature of their data sheet, and less in the warmth of a heated night', () => {
    const cold = blockOf(planOf(painted(null), laidAt).plan, 'cure:task-paint');
    const warm = blockOf(planOf(painted(20), laidAt).plan, 'cure:task-paint');
    // 24 h at 20 °C until it may be handled.
    expect(minutesBetween(cold.start, cold.end)).toBeGreaterThan(1440 * 1.8);
    expect(minutesBetween(warm.start, warm.end)).toBeLessThan(1440 * 1.5);
    expect(minutesBetween(warm.start, warm.end)).toBeGreaterThanOrEqual(1440);
  });

  it('hold back the next work until the block says that they may be handled', () => {
    const { plan } = planOf(painted(null), laidAt);
    expect(blockOf(plan, 'task:task-fit').start).toBeGreaterThanOrEqual(blockOf(plan, 'cure:task-paint').stages!.handle);
  });

  it('are told with the temperatures of the hours they cured in, and what warmth would buy', () => {
    const { plan } = planOf(painted(null), laidAt);
    const coat = blockOf(plan, 'task:task-fit').because.find(({ text }) => text.includes('Green gloss'));
    expect(coat?.text).toMatch(/after application at -?\d+ to -?\d+ °C\.$/);
    expect(coat?.change).toMatch(/Kept at \d+ °C it is hard enough to handle/);
  });

  it('are all placed when the tent is kept warm, with every recoat window kept', () => {
    const [run] = coldSeries().heatingRuns;
    const { plan } = planOf(coldSeries({ heatingRuns: [{ ...run!, end: at('2026-12-19', '09:00'), setPoint: celsius(16) }] }), now);
    expect(plan.unplaced).toEqual([]);
    const { stages } = blockOf(plan, 'cure:task-prime');
    const paint = blockOf(plan, 'task:task-paint').start;
    expect(paint).toBeGreaterThanOrEqual(stages!.recoatFrom);
    expect(paint).toBeLessThanOrEqual(stages!.recoatUntil!);
  });

  it('keep dust out of their air until they are touch dry, however long that takes', () => {
    const document = coldSeries();
    const places = document.places.map((place) => ({ ...place, airZone: 'arch' }));
    const { plan } = planOf({ ...document, places, tasks: document.tasks.map((task) => ({ ...task, isDusty: task.coats.length === 0 && task.id !== 'task-closing' })) }, now);
    const wet = plan.blocks.filter((block) => block.kind === 'cure');
    const dusty = plan.blocks.filter((block) => block.kind === 'task' && document.tasks.some((task) => task.id === block.subject.id && task.coats.length === 0 && task.id !== 'task-closing'));
    expect(dusty.length).toBeGreaterThan(1);
    expect(dusty.filter((dust) => wet.some((coat) => dust.start < coat.stages!.touchDry && coat.start < dust.end))).toEqual([]);
  });

  it('that never form in the cold are only laid when it stays warm enough until they are dry', () => {
    const document = coldSeries();
    const materials = document.materials.map((material) => ({ ...material, minimumTemperature: celsius(5), cure: { ...DEFAULT_CURE, belowMinimum: 'never forms' as const, minimumUntilDry: celsius(4) } }));
    const { problem } = unwrap(compilePlan({ document: { ...document, materials }, now, previousBlocks: new Map() }));
    const prime = problem.activities.find(({ id }) => id === 'task:task-prime');
    const calendar = problem.calendars.find(({ id }) => id === prime?.calendar);
    const usual = unwrap(compilePlan({ document, now, previousBlocks: new Map() })).problem.calendars.find(({ id }) => id === 'sessions at Spray corner');
    expect(calendar?.id).toContain('warm until Grey primer is dry');
    expect(length(calendar?.intervals)).toBeGreaterThan(0);
    expect(length(calendar?.intervals)).toBeLessThan(length(usual?.intervals ?? [{ start: 0, end: 99_999 }]));
  });
});

describe('an outside job', () => {
  it('is booked longer when the past jobs of its trade took twice their quote, and says from how many', () => {
    const document = coldSeries();
    const usual = planOf({ ...document, outsideJobs: [...document.outsideJobs, ...past(4)] }, now).plan;
    const late = planOf({ ...document, outsideJobs: [...document.outsideJobs, ...past(8)] }, now).plan;
    const away = (plan: typeof late) => minutesBetween(blockOf(plan, 'away:job-wheel').start, blockOf(plan, 'away:job-wheel').end);
    expect(away(late)).toBeGreaterThan(away(usual));
    const words = late.blocks.flatMap((block) => block.because.map(({ text }) => text)).find((text) => text.startsWith('Away at'));
    expect(words).toContain('from 3 of its own past jobs and 3 in all');
  });

  it('is collected only on the days that the trade hands work out', () => {
    const document = coldSeries();
    const trades = document.trades.map((trade) => ({ ...trade, terms: { ...DEFAULT_TERMS, collectionDays: [5 as const] } }));
    const { plan } = planOf({ ...document, trades }, now);
    expect(new Date(blockOf(plan, 'collection:job-wheel').start).getUTCDay()).toBe(5);
  });
});

describe('dust', () => {
  it('settles as long as the workshop says', () => {
    const document = coldSeries();
    const workshop = { ...document.series.workshop!, dustSettles: minutes(95) };
    const tasks = document.tasks.map((task) => ({ ...task, isDusty: task.id === 'task-clean' }));
    const { problem } = unwrap(compilePlan({ document: { ...document, tasks, series: { ...document.series, workshop } }, now, previousBlocks: new Map() }));
    expect(problem.activities.find(({ id }) => id === 'task:task-clean')?.states?.find(({ state }) => state === 'dusty')?.tail).toBe(95);
  });
});
