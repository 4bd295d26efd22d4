/** The room of safety: the series at a glance. */
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, formatMoment } from '@/lib/calendar';
import { buildMatrix, findCombinations, listPersonDays, listReviews, STANDING_WORDS, type DatedWork, type MatrixRow, type SourceReview } from '@/lib/safety';
import type { Instant } from '@/lib/units';
import { formatLongDay } from './record-form-words';
import type { MatrixCellView, SafetyRoomView } from './safety-model';
import { chooseFrom, isWorthTelling, loadScene, sayExposure, sayVapour, SEVERITY_WORDS, type SafetyContext } from './safety-words';

/** Days ahead whose exposure is listed. */
const DAYS_AHEAD = 21;
const SESSIONS_AHEAD = 6;

function viewCells(row: MatrixRow, episodes: readonly { readonly id: string; readonly name: string }[]): readonly (MatrixCellView | null)[] {
  return episodes.map(({ id, name }) => {
    const cell = row.cells.find(({ episodeId }) => episodeId === id);
    if (cell === undefined) return null;
    const text = cell.open === 0 ? 'all' : `${cell.needed - cell.open}/${cell.needed}`;
    return { episodeId: id, text, isOpen: cell.open > 0, label: `${row.hazard.name} in ${name}: ${cell.open} of ${cell.needed} open` };
  });
}

function viewExposures(document: SeriesDocument, work: DatedWork, now: Instant): SafetyRoomView['exposures'] {
  const { zone } = document.series;
  const [from, to] = [dateOf(now, zone), addDays(dateOf(now, zone), DAYS_AHEAD)];
  return listPersonDays(document, work.pieces)
    .filter((day) => day.date >= from && day.date <= to && isWorthTelling(day))
    .map((day) => sayExposure(document, day));
}

function sayReview({ by, standing, dueOn, reviewed }: SourceReview): string {
  if (dueOn === null || reviewed === null) return standing === 'no source' ? 'common practice: look for a source' : 'from memory: find it and read it';
  return `${standing === 'overdue' ? 'overdue since' : 'read again by'} ${formatLongDay(dueOn)}, last read ${formatLongDay(reviewed)}${by === null ? '' : ` by ${by}`}`;
}

function viewReviews(document: SeriesDocument, now: Instant): Pick<SafetyRoomView, 'reviews' | 'reviewSummary' | 'today' | 'revision' | 'people'> {
  const reviews = listReviews(document, dateOf(now, document.series.zone));
  const count = (...standings: readonly SourceReview['standing'][]): number => reviews.filter(({ standing }) => standings.includes(standing)).length;
  const next = reviews.flatMap(({ dueOn, standing }) => (dueOn === null || standing === 'overdue' ? [] : [dueOn])).toSorted()[0];
  return {
    reviews: reviews.map((review) => ({
      text: review.text, when: sayReview(review), hazards: review.hazards.map(({ name }) => name).join(', '), isDue: review.standing !== 'read', canRead: review.standing !== 'no source',
    })),
    today: dateOf(now, document.series.zone), revision: document.series.revision, people: chooseFrom(document.people),
    reviewSummary: [`${count('overdue')} overdue`, `${count('due soon')} due within 60 days`, `${count('never read', 'no source')} never read`, ...(next === undefined ? [] : [`next due ${formatLongDay(next)}`])].join(', '),
  };
}

/** Matrix, combinations, exposure of the coming weeks, briefs and sources to read again. */
export async function viewSafety({ storage, now }: SafetyContext, document: SeriesDocument): Promise<SafetyRoomView> {
  const { id: seriesId, zone } = document.series;
  const { plan, work, footage } = await loadScene(storage, seriesId);
  const { columns, rows } = buildMatrix(document, { work, footage });
  const vapours = document.tasks.filter(({ doneAt }) => doneAt === null).map((task) => sayVapour(document, task));
  return {
    seriesId, standing: STANDING_WORDS, hasPlan: plan !== null,
    columns: columns.map(({ episode, open, overrides }, index) => ({ id: episode.id, number: index + 1, name: episode.name, status: episode.status, open, overrides })),
    rows: rows.map((row) => ({ id: row.hazard.id, name: row.hazard.name, severity: SEVERITY_WORDS[row.hazard.severity], cells: viewCells(row, document.episodes) })),
    combinations: findCombinations(document, work),
    exposures: viewExposures(document, work, now),
    sessions: document.sessions.filter(({ end }) => end > now).toSorted((a, b) => a.start - b.start).slice(0, SESSIONS_AHEAD)
      .map(({ id, name, start }) => ({ value: id, label: `${formatMoment(start, zone)}, ${name}` })),
    ...viewReviews(document, now),
    vapours: vapours.flatMap(({ row }) => (row === null ? [] : [row])),
    vapourGaps: vapours.flatMap(({ gaps }) => gaps),
  };
}
