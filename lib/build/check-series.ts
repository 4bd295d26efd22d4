/** Every rule over a whole series, and what an edit has made worse. */
import type { Issue } from '@/lib/result';
import type { RecordEdit } from './edit';
import type { SeriesDocument } from './model';
import { RULES } from './rules';

/** Documents never change, so what was found in one stays found. An edit asks for the one before and the one after twice each. */
const checked = new WeakMap<SeriesDocument, readonly Issue[]>();

/** Everything that is wrong with a series, `stop` and `warn` alike, in the order of the rules. */
export function checkSeries(document: SeriesDocument): readonly Issue[] {
  const known = checked.get(document) ?? RULES.flatMap((rule) => rule(document));
  checked.set(document, known);
  return known;
}

/** What keeps a series from being planned. */
export function listStops(document: SeriesDocument): readonly Issue[] {
  return checkSeries(document).filter(({ severity }) => severity === 'stop');
}

function issueKey({ code, path, subjects }: Issue): string {
  return JSON.stringify([code, path, subjects.map(({ kind, id }) => [kind, id])]);
}

function newIssues(before: SeriesDocument, after: SeriesDocument): readonly Issue[] {
  const known = new Set(checkSeries(before).map(issueKey));
  return checkSeries(after).filter((found) => !known.has(issueKey(found)));
}

/** Stops that the second document has and the first had not: same code, records and path is the same fault. */
export function newStops(before: SeriesDocument, after: SeriesDocument): readonly Issue[] {
  return newIssues(before, after).filter(({ severity }) => severity === 'stop');
}

/**
 * Faults where the work asks for more than people and sessions offer. They refuse an edit of the work; taking away a
 * session or a person is a fact of life, so there they only warn.
 */
const SUPPLY_CODES: readonly string[] = ['task-longer-than-any-session', 'skill-nobody-has', 'skill-held-by-too-few', 'crew-larger-than-people'];

/** What an edit brings: `stops` refuse it, `warnings` are shown and kept. */
export interface EditJudgement {
  readonly stops: readonly Issue[];
  readonly warnings: readonly Issue[];
}

/** Judges an edit by the faults that it introduces; faults that were there before never count. */
export function judgeEdit(before: SeriesDocument, after: SeriesDocument, edits: readonly RecordEdit[]): EditJudgement {
  const edited = new Set(edits.map(({ kind, id }) => `${kind}:${id}`));
  const refuses = ({ severity, code, subjects }: Issue): boolean =>
    severity === 'stop' && (!SUPPLY_CODES.includes(code) || subjects.some(({ kind, id }) => edited.has(`${kind}:${id}`)));
  const found = newIssues(before, after);
  return { stops: found.filter(refuses), warnings: found.filter((one) => !refuses(one)) };
}
