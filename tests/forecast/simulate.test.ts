import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, instantOf, weekdayOf } from '@/lib/calendar';
import { continueSessions, DEFAULT_ASSUMPTIONS, findChances, findEffect, findThreats, findTradeThreats, listSizes, quantileOf, WHAT_IF_KINDS, withDaySaved, withSaving, worthOf } from '@/lib/forecast';
import { applyWhatIfs } from '@/lib/forecast/what-if';
import { compilePlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { joinBlocks, Simulation } from '@/lib/simulation';
import { demoSeries } from '@/seed/demo';
import { planOf } from '../plan/plan-of';

const now = instantOf('2026-11-30', '09:00', 'Europe/London');
const document = demoSeries('2026-11-30');
const { compiled, plan, schedule } = planOf(document, now, { schedules: 2 });
const calm = { ...DEFAULT_ASSUMPTIONS, factorDeviation: 0, retakeChance: 0, lostChance: 0, spoilChance: 0, coldBegins: 0, absenceChance: 0 };
const longer = unwrap(compilePlan({ document: continueSessions(document, 4).document, now, previousBlocks: new Map() }));
const input = findChances(longer, plan, { assumptions: DEFAULT_ASSUMPTIONS, factors: new Map(), seed: 1 });

const finish = (seed: number) => [...new Simulation({ ...input, seed }).runMany(0, 12).finish];

describe('a simulation of the demo', () => {
  it('gives the accepted plan back, minute by minute, when nothing goes otherwise', () => {
    const neutral = { ...findChances(compiled, plan, { assumptions: calm, factors: new Map(), seed: 1 }), lengths: [], groups: [], delays: [] };
    const simulation = new Simulation(neutral);
    simulation.runMany(0, 1);
    const planned = new Map(schedule.placements.map((placement) => [placement.activity, placement.start]));
    const moved = simulation.replay.names.filter((name, i) => planned.has(name) && planned.get(name) !== simulation.replay.start[i]);
    expect(moved).toEqual([]);
  });

  it('gives the same runs whole and in blocks, in whatever order they come', () => {
    const whole = new Simulation(input).runMany(0, 60);
    const other = new Simulation(input);
    const blocks = [other.runMany(40, 20), other.runMany(0, 15), other.runMany(15, 25)];
    const joined = joinBlocks(blocks);
    expect([...joined.finish]).toEqual([...whole.finish]);
    expect([...joined.watched]).toEqual([...whole.watched]);
    expect(joined.critical).toEqual(whole.critical);
  });

  it('is the same again for the same seed, and another for another', () => {
    expect(finish(1)).toEqual(finish(1));
    expect(finish(2)).not.toEqual(finish(1));
  });

  it('counts how often each trade holds the end up, by the job of it that does so most often', () => {
    const [job] = document.outsideJobs.filter(({ collectedAt }) => collectedAt === null);
    const block = { ...new Simulation(input).runMany(0, 1), criticalRuns: 10, critical: Int32Array.from(input.problem.activities, ({ id }) => (id === `collection:${job!.id}` ? 4 : 0)) };
    const [first, ...others] = findTradeThreats(document, input, block);
    expect(first).toMatchObject({ tradeId: job!.tradeId, share: 0.4, worth: null });
    expect(first!.jobs).toBe(document.outsideJobs.filter(({ collectedAt, tradeId }) => collectedAt === null && tradeId === job!.tradeId).length);
    expect(others.every(({ share }) => share === 0)).toBe(true);
    expect(findThreats(input, block)).toMatchObject([{ subject: { kind: 'outsideJob', id: job!.id }, share: 0.4 }]);
  });

  it('takes a working day off the jobs named and off no other', () => {
    const [one] = input.delays;
    const saved = withDaySaved(input, new Set([one!.id]));
    expect(saved.delays[0]!.outcomes.slice(1).map(({ ready }) => ready)).toEqual(one!.outcomes.slice(0, -1).map(({ ready }) => ready));
    expect(saved.delays.slice(1)).toEqual(input.delays.slice(1));
  });

  it('meets the same luck by name, so that an hour saved is never mixed with other luck', () => {
    const plain = new Simulation(input).runMany(0, 80);
    const saved = new Simulation(withSaving(input, { kind: 'task', id: 'task-first-start' })).runMany(0, 80);
    expect(worthOf(plain, saved)).toBeGreaterThan(0);
    expect(worthOf(plain, plain)).toBe(0);
  });

  it('ends later, on average, than the plan that meets no bad luck', () => {
    const sorted = new Simulation(input).runMany(0, 80).finish.toSorted();
    expect(quantileOf(sorted, 0.5)).toBeGreaterThan(Math.max(...schedule.placements.map((placement) => placement.end)));
  });
});

/** The first seven episodes of the demo and what is finished: what-ifs take a third of the time there. */
function firstEpisodes(whole: SeriesDocument): SeriesDocument {
  const early = new Set(whole.episodes.toSorted((a, b) => a.releaseDate.localeCompare(b.releaseDate)).slice(0, 7).map(({ id }) => id));
  const isEarly = ({ episodeId }: { readonly episodeId: string | null }) => episodeId !== null && early.has(episodeId);
  const tasks = whole.tasks.filter((task) => isEarly(task) || task.doneAt !== null);
  const outsideJobs = whole.outsideJobs.filter(isEarly);
  const kept = new Set([...tasks, ...outsideJobs].map(({ id }) => id));
  return { ...whole, tasks, outsideJobs, segments: [], links: whole.links.filter(({ from, to }) => kept.has(from.id) && kept.has(to.id)) };
}

const short = firstEpisodes(document);
const { plan: shortPlan } = planOf(short, now, { schedules: 2 });

describe('the ten what-ifs on the demo', () => {
  it.each(WHAT_IF_KINDS)('%s is told with at most three changes, each of its own kind, that leave less harm', (kind) => {
    const effect = unwrap(findEffect({ document: short, plan: shortPlan, now }, [{ kind, target: '' }]));
    expect(effect.words).toHaveLength(1);
    expect(effect.diff.summary).toMatch(/\.$/);
    const kinds = effect.remedies.map((remedy) => remedy.kind);
    expect(kinds.length).toBeLessThanOrEqual(3);
    expect(new Set(kinds).size).toBe(kinds.length);
    const harm = ({ lateMinutes, slipMinutes, open, unplaced }: typeof effect.standing) => [open, unplaced, lateMinutes, slipMinutes].map((one) => String(Math.round(one)).padStart(12, '0')).join();
    for (const remedy of effect.remedies) expect(harm(remedy.standing) < harm(effect.standing)).toBe(true);
  });

  it('let a trade slip by as many working days as said, five when nothing is said', () => {
    const job = document.outsideJobs.find(({ collectedAt, promisedFor }) => collectedAt === null && promisedFor === null)!;
    const slipped = (target: string) => unwrap(applyWhatIfs({ document, plan, now }, [{ kind: 'trade-slips', target }]));
    const likely = (target: string) => slipped(target).document.outsideJobs.find(({ id }) => id === job.id)!.quote.likely - job.quote.likely;
    expect([job.id, `${job.id}@2`, `${job.id}@10`].map(likely)).toEqual([5, 2, 10]);
    expect(slipped(`${job.id}@10`).words).toEqual([`${job.name} comes back 10 working days later`]);
    expect(listSizes({ kind: 'trade-slips', target: `${job.id}@10` }).map(({ id }) => id)).toEqual([`${job.id}@2`, job.id, `${job.id}@10`]);
    for (const days of ['0', '61', '2.5', 'many']) {
      expect(applyWhatIfs({ document, plan, now }, [{ kind: 'trade-slips', target: `${job.id}@${days}` }])).toMatchObject({ ok: false, error: [{ code: 'what-if-days' }] });
    }
  });

  it('have somebody away from today, or from Monday to Sunday of next week', () => {
    const happen = (target: string) => unwrap(applyWhatIfs({ document, plan, now }, [{ kind: 'helper-away', target }])).document.people.find(({ id }) => id === person.id)!.away.at(-1)!;
    const person = document.people[0]!;
    const today = dateOf(now, document.series.zone);
    expect(happen(person.id)).toMatchObject({ from: today, to: addDays(today, 6) });
    const next = happen(`${person.id}@next-week`);
    expect([weekdayOf(next.from), weekdayOf(next.to), next.from > today]).toEqual([1, 7, true]);
  });

  it('combine in the order they are named', () => {
    const effect = unwrap(findEffect({ document: short, plan: shortPlan, now }, [{ kind: 'week-off', target: '' }, { kind: 'heater-broken', target: '' }]));
    expect(effect.words).toEqual(['No session until Mon 7 Dec', 'No heating for seven days']);
  });
});
