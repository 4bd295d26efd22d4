/** Every outside trade of the series: when it is open, how it has kept its quotes, and when to drop off for a wanted day. */
import { DEFAULT_TERMS, type SeriesDocument, type Trade } from '@/lib/build';
import { addDays, dateOf, endOfDay, formatDay, formatLength, isCivilDate, type CivilDate, type Weekday } from '@/lib/calendar';
import { closeOnHolidays, listHolidayCountries, listHolidays } from '@/lib/exchange';
import { daysWithin, latestDropOff, probabilityBack, type LearnedRatio, type Quote } from '@/lib/outwork';
import { learnedTrades, listPastJobs, openDays, tradeDays } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import type { ViewContext } from './context';
import { formatCount } from './week-words';

const DAY_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
/** Days looked ahead for a return, and for closed days. */
const HORIZON_DAYS = 400;
const USUAL_QUOTE = 5;
const USUAL_LEAD = 21;

export interface TradeQuestion {
  /** Working days that the trade quotes. */
  readonly days: number;
  /** The day on which the part must be back. */
  readonly by: CivilDate;
  /** Percent. */
  readonly confidence: number;
}

export interface TradeEntry {
  readonly id: string;
  readonly name: string;
  readonly craft: string;
  readonly contact: string;
  /** `Open`, `Batches start on` and so on, each with its words. */
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly holidays: readonly { readonly day: string; readonly name: string }[];
  /** `Public holidays of United Kingdom, ENG`, or that no country is chosen. */
  readonly holidaysOf: string;
  readonly learned: readonly string[];
  readonly past: readonly { readonly id: string; readonly name: string; readonly quoted: number; readonly actual: number; readonly ratio: string }[];
  readonly answers: readonly string[];
}

export interface TradeLibraryView {
  readonly seriesId: string;
  readonly question: TradeQuestion;
  readonly trades: readonly TradeEntry[];
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const times = (value: number): string => `${value.toFixed(2)} ×`;
const joinDays = (days: readonly Weekday[], none: string): string => (days.length === 0 ? none : days.map((day) => DAY_NAMES[day - 1]).join(', '));

function sayOpen({ openHours }: Trade): string {
  const rows = openHours.toSorted((a, b) => a.weekday - b.weekday).map(({ weekday, from, to }) => `${DAY_NAMES[weekday - 1]} ${from} to ${to}`);
  return rows.length === 0 ? 'never: no opening hours are recorded' : rows.join(', ');
}

function listFacts(trade: Trade, today: CivilDate): TradeEntry['facts'] {
  const { batchDays, collectionDays, minimum, preparations, returnWindow } = trade.terms ?? DEFAULT_TERMS;
  const closed = trade.closed.filter(({ to }) => to >= today).toSorted((a, b) => (a.from < b.from ? -1 : 1));
  return [
    { label: 'Open', value: sayOpen(trade) },
    { label: 'Closed by its own word', value: closed.length === 0 ? 'no day recorded' : closed.map(({ from, to, why }) => `${from === to ? formatDay(from) : `${formatDay(from)} to ${formatDay(to)}`}${why === '' ? '' : ` (${why})`}`).join(', ') },
    { label: 'Batches start on', value: joinDays(batchDays, 'any open day') },
    { label: 'Collection on', value: joinDays(collectionDays, 'any open day') },
    { label: 'Takes at least', value: minimum.amount === null ? 'no minimum' : `${minimum.amount} ${minimum.unit}` },
    { label: 'Trip there and back', value: formatLength(trade.trip) },
    { label: 'Before drop-off', value: preparations.length === 0 ? 'nothing recorded' : preparations.join(', ') },
    { label: 'After the return', value: returnWindow.hours === null ? 'no window' : `go on within ${returnWindow.hours} h; later: ${returnWindow.afterwards || 'not said'}` },
  ];
}

/** Own jobs alone, and what is expected once they are pulled towards those of its craft and of all. */
function sayLearned(ratio: LearnedRatio | null, own: readonly { readonly quoted: number; readonly actual: number }[]): readonly string[] {
  if (ratio === null || ratio.counts.all === 0) return ['No past job of any trade yet: the quote is all there is.'];
  const { counts, factor } = ratio;
  const logs = own.filter(({ quoted, actual }) => quoted > 0 && actual > 0).map(({ quoted, actual }) => Math.log(actual / quoted));
  const alone = logs.length === 0 ? 'It has no past job of its own.' : `Its own ${formatCount(logs.length, 'job')} alone: ${times(Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length))} the quote.`;
  return [
    `Expected: ${times(factor)} the quote, from n = ${counts.trade} of its own, ${counts.craft} of its craft and ${counts.all} in all.`,
    `${alone} Few jobs are pulled towards the mean of the craft and of all: one bad month is no habit.`,
  ];
}

function answer(document: SeriesDocument, trade: Trade, ratio: LearnedRatio | null, question: TradeQuestion, now: Instant): readonly string[] {
  const { zone } = document.series;
  const open = openDays(trade, now, HORIZON_DAYS, zone);
  const days = tradeDays(trade, open, zone, trade.trip / 2);
  const quote: Quote = { low: question.days, likely: question.days, high: question.days };
  const by = endOfDay(question.by, zone);
  const share = question.confidence / 100;
  const next = open.find(({ shuts }) => shuts > now);
  const drop = latestDropOff(days, quote, ratio, share, { from: now, by });
  return [
    `${question.days} quoted working days are ${daysWithin(quote, ratio, 0.5)} as likely as not, and ${daysWithin(quote, ratio, share)} with ${question.confidence} %.`,
    next === undefined ? 'It is not open in the time ahead.' : `Dropped off on ${formatDay(next.date)}, the next open day: back by ${formatDay(question.by)} with ${percent(probabilityBack(days, quote, ratio, next.opens > now ? next.opens : now, by))}.`,
    drop.ok ? `Drop off by ${formatDay(drop.value.day.date)} for ${question.confidence} % (${percent(drop.value.probability)}).` : drop.error.map(({ message, fix }) => `${message} ${fix}`).join(' '),
  ];
}

async function describeHolidays({ terms }: Trade, today: CivilDate): Promise<Pick<TradeEntry, 'holidays' | 'holidaysOf'>> {
  const { country, region } = terms ?? DEFAULT_TERMS;
  if (country === '') return { holidays: [], holidaysOf: 'No country is chosen, so no public holiday is kept.' };
  const year = Number(today.slice(0, 4));
  const spans = await listHolidays(country, region, { from: year, to: year + 1 });
  const name = listHolidayCountries().find(({ code }) => code === country)?.name ?? country;
  return {
    holidaysOf: `Public holidays of ${name}${region === '' ? '' : `, ${region}`}, in the coming year`,
    holidays: spans.filter(({ to, from }) => to >= today && from <= addDays(today, 365)).map(({ from, to, why }) => ({ day: from === to ? `${formatDay(from)} ${from.slice(0, 4)}` : `${formatDay(from)} to ${formatDay(to)} ${to.slice(0, 4)}`, name: why })),
  };
}

function readQuestion(asked: { readonly days: string | null; readonly by: string | null; readonly confidence: string | null }, today: CivilDate): TradeQuestion {
  const [days, confidence] = [Number(asked.days), Number(asked.confidence)];
  return {
    days: Number.isInteger(days) && days >= 1 && days <= 100 ? days : USUAL_QUOTE,
    by: asked.by !== null && isCivilDate(asked.by) && asked.by > today && asked.by <= addDays(today, HORIZON_DAYS - 60) ? asked.by : addDays(today, USUAL_LEAD),
    confidence: Number.isInteger(confidence) && confidence >= 50 && confidence <= 99 ? confidence : 80,
  };
}

/** The trades in their order, and the answers for one made-up job; what is asked for and cannot be is passed over. */
export async function viewTradeLibrary(
  { now }: Pick<ViewContext, 'now'>, document: SeriesDocument, asked: { readonly days: string | null; readonly by: string | null; readonly confidence: string | null },
): Promise<TradeLibraryView> {
  const today = dateOf(now, document.series.zone);
  const question = readQuestion(asked, today);
  const kept = await closeOnHolidays(document, now);
  const [past, learned] = [listPastJobs(kept), learnedTrades(kept)];
  const trades = await Promise.all(document.trades.map(async (trade, index): Promise<TradeEntry> => {
    const own = past.filter(({ tradeId }) => tradeId === trade.id);
    const ratio = learned(trade);
    return {
      id: trade.id, name: trade.name, craft: trade.craft, contact: trade.contact, facts: listFacts(trade, today), ...(await describeHolidays(trade, today)),
      learned: sayLearned(ratio, own),
      past: own.map(({ jobId, quoted, actual }) => ({ id: jobId, name: document.outsideJobs.find(({ id }) => id === jobId)?.name ?? '', quoted, actual, ratio: quoted > 0 ? times(actual / quoted) : 'no quote' })),
      answers: answer(kept, kept.trades[index] ?? trade, ratio, question, now),
    };
  }));
  return { seriesId: document.series.id, question, trades };
}
