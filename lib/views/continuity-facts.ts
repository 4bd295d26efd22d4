/** What the pages of the log are computed from. */
import type { SeriesDocument } from '@/lib/build';
import { closeOnHolidays } from '@/lib/exchange';
import { addDays, dateOf } from '@/lib/calendar';
import { gatherFacts, type Facts, type KnownElsewhere } from '@/lib/continuity';
import { learnedTrades, type SavedPlan } from '@/lib/plan';
import type { ViewContext } from './context';
import { listBanked } from './episodes-facts';
import { breatheAir, loadReadings } from './workshop-air';

/** The facts of a series at this moment, with the plan that counts. */
export async function loadFacts({ storage, now }: ViewContext, document: SeriesDocument): Promise<Facts> {
  const [entries, plan] = await Promise.all([storage.listLogEntries(document.series.id, {}), storage.acceptedPlan(document.series.id)]);
  return gatherFacts({ document: await closeOnHolidays(document, now), entries, blocks: plan?.result.blocks ?? [], now });
}

/** Days after the last planned coat that its drying is followed. */
const DRYING_DAYS = 14;

/** The air over the coats that the plan still lays; null when it lays none, or no weather is recorded. */
async function airOfCoats({ storage }: ViewContext, document: SeriesDocument, plan: SavedPlan | null): Promise<KnownElsewhere['coatOf']> {
  const laying = new Set(document.tasks.filter(({ doneAt, coats }) => doneAt === null && coats.length > 0).map(({ id }) => id));
  const starts = (plan?.result.blocks ?? []).filter(({ kind, subject }) => kind === 'task' && laying.has(subject.id)).map(({ start }) => start);
  const [first, last] = [starts.toSorted((a, b) => a - b)[0], starts.toSorted((a, b) => b - a)[0]];
  if (first === undefined || last === undefined || document.weather.length === 0) return null;
  const { zone } = document.series;
  const air = breatheAir(document, { from: dateOf(first, zone), to: addDays(dateOf(last, zone), DRYING_DAYS) }, await loadReadings(storage, document));
  return air.hourly === null ? null : air.coatOf;
}

/** The same with what the climate, finished outside jobs and the board of episodes say: all that the checks look at. */
export async function loadCheckedFacts(context: ViewContext, document: SeriesDocument): Promise<Facts> {
  const { storage, now } = context;
  const [entries, plan] = await Promise.all([storage.listLogEntries(document.series.id, {}), storage.acceptedPlan(document.series.id)]);
  const known: KnownElsewhere = {
    coatOf: await airOfCoats(context, document, plan), ratioOf: learnedTrades(document),
    feasibleOn: new Map(listBanked({ document, plan, now }).map(({ id, finishedOn }) => [id, finishedOn])),
  };
  return gatherFacts({ document, entries, blocks: plan?.result.blocks ?? [], now, known });
}
