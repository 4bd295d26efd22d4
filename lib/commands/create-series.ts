import { listStops, type Series, type SeriesDocument } from '@/lib/build';
import { fail, ok, type Result } from '@/lib/result';
import { buildRecord } from './build-record';
import type { SeriesContext } from './context';

function emptyDocument(series: Series): SeriesDocument {
  return {
    series, changeNumber: 0, planChange: 0, people: [], places: [], equipment: [], parts: [], materials: [], trades: [], outsideJobs: [],
    tasks: [], links: [], sessions: [], episodes: [], segments: [], timeLogs: [], sponsorships: [], hazards: [], statements: [],
    coatingSystems: [], heatingRuns: [], weather: [], readings: [], cameras: [], promises: [],
  };
}

/**
 * Makes an empty series, the last of all. `id` only for series that must be found again, such as the demo.
 * Fails with the issues of the form and of the rules, or with `series-exists`.
 */
export async function createSeries(context: SeriesContext, input: unknown, id = context.newId()): Promise<Result<{ readonly id: string }>> {
  const built = buildRecord('series', id, input, { zone: 'UTC', newId: context.newId });
  if (!built.ok) return built;
  const series = { ...built.value, order: (await context.storage.listSeries()).length };
  const stops = listStops(emptyDocument(series));
  if (stops.length > 0) return fail(stops);
  const made = await context.storage.createSeries(series, context.now());
  return made.ok ? ok({ id }) : made;
}
