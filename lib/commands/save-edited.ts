/** The way every command goes: load the series, let the domain decide, save one change. */
import { judgeEdit, type Edited, type SavedChange, type SeriesDocument } from '@/lib/build';
import { checkSponsorRelease } from '@/lib/episodes';
import { checkHazard, checkRelease, checkTaskExposure, isGuarded } from '@/lib/safety';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { warnPast } from './past-dates';
import { loadScene } from './safety-scene';

/** What a command that changed a series answers. */
export interface Saved {
  readonly change: SavedChange;
  /** What the change made questionable without being refused for it. */
  readonly warnings: readonly Issue[];
}

/** The series, or `no-such-series`. */
export async function loadDocument({ storage }: SeriesContext, seriesId: string): Promise<Result<SeriesDocument>> {
  const document = await storage.loadSeries(seriesId);
  if (document !== null) return ok(document);
  return fail([issue('no-such-series', 'This series does not exist any more.', 'Choose another series.', { subjects: [{ kind: 'series', id: seriesId, name: '' }] })]);
}

/** Episodes that become cleared or released pass both gates, whichever way they come: form, undo or several at once. */
async function checkGates(context: SeriesContext, before: SeriesDocument, after: SeriesDocument): Promise<readonly Issue[]> {
  const isAsked = after.episodes.some(({ id, status }) => isGuarded(status) && before.episodes.find((episode) => episode.id === id)?.status !== status);
  if (!isAsked) return [];
  const sponsors = checkSponsorRelease(before, after);
  const owed = sponsors.ok ? [] : sponsors.error;
  const safety = checkRelease(before, after, await loadScene(context, before.series.id), owed);
  return [...owed, ...(safety.ok ? [] : safety.error)];
}

/** Hazards that are not complete, and exposures that an edit leaves without a duration. */
function checkSafety(before: SeriesDocument, document: SeriesDocument, { edits }: Edited['change']): readonly Issue[] {
  return edits.flatMap(({ before: was, after }) => {
    if (after?.kind === 'hazard') return checkHazard(after);
    if (after?.kind !== 'task' || (was?.kind === 'task' && checkTaskExposure(before, was).length > 0)) return [];
    return checkTaskExposure(document, after);
  });
}

/** Saves what an edit decided, all of it or nothing. */
export async function saveEdited(context: SeriesContext, before: SeriesDocument, edited: Result<Edited>): Promise<Result<Saved>> {
  if (!edited.ok) return edited;
  const { document, change } = edited.value;
  const unsound = checkSafety(before, document, change);
  if (unsound.length > 0) return fail(unsound);
  const refused = await checkGates(context, before, document);
  if (refused.length > 0) return fail(refused);
  const now = context.now();
  const saved = await context.storage.applyChange(before.series.id, change, now);
  return saved.ok ? ok({ change: saved.value, warnings: [...warnPast(document, change, now), ...judgeEdit(before, document, change.edits).warnings] }) : saved;
}

/** Loads a series, edits it and saves the change. */
export async function editSeries(
  context: SeriesContext, seriesId: string, edit: (document: SeriesDocument) => Result<Edited>,
): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  return loaded.ok ? saveEdited(context, loaded.value, edit(loaded.value)) : loaded;
}
