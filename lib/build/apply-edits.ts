/** From record edits to the next document. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { judgeEdit } from './check-series';
import type { Edited, RecordEdit } from './edit';
import type { SeriesDocument, SeriesRecord } from './model';
import { findOrphans } from './orphans';
import { concernsPlan } from './plan-facts';
import { dropRecord, putRecord, type ListRecord } from './records';
import { subjectsOf } from './words';

/** A record that comes into the series. */
export function createEdit(after: SeriesRecord): RecordEdit {
  return { kind: after.kind, id: after.id, before: null, after };
}

/** A record that goes. */
export function removeEdit(before: ListRecord): RecordEdit {
  return { kind: before.kind, id: before.id, before, after: null };
}

/** A record that changes; its revision moves on by one. */
export function changeEdit(before: SeriesRecord, after: SeriesRecord): RecordEdit {
  return { kind: before.kind, id: before.id, before, after: { ...after, revision: before.revision + 1 } };
}

/**
 * The document after the edits, in their order. Storage that keeps whole documents uses it too.
 * @throws Error when an edit would take the series itself away.
 */
export function applyEdits(document: SeriesDocument, edits: readonly RecordEdit[]): SeriesDocument {
  return edits.reduce((next, { kind, id, after }) => {
    if (after !== null) return putRecord(next, after);
    if (kind === 'series') throw new Error('The series is no record of itself that could be removed');
    return dropRecord(next, kind, id);
  }, document);
}

/** Episodes are counted from 0 without gaps, since their place is their number. Folds the moves into the edits. */
function withEpisodeNumbers(document: SeriesDocument, edits: readonly RecordEdit[]): readonly RecordEdit[] {
  if (!edits.some(({ kind }) => kind === 'episode')) return edits;
  const moved = applyEdits(document, edits).episodes.flatMap((episode, order) => (episode.order === order ? [] : [{ ...episode, order }]));
  const folded = edits.map((edit): RecordEdit => {
    const own = moved.find((episode) => edit.kind === 'episode' && episode.id === edit.id);
    return own === undefined ? edit : { ...edit, after: own };
  });
  const others = moved.filter((episode) => !edits.some((edit) => edit.kind === 'episode' && edit.id === episode.id));
  return [...folded, ...others.flatMap((after) => {
    const before = document.episodes.find((episode) => episode.id === after.id);
    return before === undefined ? [] : [changeEdit(before, after)];
  })];
}

export interface EditPlan {
  readonly label: string;
  readonly edits: readonly RecordEdit[];
  /** Number of the change taken back, null for an ordinary one. */
  readonly undoes: number | null;
}

/** What somebody has signed is never changed and never removed, by undo neither. */
function refuseLostStatements(edits: readonly RecordEdit[]): readonly Issue[] {
  return edits.filter(({ kind, before }) => kind === 'statement' && before !== null).map(({ before }) => {
    const name = before?.name ?? '';
    return issue('statement-kept', `“${name}” is signed and stays on record.`, 'Sign a new statement: the later one counts.', { subjects: before === null ? [] : subjectsOf(before) });
  });
}

/** Applies the edits and refuses them when they leave a pointer to nothing or break a rule that held before. */
export function makeEdited(document: SeriesDocument, plan: EditPlan): Result<Edited> {
  const edits = withEpisodeNumbers(document, plan.edits);
  const changeNumber = document.changeNumber + 1;
  const planChange = concernsPlan(document.series, edits) ? changeNumber : document.planChange;
  const next: SeriesDocument = { ...applyEdits(document, edits), changeNumber, planChange };
  const kept = refuseLostStatements(edits);
  if (kept.length > 0) return fail(kept);
  const orphans = findOrphans(next, edits);
  if (orphans.length > 0) return fail(orphans);
  // What was there once may come back even if people and sessions no longer reach for it.
  const { stops } = judgeEdit(document, next, plan.undoes === null ? edits : []);
  return stops.length > 0 ? fail(stops) : ok({ document: next, change: { label: plan.label, edits, undoes: plan.undoes } });
}
