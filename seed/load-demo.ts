/** Loads the demo through the commands that people use: the forms' checks, the rules and the history included. */
import { addDays, dateOf, weekdayOf } from '@/lib/calendar';
import type { CivilDate, SeriesDocument, SeriesRecord } from '@/lib/build';
import { applyMany, createSeries, removeSeries, type Creation, type SeriesContext } from '@/lib/commands';
import { fail, ok, type Result } from '@/lib/result';
import { demoSeries, DEMO_ZONE } from './demo';

interface Loaded {
  readonly seriesId: string;
  readonly name: string;
  readonly monday: CivilDate;
  /** Records in the series, itself not counted. */
  readonly records: number;
  readonly document: SeriesDocument;
}

/** What a form would send: everything but the fields that the program keeps itself. */
function inputOf(record: SeriesRecord): Readonly<Record<string, unknown>> {
  const { id: _id, kind: _kind, revision: _revision, order: _order, ...input } = record;
  return input;
}

function creationsOf(document: SeriesDocument): readonly Creation[] {
  const { people, places, equipment, materials, trades, episodes, parts, sessions, outsideJobs, tasks, links, segments, sponsorships, timeLogs, coatingSystems, heatingRuns, weather, cameras, promises } = document;
  const records: readonly SeriesRecord[] = [people, places, equipment, materials, trades, episodes, parts, sessions, outsideJobs, tasks, links, segments, sponsorships, timeLogs, coatingSystems, heatingRuns, weather, cameras, promises].flat();
  return records.map((record) => ({ kind: record.kind, id: record.id, input: inputOf(record) }));
}

/**
 * Puts the demo into an empty database, in the week of the context's clock. Null: there is a series already, and nothing is done.
 * Issues: those of the commands; then no series is left behind.
 */
export async function loadDemo(context: SeriesContext): Promise<Result<Loaded | null>> {
  if ((await context.storage.listSeries()).length > 0) return ok(null);
  const today = dateOf(context.now(), DEMO_ZONE);
  const monday = addDays(today, 1 - weekdayOf(today));
  const document = demoSeries(monday);
  const created = await createSeries(context, inputOf(document.series), document.series.id);
  if (!created.ok) return created;
  const creations = creationsOf(document);
  const filled = await applyMany(context, created.value.id, 'Loaded the demo', creations);
  if (!filled.ok) {
    await removeSeries(context, created.value.id, document.series.name);
    return fail(filled.error);
  }
  return ok({ seriesId: created.value.id, name: document.series.name, monday, records: creations.length, document });
}
