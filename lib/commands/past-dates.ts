/** Dates that a person has just typed and that are over already: kept, and told. */
import type { Episode, Edited, SeriesDocument, Session } from '@/lib/build';
import { dateOf, formatDay, formatMoment } from '@/lib/calendar';
import { issue, type Issue } from '@/lib/result';
import type { Instant } from '@/lib/units';

function tellSessions(ended: readonly Session[], zone: string): Issue[] {
  const [first, ...others] = ended;
  if (first === undefined) return [];
  const subjects = ended.map(({ id, kind, name }) => ({ kind, id, name }));
  const message = others.length === 0 ? `The session ${first.name} ends ${formatMoment(first.end, zone)}, which is over, so no work is planned into it.`
    : `${ended.length} of the sessions end before now, the first ${formatMoment(first.end, zone)}, so no work is planned into them.`;
  return [issue('session-over', message, 'Choose a day that is still to come, or keep it as a note of what was.', { severity: 'warn', subjects })];
}

/** Warnings for releases and sessions that an edit put, or moved, before now. An undo brings back what was known. */
export function warnPast({ series: { zone } }: SeriesDocument, { edits, undoes }: Edited['change'], now: Instant): readonly Issue[] {
  if (undoes !== null) return [];
  const today = dateOf(now, zone);
  const isLate = (after: Episode, before: Episode | null): boolean => after.status !== 'released' && after.releaseDate < today && after.releaseDate !== before?.releaseDate;
  const releases = edits.flatMap(({ after, before }) => (after?.kind === 'episode' && isLate(after, before?.kind === 'episode' ? before : null) ? [after] : []));
  const ended = edits.flatMap(({ after, before }) => (after?.kind === 'session' && after.end <= now && !(before?.kind === 'session' && before.end === after.end) ? [after] : []));
  return [
    ...releases.map(({ id, kind, name, releaseDate }) => issue(
      'release-over', `${name} is to come out ${formatDay(releaseDate)} ${releaseDate.slice(0, 4)}, and that day is over, so its work counts as late.`, 'Give it a day that is still to come, or call it released.',
      { severity: 'warn', path: ['releaseDate'], subjects: [{ kind, id, name }] },
    )),
    ...tellSessions(ended, zone),
  ];
}
