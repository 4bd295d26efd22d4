/** `npm run plan -- --week 2026-W49 [--series NAME] [--json]`: the week page in a terminal. */
import { parseArgs } from 'node:util';
import { dateOf, formatIsoWeek, isoWeekOf, nextWeek, parseIsoWeek, type IsoWeek } from '@/lib/calendar';
import { openStorage, type SeriesSummary, type Storage } from '@/lib/storage';
import { instant, type Instant } from '@/lib/units';
import { describeWeek, viewWeek, writeWeek } from '@/lib/views';

const USAGE = 'Use: npm run plan -- [--week 2026-W49] [--series NAME] [--json]';

/** A message for the person, not a stack. */
class Refusal extends Error {}

function chooseSeries(all: readonly SeriesSummary[], wanted: string | undefined): SeriesSummary {
  const names = all.map((series) => series.name).join(', ');
  if (all.length === 0) throw new Refusal('The database holds no series. Run npm start once to load the demo, or create a series there.');
  if (wanted === undefined) {
    if (all.length > 1) throw new Refusal(`There are ${all.length} series: ${names}. Name one with --series.`);
    return all[0]!;
  }
  const found = all.find((series) => series.id === wanted || series.name.toLowerCase() === wanted.toLowerCase());
  if (!found) throw new Refusal(`There is no series "${wanted}". There is: ${names}.`);
  return found;
}

/** The week named, or next week: the one people plan. */
function chooseWeek(text: string | undefined, zone: string, now: Instant): IsoWeek {
  if (text === undefined) return nextWeek(isoWeekOf(dateOf(now, zone)));
  const week = parseIsoWeek(text);
  if (!week.ok) throw new Refusal(week.error.map((issue) => `${issue.message} ${issue.fix}`).join(' '));
  return week.value;
}

async function run(storage: Storage, now: Instant): Promise<void> {
  const { values } = parseArgs({ options: { week: { type: 'string' }, series: { type: 'string' }, json: { type: 'boolean', default: false } } });
  const chosen = chooseSeries(await storage.listSeries(), values.series);
  const document = await storage.loadSeries(chosen.id);
  if (!document) throw new Refusal(`The series "${chosen.name}" is gone.`);
  const week = chooseWeek(values.week, document.series.zone, now);
  const view = await viewWeek({ storage, now, zone: document.series.zone }, document, week);
  process.stdout.write(values.json ? `${JSON.stringify(describeWeek(view), null, 2)}\n` : writeWeek(view));
  if (view.plan === null) console.error(`No plan has been accepted for ${formatIsoWeek(week)}; sessions are shown without work.`);
}

try {
  const storage = await openStorage();
  await run(storage, instant(Date.now()));
  await storage.close();
} catch (error) {
  const isArgument = error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
  if (!(error instanceof Refusal) && !isArgument) throw error;
  console.error(isArgument ? `${(error as Error).message}\n${USAGE}` : (error as Error).message);
  process.exitCode = 1;
}
