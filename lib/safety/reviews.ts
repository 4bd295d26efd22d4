/** The yearly review: each source once, with the hazards that rely on it and the day it is to be read again. */
import type { SeriesDocument, SourceReading } from '@/lib/build';
import { addDays, formatDay, isCivilDate, type CivilDate } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';
import { listHazards } from './library-in-force';
import type { Hazard, Source } from './model';

export interface SourceReview {
  readonly text: string;
  readonly hazards: readonly Hazard[];
  /** The oldest reading that a hazard relies on, or a later one by somebody of the series; null: nobody has read it. */
  readonly reviewed: CivilDate | null;
  /** Who of the series read it then; null: it is the day the hazard itself states. */
  readonly by: string | null;
  /** Read again by then; null: it is to be found and read for the first time. */
  readonly dueOn: CivilDate | null;
  readonly standing: 'overdue' | 'due soon' | 'read' | 'never read' | 'no source';
}

type Reviewed = Pick<SeriesDocument, 'hazards' | 'series'>;

const YEAR = 365;
/** Days ahead that count as soon. */
const SOON = 60;

const STANDINGS: readonly SourceReview['standing'][] = ['overdue', 'due soon', 'never read', 'no source', 'read'];

function standingOf(status: Source['status'], reviewed: CivilDate | null, today: CivilDate): SourceReview['standing'] {
  if (status === 'practice') return 'no source';
  if (reviewed === null) return 'never read';
  const dueOn = addDays(reviewed, YEAR);
  if (dueOn < today) return 'overdue';
  return dueOn <= addDays(today, SOON) ? 'due soon' : 'read';
}

/** The last reading of a source by somebody of the series. */
export function latestReading({ series }: Pick<SeriesDocument, 'series'>, text: string): SourceReading | null {
  return (series.sourceReadings ?? []).filter((reading) => reading.text === text).toSorted((a, b) => a.on.localeCompare(b.on)).at(-1) ?? null;
}

/**
 * Every source of the hazards in force, what is due first. A source is due a year after it was last read; where hazards rely on
 * different readings of it, the oldest counts, unless somebody of the series has read it since. What is computed or judged is no source.
 */
export function listReviews(document: Reviewed, today: CivilDate): readonly SourceReview[] {
  const uses = listHazards(document).flatMap((hazard) => hazard.sources.map((source) => ({ hazard, source })))
    .filter(({ source }) => source.status !== 'computed' && source.status !== 'judgement');
  const texts = [...new Set(uses.map(({ source }) => source.text))];
  return texts.map((text): SourceReview => {
    const own = uses.filter(({ source }) => source.text === text);
    const [first] = own.toSorted((a, b) => (a.source.reviewed ?? '').localeCompare(b.source.reviewed ?? ''));
    if (first === undefined) throw new Error('A source is used by at least one hazard');
    const { status } = first.source;
    const stated = status === 'read' ? first.source.reviewed : null;
    const reading = latestReading(document, text);
    const isLater = reading !== null && status !== 'practice' && (stated === null || reading.on > stated);
    const reviewed = isLater ? reading.on : stated;
    return {
      text, hazards: own.map(({ hazard }) => hazard), reviewed, by: isLater ? reading.by : null,
      dueOn: reviewed === null ? null : addDays(reviewed, YEAR), standing: standingOf(status, reviewed, today),
    };
  }).toSorted((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || (a.dueOn ?? '').localeCompare(b.dueOn ?? ''));
}

export interface ReadingDraft {
  readonly text: string;
  readonly on: string;
  readonly personId: string;
}

/**
 * The series' readings with one more. Fails with `source-unknown` (no hazard names it, or it is common practice and there is
 * nothing to read), `signed-by-nobody` or `reading-date` (no day, or one ahead), all that apply.
 */
export function addReading(document: Reviewed & Pick<SeriesDocument, 'people'>, { text, on, personId }: ReadingDraft, today: CivilDate): Result<readonly SourceReading[]> {
  const review = listReviews(document, today).find((one) => one.text === text);
  const person = document.people.find(({ id }) => id === personId);
  const issues = [
    ...(review === undefined ? [issue('source-unknown', 'No hazard of this series names that source.', 'Load the page again.', { path: ['text'] })] : []),
    ...(review?.standing === 'no source' ? [issue('source-unknown', 'This is common practice: there is nothing to read.', 'Find a source, copy the hazard, and name the source there.', { path: ['text'] })] : []),
    ...(person === undefined ? [issue('signed-by-nobody', 'Nobody has read it.', 'Choose who read it; it must be a person of this series.', { path: ['personId'] })] : []),
    ...(isCivilDate(on) ? [] : [issue('reading-date', 'There is no day on which it was read.', 'Write the day as 2026-12-01.', { path: ['on'] })]),
    ...(isCivilDate(on) && on > today ? [issue('reading-date', `It cannot have been read on ${formatDay(on)}, which is still ahead.`, 'Write today or a day before.', { path: ['on'] })] : []),
  ];
  if (issues.length > 0 || person === undefined) return fail(issues);
  return ok([...document.series.sourceReadings ?? [], { text, on, by: person.name }]);
}
