import { describe, expect, it } from 'vitest';
import { checkSeries, type SeriesDocument } from '@/lib/build';
import type { Reading } from '@/lib/climate';
import { viewClimate, viewMaterialLibrary, viewTradeLibrary, viewWaits } from '@/lib/views';
import { parseIsoWeek } from '@/lib/calendar';
import { workshopAir } from '@/lib/cure';
import { computeNow } from '@/lib/views/now-plan';
import { computeWeek } from '@/lib/views/week-plan';
import { samplePlan } from './sample-plan';
import { unwrap } from '@/lib/result';
import type { ViewContext } from '@/lib/views/context';
import { addMinutes, celsius, type Instant } from '@/lib/units';
import { coldSeries, withHeater } from '../build/cold-series';
import { at } from '../build/sample-series';
import { planOf } from '../plan/plan-of';

const LAID = at('2026-12-05', '16:00');
const NOW = at('2026-12-05', '18:00');

/** A storage that holds one series without a plan; `rows` are those of every set of readings. */
function contextAt(now: Instant, rows: readonly Reading[] = []): ViewContext {
  const storage = { acceptedPlan: async () => null, listReadings: async () => rows } as unknown as ViewContext['storage'];
  return { storage, now, zone: 'Europe/London' };
}

/** The frame painted two hours ago. */
function painted(more: Partial<SeriesDocument> = {}): SeriesDocument {
  const document = coldSeries(more);
  const done = new Set(['task-strip', 'task-clean', 'task-prime', 'task-paint']);
  return { ...document, tasks: document.tasks.map((task) => (done.has(task.id) ? { ...task, doneAt: task.id === 'task-paint' ? LAID : at('2026-12-01', '18:00') } : task)) };
}

const waitsOf = (document: SeriesDocument, now = NOW) => viewWaits(contextAt(now), document, { heating: { what: null, by: null }, confidence: 80 });

/** Air of the tent in the heated night. */
async function airAt(setPoint: number): Promise<number> {
  const document = painted();
  const heatingRuns = document.heatingRuns.map((run) => ({ ...run, setPoint: celsius(setPoint) }));
  return (await viewClimate(contextAt(NOW), { ...document, heatingRuns }, { airZone: 'tent', from: '2026-12-06' })).curve!.air[4]!;
}

describe('the waits page', () => {
  it('shows the coat that dries with every stage in order, and what it holds up', async () => {
    const [coat] = (await waitsOf(painted())).curing.filter(({ taskId }) => taskId === 'task-paint');
    expect(coat?.stages.map(({ stage }) => stage)).toEqual(['flashOff', 'touchDry', 'recoatFrom', 'handle', 'fullCure']);
    const places = coat!.stages.map((stage) => stage.at);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(coat?.isTouchable).toBe(false);
    expect(coat?.holds.map(({ id }) => id)).toContain('task-fit');
  });

  it('sounds an alarm before a recoat window closes, and another once it has closed', async () => {
    const document = coldSeries();
    const primed = { ...document, tasks: document.tasks.map((task) => (['task-strip', 'task-clean', 'task-prime'].includes(task.id) ? { ...task, doneAt: at('2026-12-05', '16:00') } : task)) };
    const alarmsAt = async (now: Instant) => (await waitsOf(primed, now)).curing.flatMap(({ alarms }) => alarms.map(({ code }) => code));
    // 48 h of window after Saturday 16:00.
    expect(await alarmsAt(at('2026-12-06', '12:00'))).toContain('window-closes');
    expect(await alarmsAt(at('2026-12-07', '17:00'))).toContain('window-closed');
    // Fully cured, and the next coat still owed.
    expect(await alarmsAt(at('2027-01-20', '17:00'))).toContain('window-closed');
    const plan = planOf(primed, at('2026-12-07', '17:00')).plan;
    const context = contextAt(at('2026-12-07', '17:00'));
    const storage = { ...context.storage, acceptedPlan: async () => ({ number: 1, result: plan }) } as unknown as ViewContext['storage'];
    const planned = await viewWaits({ ...context, storage }, primed, { heating: { what: null, by: null }, confidence: 80 });
    const closed = planned.curing.flatMap(({ alarms }) => alarms).find(({ code }) => code === 'window-closed');
    expect(closed).toMatchObject({ severity: 'warn', fix: expect.stringMatching(/^The plan has the abrading on \w+ \d+ Dec/) });
    expect(planned.curing.flatMap(({ late }) => late ?? [])).toEqual([{ coatTaskId: 'task-prime', nextTaskId: 'task-paint', word: 'Keep the abrading as a task', isPlanned: true }]);
    const late = async (now: Instant) => (await waitsOf(primed, now)).curing.map((coat) => coat.late).filter((offer) => offer !== null);
    expect(await late(at('2026-12-06', '12:00'))).toEqual([]);
    expect(await late(at('2026-12-07', '17:00'))).toEqual([{ coatTaskId: 'task-prime', nextTaskId: 'task-paint', word: 'Plan the abrading', isPlanned: false }]);
  });

  it('tells that a coat stands still in the frost', async () => {
    const cold = painted({ heatingRuns: [], sessions: coldSeries().sessions.map((session) => ({ ...session, heating: null })), series: { ...coldSeries().series, workshop: { ...coldSeries().series.workshop!, room: { ...coldSeries().series.workshop!.room, offset: 0 } } } });
    const alarms = (await waitsOf(cold)).curing.flatMap((coat) => coat.alarms);
    expect(alarms.map(({ code }) => code)).toContain('coat-paused');
  });

  it('weighs heating: more heat is never ready later, and the cheapest plan that meets the shoot is marked', async () => {
    const { heating } = await waitsOf(painted({ heatingRuns: [] }));
    const curve = heating!.points.filter(({ isOnCurve }) => isOnCurve);
    expect(curve.length).toBeGreaterThan(2);
    for (const [index, point] of curve.entries()) if (index > 0) expect(point.readyIn).toBeLessThanOrEqual(curve[index - 1]!.readyIn!);
    expect(heating!.points.filter(({ isCheapest }) => isCheapest)).toHaveLength(1);
  });

  it('warns of fire where a heater would run in the solvent of a wet coat', async () => {
    const { heating } = await waitsOf(withHeater(painted({ heatingRuns: [] }), false));
    expect(heating!.hazards.map(({ code }) => code)).toContain('ignition');
    const safe = await waitsOf(withHeater(painted({ heatingRuns: [] }), true));
    expect(safe.heating!.hazards).toEqual([]);
  });

  it('judges the next coating session by number, and finds the earliest go', async () => {
    const document = coldSeries();
    const ready = { ...document, tasks: document.tasks.map((task) => (['task-strip', 'task-clean'].includes(task.id) ? { ...task, doneAt: at('2026-12-01', '12:00') } : task)) };
    const { go } = await waitsOf(ready, at('2026-12-01', '12:00'));
    const unsafe = (await waitsOf(withHeater(ready, false), at('2026-12-01', '12:00'))).go;
    expect(unsafe?.checks.map(({ message }) => message).join(' ')).toMatch(/heater that can light solvent/);
    expect(go?.checks.map(({ message }) => message).join(' ')).not.toContain('heater');
    expect(go?.taskId).toBe('task-prime');
    expect(go!.checks.length).toBeGreaterThan(5);
    for (const { message } of go!.checks) expect(message).toMatch(/\d|settled|does not fall/);
  });

  it('gives a drop-off day for the wanted confidence, and the chances of a return', async () => {
    const waits = await waitsOf(painted());
    const job = [...waits.ahead, ...waits.away].find(({ id }) => id === 'job-wheel');
    expect(job?.chances.map(({ percent }) => percent)).toEqual([50, 80, 95]);
    expect(job?.learned).toContain('No past job yet');
  });

  it('still answers while no weather is recorded', async () => {
    const waits = await waitsOf(painted({ weather: [] }));
    expect(waits.isHourly).toBe(false);
    expect(waits.heating).toBeNull();
    expect(waits.curing.length).toBeGreaterThan(0);
  });
});

describe('the week and the now page in a cold arch', () => {
  const week = unwrap(parseIsoWeek('2026-W49'));
  const weekOf = (document: SeriesDocument) => computeWeek({ document, plan: null, now: NOW, week, draft: null });

  it('names a heater in the solvent of a wet coat with its hours and a fix, and is silent with a safe one', () => {
    const [fire] = weekOf(withHeater(painted(), false)).conflicts;
    expect(fire).toMatchObject({ code: 'ignition', severity: 'stop' });
    expect(fire?.message).toMatch(/runs from Sat 5 Dec \d\d:\d\d to \w+ \d+ Dec \d\d:\d\d in the solvent vapour of/);
    expect(fire?.fix).toContain('touch dry');
    expect(weekOf(withHeater(painted(), true)).conflicts).toEqual([]);
    expect(weekOf(painted({ weather: [], heatingRuns: [], sessions: coldSeries().sessions.map((one) => ({ ...one, heating: null })) })).conflicts).toEqual([]);
  });

  it('reminds of a recoat window by the hourly climate, also where the coats follow by states alone', () => {
    const document = coldSeries({ links: [] });
    const primed = { ...document, tasks: document.tasks.map((task) => (['task-strip', 'task-clean', 'task-prime'].includes(task.id) ? { ...task, doneAt: at('2026-12-05', '16:00') } : task)) };
    const recoats = (now: Instant) => computeNow({ document: primed, plan: null, now, draft: null }).dontForget.filter(({ kind }) => kind === 'recoat');
    expect(recoats(at('2026-12-06', '12:00'))).toMatchObject([{ moment: 'closes Mon 7 Dec 16:00', isUrgent: true }]);
    expect(recoats(at('2026-12-08', '12:00'))[0]?.text).toContain('has closed. Abrade');
  });

  it('says how warm the surfaces will be in a session, by the weather and not by the set point alone', () => {
    const document = coldSeries();
    const block = samplePlan().result.blocks.find(({ subject }) => subject.id === 'task-prime');
    const ready = computeWeek({ document, plan: samplePlan(), now: at('2026-12-01', '09:00'), week, draft: null }).sessions.flatMap((one) => one.ready).filter(({ kind }) => kind === 'heating');
    expect(block).toBeDefined();
    expect(ready.map(({ text }) => text).join(' ')).toMatch(/surfaces (are only )?at \d+ to \d+ °C by the weather/);
  });
});

describe('the climate page', () => {
  it('draws a week with its sessions, heating and wet coats, and says each day in numbers', async () => {
    const view = await viewClimate(contextAt(NOW), painted(), { airZone: 'tent', from: '2026-12-05' });
    expect(view.curve).toMatchObject({ hours: 168 });
    expect(view.curve!.air).toHaveLength(168);
    expect(view.curve!.sessions.length).toBeGreaterThan(0);
    expect(view.curve!.heating.some(({ label }) => label === '14 °C')).toBe(true);
    expect(view.curve!.floors.map(({ at: floor }) => floor)).toContain(4);
    expect(view.days).toHaveLength(7);
  });

  it('says what fresh air takes to warm in the coldest hour', async () => {
    const { freshAir } = await viewClimate(contextAt(NOW), painted(), { airZone: 'tent', from: '2026-12-06' });
    // 150 m3 once an hour, some degrees warmed: under a kilowatt.
    expect(freshAir).toMatch(/^The air that comes in takes 0\.\d kW to warm in the coldest hour shown \(\w+ \d+ Dec \d\d:00: -?\d/);
    expect((await viewClimate(contextAt(NOW), painted({ weather: [] }), { airZone: 'tent', from: null })).freshAir).toBeNull();
  });

  it('is warmer while it is heated', async () => {
    expect(await airAt(14)).toBeGreaterThan((await airAt(6)) + 1);
  });

  it('gives an air the room and heater of its own', async () => {
    const document = painted({ heatingRuns: [] });
    const workshop = document.series.workshop!;
    const tent = { airZone: 'tent', room: { ...workshop.room, timeConstant: 2, offset: 0 }, heater: { ...workshop.heater, kilowatts: 1 } };
    const own = { ...document, series: { ...document.series, workshop: { ...workshop, airs: [tent] } } };
    const spread = async (airZone: string, given: SeriesDocument) => {
      const { air } = (await viewClimate(contextAt(NOW), given, { airZone, from: '2026-12-07' })).curve!;
      return Math.max(...air) - Math.min(...air);
    };
    // A light tent follows day and night; the arch stays as it was.
    expect(await spread('tent', own)).toBeGreaterThan((await spread('tent', document)) + 1);
    expect(await spread('arch', own)).toBe(await spread('arch', document));
    expect((await viewClimate(contextAt(NOW), own, { airZone: 'tent', from: null })).room).toContain('tent has numbers of its own');
    expect(checkSeries({ ...own, series: { ...own.series, workshop: { ...workshop, airs: [tent, tent] } } }).map(({ code }) => code)).toContain('air-twice');
  });

  it('lets readings overrule the model, and fits the room to them with the error', async () => {
    const unheated = painted({ heatingRuns: [] });
    const room = { ...unheated.series.workshop!.room, timeConstant: 9, offset: 2 };
    // What a room of 9 h and 2 K would have measured, told by the model of another room.
    const air = unwrap(workshopAir({ ...unheated, series: { ...unheated.series, workshop: { ...unheated.series.workshop!, room } } }, { from: '2026-11-27', to: '2026-11-30' }))!.climateOf('tent');
    const first = Math.round((at('2026-11-28', '00:00') - air.origin) / 3_600_000);
    const rows = Array.from({ length: 72 }, (_, hour): Reading => ({ at: addMinutes(at('2026-11-28', '00:00'), hour * 60 + 30), temperature: air.air[first + hour]!, humidity: 70 }));
    const view = await viewClimate(contextAt(NOW, rows), unheated, { airZone: 'tent', from: '2026-11-28' });
    expect(view.curve!.isMeasured.slice(0, 71).every(Boolean)).toBe(true);
    expect(view.days[0]?.measured).toBe('measured');
    expect(view.fitIssues).toEqual([]);
    expect(view.fit?.timeConstant).toBeGreaterThan(7.5);
    expect(view.fit?.timeConstant).toBeLessThan(10.5);
    expect(view.fit?.offset).toBeCloseTo(2, 0);
    expect(view.fit?.text).toMatch(/they lie 0\.\d\d K from the model/);
  });

  it('says why no fit can be found', async () => {
    const few = Array.from({ length: 5 }, (_, hour): Reading => ({ at: addMinutes(at('2026-11-28', '00:00'), hour * 60), temperature: 9, humidity: 70 }));
    const view = await viewClimate(contextAt(NOW, few), painted({ heatingRuns: [] }), { airZone: 'tent', from: '2026-11-28' });
    expect(view.fit).toBeNull();
    expect(view.fitIssues.map(({ code }) => code)).toEqual(['fit-few-readings']);
  });

  it('passes over a date and an air that do not exist', async () => {
    const view = await viewClimate(contextAt(NOW), painted(), { airZone: 'the moon', from: '2026-13-99' });
    expect(view.airZone).toBe('arch');
    expect(view.from).toBe('2026-12-04');
  });
});

describe('the library of trades', () => {
  const trades = coldSeries().trades.map((trade) => ({ ...trade, terms: { ...trade.terms!, country: 'GB', region: 'ENG', collectionDays: [4 as const] } }));
  const [job] = coldSeries().outsideJobs;
  const back = { ...job!, id: 'job-past', droppedOffAt: at('2026-11-02', '10:00'), collectedAt: at('2026-11-10', '10:00') };
  const asked = { days: '4', by: '2026-12-31', confidence: '90' };

  it('tells what was learned with its numbers, the holidays by name, the past jobs and the drop-off for a wanted day', async () => {
    const view = await viewTradeLibrary(contextAt(NOW), coldSeries({ trades, outsideJobs: [job!, back] }), asked);
    const [trade] = view.trades;
    expect(view.question).toEqual({ days: 4, by: '2026-12-31', confidence: 90 });
    expect(trade?.learned[0]).toMatch(/n = 1 of its own, 1 of its craft and 1 in all/);
    // Six working days for four quoted.
    expect(trade?.past).toEqual([{ id: 'job-past', name: job!.name, quoted: 4, actual: 6, ratio: '1.50 ×' }]);
    expect(trade?.holidays.map(({ name }) => name)).toContain('Boxing Day (substitute day)');
    expect(trade?.facts.find(({ label }) => label === 'Collection on')?.value).toBe('Thursday');
    expect(trade?.answers.join(' ')).toMatch(/back by Thu 31 Dec with \d+ %/);
    expect(trade?.answers.at(-1)).toMatch(/Drop off by \w+ \d+ Dec for 90 % \(9\d %\)|Drop off by \w+ \d+ Dec for 90 % \(100 %\)|not 90 %/);
  });

  it('takes a quote at its word without past jobs, and passes over what cannot be asked', async () => {
    const view = await viewTradeLibrary(contextAt(NOW), coldSeries(), { days: 'many', by: '2026-02-30', confidence: '101' });
    expect(view.question).toEqual({ days: 5, by: '2026-12-26', confidence: 80 });
    expect(view.trades[0]?.learned).toEqual(['No past job of any trade yet: the quote is all there is.']);
    expect(view.trades[0]?.holidays).toEqual([]);
    expect((await viewTradeLibrary(contextAt(NOW), coldSeries({ trades: [], outsideJobs: [] }), asked)).trades).toEqual([]);
  });
});

describe('the library of materials', () => {
  it('says of every value where it comes from', () => {
    const materials = viewMaterialLibrary();
    expect(materials.length).toBeGreaterThanOrEqual(14);
    for (const { values } of materials) for (const { source } of values) expect(source).not.toBe('');
  });
});
