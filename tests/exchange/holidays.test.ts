import Holidays from 'date-holidays';
import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type SeriesDocument } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { changeRecord } from '@/lib/commands';
import { checkHolidayPlace, closeOnHolidays, listHolidayCountries, listHolidays } from '@/lib/exchange';
import { compilePlan, learnedTrades } from '@/lib/plan';
import { lagWords } from '@/lib/plan/explain/lag-words';
import { unwrap } from '@/lib/result';
import { addMinutes, type Instant } from '@/lib/units';
import { at, sampleSeries } from '../build/sample-series';
import { memoryContext } from '../commands/memory-store';

const codes = async (country: string, region: string) => {
  const place = await checkHolidayPlace(country, region);
  return place.ok ? [place.value.country, place.value.region] : place.error.map(({ code }) => code);
};

test('the countries that the form offers are those of the library', () => {
  expect(listHolidayCountries().map(({ code }) => code).toSorted()).toEqual(Object.keys(new Holidays().getCountries('en')).toSorted());
});

test('country and region are known by name and by code, and kept as codes', async () => {
  expect(await codes('gb', 'England')).toEqual(['GB', 'ENG']);
  expect(await codes('United Kingdom', 'nir')).toEqual(['GB', 'NIR']);
  expect(await codes('DE', 'BY-A')).toEqual(['DE', 'BY-A']);
  expect(await codes('', '')).toEqual(['', '']);
});

test('a region that does not exist is told with those that do', async () => {
  const place = await checkHolidayPlace('GB', 'Atlantis');
  expect(place.ok ? [] : place.error.map(({ code, path, fix }) => [code, path.join('.'), fix])).toEqual([
    ['holiday-region', 'terms.region', 'Type one of: ALD (Alderney), ENG (England), NIR (Northern Ireland), SCT (Scotland), WLS (Wales). Or leave it empty.'],
  ]);
  expect(await codes('Atlantis', '')).toEqual(['holiday-country']);
  expect(await codes('', 'England')).toEqual(['holiday-country']);
});

const inAugust = (spans: readonly { readonly from: string }[]) => spans.map(({ from }) => from).filter((date) => date === '2026-08-08');

test('a region of a region has its own day, a holiday over several days is one span, and one from noon is none', async () => {
  expect(inAugust(await listHolidays('DE', 'BY-A', { from: 2026, to: 2026 }))).toEqual(['2026-08-08']);
  expect(inAugust(await listHolidays('DE', 'BY', { from: 2026, to: 2026 }))).toEqual([]);
  expect(await listHolidays('RO', '', { from: 2026, to: 2026 })).toContainEqual({ from: '2026-01-01', to: '2026-01-02', why: 'New Year\'s Day' });
  expect((await listHolidays('IS', '', { from: 2026, to: 2026 })).map(({ from }) => from)).not.toContain('2026-12-24');
});

const NOW = at('2026-12-01', '09:00');

function keptIn(region: string): SeriesDocument {
  const plain = sampleSeries();
  return { ...plain, trades: plain.trades.map((trade) => ({ ...trade, closed: [], terms: { ...DEFAULT_TERMS, country: 'GB', region } })) };
}

test('a series without a country is the same document, one with has its holidays by name among the closed days', async () => {
  const plain = sampleSeries();
  expect(await closeOnHolidays(plain, NOW)).toBe(plain);
  const [trade] = (await closeOnHolidays({ ...plain, trades: plain.trades.map((one) => ({ ...one, terms: { ...DEFAULT_TERMS, country: 'GB', region: 'ENG' } })) }, NOW)).trades;
  expect(trade?.closed).toContainEqual({ from: '2026-12-28', to: '2026-12-28', why: 'Boxing Day (substitute day)' });
  expect(trade?.closed.slice(0, plain.trades[0]!.closed.length)).toEqual(plain.trades[0]!.closed);
});

/** When the part is back that was dropped off at a moment, in the plan. */
function backOf(document: SeriesDocument, out: Instant): Instant {
  const { problem, draft } = unwrap(compilePlan({ document: { ...document, sessions: document.sessions.map((one) => ({ ...one, start: addMinutes(one.start, 40 * 1440), end: addMinutes(one.end, 40 * 1440) })) }, now: NOW, previousBlocks: new Map() }));
  const away = problem.lags.find(({ from }) => from.activity === 'drop-off:job-wheel')?.min;
  if (away?.kind !== 'table') throw new Error('no table');
  return draft.clock.moment(away.ready[Math.ceil(draft.clock.up(out) / away.step)]!);
}

const dayOf = (document: SeriesDocument, out: Instant) => dateOf(backOf(document, out), 'Europe/London');
const factorOf = (document: SeriesDocument) => learnedTrades(document)(document.trades[0]!)!.factor;

test('a plan waits over the holidays: five working days from 22 December end on the 31st, not on the 29th', async () => {
  const out = at('2026-12-22', '10:00');
  const kept = keptIn('ENG');
  expect(dayOf(kept, out)).toBe('2026-12-29');
  expect(dayOf(await closeOnHolidays(kept, NOW), out)).toBe('2026-12-31');
});

test('learning counts no holiday as a working day', async () => {
  const kept = keptIn('ENG');
  const [job] = kept.outsideJobs;
  const past = { ...kept, outsideJobs: [{ ...job!, droppedOffAt: at('2026-12-22', '10:00'), collectedAt: at('2026-12-30', '10:00') }] };
  expect(factorOf(await closeOnHolidays(past, at('2027-01-05', '09:00')))).toBeLessThan(factorOf(past));
});

test('a trade is saved with country and region as codes, and a region that does not exist is refused at its field', async () => {
  const context = memoryContext(sampleSeries());
  const change = (region: string) => changeRecord(context, 'series-sample', 'trade', 'trade-coater', context.document().trades[0]!.revision, { terms: { ...DEFAULT_TERMS, country: 'GB', region } });
  const refused = await change('Atlantis');
  expect(refused.ok ? [] : refused.error.map(({ path }) => path.join('.'))).toEqual(['terms.region']);
  expect(context.writes()).toBe(0);
  unwrap(await change('Scotland'));
  expect(context.document().trades[0]?.terms).toMatchObject({ country: 'GB', region: 'SCT' });
});

test('a reason of the plan names the holidays of a time away', async () => {
  const kept = await closeOnHolidays(keptIn('ENG'), NOW);
  const { draft } = unwrap(compilePlan({ document: kept, now: NOW, previousBlocks: new Map() }));
  const words = lagWords(draft, { kind: 'away', jobId: 'job-wheel', days: 4, learned: null }, '', at('2026-12-30', '08:00'));
  expect(words.text).toContain('closed for Christmas Day, Boxing Day (substitute day)');
});
