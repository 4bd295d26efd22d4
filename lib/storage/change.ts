/** Writing of a change: all of it, or nothing. */
import type { Change, RecordEdit, RecordKind, SavedChange, SeriesRecord } from '@/lib/build';
import { concernsPlan } from '@/lib/build';
import { issue } from '@/lib/result';
import type { Issue } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { writeInstant } from './column';
import type { Db } from './connection';
import { describeStale, noSuchSeries, Refusal } from './refusal';
import type { Table } from './table';
import { TABLES, WRITE_ORDER } from './tables/all';

/**
 * Writes a change inside a transaction of the caller.
 * @throws Refusal when the series is gone, a record is stale, or the change to undo does not stand any more
 */
export async function writeChange(db: Db, seriesId: string, change: Change, at: Instant): Promise<SavedChange> {
  checkEdits(change.edits);
  // A write comes first, so that the transaction holds the write lock before it reads what it decides on.
  const { count } = await db.series.updateMany({ where: { id: seriesId }, data: { changeNumber: { increment: 1 } } });
  if (count === 0) throw new Refusal([noSuchSeries(seriesId)]);
  const { changeNumber: number, usesExperience } = await db.series.findUniqueOrThrow({ where: { id: seriesId }, select: { changeNumber: true, usesExperience: true } });
  if (concernsPlan({ usesExperience }, change.edits)) await db.series.update({ where: { id: seriesId }, data: { planChange: number } });
  await refuseStale(db, seriesId, change.edits);
  if (change.undoes !== null) await takeBack(db, seriesId, change.undoes, number);
  await writeEdits(db, seriesId, change.edits);
  const { label, edits, undoes } = change;
  await db.change.create({
    data: { seriesId, number, at: writeInstant(at), label, editsJson: JSON.stringify(edits), undoes, undoneBy: null },
  });
  return { number, at, label, edits, undoes, undoneBy: null };
}

/** @throws Error when the edits contradict themselves, which no command may hand over */
function checkEdits(edits: readonly RecordEdit[]): void {
  const seen = new Set<string>();
  for (const { kind, id, before, after } of edits) {
    const name = `${kind} ${id}`;
    if (seen.has(name)) throw new Error(`A change edits ${name} twice.`);
    seen.add(name);
    if (!before && !after) throw new Error(`The edit of ${name} has neither a record before nor one after.`);
    if (kind === 'series' && !(before && after)) throw new Error('A change cannot make or remove a series.');
    for (const record of [before, after]) {
      if (record && (record.id !== id || record.kind !== kind)) throw new Error(`The edit of ${name} holds ${record.kind} ${record.id}.`);
    }
    if (before && after && after.revision !== before.revision + 1) {
      throw new Error(`The edit of ${name} goes from revision ${before.revision} to ${after.revision}.`);
    }
  }
}

async function refuseStale(db: Db, seriesId: string, edits: readonly RecordEdit[]): Promise<void> {
  const issues: Issue[] = [];
  for (const kind of WRITE_ORDER) {
    const ofKind = edits.filter((edit) => edit.kind === kind);
    if (ofKind.length === 0) continue;
    const records: readonly SeriesRecord[] = await TABLES[kind].list(db, seriesId, ofKind.map(({ id }) => id));
    const stored = new Map(records.map((record) => [record.id, record]));
    for (const edit of ofKind) {
      const record = stored.get(edit.id);
      if (record?.revision !== edit.before?.revision) issues.push(await describeStale(db, seriesId, edit, record));
    }
  }
  if (issues.length > 0) throw new Refusal(issues);
}

/** Marks a change as undone. When that one was itself an undo, the change it had taken back stands again. */
async function takeBack(db: Db, seriesId: string, undone: number, by: number): Promise<void> {
  const change = await db.change.findUnique({ where: { seriesId_number: { seriesId, number: undone } } });
  if (!change) throw new Refusal([issue('no-such-change', `There is no change ${undone} in the history.`, 'Load the history again.')]);
  if (change.undoneBy !== null) {
    const message = `Change ${undone} (${change.label}) has been undone already, by change ${change.undoneBy}.`;
    throw new Refusal([issue('already-undone', message, 'Load the history again.')]);
  }
  await db.change.update({ where: { seriesId_number: { seriesId, number: undone } }, data: { undoneBy: by } });
  if (change.undoes !== null) {
    await db.change.update({ where: { seriesId_number: { seriesId, number: change.undoes } }, data: { undoneBy: null } });
  }
}

/** Makes come first, then changes, then removals from the far end, so that a foreign key never points at nothing on the way. */
async function writeEdits(db: Db, seriesId: string, edits: readonly RecordEdit[]): Promise<void> {
  for (const kind of WRITE_ORDER) await writeMadeAndChanged(TABLES[kind], db, seriesId, edits, 'made');
  for (const kind of WRITE_ORDER) await writeMadeAndChanged(TABLES[kind], db, seriesId, edits, 'changed');
  for (const kind of WRITE_ORDER.toReversed()) {
    for (const edit of edits) {
      if (edit.kind === kind && !edit.after) await TABLES[kind].remove(db, seriesId, edit.id);
    }
  }
}

async function writeMadeAndChanged<K extends RecordKind>(
  table: Table<Extract<SeriesRecord, { kind: K }>>,
  db: Db,
  seriesId: string,
  edits: readonly RecordEdit[],
  which: 'made' | 'changed',
): Promise<void> {
  const isOfTable = (record: SeriesRecord | null): record is Extract<SeriesRecord, { kind: K }> => record?.kind === table.kind;
  const records = edits.filter(({ before }) => (before === null) === (which === 'made')).map(({ after }) => after).filter(isOfTable);
  if (records.length === 0) return;
  if (which === 'made') await table.insert(db, seriesId, records);
  else for (const record of records) await table.update(db, seriesId, record);
}
