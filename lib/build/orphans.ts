/** What would be left pointing at nothing. */
import { issue, type Issue } from '@/lib/result';
import type { RecordEdit } from './edit';
import { listStateUses } from './derive-order';
import type { SeriesDocument, SeriesRecord } from './model';
import { findRecord, kindLabel } from './records';
import { findUsers } from './references';
import { joinWords, listNames, quoteName, sayRecord, startWith, stateName, subjectOf } from './words';

/** `the tasks “A” and “B” and the session “C”`, kind by kind, up to five names each. */
function sayUsers(users: readonly SeriesRecord[]): string {
  const kinds = [...new Set(users.map((user) => user.kind))];
  const groups = kinds.map((kind) => {
    const names = users.filter((user) => user.kind === kind).map((user) => user.name);
    return `the ${kindLabel(kind)}${names.length > 1 && kind !== 'equipment' ? 's' : ''} ${listNames(names)}`;
  });
  return joinWords(groups);
}

/** One issue for each removed record that something in the document still points at. */
export function findOrphans(after: SeriesDocument, edits: readonly RecordEdit[]): readonly Issue[] {
  return edits.flatMap(({ kind, id, before, after: kept }) => {
    if (kept !== null || before === null) return [];
    const users = [...new Set(findUsers(after, kind, id).map((user) => user.record))];
    if (users.length === 0) return [];
    return [issue('removal-orphans', `Without the ${sayRecord(before)}, ${sayUsers(users)} would be left with a gap.`,
      `Change ${users.length === 1 ? 'that' : 'those'} first, or remove the ${kindLabel(kind)} together with what depends on it.`,
      { subjects: [before, ...users].map(subjectOf) })];
  });
}

/** One issue for each state of a part that only the removed work makes and other work needs. */
export function findStateOrphans(before: SeriesDocument, removed: SeriesRecord): readonly Issue[] {
  return listStateUses(before).flatMap(({ partId, stateId, makers, keepers, takers }) => {
    const [maker] = makers;
    if (maker?.record !== removed || makers.length > 1) return [];
    const needers = [...new Set([...keepers, ...takers].map((work) => work.record))].filter((record) => record !== removed);
    if (needers.length === 0) return [];
    const part = findRecord(before, 'part', partId);
    const state = `the part ${quoteName(part?.name ?? partId)} into ${quoteName(stateName(part, stateId))}`;
    const verb = needers.length === 1 ? 'needs' : 'need';
    return [issue('removal-orphans-state', `${startWith(removed)} alone brings ${state}, and ${sayUsers(needers)} ${verb} that.`,
      `Let another task bring it there, or remove the ${kindLabel(removed.kind)} anyway and close the gap later.`,
      { subjects: [removed, ...needers].map(subjectOf) })];
  });
}
