import { issue, type Issue } from '@/lib/result';
import type { SeriesRecord } from '../model';
import { kindLabel, listRecords } from '../records';
import { count, formatNumber, quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const LONGEST_NAME = 200;

/** What is wrong with a name, in words, or null. `what` starts the sentence: `The task`. */
export function describeBadName(name: string, what: string): { readonly code: string; readonly message: string; readonly fix: string } | null {
  const { length } = Array.from(name.trim());
  if (length === 0) return { code: 'name-missing', message: `${what} has no name.`, fix: 'Type a name.' };
  if (length <= LONGEST_NAME) return null;
  const message = `The name of ${what.charAt(0).toLowerCase()}${what.slice(1)} has ${formatNumber(length)} characters; at most ${LONGEST_NAME} fit.`;
  return { code: 'name-too-long', message, fix: `Shorten the name by ${count(length - LONGEST_NAME, 'character')} and keep the rest in a note.` };
}

function checkName(record: SeriesRecord, name: string, what: string, path: Issue['path']): readonly Issue[] {
  const bad = describeBadName(name, what);
  return bad === null ? [] : [issue(bad.code, bad.message, bad.fix, { path, subjects: subjectsOf(record) })];
}

/** Names of records, part states and shots are there and at most {@link LONGEST_NAME} characters long. */
export const checkNames: Rule = (document) =>
  listRecords(document).flatMap((record) => {
    const owner = quoteName(record.name);
    const states = record.kind === 'part' ? record.states : [];
    const shots = record.kind === 'task' ? record.shots : [];
    return [
      ...checkName(record, record.name, record.name.trim() === '' ? `The ${kindLabel(record.kind)}` : startWith(record), ['name']),
      ...states.flatMap((state, index) => checkName(record, state.name, `State ${index + 1} of the part ${owner}`, ['states', index, 'name'])),
      ...shots.flatMap((shot, index) => checkName(record, shot.name, `Shot ${index + 1} of the task ${owner}`, ['shots', index, 'name'])),
    ];
  });
