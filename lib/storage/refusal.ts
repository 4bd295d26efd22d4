/** What storage says when it must not write. */
import { changedFields, fieldLabel, kindLabel, listRecords, quoteName, referencesOf, startWith, subjectOf } from '@/lib/build';
import type { RecordEdit, SeriesDocument, SeriesRecord } from '@/lib/build';
import { issue } from '@/lib/result';
import type { Issue } from '@/lib/result';
import type { Db } from './connection';
import { listEditsOf } from './history';

const LOAD_AGAIN = 'Load it again and repeat your change.';

/** Thrown inside a transaction to take it back; caught at its edge and returned as issues. */
export class Refusal extends Error {
  constructor(readonly issues: readonly Issue[]) {
    super(issues.map(({ message }) => message).join(' '));
  }
}

/** The stored record is not the one that the edit was made from: says what changed since, in which fields, by which change. */
export async function describeStale(db: Db, seriesId: string, edit: RecordEdit, stored: SeriesRecord | undefined): Promise<Issue> {
  const { before } = edit;
  const shown = stored ?? before ?? edit.after;
  if (!shown) throw new Error(`The edit of ${edit.kind} ${edit.id} has neither a record before nor one after.`);
  const since = (await listEditsOf(db, seriesId, edit.kind, edit.id)).filter(
    ({ edit: { after } }) => after === null || before === null || after.revision > before.revision,
  );
  const latest = since[0]?.change;
  const by = latest ? ` (change ${latest.number} ${quoteName(latest.label)})` : '';
  return issue('stale-record', `${startWith(shown)} ${describeDifference(before, stored, since.map((entry) => entry.edit))}${by}.`, LOAD_AGAIN, {
    subjects: [subjectOf(shown)],
  });
}

function describeDifference(before: SeriesRecord | null, stored: SeriesRecord | undefined, since: readonly RecordEdit[]): string {
  if (!before) return 'has been made meanwhile';
  if (!stored) return 'has been removed since you loaded it';
  const told = since.flatMap((edit) => (edit.before && edit.after ? describeFields(edit.before, edit.after) : []));
  const words = [...new Set(told.length > 0 ? told : describeFields(before, stored))];
  return words.length > 0 ? `has been changed since you loaded it: ${words.join(', ')}` : 'has been saved again since you loaded it';
}

function describeFields(before: SeriesRecord, after: SeriesRecord): readonly string[] {
  const labels = changedFields(before, after).map((field) => fieldLabel(after.kind, field));
  return before.order === after.order ? labels : [...labels, 'place in the list'];
}

/**
 * The database refused a foreign key: the edits were made from a series that has changed since. Names
 * every record that points at nothing, or is removed while something points at it.
 * @param stored the series as it is, without the edits
 */
export function describeBrokenReferences(stored: SeriesDocument, edits: readonly RecordEdit[]): readonly Issue[] {
  const edited = new Map(edits.map((edit) => [keyOf(edit), edit.after]));
  const records = listRecords(stored).filter((record) => !edited.has(keyOf(record)));
  const next = [...records, ...[...edited.values()].filter((record) => record !== null)];
  const present = new Set(next.map(keyOf));
  const removed = new Map(edits.flatMap((edit) => (edit.before && !edit.after ? [[keyOf(edit), edit.before] as const] : [])));
  return next.flatMap((record) =>
    referencesOf(record)
      .filter((reference) => !present.has(keyOf(reference)))
      .map((reference) => {
        const target = removed.get(keyOf(reference));
        if (!target) {
          return issue('reference-missing', `${startWith(record)} names a ${kindLabel(reference.kind)} that is not in the series any more.`, LOAD_AGAIN, {
            path: reference.path, subjects: [subjectOf(record)],
          });
        }
        return issue('still-used', `${startWith(target)} cannot be removed: the ${kindLabel(record.kind)} ${quoteName(record.name)} uses it since.`, LOAD_AGAIN, {
          subjects: [subjectOf(target), subjectOf(record)],
        });
      }),
  );
}

function keyOf({ kind, id }: { readonly kind: string; readonly id: string }): string {
  return `${kind}:${id}`;
}

export function noSuchSeries(seriesId: string): Issue {
  return issue('no-such-series', `There is no series with the id ${seriesId}; it may have been removed.`, 'Go back to the list of series.');
}
