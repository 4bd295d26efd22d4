/** What people have signed, and what a signature needs. */
import type { Evidence, Series, SeriesDocument, Statement, StatementAbout } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { readLabel } from './footage';

/** Shortest reason that says something. */
const SHORTEST_REASON = 12;

/** The last signature on a line of an episode's checklist. */
export function latestEvidence({ statements }: SeriesDocument, episodeId: string, itemId: string): Statement | null {
  return statements.findLast(({ about }) => about.sort === 'evidence' && about.episodeId === episodeId && about.itemId === itemId) ?? null;
}

/** Every override of an episode, the oldest first. They stay for ever. */
export function listOverrides({ statements }: SeriesDocument, episodeId: string): readonly Statement[] {
  return statements.filter(({ about }) => about.sort === 'override' && about.episodeId === episodeId);
}

export interface StatementDraft {
  readonly id: string;
  readonly name: string;
  readonly about: StatementAbout;
  readonly personId: string;
  readonly at: Instant;
  readonly reason: string;
}

function checkReason(about: StatementAbout, reason: string): readonly Issue[] {
  const isFree = about.sort === 'evidence' && about.evidence.kind === 'take';
  if (isFree || about.sort === 'hazard-added' || reason.trim().length >= SHORTEST_REASON) return [];
  return [issue('reason-missing', 'There is no reason that somebody could read later.', `Write why, in at least ${SHORTEST_REASON} characters.`, { path: ['reason'] })];
}

function checkEvidence(evidence: Evidence, rate: Series['frameRate']): readonly Issue[] {
  // A take of the log was read by its own camera's way of counting.
  if (evidence.kind !== 'take' || evidence.entryId !== undefined) return [];
  const timecode = readLabel(evidence.timecode, rate);
  return [
    ...(evidence.take.trim() === '' ? [issue('take-missing', 'No take is named.', 'Write the take as on the slate or the card, such as “cam A 12”.', { path: ['take'] })] : []),
    ...(timecode.ok ? [] : timecode.error),
  ];
}

/**
 * A signed statement, ready to be saved. Fails with `signed-by-nobody`, `reason-missing`, `take-missing` or
 * what is wrong with a timecode, all that apply.
 */
export function signStatement(document: SeriesDocument, draft: StatementDraft): Result<Statement> {
  const person = document.people.find(({ id }) => id === draft.personId);
  const issues = [
    ...(person === undefined ? [issue('signed-by-nobody', 'Nobody has signed this.', 'Choose who signs; it must be a person of this series.', { path: ['personId'] })] : []),
    ...checkReason(draft.about, draft.reason),
    ...(draft.about.sort === 'evidence' ? checkEvidence(draft.about.evidence, document.series.frameRate) : []),
  ];
  if (issues.length > 0 || person === undefined) return fail(issues);
  return ok({ kind: 'statement', revision: 1, order: document.statements.length, ...draft, reason: draft.reason.trim(), signedBy: person.name });
}
