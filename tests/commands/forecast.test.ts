import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acceptPlan, acceptWhatIf, keepVariant, removeVariant, requestForecast, requestRepair, undoChange, type CommandContext } from '@/lib/commands';
import { promiseDate } from '@/lib/forecast';
import { unwrap } from '@/lib/result';
import { instantOf } from '@/lib/calendar';
import { viewPlans, viewProgress, viewRepair, viewWhatIf } from '@/lib/views';
import { loadDemo } from '@/seed/load-demo';
import { makeFolder } from '../storage/database';
import { planOf } from '../plan/plan-of';

const now = instantOf('2026-11-30', '09:00', 'Europe/London');
let folder: Awaited<ReturnType<typeof makeFolder>>;
let context: CommandContext;
let seriesId = '';

const load = async () => (await context.storage.loadSeries(seriesId))!;
const viewContext = () => ({ storage: context.storage, now, zone: 'Europe/London' });

describe('forecasts and what-ifs of the demo', () => {
  beforeAll(async () => {
    folder = await makeFolder();
    const { storage } = await folder.copyBase();
    let ids = 0;
    context = { storage, now: () => now, newId: () => `new-${(ids += 1)}` };
    seriesId = unwrap(await loadDemo(context))!.seriesId;
  });
  afterAll(() => folder.remove());

  it('give no odds without an accepted plan', async () => {
    const refused = await requestForecast(context, seriesId, { runs: 100, seed: 1 });
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['no-accepted-plan']);
    const { plan } = planOf(await load(), now, { schedules: 2 });
    const saved = unwrap(await context.storage.savePlan(seriesId, { result: plan, basedOnChange: (await load()).changeNumber, madeAt: now }));
    unwrap(await context.storage.setPlanStatus(seriesId, saved.number, 'accepted', now));
  });

  it('keep the odds of the accepted plan with its number, and show them', async () => {
    const shares: number[] = [];
    const { forecast } = unwrap(await requestForecast(context, seriesId, { runs: 200, seed: 1, onProgress: (share) => shares.push(share) }));
    expect(shares.at(-1)).toBe(1);
    if (forecast.kind !== 'forecast') throw new Error('A forecast was asked for');
    const { finish, episodes, runs } = forecast.result;
    expect(runs).toBe(200);
    expect(promiseDate(finish, 0.1)! <= promiseDate(finish, 0.8)!).toBe(true);
    expect(episodes.every(({ chance }) => chance >= 0 && chance <= 1)).toBe(true);
    const view = await viewProgress(viewContext(), await load());
    expect(view.answers.map(({ question }) => question)).toEqual(['On track?', 'How sure?', 'What threatens it most?', 'What next?']);
    expect(view.forecast?.number).toBe(forecast.number);
    expect(view.timelines?.build.some(({ kind }) => kind === 'sure')).toBe(true);
  }, 60_000);

  it('stop when asked to, and keep nothing then', async () => {
    const before = (await context.storage.listForecasts(seriesId, 'forecast', 10)).length;
    const stopped = new AbortController();
    const asked = requestForecast(context, seriesId, { runs: 50_000, seed: 1, signal: stopped.signal, onProgress: () => stopped.abort() });
    expect(await asked).toMatchObject({ ok: false, error: [{ code: 'cancelled' }] });
    expect(await context.storage.listForecasts(seriesId, 'forecast', 10)).toHaveLength(before);
  }, 60_000);

  it('refuse a chance beyond 0 and 1 in clear words', async () => {
    const { DEFAULT_ASSUMPTIONS } = await import('@/lib/forecast');
    const refused = await requestForecast(context, seriesId, { runs: 10, seed: 1, assumptions: { ...DEFAULT_ASSUMPTIONS, spoilChance: 1.4 } });
    expect(refused).toMatchObject({ ok: false, error: [{ code: 'chance-out-of-range', message: 'A chance is between 0 and 1, and spoilChance is 1.4.' }] });
  });

  it('show a what-if without touching the series, keep it under a name and drop it again', async () => {
    const document = await load();
    const view = await viewWhatIf(viewContext(), document, { whatIfs: ['week-off'], remedy: null });
    expect(view.effect?.summary).toMatch(/later/);
    // Releases and bank, before and after.
    expect(view.effect?.after).not.toBe(view.effect?.before);
    for (const told of [view.effect?.bank.before, view.effect?.bank.after]) expect(told).toMatch(/in hand/);
    expect((await load()).changeNumber).toBe(document.changeNumber);
    // A change chosen is told the same way: in words, and on the strip of the first week in which something moves.
    const { effect } = await viewWhatIf(viewContext(), document, { whatIfs: ['week-off'], remedy: view.effect!.remedies[0]!.kind });
    expect(effect?.words.at(-1)).toBe(view.effect!.remedies[0]!.text);
    expect(effect?.strip?.rows.flatMap(({ pieces }) => pieces).length).toBeGreaterThan(0);
    expect(effect?.changes.length).toBeGreaterThan(0);
    const { variant } = unwrap(await keepVariant(context, seriesId, 'Week off', { whatIfs: [{ kind: 'week-off', target: '' }], remedy: null }));
    expect((await viewWhatIf(viewContext(), document, { whatIfs: [], remedy: null })).variants.map(({ name }) => name)).toEqual(['Week off']);
    unwrap(await removeVariant(context, seriesId, variant.number));
    expect(await removeVariant(context, seriesId, variant.number)).toMatchObject({ ok: false, error: [{ code: 'no-such-variant' }] });
  });

  it('combine two what-ifs and keep both answers to set them side by side', async () => {
    const document = await load();
    const both = [{ kind: 'week-off', target: '' }, { kind: 'heater-broken', target: '' }];
    const one = unwrap(await keepVariant(context, seriesId, 'Week off', { whatIfs: both.slice(0, 1), remedy: null }));
    const two = unwrap(await keepVariant(context, seriesId, 'Week off in the cold', { whatIfs: both, remedy: null }));
    const { variants } = await viewWhatIf(viewContext(), document, { whatIfs: [], remedy: null });
    expect(variants.map(({ name }) => name).toSorted()).toEqual(['Week off', 'Week off in the cold']);
    expect(variants.find(({ name }) => name === 'Week off in the cold')?.words).toEqual(['No session until Mon 7 Dec', 'No heating for seven days']);
    const [first, second] = variants.map(({ episodes }) => episodes.map(({ id }) => id));
    expect(first).toEqual(second);
    expect(first).not.toEqual([]);
    for (const { bank } of variants) expect(bank).toMatch(/in hand/);
    for (const { variant } of [one, two]) unwrap(await removeVariant(context, seriesId, variant.number));
  });

  it('offer to mend the plan when a job comes late, and tell later who accepted the mend and why', async () => {
    expect(await viewRepair(viewContext(), await load())).toBeNull();
    unwrap(await acceptWhatIf(context, seriesId, { whatIfs: [{ kind: 'trade-slips', target: '' }], remedy: null }));
    const offer = await viewRepair(viewContext(), await load());
    expect(offer).toMatchObject({ canMend: true });
    expect(offer?.text).toMatch(/^(Mending it changes \d+ blocks?: |Nothing has to move\. ).*recording|recorded/);
    const { plan } = unwrap(await requestRepair(context, seriesId));
    // The accepted plan stays until a person accepts the draft, and a draft that waits is offer enough.
    expect((await context.storage.acceptedPlan(seriesId))!.number).toBeLessThan(plan.number);
    expect(await viewRepair(viewContext(), await load())).toBeNull();
    const draft = (await viewPlans(viewContext(), await load())).draft!;
    expect(draft.changes.length).toBeLessThan(10);
    expect(await acceptPlan(context, seriesId, plan.number, { by: 'Marta', why: 'x'.repeat(301) })).toMatchObject({ ok: false, error: [{ code: 'accepted-words' }] });
    unwrap(await acceptPlan(context, seriesId, plan.number, { by: 'Marta', why: ' The plater is late ' }));
    const [newest, older] = (await viewPlans(viewContext(), await load())).history;
    expect(newest).toMatchObject({ number: plan.number, status: 'accepted', acceptedWords: 'by Marta: The plater is late' });
    expect(older).toMatchObject({ status: 'superseded', acceptedWords: null });
  });

  it('make it so as one change that can be undone', async () => {
    const before = await load();
    const { change } = unwrap(await acceptWhatIf(context, seriesId, { whatIfs: [{ kind: 'week-off', target: '' }], remedy: 'add-session' }));
    const after = await load();
    expect(change.label).toMatch(/^No session until Mon 7 Dec; Add a session/);
    expect(after.sessions.some(({ start }) => start < instantOf('2026-12-07', '00:00', 'Europe/London') && start > now)).toBe(false);
    unwrap(await undoChange(context, seriesId, change.number));
    expect((await load()).sessions.map(({ id }) => id).toSorted()).toEqual(before.sessions.map(({ id }) => id).toSorted());
  });

  it('say why a what-if cannot happen', async () => {
    const done = (await load()).tasks.find(({ doneAt }) => doneAt !== null)!;
    expect(await acceptWhatIf(context, seriesId, { whatIfs: [{ kind: 'ran-double', target: done.id }], remedy: null }))
      .toMatchObject({ ok: false, error: [{ code: 'what-if-finished' }] });
    const told = await viewWhatIf(viewContext(), await load(), { whatIfs: [`ran-double:${done.id}`], remedy: null });
    expect(told.issues).toMatchObject([{ code: 'what-if-finished', message: `${done.name} is done, so this cannot happen to it any more.` }]);
    for (const whatIfs of [[], [{ kind: 'flood', target: '' }]]) {
      expect(await acceptWhatIf(context, seriesId, { whatIfs, remedy: null })).toMatchObject({ ok: false, error: [{ code: whatIfs.length === 0 ? 'what-if-missing' : 'what-if-unknown' }] });
    }
    expect(await acceptWhatIf(context, seriesId, { whatIfs: [{ kind: 'week-off', target: '' }], remedy: 'magic' })).toMatchObject({ ok: false, error: [{ code: 'remedy-unknown' }] });
    expect(await keepVariant(context, seriesId, ' ', { whatIfs: [{ kind: 'week-off', target: '' }], remedy: null })).toMatchObject({ ok: false, error: [{ code: 'variant-name' }] });
  });
});
