/** The yearly review: each source once, with the hazards that rely on it and the day it is to be read again. */
import type { SeriesDocument } from '@/lib/build';
import { addDays, type CivilDate } from '@/lib/calendar';
import { listHazards } from './library-in-force';
import type { Hazard, Source } from './model';

export interface SourceReview {
  readonly text: string;
  readonly hazards: readonly Hazard[];
  /** The oldest reading that a hazard relies on; null: nobody has read it. */
  readonly reviewed: CivilDate | null;
  /** Read again by then; null: it is to be found and read for the first time. */
  readonly dueOn: CivilDate | null;
  readonly standing: 'overdue' | 'due soon' | 'read' | 'never read' | 'no source';
}

const YEAR = 365;
/** Days ahead that count as soon. */
const SOON = 60;

const STANDINGS: readonly SourceReview['standing'][] = ['overdue', 'due soon', 'never read', 'no source', 'read'];

function standingOf(source: Source, reviewed: CivilDate | null, today: CivilDate): SourceReview['standing'] {
  if (source.status === 'practice') return 'no source';
  if (source.status === 'memory' || reviewed === null) return 'never read';
  const dueOn = addDays(reviewed, YEAR);
  if (dueOn < today) return 'overdue';
  return dueOn <= addDays(today, SOON) ? 'due soon' : 'read';
}

/**
 * Every source of the hazards in force, what is due first. A source is due a year after it was last read; where hazards rely on
 * different readings of it, the oldest counts. What is computed or judged is no source.
 */
export function listReviews(document: Pick<SeriesDocument, 'hazards'>, today: CivilDate): readonly SourceReview[] {
  const uses = listHazards(document).flatMap((hazard) => hazard.sources.map((source) => ({ hazard, source })))
    .filter(({ source }) => source.status !== 'computed' && source.status !== 'judgement');
  const texts = [...new Set(uses.map(({ source }) => source.text))];
  return texts.map((text): SourceReview => {
    const own = uses.filter(({ source }) => source.text === text);
    const [first] = own.toSorted((a, b) => (a.source.reviewed ?? '').localeCompare(b.source.reviewed ?? ''));
    if (first === undefined) throw new Error('A source is used by at least one hazard');
    const { source } = first;
    const reviewed = source.status === 'read' ? source.reviewed : null;
    return {
      text, hazards: own.map(({ hazard }) => hazard), reviewed, dueOn: reviewed === null ? null : addDays(reviewed, YEAR), standing: standingOf(source, reviewed, today),
    };
  }).toSorted((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || (a.dueOn ?? '').localeCompare(b.dueOn ?? ''));
}
