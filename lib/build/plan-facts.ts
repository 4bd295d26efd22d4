/** Which changes of a series touch what its plan is made from. */
import type { RecordEdit } from './edit';
import { changedFields } from './fields';
import type { Series, SeriesRecord } from './model';

/** Said or shown, but nothing is placed in time by it. */
const BESIDE_PLAN: ReadonlySet<SeriesRecord['kind']> = new Set(['segment', 'sponsorship', 'camera', 'promise']);

function isPlanFact(series: Pick<Series, 'usesExperience'>, { kind, before, after }: RecordEdit): boolean {
  if (BESIDE_PLAN.has(kind)) return false;
  if (before?.kind === 'series' && after?.kind === 'series' && changedFields(before, after).every((field) => field === 'sourceReadings')) return false;
  // Logged times count once the plan goes by them.
  if (kind === 'timeLog') return series.usesExperience;
  const record = after ?? before;
  // A hazard of a task brings limits and people with it; a signature does not.
  if (record?.kind === 'statement') return record.about.sort === 'hazard-added' || record.about.sort === 'hazard-removed';
  return true;
}

/**
 * True when a plan made before these edits may not hold after them. Rather once too often: a new name of a task counts,
 * for the plan repeats it.
 * @param series as it was before the edits
 */
export function concernsPlan(series: Pick<Series, 'usesExperience'>, edits: readonly RecordEdit[]): boolean {
  return edits.some((edit) => isPlanFact(series, edit));
}
