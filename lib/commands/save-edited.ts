/** The way every command goes: load the series, let the domain decide, save one change. */
import { judgeEdit, type Edited, type SavedChange, type SeriesDocument } from '@/lib/build';
import { checkSponsorRelease } from '@/lib/episodes';
import { datedWork } from '@/lib/plan';
import { checkHazard, checkRelease, isGuarded } from '@/lib/safety';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';

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

/** Episodes that become cleared or released pass the gate, whichever way they come: form, undo or several at once. */
async function checkGate({ storage }: SeriesContext, before: SeriesDocument, after: SeriesDocument): Promise<Result<unknown>> {
  const isAsked = after.episodes.some(({ id, status }) => isGuarded(status) && before.episodes.find((episode) => episode.id === id)?.status !== status);
  if (!isAsked) return ok(null);
  const plan = await storage.acceptedPlan(before.series.id);
  return checkRelease(before, after, datedWork(plan?.result ?? null));
}

/** Saves what an edit decided, all of it or nothing. */
export async function saveEdited(context: SeriesContext, before: SeriesDocument, edited: Result<Edited>): Promise<Result<Saved>> {
  if (!edited.ok) return edited;
  const { document, change } = edited.value;
  const hazards = change.edits.flatMap(({ after }) => (after?.kind === 'hazard' ? checkHazard(after) : []));
  if (hazards.length > 0) return fail(hazards);
  const owed = checkSponsorRelease(before, document);
  const gate = await checkGate(context, before, document);
  if (!gate.ok || !owed.ok) return fail([...(owed.ok ? [] : owed.error), ...(gate.ok ? [] : gate.error)]);
  const saved = await context.storage.applyChange(before.series.id, change, context.now());
  return saved.ok ? ok({ change: saved.value, warnings: judgeEdit(before, document, change.edits).warnings }) : saved;
}

/** Loads a series, edits it and saves the change. */
export async function editSeries(
  context: SeriesContext, seriesId: string, edit: (document: SeriesDocument) => Result<Edited>,
): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  return loaded.ok ? saveEdited(context, loaded.value, edit(loaded.value)) : loaded;
}
