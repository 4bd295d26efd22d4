/**
 * Public holidays by country and region, from date-holidays (code ISC, data CC BY-SA 3.0). Loaded on first use: its tables are large.
 * Names are English. Days that are holidays only from noon, banks' days and school holidays are not counted.
 */
import type { DateSpan, SeriesDocument, Trade } from '@/lib/build';
import { addDays, dateOf, isCivilDate, type CivilDate } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { listHolidayCountries } from './holiday-countries';

const HOUR_MS = 3_600_000;
/** A day in which the clock goes forward has 23 hours. */
const SHORTEST_DAY = 23 * HOUR_MS;
/** Regions named in a message. */
const MOST_NAMED = 60;

type Library = (typeof import('date-holidays'))['default'];

async function loadLibrary(): Promise<Library> {
  return (await import('date-holidays')).default;
}

/** `BY-A` is region A of state BY. */
function placeOf(country: string, region: string): { readonly country: string; readonly state?: string; readonly region?: string } {
  const [state, part] = region.split('-');
  return { country, ...(state ? { state } : {}), ...(part ? { region: part } : {}) };
}

const known = new Map<string, readonly DateSpan[]>();

function readYear(Holidays: Library, country: string, region: string, year: number): readonly DateSpan[] {
  const days = new Holidays(placeOf(country, region), { types: ['public'], languages: 'en' }).getHolidays(year, 'en');
  return days.flatMap(({ date, start, end, name }) => {
    const from = date.slice(0, 10);
    const length = end.getTime() - start.getTime();
    if (!isCivilDate(from) || length < SHORTEST_DAY || /^\d{4}-\d\d-\d\d (?!00:)/.test(date)) return [];
    return [{ from, to: addDays(from, Math.max(0, Math.round(length / HOUR_MS / 24) - 1)), why: name }];
  });
}

/**
 * Public holidays of whole days from the first to the last year, both in it, in order. A country or region that the library does not
 * know has none, or only those of its country.
 */
export async function listHolidays(country: string, region: string, years: { readonly from: number; readonly to: number }): Promise<readonly DateSpan[]> {
  if (country === '') return [];
  const Holidays = await loadLibrary();
  const spans: DateSpan[] = [];
  for (let year = years.from; year <= years.to; year += 1) {
    const key = `${country} ${region} ${year}`;
    const found = known.get(key) ?? readYear(Holidays, country, region, year);
    known.set(key, found);
    spans.push(...found);
  }
  return spans.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
}

interface Region {
  readonly code: string;
  readonly name: string;
}

/** States of a country and, below them, their own regions: `BY`, `BY-A`. */
async function listHolidayRegions(country: string): Promise<readonly Region[]> {
  const library = new (await loadLibrary())();
  const states = Object.entries(library.getStates(country, 'en') ?? {});
  return states.flatMap(([code, name]): readonly Region[] => [
    { code, name },
    ...Object.entries(library.getRegions(country, code, 'en') ?? {}).map(([part, partName]) => ({ code: `${code}-${part}`, name: `${name}, ${partName}` })),
  ]);
}

const same = (a: string, b: string): boolean => a.localeCompare(b, 'en', { sensitivity: 'base' }) === 0;

/**
 * Country and region as their codes; a region may be typed as code or name, and left out. Fails with `holiday-country` or
 * `holiday-region`, which names the regions there are. @example checkHolidayPlace('gb', 'England') // GB, ENG
 */
export async function checkHolidayPlace(country: string, region: string): Promise<Result<{ readonly country: string; readonly region: string }>> {
  if (country === '') {
    if (region === '') return ok({ country, region });
    return fail([issue('holiday-country', `The region “${region}” has no country.`, 'Choose the country, or empty the region.', { path: ['terms', 'country'] })]);
  }
  const found = listHolidayCountries().find(({ code, name }) => same(code, country) || same(name, country));
  if (found === undefined) return fail([issue('holiday-country', `No holidays are known of the country “${country}”.`, 'Choose a country of the list, or none.', { path: ['terms', 'country'] })]);
  if (region === '') return ok({ country: found.code, region });
  const regions = await listHolidayRegions(found.code);
  const place = regions.find(({ code, name }) => same(code, region) || same(name, region));
  if (place !== undefined) return ok({ country: found.code, region: place.code });
  const named = regions.slice(0, MOST_NAMED).map(({ code, name }) => `${code} (${name})`).join(', ');
  const fix = regions.length === 0 ? 'Leave it empty: the country has one list for all of it.' : `Type one of: ${named}${regions.length > MOST_NAMED ? ' and more' : ''}. Or leave it empty.`;
  return fail([issue('holiday-region', `${found.name} has no region “${region}”.`, fix, { path: ['terms', 'region'] })]);
}

const yearOf = (date: CivilDate): number => Number(date.slice(0, 4));

/** The years that the jobs and sessions of a series touch, and one more for returns. */
function yearsOf({ outsideJobs, sessions, series }: SeriesDocument, now: Instant): { readonly from: number; readonly to: number } {
  const first = outsideJobs.reduce<number>((least, { droppedOffAt }) => (droppedOffAt !== null && droppedOffAt < least ? droppedOffAt : least), now);
  const last = sessions.reduce<number>((most, { end }) => (end > most ? end : most), now);
  return { from: yearOf(dateOf(first as Instant, series.zone)), to: yearOf(dateOf(last as Instant, series.zone)) + 1 };
}

async function closeTrade(trade: Trade, years: { readonly from: number; readonly to: number }): Promise<Trade> {
  const { country = '', region = '' } = trade.terms ?? {};
  if (country === '') return trade;
  const holidays = await listHolidays(country, region, years);
  return { ...trade, closed: [...trade.closed, ...holidays] };
}

/**
 * The series as its trades keep it: public holidays of the country and region of each are among its closed days, by name. For plans
 * and pages; never to be saved. The same document when no trade has a country.
 */
export async function closeOnHolidays(document: SeriesDocument, now: Instant): Promise<SeriesDocument> {
  if (!document.trades.some(({ terms }) => (terms?.country ?? '') !== '')) return document;
  const years = yearsOf(document, now);
  return { ...document, trades: await Promise.all(document.trades.map((trade) => closeTrade(trade, years))) };
}
